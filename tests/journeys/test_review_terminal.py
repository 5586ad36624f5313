"""`dictate review --terminal` in a terminal of its own, as over ssh."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

from dictate.model import Examination

pexpect = pytest.importorskip("pexpect", reason="pexpect is not installed: pip install pexpect")


def test_settled_in_a_terminal(tmp_path: Path) -> None:
    """Asked, answered with a key and with a typed value, ended; the file holds both. No sound is no fault."""
    (tmp_path / "visit.txt").write_text("Biceps reflex two plus. Right knee jerk seven plus.", encoding="utf-8")
    program = str(Path(sys.executable).with_name("dictate"))
    env = {**os.environ, "TERM": "xterm", "DICTATE_GRAMMAR": str(tmp_path / "own"), "PROMPT_TOOLKIT_NO_CPR": "1"}
    child = pexpect.spawn(
        program, ["review", "visit.txt", "--terminal", "--patient", "P-17"], cwd=tmp_path, env=env, encoding="utf-8",
        timeout=60, dimensions=(40, 160),
    )  # fmt: skip
    child.expect("Patient: P-17")
    child.expect("which side")
    child.expect("key:")
    child.send("h")
    child.expect("There is no sound to these words")
    child.expect("key:")
    child.send("1")
    child.expect("reads: Biceps reflex: left 2")
    child.expect("key:")
    child.send("t")
    child.expect("a grade, 0")
    child.send("3+\r")
    child.expect("reads: Knee jerk: right 3")
    child.expect("key:")
    child.send("e")
    child.expect("1 query open")
    child.expect(pexpect.EOF)
    exam = Examination.model_validate_json((tmp_path / "visit.exam.json").read_bytes())
    assert [(str(one.side), str(one.value)) for one in exam.findings] == [("left", "2+"), ("right", "3+")]
