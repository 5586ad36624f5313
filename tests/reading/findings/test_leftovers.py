"""Every word is accounted for: in evidence, in a remark, or it carries nothing."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.model import RemarkKind
from dictate.reading import transcript_of_text
from dictate.reading.read import read


@pytest.mark.parametrize(
    ("phrase", "remark"),
    [
        ("Gait normal, zebra.", "zebra."),
        ("Zebra gait normal.", "Zebra"),
        ("Gait zebra normal.", "zebra"),
        ("Biceps reflex two plus on the right, three plus on the left, zebra crossing.", "zebra crossing."),
        ("Gait normal. The telephone rang twice.", "telephone rang twice."),
        ("The zebra went to the window.", "zebra went to the window."),
        ("Left.", "Left."),
        ("Fifty one.", "Fifty one."),
    ],
)
def test_what_was_placed_nowhere_stays_in_view(remarks, phrase, remark):
    """One remark a sentence: its words without a place."""
    assert remarks(phrase) == [f"not-placed: {remark}"]


@pytest.mark.parametrize(
    "phrase",
    [
        "Motor.",
        "So, moving on to the motor examination.",
        "Now then, gait normal.",
        "Strike that.",
        "Gait is, um, normal.",
        "Right deltoid five, and left deltoid four.",
        "Power five out of five throughout, except left deltoid four.",
        "Standing at three minutes, blood pressure 118/70, pulse 80.",
        "Knee jerks right then left, two plus, three plus.",
        "Oriented to person, place and time.",
        "Left heel to shin could not be tested because of the cast.",
    ],
)
def test_words_that_carry_nothing_are_no_remark(remarks, phrase):
    """Headings, fillers, links, control phrases, and all that a finding has taken."""
    assert remarks(phrase) == []


@pytest.mark.parametrize("place", range(9))
@pytest.mark.parametrize("joined", [" ", ", "])
def test_an_unknown_word_is_never_lost(reading, place, joined):
    """Wherever it falls into a dictation."""
    words = "Left deltoid four minus, gait wide based, no tremor.".split()
    words.insert(place, "zebra")
    text = " ".join(words) if joined == " " else " ".join(words).replace("zebra", "zebra,")
    read = reading(text)
    pieces = [piece for finding in read.findings for piece in finding.evidence]
    pieces += [remark.evidence for remark in read.remarks]
    assert any(piece.first <= place <= piece.last for piece in pieces)


def test_remarks_come_in_the_order_said(reading):
    """Whatever their kind."""
    kinds = [remark.kind for remark in reading("Zebra. Left deltoid four. Strike that. Plan. Home.").remarks]
    assert kinds == [RemarkKind.NOT_PLACED, RemarkKind.CORRECTED, RemarkKind.PLAN]


def test_an_item_named_and_not_described_stays_in_view(remarks):
    """ "Gait." says nothing of the gait."""
    assert remarks("Visual acuity.") == ["not-placed: Visual acuity."]


def test_a_lost_exception_says_from_what(grammar: Grammar) -> None:
    """Where it was read, or where there was none, nothing is said of it."""
    told = {
        "Cranial nerves intact apart from a left wug.": ("cranial_nerves_all",),
        "Cranial nerves intact apart from reduced hearing on the wug.": (),
        "Cranial nerves intact, left wug.": (),
    }
    for text, readings in told.items():
        remarks = read(transcript_of_text(text), grammar).remarks
        assert [one.readings for one in remarks if one.kind is RemarkKind.NOT_PLACED] == [readings], text
