"""The same words give the same result in every process, whatever order its sets and dictionaries have."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

from by_hand import DEMOS

SCRIPT = """
from dictate.grammar import load_grammar
from dictate.notes import exam_json, write_note
from dictate.pipeline import examine_transcript
from dictate.reading import transcript_of_text

def written(paths):
    for path in paths:
        with open(path, encoding="utf-8") as file:
            exam = examine_transcript(transcript_of_text(file.read()), grammar=load_grammar())
        yield exam_json(exam) + write_note(exam, load_grammar())
"""


def output(seed: str, paths: list[Path]) -> str:
    """Examination and note of each text, from a process of its own."""
    environment = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONWARNINGS": "ignore"}
    run = [sys.executable, "-c", f"{SCRIPT}\nimport sys\nprint(*written(sys.argv[1:]))", *map(str, paths)]
    return subprocess.run(run, env=environment, capture_output=True, text=True, check=True).stdout


def test_same_words_same_result_in_any_process() -> None:
    """The demonstrations in this process and in one with another order of hashing."""
    paths = sorted(DEMOS.glob("*.txt"))
    here: dict[str, Any] = {}
    exec(SCRIPT, here)
    first = " ".join(here["written"](paths)) + "\n"
    assert "REFLEXES" in first
    assert output("4242" if hash("side") % 2 else "1", paths) == first
