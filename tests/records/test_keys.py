"""The sealing key, and the passphrase."""

from __future__ import annotations

import builtins
import stat
from pathlib import Path
from typing import Any

import keyring
import pytest
from keyring.backend import KeyringBackend
from keyring.errors import KeyringLocked
from records.visits import BY, visit

from dictate.errors import Damaged, Locked, MachineError, RecordError
from dictate.records import open_records
from dictate.records.keys import KEY_FILE


class Ring(KeyringBackend):
    """A keyring in memory."""

    priority = 1.0  # type: ignore[assignment]

    def __init__(self) -> None:
        super().__init__()
        self.held: dict[tuple[str, str], str] = {}
        self.locked = False

    def get_password(self, service: str, username: str) -> str | None:
        """What is held."""
        if self.locked:
            raise KeyringLocked("locked")
        return self.held.get((service, username))

    def set_password(self, service: str, username: str, password: str) -> None:
        """Hold it."""
        if self.locked:
            raise KeyringLocked("locked")
        self.held[service, username] = password


@pytest.fixture
def ring(monkeypatch: pytest.MonkeyPatch) -> Ring:
    """The system's keyring for the time of a test."""
    made = Ring()
    monkeypatch.setattr(keyring, "get_password", made.get_password)
    monkeypatch.setattr(keyring, "set_password", made.set_password)
    monkeypatch.setenv("DICTATE_KEYRING", "1")
    return made


def filled(folder: Path, passphrase: str | None = None) -> str:
    """Records with one record; its key."""
    with open_records(folder, passphrase=passphrase) as records:
        return records.save(visit(), who=BY, why="dictated").key


def test_the_key_is_its_owners_alone(folder: Path) -> None:
    """In a file of mode 0600."""
    filled(folder)
    assert stat.S_IMODE((folder / KEY_FILE).stat().st_mode) == 0o600
    assert len(bytes.fromhex((folder / KEY_FILE).read_text(encoding="ascii"))) == 32


def test_a_lost_key_is_said_plainly(folder: Path) -> None:
    """No new one is made over records that exist."""
    filled(folder)
    (folder / KEY_FILE).unlink()
    with pytest.raises(Damaged, match="the key that seals the records is gone: put it back from a back-up"):
        open_records(folder)
    assert not (folder / KEY_FILE).exists()


@pytest.mark.parametrize(
    ("content", "said"), [(b"00" * 32, "is not the key"), (b"nonsense", "is no key"), (b"\xff\xfe", "is no key")]
)
def test_another_key_is_said_plainly(content: bytes, said: str, folder: Path) -> None:
    """Before anything is checked with it."""
    filled(folder)
    (folder / KEY_FILE).write_bytes(content)
    with pytest.raises(Damaged, match=said):
        open_records(folder)


def test_wrong_and_missing_passphrases(folder: Path) -> None:
    """Each is one line; records without one refuse it."""
    key = filled(folder, "open sesame")
    with pytest.raises(Locked, match="give the passphrase"):
        open_records(folder)
    with pytest.raises(RecordError, match="does not open these records; a lost one cannot be recovered"):
        open_records(folder, passphrase="open barley")
    with open_records(folder, passphrase="open sesame") as records:
        assert records.open(key).exam == visit()
    filled(folder.with_name("plain"))
    with pytest.raises(RecordError, match="have no passphrase"):
        open_records(folder.with_name("plain"), passphrase="x")


def test_without_the_library_the_extra_is_named(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One line with the command."""
    real = builtins.__import__

    def without(name: str, *more: Any, **options: Any) -> Any:
        if name.startswith("cryptography"):
            raise ImportError(name)
        return real(name, *more, **options)

    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(MachineError, match=r"pip install 'dictate\[records\]'"):
        open_records(folder, passphrase="x")


def test_the_keyring_holds_the_key(folder: Path, ring: Ring, monkeypatch: pytest.MonkeyPatch) -> None:
    """Then there is no file, and it is found again without the variable."""
    key = filled(folder)
    assert not (folder / KEY_FILE).exists()
    monkeypatch.delenv("DICTATE_KEYRING")
    with open_records(folder) as records:
        assert records.verify() == []
        assert records.open(key).exam == visit()
    ring.locked = True
    with pytest.raises(MachineError, match="keyring: cannot be read"):
        open_records(folder)
    ring.locked = False
    ring.held.clear()
    with pytest.raises(Damaged, match="the system's keyring: the key that seals the records is gone"):
        open_records(folder)


def test_a_keyring_that_takes_nothing_is_said(folder: Path, ring: Ring, monkeypatch: pytest.MonkeyPatch) -> None:
    """Who asked for it does not find the key in a file; without the variable a file does."""
    ring.locked = True
    with pytest.raises(MachineError, match="keyring takes no key: unlock it, or leave the variable out"):
        open_records(folder)
    assert not (folder / KEY_FILE).exists()
    monkeypatch.delenv("DICTATE_KEYRING")
    filled(folder)
    assert (folder / KEY_FILE).exists()


def test_a_key_that_may_not_be_read(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is lost that a back-up would bring back."""
    filled(folder)

    def refuse(path: Path, **_: object) -> str:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr(Path, "read_text", refuse)
    with pytest.raises(MachineError, match="key: cannot be read: permission denied: check its permissions"):
        open_records(folder)
