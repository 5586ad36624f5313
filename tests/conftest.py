"""What every room's tests share."""

from __future__ import annotations

import pytest
from by_hand import small_grammar

from dictate.grammar import Grammar, load_grammar


@pytest.fixture(scope="session")
def grammar() -> Grammar:
    """The packaged grammar."""
    return load_grammar()


@pytest.fixture(scope="session")
def small() -> Grammar:
    """A grammar of a few items, independent of the packaged one."""
    return small_grammar()
