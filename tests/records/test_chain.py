"""The seal over a row, and what breaks a chain."""

from __future__ import annotations

import hashlib
import hmac

from dictate.records.chain import COLUMNS, Row, breaks, digest, is_sealed, live_sounds, number, seal_of, state_of

KEY = bytes(range(32))


def row(seq: int, record: str, revision: int, action: str, previous: str = "", sounds: str = "") -> Row:
    """A sealed row."""
    values = (seq, record, revision, action, "2026-03-04T14:00:00", "A", 1, "c" * 64, sounds, previous)
    cells = tuple(str(value).encode() for value in values)
    return Row(cells, seal_of(KEY, cells).encode())


def three() -> list[Row]:
    """A whole chain."""
    rows = [row(1, "a", 1, "save")]
    rows.append(row(2, "b", 1, "save", rows[0].seal.decode()))
    rows.append(row(3, "a", 2, "sign", rows[1].seal.decode()))
    return rows


def test_the_digest_is_the_published_one() -> None:
    """HMAC-SHA256 of a known text. Source: RFC 4231, test case 2, here reckoned without the lengths."""
    made = hmac.new(b"Jefe", b"what do ya want for nothing?", hashlib.sha256).hexdigest()
    assert made == "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843"
    parts = (2).to_bytes(8, "big") + b"ab" + (1).to_bytes(8, "big") + b"c"
    assert digest(b"Jefe", b"ab", b"c") == hmac.new(b"Jefe", parts, hashlib.sha256).hexdigest()


def test_parts_lend_each_other_nothing() -> None:
    """A letter that changes from one column to the next changes the digest."""
    assert digest(KEY, b"ab", b"c") != digest(KEY, b"a", b"bc")
    assert digest(KEY, b"ab") != digest(KEY, b"ab", b"")


def test_a_whole_chain_has_no_fault() -> None:
    """Nothing is named."""
    assert list(breaks(KEY, three())) == []


def test_every_change_of_every_byte_breaks_the_seal() -> None:
    """All 255 other values of every byte of every column, and of the seal itself."""
    whole = three()[2]
    for column, cell in enumerate(whole.cells):
        for at in range(len(cell)):
            for value in range(256):
                if value != cell[at]:
                    other = cell[:at] + bytes([value]) + cell[at + 1 :]
                    cells = (*whole.cells[:column], other, *whole.cells[column + 1 :])
                    assert not is_sealed(KEY, Row(cells, whole.seal)), (COLUMNS[column], at, value)
    for at in range(len(whole.seal)):
        for value in set(range(256)) - {whole.seal[at]}:
            assert not is_sealed(KEY, Row(whole.cells, whole.seal[:at] + bytes([value]) + whole.seal[at + 1 :]))


def test_breaks_are_named() -> None:
    """Missing, reordered, and out of its record's order."""
    first, second, third = three()
    assert ("entry 2", "missing") in list(breaks(KEY, [first, third]))
    assert ("entries 1 to 2", "missing") in list(breaks(KEY, [third]))
    assert ("entry 3 (record a, revision 2)", "comes after revision 0 of its record") in list(breaks(KEY, [third]))
    said = dict(breaks(KEY, [first, third, second]))
    assert said["entry 3 (record a, revision 2)"] == "follows entry 2 (record b, revision 1): reordered"


def test_state_follows_the_actions() -> None:
    """Moving and erasing sounds change no state."""
    actions = ["save", "save", "sign", "move", "amend", "erase-sound", "withdraw", "erase"]
    states = [state_of([row(1, "a", 1, one) for one in actions[: at + 1]]) for at in range(len(actions))]
    assert states == ["draft", "draft", "signed", "signed", "amended", "amended", "withdrawn", "erased"]


def test_sounds_come_and_go() -> None:
    """What is live is what came and did not go."""
    rows = [row(1, "a", 1, "save", sounds="x=11 y=22"), row(2, "a", 2, "erase-sound", sounds="-x")]
    assert live_sounds(rows) == {"y": "22"}
    assert (rows[1].came, rows[1].went) == ({}, {"x"})


def test_a_number_that_is_none() -> None:
    """Changed bytes need not be digits."""
    assert [number(text) for text in ("12", "x", "-1", "²", "")] == [12, -1, -1, -1, -1]
