"""The stroke scale said in numbers."""

from __future__ import annotations

import pytest

from dictate.grammar.sums import STROKE

POINTS = (0, 1, 0, 1, 0, 2, 0, 3, 0, 2, 0, 1, 1, 1, 0)
WANTED = [f"{item} measured {points}" for item, points in zip(STROKE.parts, POINTS, strict=True)]


@pytest.mark.parametrize(
    "text",
    [
        "NIHSS 0 1 0 1 0 2 0 3 0 2 0 1 1 1 0.",
        "NIH stroke scale: 0, 1, 0, 1, 0, 2, 0, 3, 0, 2, 0, 1, 1, 1, 0.",
        "NIHSS zero one zero one zero two zero three zero two zero one one one zero.",
        "NIHSS: 1a 0, 1b 1, 1c 0, 2 1, 3 0, 4 2, 5a 0, 5b 3, 6a 0, 6b 2, 7 0, 8 1, 9 1, 10 1, 11 0.",
        "NIHSS 1a 0 1b 1 1c 0 2 1 3 0 4 2 5a 0 5b 3 6a 0 6b 2 7 0 8 1 9 1 10 1 11 0.",
    ],
)
def test_fifteen_points_go_to_their_items(rows, text):
    """In the order of the form, or by item number. Source: NINDS form (public domain)."""
    assert rows(text) == WANTED


def test_a_total_stands_behind_the_points(rows):
    """It is no sixteenth point."""
    assert rows("NIHSS 0 1 0 1 0 2 0 3 0 2 0 1 1 1 0, total 12.") == [*WANTED, "nihss_total measured 12"]


@pytest.mark.parametrize("text", ["NIHSS 0 1 0 1 0 2 0 3 0 2 0 1 1 1.", "NIHSS 0 1 0 9 0 2 0 3 0 2 0 1 1 1 0."])
def test_what_does_not_fit_the_form_is_not_dealt_out(rows, text):
    """Fourteen numbers, or nine points for gaze: no item gets any of them."""
    assert all(one.startswith("nihss_total ") for one in rows(text))


@pytest.mark.parametrize("text", ["NIHSS 12.", "NIHSS 1c 1."])
def test_one_number_stays_what_it_was(rows, text):
    """A total, or one item."""
    assert len(rows(text)) == 1


FORM = """NIHSS
1a LOC 0 | 1b questions 1 | 1c commands 0
2 gaze 1 | 3 visual 0 | 4 face 2
5a L arm 0 | 5b R arm 3 | 6a L leg 0 | 6b R leg 2
7 ataxia 0 | 8 sensory 1 | 9 language 1 | 10 dysarthria 1 | 11 neglect 0
"""


@pytest.mark.parametrize(
    "text",
    [
        FORM,
        FORM.replace(" | ", ", "),
        FORM.replace(" | ", "\n"),
        FORM.replace(" | ", "\n").replace("L arm", "motor arm left").replace("gaze", "best gaze (horizontal):"),
        "NIHSS: 1a. LOC: 0; 1b. LOC questions: 1; 1c. LOC commands: 0; 2. Best gaze: 1; 3. Visual fields: 0; "
        "4. Facial palsy: 2; 5a. Left arm: 0; 5b. Right arm: 3; 6a. Left leg: 0; 6b. Right leg: 2; 7. Limb ataxia: 0; "
        "8. Sensory: 1; 9. Best language: 1; 10. Dysarthria: 1; 11. Extinction and inattention: 0.",
        "NIHSS (LOC 0, LOCQ 1, LOCC 0, gaze 1, VF 0, face 2, LUE 0, RUE 3, LLE 0, RLE 2, ataxia 0, sens 1, lang 1, "
        "dysarth 1, neglect 0)",
    ],
)
def test_the_form_filled_in_names_its_items(rows, text):
    """Number, words and points of each item, however they are set apart. Source: NINDS form (public domain)."""
    assert rows(text) == WANTED


def test_an_untestable_item_of_the_form(rows):
    """UN stands for points that could not be given. Source: NINDS form (public domain)."""
    said = rows("NIHSS\n5a. Left arm: 0\n5b. Right arm: UN\n6a. Left leg: 0\n6b. Right leg: 2")
    assert said == [
        "nihss_arm_left measured 0",
        "nihss_arm_right not_assessable UN",
        "nihss_leg_left measured 0",
        "nihss_leg_right measured 2",
    ]


def test_three_numbered_lines_are_no_form(rows):
    """Numbers in front of three lines may number anything."""
    assert not any("nihss" in one for one in rows("2 beats of clonus 1\n3 fields full\n4 face 2"))
