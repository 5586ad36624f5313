"""What every room's tests share."""

from __future__ import annotations

import os

import pytest
from by_hand import small_grammar

from dictate.grammar import Grammar, load_grammar
from dictate.hearing.engine import Engine

PROCESSES = 2  # more only share the recogniser's processor threads, and memory
LONG = ("journeys", "live", "batch", "hearing", "test_examples.py", "notes", "review")  # rooms that take longest


@pytest.hookimpl(tryfirst=True)
def pytest_cmdline_main(config: pytest.Config) -> None:
    """The whole quick tier runs in two processes, a file at a time; what is named on the command line in this one.

    `-n 0` keeps all in one; nothing changes where pytest-xdist is not installed. Full counts are taken alone.
    """
    whole = config.args_source is not pytest.Config.ArgsSource.ARGS and not hasattr(config, "workerinput")
    quick = (config.option.markexpr, config.option.keyword, config.option.usepdb) == ("not slow", "", False)
    if whole and quick and getattr(config.option, "numprocesses", 0) is None:
        config.option.numprocesses = min(PROCESSES, os.cpu_count() or 1)
        config.option.dist = "loadfile"
        config.option.loadscopereorder = False


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Long rooms first, so that no process is left alone with one at the end; else in the order as drawn."""
    items.sort(key=lambda item: not set(LONG) & set(item.nodeid.partition("::")[0].split("/")))


@pytest.fixture(scope="session")
def grammar() -> Grammar:
    """The packaged grammar."""
    return load_grammar()


@pytest.fixture(scope="session")
def small() -> Grammar:
    """A grammar of a few items, independent of the packaged one."""
    return small_grammar()


@pytest.fixture(scope="session")
def engine() -> Engine:
    """The default model, loaded once; nothing is fetched."""
    return Engine(offline=True)
