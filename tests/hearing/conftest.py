"""The engine, loaded once, and a piece of real speech."""

from __future__ import annotations

from pathlib import Path

import pytest
from by_hand import DEMOS
from hearing.sounds import Sound

from dictate.hearing.audio import RATE_HZ, Recording
from dictate.hearing.engine import Engine


@pytest.fixture(scope="session")
def engine() -> Engine:
    """The default model; nothing is fetched."""
    return Engine(offline=True)


@pytest.fixture(scope="session")
def postural() -> Sound:
    """The first ten seconds of a demonstration: a heading, then pressure and pulse lying down."""
    (block,) = Recording(Path(DEMOS) / "postural-series.flac").blocks()
    return block.samples[: 10 * RATE_HZ]
