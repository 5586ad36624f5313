"""One transaction on one record: what it adds, the recordings that come and go with it, and the index."""

from __future__ import annotations

import contextlib
import secrets
from collections.abc import Iterator, Sequence
from pathlib import Path

from sqlalchemy import Connection, select

from dictate.errors import InputError, RecordError
from dictate.model import Examination
from dictate.records import place, search, signing
from dictate.records.chain import Row, digest, live_sounds
from dictate.records.kept import Keep, Leaf, Sound, Stored
from dictate.records.ledger import Ledger
from dictate.records.tables import revisions

LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"  # no two that look alike
KEY_LENGTH = 6
FILE_BYTES = 16


@contextlib.contextmanager
def changing(ledger: Ledger, key: str, base: int | None) -> Iterator[Change]:
    """Change a record, or with an empty key begin one; all is on the disk when this ends, or nothing is.

    Raises: MovedOn when the record has newer revisions than `base`; RecordError when there is no such record.
    """
    with ledger.write() as db:
        change = Change(ledger, db, key, base)
        yield change
        change.finish()
    # Whatever ends this before the files have their names, the next opening puts right: see place.tidy.
    place.keep_sounds(ledger.folder, change.came)
    place.drop_sounds(ledger.folder, change.went)


class Change:
    """What is done to one record in one transaction."""

    def __init__(self, ledger: Ledger, db: Connection, key: str, base: int | None) -> None:
        self.ledger = ledger
        self.db = db
        self.rows: list[Row] = ledger.rows_of(db, key) if key else []
        self.stored = search.stored(ledger, db, self.rows) if self.rows else None
        if self.stored is not None:
            signing.must_be_newest(self.stored, base)
        self.key = key or _new_key(db)
        self.came: dict[str, str] = {}  # recordings of this transaction: name → keyed digest
        self.went: set[str] = set()
        self._waiting: dict[str, str] = {}  # those that the next revision will name

    @property
    def one(self) -> Stored:
        """The record as it stood before. Raises: RecordError when it is new."""
        if self.stored is None:
            raise RecordError("a record that was never saved cannot be changed: save it first")
        return self.stored

    @property
    def sounds(self) -> tuple[Sound, ...]:
        """Recordings of the record so far."""
        return () if self.stored is None else self.stored.sounds

    @property
    def result(self) -> Stored:
        """The record as it stands afterwards."""
        return self.one

    def add(self, action: str, who: str, leaf: Leaf, went: Sequence[str] = ()) -> None:
        """Append one revision."""
        came = tuple(self._waiting.items())
        row = self.ledger.append(
            self.db, record=self.key, action=action, who=who, leaf=leaf, came=came, went=sorted(went)
        )
        self._waiting.clear()
        self.rows.append(row)

    def take_sounds(self, exam: Examination | None, audio: Sequence[Path], keep: Keep) -> tuple[Sound, ...]:
        """Write the recordings that are not kept yet; the next revision names them.

        Raises: InputError for a recording that is none of the examination's sources.
        """
        known = {sound.sha256 for sound in self.sounds}
        sources = set() if exam is None else {source.sha256 for source in exam.transcript.sources}
        taken = []
        for path in audio:
            sha256, content = place.read_recording(path)
            if sha256 not in sources:
                raise InputError(f"{path}: is none of the recordings that the examination was dictated in: name those")
            if sha256 in known:
                continue
            known.add(sha256)
            name = secrets.token_hex(FILE_BYTES)
            locked = self.ledger.keys.lock(content)
            seal = sound_digest(self.ledger.keys.seal, name, locked)
            self.came[name] = self._waiting[name] = seal
            place.write_sound(self.ledger.folder, name, locked)
            taken.append(Sound(sha256=sha256, file=name, keep=keep))
        return tuple(taken)

    def drop(self, sounds: Sequence[Sound], who: str, why: str) -> None:
        """Erase recordings, if there are any, with a revision that says so."""
        if sounds:
            names = [sound.file for sound in sounds]
            self.add("erase-sound", who, Leaf(why=why), went=names)
            self.went.update(names)

    def forget(self, who: str, why: str) -> None:
        """Erase all content and all recordings; one revision that says so is left."""
        before = list(self.rows)
        names = tuple(live_sounds(before))
        self.add("erase", who, Leaf(why=why), went=names)
        self.ledger.forget(self.db, before)
        self.went.update(names)

    def finish(self) -> None:
        """Fold the new revisions into the record and its lines of the index."""
        self.stored = search.stored(self.ledger, self.db, self.rows)
        search.index(self.ledger, self.db, self.stored, self.rows)


def sound_digest(key: bytes, name: str, content: bytes) -> str:
    """Keyed digest of a kept recording, bound to its name."""
    return digest(key, b"sound", name.encode(), content)


def _new_key(db: Connection) -> str:
    """Short, spoken easily, and free."""
    while True:
        key = "".join(secrets.choice(LETTERS) for _ in range(KEY_LENGTH))
        if db.execute(select(revisions.c.seq).where(revisions.c.record == key).limit(1)).first() is None:
            return key
