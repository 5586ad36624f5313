"""Processes as people start them, cut off from every network."""

from __future__ import annotations

import contextlib
import fcntl
import io
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from by_hand import DEMOS
from review.serving import serving

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

    from dictate.review.sitting import Sitting

from dictate.cli.app import main

CUT_OFF = """
import socket


def refuse(*_, **__):
    raise OSError("the network is cut off")


class CutOff(socket.socket):
    connect = connect_ex = sendto = refuse


socket.socket = CutOff
socket.create_connection = socket.getaddrinfo = refuse
"""
BROWSERS = ("chromium", "chromium-browser", "google-chrome")
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


@pytest.fixture
def here(monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> Run:
    """The same in this process, for what a process of its own would not show better."""

    def run(*arguments: str, stdin: str = "") -> subprocess.CompletedProcess[str]:
        monkeypatch.setattr(sys, "argv", ["dictate", *arguments])
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(stdin.encode("utf-8")), encoding="utf-8"))
        capfd.readouterr()
        try:
            main()
            status = 0
        except SystemExit as end:
            status = int(end.code or 0)
        return subprocess.CompletedProcess(arguments, status, *capfd.readouterr())

    return run


@pytest.fixture(scope="session")
def heard(dictate: Run, tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Path]:
    """The files that a demonstration recording gives; each is heard once, however many processes run the tests."""
    base = tmp_path_factory.getbasetemp()
    shared = (base.parent if "PYTEST_XDIST_WORKER" in os.environ else base) / "heard"

    def files(name: str) -> Path:
        folder = shared / name
        folder.mkdir(parents=True, exist_ok=True)
        with (shared / f"{name}.lock").open("w") as lock:
            fcntl.flock(lock, fcntl.LOCK_EX)
            if not any(folder.iterdir()):
                result = dictate("note", str(DEMOS / f"{name}.flac"), "--out", str(folder))
                assert result.returncode == 0, result.stderr
        return folder

    return files


@pytest.fixture(scope="module")  # a session's would leave its event loop to tests that start one of their own
def browser() -> Iterator[Browser]:
    """The system's Chromium, without a window."""
    found = next(filter(None, map(shutil.which, BROWSERS)), None)
    if found is None:
        pytest.skip("no Chromium on this machine: apt-get install chromium")
    playwright = pytest.importorskip("playwright.sync_api")
    with playwright.sync_playwright() as driver:
        arguments = ["--no-sandbox"] if os.geteuid() == 0 else []
        one = driver.chromium.launch(executable_path=found, args=arguments)
        yield one
        one.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A window that may write to the clipboard and that fails the test when a script does."""
    context = browser.new_context(permissions=["clipboard-read", "clipboard-write"])
    one = context.new_page()
    faults: list[str] = []
    one.on("pageerror", lambda fault: faults.append(str(fault)))
    one.on("console", lambda line: faults.append(line.text) if line.type == "error" else None)
    yield one
    context.close()
    assert not [fault for fault in faults if "409" not in fault]


@pytest.fixture
def served() -> Iterator[Callable[[Sitting], str]]:
    """Sitting → the address to open; the server runs beside the test and ends with it."""
    with contextlib.ExitStack() as until_done:
        yield lambda sitting: until_done.enter_context(serving(sitting))
