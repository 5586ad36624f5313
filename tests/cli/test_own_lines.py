"""What a library writes to the terminal past Python is not shown; what the program says is."""

from __future__ import annotations

import io
import subprocess
import sys

import pytest

from dictate.cli.own_lines import own_lines_only

PROGRAM = """
import os, sys
from dictate.cli.own_lines import own_lines_only

print("before", file=sys.stderr)
try:
    with own_lines_only():
        os.write(2, b"ALSA lib: a stream that is gone\\n")
        print("the microphone is gone", file=sys.stderr)
        raise KeyError
except KeyError:
    os.write(2, b"after\\n")
print("at the end", file=sys.stderr)
"""


def test_lines_of_libraries_are_not_shown() -> None:
    """Also where it ends with a fault all is as before."""
    said = subprocess.run([sys.executable, "-c", PROGRAM], capture_output=True, text=True, check=True).stderr
    assert said.splitlines() == ["before", "the microphone is gone", "after", "at the end"]


def test_a_stream_that_is_no_file_is_left_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is taken from who listens already."""
    taken = io.StringIO()
    monkeypatch.setattr(sys, "stderr", taken)
    with own_lines_only():
        assert sys.stderr is taken
