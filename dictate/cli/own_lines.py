"""Sound libraries write to the terminal by themselves, a dozen lines where a microphone goes: only ours are shown."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterator

STDERR = 2


@contextlib.contextmanager
def own_lines_only() -> Iterator[None]:
    """Meanwhile what is written past Python to standard error goes nowhere; sys.stderr still arrives."""
    before = sys.stderr
    try:
        straight = before.fileno() == STDERR
    except (AttributeError, OSError, ValueError):  # somebody else already takes what is written
        straight = False
    if not straight:
        yield
        return
    before.flush()
    kept = os.dup(STDERR)
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, STDERR)
    os.close(nowhere)
    sys.stderr = os.fdopen(kept, "w", buffering=1, encoding=before.encoding, errors=before.errors)
    try:
        yield
    finally:
        ours, sys.stderr = sys.stderr, before
        ours.flush()
        os.dup2(ours.fileno(), STDERR)
        ours.close()
