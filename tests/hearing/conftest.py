"""A piece of real speech."""

from __future__ import annotations

from pathlib import Path

import pytest
from by_hand import DEMOS
from hearing.sounds import Sound

from dictate.hearing.audio import RATE_HZ, Recording


@pytest.fixture(scope="session")
def postural() -> Sound:
    """The first ten seconds of a demonstration: a heading, then pressure and pulse lying down."""
    (block,) = Recording(Path(DEMOS) / "postural-series.flac").blocks()
    return block.samples[: 10 * RATE_HZ]
