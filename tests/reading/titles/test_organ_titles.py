"""An eye or ear as the title of the sentences behind it. No source: how eyes are dictated one by one, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize("colon", [".", ":"])
def test_all_up_to_the_next_title_is_of_the_eye(rows: Rows, colon: str) -> None:
    """Whether a full stop or a colon stands behind it."""
    said = f"Left eye{colon} Acuity 6/12. Pupil 3 mm. Disc pale. Right eye{colon} Acuity 6/6. Pupil 4 mm. Disc normal."
    assert rows(said) == [
        "visual_acuity left measured 6/12",
        "pupil_size left measured 3",
        "fundi left abnormal discs pale",
        "visual_acuity right measured 6/6",
        "pupil_size right measured 4",
        "disc_margins right normal",
    ]


def test_it_ends_with_what_is_of_no_eye_or_of_both(rows: Rows) -> None:
    """The face has sides of its own, and pupils are two."""
    assert rows("Left eye. Acuity 6/12. Face weak. Pupil 3 mm.")[1:] == [
        "facial_strength abnormal weak",
        "pupil_size measured 3",
    ]
    assert rows("OD: acuity 20/20. Pupils equal. Disc pale.")[1:] == ["anisocoria absent", "fundi abnormal discs pale"]


def test_nobody_says_where_the_last_one_ends(rows: Rows) -> None:
    """What the other eye was not examined for is of neither, unless it follows the title directly."""
    assert rows("Right eye. Acuity 6/6. Left eye. Acuity 6/9. Eye movements full. Acuity 6/5 unaided.")[2:] == [
        "eye_movements normal",
        "visual_acuity left measured 6/5",
    ]


def test_another_side_ends_it(rows: Rows) -> None:
    """What is said behind it is of that other side, or of none."""
    assert rows("Left eye. Acuity 6/9. Right pupil 4 mm. Disc pale.")[1:] == [
        "pupil_size right measured 4",
        "fundi abnormal discs pale",
    ]


def test_behind_a_finding_without_a_side_it_may_be_its_place(rows: Rows) -> None:
    """Of the disc or of the acuity: nobody knows. A plural lacks no side."""
    assert rows("Disc pale. Left eye. Acuity 6/12.")[1] == "visual_acuity measured 6/12"
    assert rows("Fundi normal. Left eye. Acuity 6/12.")[1] == "visual_acuity left measured 6/12"


def test_an_ear_is_one_too(rows: Rows) -> None:
    """With its own tests."""
    assert rows("Right ear. Rinne positive. Left ear. Rinne negative, hearing reduced. Face weak.") == [
        "rinne right normal positive",
        "rinne left abnormal negative",
        "hearing left abnormal reduced",
        "facial_strength abnormal weak",
    ]
