"""Revisions folded into one state and one note."""

from __future__ import annotations

from records.test_chain import row
from records.visits import visit

from dictate.model import Around
from dictate.records.chain import COLUMNS, Row
from dictate.records.kept import Leaf, Sound
from dictate.records.standing import needed, stand

SOUND = Sound(sha256="0" * 64, file="feed", keep="always")


def test_only_what_counts_is_read() -> None:
    """From the last whole examination on; of an erased record its erasure alone."""
    rows = [row(at, "a", at, action) for at, action in enumerate(["save", "save", "sign", "amend", "move"], 1)]
    assert [one["action"] for one in needed(rows)] == ["sign", "amend", "move"]
    assert [one["action"] for one in needed([*rows, row(6, "a", 6, "erase")])] == ["erase"]


def test_a_moved_draft_has_its_new_reference() -> None:
    """The last one counts."""
    rows = [row(1, "a", 1, "save"), row(2, "a", 2, "move"), row(3, "a", 3, "move")]
    leaves = [Leaf(why="x", exam=visit("P-1")), Leaf(why="x", patient="P-2"), Leaf(why="x", patient="P-3")]
    one = stand(rows, leaves)
    assert (one.exam.patient, one.state, one.note) == ("P-3", "draft", "")


def test_sounds_that_went_are_gone() -> None:
    """An erasure of sound takes them out of the record."""
    rows = [row(1, "a", 1, "save"), row(2, "a", 2, "erase-sound", sounds="-feed")]
    leaves = [Leaf(why="x", exam=visit(), sounds=(SOUND,)), Leaf(why="x")]
    assert stand(rows[:1], leaves[:1]).sounds == (SOUND,)
    assert stand(rows, leaves).sounds == ()


def test_the_note_is_stored_text_with_what_was_added() -> None:
    """Banners first; every part with the head it was sealed with; reasons stay on their line."""
    rows = [row(at, "a", at, action) for at, action in enumerate(["sign", "amend", "withdraw"], 1)]
    leaves = [
        Leaf(why="signed", exam=visit(), text="Signed by A\n"),
        Leaf(why="two\nlines", text="a\n\nb"),
        Leaf(why="w"),
    ]
    heads = [one.seal.decode() for one in rows]
    assert stand(rows, leaves).note == (
        "WITHDRAWN 2026-03-04 14:00 by A: entered in error. Reason: w\n\n"
        f"Signed by A\nRecord a, revision 1, head {heads[0]}\n\n"
        f"ADDENDUM 2026-03-04 14:00 by A. Reason: two lines\n  a\n\n  b\nRecord a, revision 2, head {heads[1]}\n\n"
        f"Record a, revision 3, head {heads[2]}\n"
    )


def test_what_stands_around_the_signed_text_is_told_apart() -> None:
    """For pages and documents, which lay out the note anew; a draft has nothing around it."""
    rows = [row(at, "a", at, action) for at, action in enumerate(["sign", "amend", "withdraw"], 1)]
    leaves = [Leaf(why="signed", exam=visit(), text="Signed by A"), Leaf(why="w", text="a"), Leaf(why="w")]
    around = stand(rows, leaves).around
    assert around.banners == ("WITHDRAWN 2026-03-04 14:00 by A: entered in error. Reason: w",)
    assert around.foot == f"Record a, revision 1, head {rows[0].seal.decode()}"
    assert [one.splitlines()[:2] for one in around.additions] == [["ADDENDUM 2026-03-04 14:00 by A. Reason: w", "  a"]]
    assert stand([row(1, "a", 1, "save")], [Leaf(why="w", exam=visit())]).around == Around()


def test_a_time_before_what_it_follows_is_said() -> None:
    """An addendum of a machine whose clock went back does not look older than the note."""
    rows = [row(at, "a", at, action) for at, action in enumerate(["sign", "amend", "amend"], 1)]
    place = COLUMNS.index("at")
    cells = tuple(b"2025-03-04T14:00:00+00:00" if at == place else cell for at, cell in enumerate(rows[1].cells))
    rows[1] = Row(cells, rows[1].seal)
    leaves = [Leaf(why="signed", exam=visit(), text="Signed"), Leaf(why="w", text="first"), Leaf(why="w", text="then")]
    added = [line for line in stand(rows, leaves).note.splitlines() if line.startswith("ADDENDUM")]
    assert added == [
        "ADDENDUM 2025-03-04 14:00+00:00 by A. Reason: w (dated earlier than what it follows: the machine's clock "
        "had been turned back)",
        "ADDENDUM 2026-03-04 14:00 by A. Reason: w",
    ]
