"""The garbage collector, kept from going over what a reading builds again and again."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def at_rest() -> Iterator[None]:
    """No search for cycles inside: a reading makes many small things that stay and no cycle among them.

    The searches take a fifth of the time of a long text and free nothing. Two readings at once are safe: the first to
    end only lets the search begin anew.
    """
    searched = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if searched:
            gc.enable()
