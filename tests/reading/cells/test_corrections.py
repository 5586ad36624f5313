"""Spoken corrections: only what stands at the end counts; what it replaced stays in view."""

from __future__ import annotations

import pytest

from dictate.model import Side
from dictate.reading.cells.corrections import amend, of_last
from dictate.reading.marks import Mark, Number, Role
from dictate.reading.nodes import Node
from dictate.reading.statements.drafts import Cell


def value(text, start=0):
    return Node(Mark(start, start + 1, (Role("value"),), text=text), "value")


def cell(text="", side=None, start=0):
    nodes = [value(text, start)] if text else []
    return Cell(side=side, values=list(nodes), nodes=nodes or [value("side", start)])


def said(cells):
    return [(one.side, [node.text for node in one.values]) for one in cells]


def test_a_new_value_takes_the_place_of_the_last():
    """The words it replaced are kept."""
    (changed,) = amend([cell("four", Side.LEFT)], [cell("five")], "correction")
    assert said([changed]) == [(Side.LEFT, ["five"])]
    assert changed.corrected == ["four"]


def test_a_new_side_keeps_the_value():
    """ "Left, I mean right"."""
    assert said(amend([cell("four", Side.LEFT)], [cell(side=Side.RIGHT)], "correction")) == [(Side.RIGHT, ["four"])]


def test_a_value_with_its_side_corrects_that_side():
    """The other side stays as it was said."""
    cells = [cell("two", Side.RIGHT), cell("three", Side.LEFT)]
    changed = amend(cells, [cell("four", Side.RIGHT)], "correction")
    assert said(changed) == [(Side.RIGHT, ["four"]), (Side.LEFT, ["three"])]


def test_striking_without_new_words_leaves_nothing():
    """ "Strike that"."""
    assert amend([cell("four", Side.LEFT)], [Cell()], "strike") == []


def test_the_other_way_round_changes_the_values_over():
    """Sides stay where they are."""
    changed = amend([cell("two", Side.RIGHT), cell("three", Side.LEFT)], [Cell()], "swap")
    assert said(changed) == [(Side.RIGHT, ["three"]), (Side.LEFT, ["two"])]
    assert all(one.corrected for one in changed)


def test_a_correction_of_nothing_is_a_statement():
    """Nothing was said before."""
    assert said(amend([], [cell("four")], "correction")) == [(None, ["four"])]


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("Left deltoid four, correction, four minus.", ["strength_deltoid left measured 4-"]),
        ("Left deltoid four, correction, left deltoid four minus.", ["strength_deltoid left measured 4-"]),
        ("Left deltoid four. Correction, four minus.", ["strength_deltoid left measured 4-"]),
        ("Left deltoid four, I mean right.", ["strength_deltoid right measured 4"]),
        ("Left deltoid four. No, make that right.", ["strength_deltoid right measured 4"]),
        ("Plantar response extensor on the right, no, make that left.", ["plantar_response left abnormal extensor"]),
        ("Tongue deviates to the right, I mean to the left.", ["tongue left abnormal deviates"]),
        ("Tremor of the right hand, no, the left hand.", ["tremor left hand present"]),
        ("Right knee jerk two plus, no, three plus.", ["reflex_patellar right measured 3+"]),
        ("Blood pressure 140/80, sorry, 130/80.", ["blood_pressure measured 130/80"]),
        ("Romberg positive, correction, negative.", ["romberg normal"]),
        ("Gait normal, sorry, wide based.", ["gait abnormal wide based"]),
        ("Gait normal. Correction, gait wide based.", ["gait abnormal wide based"]),
        (
            "Pupils three millimetres, I mean four millimetres, on both sides.",
            ["pupil_size both measured 4"],
        ),
        (
            "Knee jerk two plus on the right, two plus on the left, correction, three plus on the left.",
            ["reflex_patellar right measured 2+", "reflex_patellar left measured 3+"],
        ),
        (
            "Knee jerk two plus right, three plus left. Correction, four plus left.",
            ["reflex_patellar right measured 2+", "reflex_patellar left measured 4+"],
        ),
        (
            "Knee jerk two plus on the right, three plus on the left, the other way round.",
            ["reflex_patellar right measured 3+", "reflex_patellar left measured 2+"],
        ),
        ("Motor. Left triceps four plus, strike that, left triceps three.", ["strength_triceps left measured 3"]),
        ("Left deltoid four, strike that.", []),
        ("Left deltoid four. Strike that.", []),
        ("Left deltoid four. Gait normal. Strike that.", ["strength_deltoid left measured 4"]),
        ("Right knee jerk two plus. Scratch that. Right knee jerk three plus.", ["reflex_patellar right measured 3+"]),
    ],
)
def test_only_the_last_word_counts(rows, phrase, findings):
    """In the same breath or the next sentence; value, side, or all of it."""
    assert rows(phrase) == findings


@pytest.mark.parametrize(
    ("phrase", "words"),
    [
        ("Left deltoid four, correction, four minus.", "left deltoid four"),
        ("Gait normal, sorry, wide based.", "gait normal"),
        ("Tremor of the right hand, no, the left hand.", "right"),
    ],
)
def test_the_replaced_words_stay_with_the_finding(reading, phrase, words):
    """What was said first can still be seen."""
    (finding,) = reading(phrase).findings
    assert words in " ".join(finding.corrected)


@pytest.mark.parametrize(
    ("phrase", "remark"),
    [
        ("Left deltoid four, strike that.", "corrected: Left deltoid four, strike that."),
        ("Left deltoid four. Strike that.", "corrected: Left deltoid four."),
        ("Gait normal. Correction, gait wide based.", "corrected: Gait normal."),
    ],
)
def test_struck_words_become_a_remark(remarks, phrase, remark):
    """Nothing said is lost."""
    assert remarks(phrase) == [remark]


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Deltoid five both sides, correction, four plus on the left.",
            ["strength_deltoid right measured 5", "strength_deltoid left measured 4+"],
        ),
        (
            "Shoulder abduction, five both sides; correction, left shoulder abduction four plus.",
            ["strength_deltoid right measured 5", "strength_deltoid left measured 4+"],
        ),
        ("Knee jerks three plus both sides, I mean left.", ["reflex_patellar left measured 3+"]),
        (
            "Knee jerks three plus both sides, correction, two plus right, three plus left.",
            ["reflex_patellar left measured 3+", "reflex_patellar right measured 2+"],
        ),
    ],
)
def test_a_value_of_one_side_corrects_that_side_only(rows, phrase, findings):
    """What was said of both still stands for the other one; a side alone corrects the side."""
    assert rows(phrase) == findings


def test_a_correction_behind_a_number_without_a_name_is_of_that_number():
    """ "118, no, 128 over 78" says nothing of the statement before; "no, three" does."""
    number = Node(Mark(0, 1, (), text="118", number=Number(118)), "number")
    no = Node(Mark(1, 2, (), text="no"), "correction")
    assert of_last([no, number]) == "correction"
    assert of_last([number, no, number]) == ""
    assert of_last([number]) == ""
