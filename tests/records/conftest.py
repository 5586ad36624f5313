"""Records in a folder that goes away, with a clock of their own."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from records.visits import START

from dictate.records import Records, keys, open_records


@pytest.fixture(autouse=True)
def no_settings(monkeypatch: pytest.MonkeyPatch) -> None:
    """What the user of this machine has set does not reach the tests."""
    for name in ("DICTATE_RECORDS", "DICTATE_KEYRING", "DICTATE_PASSPHRASE"):
        monkeypatch.delenv(name, raising=False)


@pytest.fixture(autouse=True)
def cheap_passphrases(monkeypatch: pytest.MonkeyPatch) -> None:
    """Stretching a passphrase takes its time on purpose; the cost is kept with the records, so less will do here."""
    monkeypatch.setitem(keys.SCRYPT, "n", 2**10)


@pytest.fixture
def now() -> Callable[[], datetime]:
    """A clock that goes on by a minute whenever it is asked."""
    asked = iter(range(10**6))
    return lambda: START + timedelta(minutes=next(asked))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Where the records of a test lie."""
    return tmp_path / "records"


@pytest.fixture
def records(folder: Path, now: Callable[[], datetime]) -> Iterator[Records]:
    """Empty records."""
    with open_records(folder, now=now) as opened:
        yield opened
