"""The wheel in a fresh environment, away from the checkout."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
import venv
from pathlib import Path

import pytest
from by_hand import ROOT

TEXT = "Reflexes. Biceps two plus on the right, three plus on the left."


@pytest.fixture(scope="module")
def program(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """`dictate` of a wheel built here; its dependencies are those of the running environment."""
    made = tmp_path_factory.mktemp("wheel")
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(made), str(ROOT)]
    subprocess.run(build, check=True, capture_output=True)
    place = made / "environment"
    venv.create(place)
    python = place / "bin" / "python"
    wheel = next(made.glob("*.whl"))
    install = [sys.executable, "-m", "pip", "--python", str(python), "install", "--no-deps", "--no-index", str(wheel)]
    subprocess.run(install, check=True, capture_output=True)
    packages = next((place / "lib").glob("python*")) / "site-packages"
    (packages / "dependencies.pth").write_text(sysconfig.get_path("purelib") + "\n", encoding="utf-8")
    return place / "bin" / "dictate"


def run(program: Path, *arguments: str, cwd: Path, stdin: str = "") -> subprocess.CompletedProcess[str]:
    """Run it from an empty folder."""
    env = {name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "DICTATE_GRAMMAR")}
    return subprocess.run(
        [str(program), *arguments], input=stdin, capture_output=True, text=True, cwd=cwd, env=env, check=False
    )


def test_wheel_holds_all_that_is_needed(program: Path, tmp_path: Path) -> None:
    """Note and grammar come out of the wheel, not out of the checkout."""
    where = subprocess.run(
        [str(program.with_name("python")), "-c", "import dictate; print(dictate.__file__)"],
        capture_output=True, text=True, cwd=tmp_path, check=True,
        env={name: value for name, value in os.environ.items() if name != "PYTHONPATH"},
    )  # fmt: skip
    assert Path(where.stdout.strip()).is_relative_to(program.parent.parent)
    path = tmp_path / "visit.txt"
    path.write_text(TEXT, encoding="utf-8")
    result = run(program, "note", str(path), cwd=tmp_path)
    assert (result.returncode, result.stderr) == (0, "")
    assert "Biceps reflex: right 2+, left 3+" in result.stdout


def test_wheel_holds_the_grammar(program: Path, tmp_path: Path) -> None:
    """The grammar files travel in the wheel, and a user's own are read beside them."""
    packaged = next(program.parent.parent.glob("lib/python*/site-packages/dictate/grammars"))
    held, here = ({path.name: path.read_bytes() for path in at.iterdir()} for at in (packaged, ROOT / "grammars"))
    assert held == here  # whose examples are run elsewhere
    (tmp_path / "reflexes.yaml").write_text("items:\n  reflex_biceps:\n    terms: [elbow tap]\n", encoding="utf-8")
    said = "Reflexes. Elbow tap two plus on the right."
    result = run(program, "note", "-", "--grammar", str(tmp_path), cwd=tmp_path, stdin=said)
    assert "Biceps reflex: right 2+" in result.stdout


def test_wheel_holds_the_page(program: Path, tmp_path: Path) -> None:
    """Templates, style and script come out of the wheel."""
    path = "from dictate.review.server import PAGE; print(*sorted(p.name for p in PAGE.rglob('*.*')))"
    run_there = [str(program.with_name("python")), "-c", path]
    env = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    held = subprocess.run(run_there, capture_output=True, text=True, cwd=tmp_path, env=env, check=True).stdout.split()
    assert held == sorted(path.name for path in (ROOT / "dictate" / "review" / "page").rglob("*.*"))
    assert {"question.html", "review.css", "review.js"} <= set(held)
