"""A statement → cells: each value with the side, site and words that go with it."""

from __future__ import annotations

import pytest

from dictate.model import Side

L, R, B = Side.LEFT, Side.RIGHT, Side.BOTH


def said(cells):
    return [(cell.side, [node.text for node in cell.values]) for cell in cells]


@pytest.mark.parametrize(
    ("phrase", "expected"),
    [
        ("left deltoid four", [(L, ["four"])]),
        ("deltoid four on the left", [(L, ["four"])]),
        ("knee jerk two plus on the right, three plus on the left", [(R, ["two plus"]), (L, ["three plus"])]),
        ("knee jerk right two plus, left three plus", [(R, ["two plus"]), (L, ["three plus"])]),
        ("right knee jerk two plus, left three plus", [(R, ["two plus"]), (L, ["three plus"])]),
        ("plantars flexor right, extensor left", [(R, ["flexor"]), (L, ["extensor"])]),
        ("knee jerk two plus right and left", [(B, ["two plus"])]),
        ("knee jerk two plus bilaterally", [(B, ["two plus"])]),
        ("knee jerk two plus", [(None, ["two plus"])]),
        ("finger to nose normal on the right, dysmetria on the left", [(R, ["normal"]), (L, ["dysmetria"])]),
        ("finger to nose slow and irregular on the left", [(L, ["slow", "irregular"])]),
    ],
)
def test_each_value_has_its_own_side(cells, phrase, expected):
    """Before or after the value, said once or for each."""
    assert said(cells(phrase)) == expected


@pytest.mark.parametrize(
    ("phrase", "sites"),
    [
        ("pinprick reduced in the left foot", ["foot"]),
        ("vibration six seconds at the right great toe, four seconds at the left great toe", ["great toe"] * 2),
        ("pinprick reduced in the hands and in the feet", ["hands", "feet"]),
        ("pinprick reduced", [None]),
    ],
)
def test_each_value_has_its_own_site(cells, phrase, sites):
    """Where it was found, when it was said."""
    assert [cell.site_node and cell.site_node.text for cell in cells(phrase)] == sites


def test_a_unit_goes_to_its_number(cells):
    """Each number its own."""
    (cell,) = cells("vibration six seconds at the right great toe")
    (number,) = cell.values
    assert cell.units[id(number)].text == "seconds"


@pytest.mark.parametrize(
    ("phrase", "hedged", "negated"),
    [
        ("possible nystagmus", True, False),
        ("no nystagmus", False, True),
        ("nystagmus", False, False),
        ("nystagmus, I think", True, False),
    ],
)
def test_doubt_and_denial_are_kept(cells, phrase, hedged, negated):
    """Neither is taken for the other."""
    (cell,) = cells(phrase)
    assert (cell.hedged, cell.negated) == (hedged, negated)


@pytest.mark.parametrize(
    ("phrase", "words"),
    [("mild ptosis", ["mild"]), ("ptosis, mild", ["mild"]), ("nystagmus on left gaze", ["on left gaze"])],
)
def test_degree_and_direction_are_kept(cells, phrase, words):
    """Before or after the name."""
    (cell,) = cells(phrase)
    assert [node.text for node in cell.modifiers] == words


def test_a_reason_is_kept_whole(cells):
    """As said, to the end of the clause."""
    (cell,) = cells("gait not tested because of a painful hip")
    assert cell.detail == ["because of a painful hip"]


def test_a_delay_of_recall_is_detail(cells):
    """It is no time of standing."""
    (cell,) = cells("recall two of three at five minutes")
    assert cell.detail == ["after five minutes"]


def test_unknown_words_add_nothing(cells):
    """A word without meaning is no value, no side and no detail."""
    (cell,) = cells("gait normal zebra")
    assert said([cell]) == [(None, ["normal"])]
    assert cell.detail == []


def test_a_number_behind_a_semicolon_that_cannot_be_its_own_is_left(rows, remarks):
    """ "Two plus" counts no beats: the left is not told, and stays in view."""
    phrase = "Knee on the right four plus with ten beats of clonus at the right ankle; left two plus, no, two."
    assert rows(phrase) == ["reflex_patellar right measured 4+", "clonus right ankle present 10 beats"]
    assert remarks(phrase) == ["not-placed: left two plus, no, two."]


def test_the_place_in_a_name_is_of_both_sides(rows):
    """ "Ankle clonus: right sustained, left 4 beats"."""
    said = rows("Ankle clonus: Rt sustained, Lt 4 beats. Knee clonus R 2 beats, L none.")
    assert said == [
        "clonus right ankle present sustained",
        "clonus left ankle present 4 beats",
        "clonus right knee present 2 beats",
        "clonus left knee absent",
    ]
