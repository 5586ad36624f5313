"""The same words give the same result in every process, whatever order its sets and dictionaries have."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from by_hand import DEMOS

SCRIPT = """
import sys
from dictate.grammar import load_grammar
from dictate.notes import exam_json, write_note
from dictate.pipeline import examine_transcript
from dictate.reading import transcript_of_text

grammar = load_grammar()
for path in sys.argv[1:]:
    exam = examine_transcript(transcript_of_text(open(path, encoding="utf-8").read()), grammar=grammar)
    print(exam_json(exam), write_note(exam, grammar))
"""


def output(seed: str, paths: list[Path]) -> str:
    """Examination and note of each text, from a process of its own."""
    environment = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONWARNINGS": "ignore"}
    run = [sys.executable, "-c", SCRIPT, *map(str, paths)]
    return subprocess.run(run, env=environment, capture_output=True, text=True, check=True).stdout


def test_same_words_same_result_in_any_process() -> None:
    """The demonstrations in two processes with different orders of hashing."""
    paths = sorted(DEMOS.glob("*.txt"))
    first, other = (output(seed, paths) for seed in ("1", "4242"))
    assert "REFLEXES" in first
    assert other == first
