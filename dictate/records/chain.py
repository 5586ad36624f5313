"""Revisions in a chain: a seal over all columns of a row and the seal of the row before; what breaks it is named."""

from __future__ import annotations

import hashlib
import hmac
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

FORM = 1  # of the seal: over the columns below, in this order
COLUMNS = ("seq", "record", "revision", "action", "at", "who", "form", "content", "sounds", "previous")
DRAFT, SIGNED, AMENDED, WITHDRAWN, ERASED = "draft", "signed", "amended", "withdrawn", "erased"
STATES = {"save": DRAFT, "sign": SIGNED, "amend": AMENDED, "withdraw": WITHDRAWN, "erase": ERASED}  # action → state


@dataclass(frozen=True)
class Row:
    """One revision as it lies in the database: bytes, for a changed one need not be text."""

    cells: tuple[bytes, ...]
    seal: bytes

    def __getitem__(self, column: str) -> str:
        return self.cells[COLUMNS.index(column)].decode(errors="replace")

    @property
    def seq(self) -> int:
        """Place in the whole chain; -1: no number any more."""
        return number(self["seq"])

    @property
    def revision(self) -> int:
        """Place in its record; -1: no number any more."""
        return number(self["revision"])

    @property
    def came(self) -> dict[str, str]:
        """Recordings that came with it: name of the file → keyed digest."""
        pairs = (part.partition("=")[::2] for part in self["sounds"].split() if "=" in part)
        return {name: told for name, told in pairs if _is_name(name)}

    @property
    def went(self) -> set[str]:
        """Recordings that were erased by it."""
        return {part[1:] for part in self["sounds"].split() if part.startswith("-") and _is_name(part[1:])}


def _is_name(text: str) -> bool:
    """Whether it is a name this program gives: a changed one must not lead to a file elsewhere."""
    return text.isascii() and text.isalnum()


def number(text: str) -> int:
    """A count as it should be; -1 when it is none."""
    return int(text) if text.isascii() and text.isdigit() else -1


def digest(key: bytes, *parts: bytes) -> str:
    """HMAC-SHA256 over the parts, each with its length, so that none can lend its end to the next.

    Source: RFC 2104 (HMAC), FIPS 180-4 (SHA-256).
    """
    made = hmac.new(key, digestmod=hashlib.sha256)
    for part in parts:
        made.update(len(part).to_bytes(8, "big") + part)
    return made.hexdigest()


def seal_of(key: bytes, cells: Sequence[bytes]) -> str:
    """The seal of a row."""
    return digest(key, b"revision", *cells)


def is_sealed(key: bytes, row: Row) -> bool:
    """Whether every column is as it was written."""
    return number(row["form"]) == FORM and hmac.compare_digest(seal_of(key, row.cells).encode(), row.seal)


def is_content(key: bytes, row: Row, salt: bytes, body: bytes) -> bool:
    """Whether the content is the one that the row was written with."""
    return hmac.compare_digest(content_digest(key, salt, body).encode(), row["content"].encode())


def content_digest(key: bytes, salt: bytes, body: bytes) -> str:
    """Salted, so that a digest left behind by an erasure cannot be tried against guesses."""
    return digest(key, b"content", salt, body)


def state_of(rows: Iterable[Row]) -> str:
    """State of a record after all its revisions."""
    state = DRAFT
    for row in rows:
        state = STATES.get(row["action"], state)
    return state


def erased_from(rows: Iterable[Row]) -> dict[str, int]:
    """Record → place in the chain of its (last) erasure."""
    return {row["record"]: row.seq for row in rows if row["action"] == "erase"}


def live_sounds(rows: Iterable[Row]) -> dict[str, str]:
    """Recordings that must be there: name of the file → keyed digest."""
    live: dict[str, str] = {}
    for row in rows:
        live |= row.came
        for name in row.went:
            live.pop(name, None)
    return live


def breaks(key: bytes, rows: Sequence[Row]) -> Iterator[tuple[str, str]]:
    """Where the chain is broken, and how; rows in the order of `seq`."""
    seals = {row.seal: row for row in rows}
    last_of: dict[str, int] = {}
    expected = 1
    before: Row | None = None
    for row in rows:
        if row.seq > expected:
            yield _span(expected, row.seq - 1), "missing"
        where = name_of(row)
        if not is_sealed(key, row):
            yield where, "changed"
        said = row["previous"].encode()
        if said != (before.seal if before else b""):
            moved = seals.get(said)
            named = f"follows {name_of(moved)}: reordered" if moved else "follows a revision that is missing or changed"
            yield where, named
        if row.revision != last_of.get(row["record"], 0) + 1:
            yield where, f"comes after revision {last_of.get(row['record'], 0)} of its record"
        last_of[row["record"]] = row.revision
        expected, before = row.seq + 1, row


def name_of(row: Row) -> str:
    """How messages name a revision."""
    return f"entry {row.seq} (record {row['record']}, revision {row.revision})"


def _span(first: int, last: int) -> str:
    return f"entry {first}" if first == last else f"entries {first} to {last}"
