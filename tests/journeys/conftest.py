"""Processes as people start them, cut off from every network."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from by_hand import DEMOS

CUT_OFF = """
import socket


def refuse(*_, **__):
    raise OSError("the network is cut off")


class CutOff(socket.socket):
    connect = connect_ex = sendto = refuse


socket.socket = CutOff
socket.create_connection = socket.getaddrinfo = refuse
"""
Run = Callable[..., "subprocess.CompletedProcess[str]"]


@pytest.fixture(scope="session")
def cut_off(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder that, on PYTHONPATH, takes the network away."""
    folder = tmp_path_factory.mktemp("cut_off")
    (folder / "sitecustomize.py").write_text(CUT_OFF, encoding="utf-8")
    return folder


@pytest.fixture(scope="session")
def dictate(cut_off: Path, tmp_path_factory: pytest.TempPathFactory) -> Run:
    """Run the installed program without a network, away from the checkout."""
    away = tmp_path_factory.mktemp("away")

    def run(
        *arguments: str, stdin: str = "", env: Mapping[str, str] | None = None, cwd: Path = away,
        before: Callable[[], None] | None = None,
    ) -> subprocess.CompletedProcess[str]:  # fmt: skip
        program = Path(sys.executable).with_name("dictate")
        around = {**os.environ, "PYTHONPATH": str(cut_off), "DICTATE_GRAMMAR": str(away / "none"), **(env or {})}
        return subprocess.run(
            [str(program), *arguments], input=stdin, capture_output=True, text=True, env=around, cwd=cwd,
            preexec_fn=before, timeout=300, check=False,
        )  # fmt: skip

    return run


@pytest.fixture(scope="session")
def heard(dictate: Run, tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Path]:
    """The files that a demonstration recording gives; each is heard once."""
    done: dict[str, Path] = {}

    def files(name: str) -> Path:
        if name not in done:
            folder = tmp_path_factory.mktemp(name)
            result = dictate("note", str(DEMOS / f"{name}.flac"), "--out", str(folder))
            assert result.returncode == 0, result.stderr
            done[name] = folder
        return done[name]

    return files
