"""Whether titles stand in front of their findings. No source: how limbs are dictated one by one, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


LEFT = ["strength_deltoid left measured 4", "strength_biceps left measured 4"]


@pytest.mark.parametrize("title", ["Bride arm. ", "The lift arm. ", ""])
def test_a_list_told_before_shows_that_titles_stand_in_front(rows: Rows, title: str) -> None:
    """Though the first title was misheard or is missing; what stands under that one has no side."""
    said = f"{title}Deltoid 5. Biceps 5. Left arm. Deltoid 4. Biceps 4. Right leg. Hip flexion 3."
    assert rows(said) == [
        "strength_deltoid measured 5",
        "strength_biceps measured 5",
        *LEFT,
        "strength_iliopsoas right measured 3",
    ]


def test_a_single_finding_is_no_list(rows: Rows) -> None:
    """Unless a title that was misheard stands in front of it."""
    assert rows("Heel shin normal. Left leg. Heel shin ataxic.")[1] == "heel_shin abnormal ataxic"
    assert rows("Bride leg. Heel shin normal. Left leg. Heel shin ataxic.")[1] == "heel_shin left abnormal ataxic"


def test_a_limb_behind_each_finding_may_be_its_place(rows: Rows) -> None:
    """Nothing told again stands behind the last of them."""
    said = "Pinprick reduced. Left leg. Pinprick normal. Right leg. Light touch normal."
    assert rows(said) == ["pinprick abnormal reduced", "pinprick normal", "light_touch normal"]


def test_what_cannot_be_of_the_limb_makes_no_doubt(rows: Rows) -> None:
    """Nor does what is said of all, or has a side of its own."""
    for said in ("Cranial nerves normal.", "Tone normal throughout.", "Power 5 in the right arm."):
        assert rows(f"{said} Left arm. Deltoid 4. Biceps 4.")[1:] == LEFT


def test_a_limb_without_its_side_ends_a_title(rows: Rows) -> None:
    """It was another one; the limb is known, the side is asked about."""
    said = "Right leg. Tone normal. Power 5. Lift leg. Tone increased. Power 4."
    assert rows(said)[2:] == ["tone lower_limb abnormal increased", "strength_lower_limb measured 4"]


def test_words_behind_a_side_end_a_title(rows: Rows) -> None:
    """ "Right handi.": of which part of the right, nobody knows."""
    said = "Right foot. Pinprick reduced. Right handi. Light touch reduced. Left hand. Pinprick normal."
    assert rows(said)[1:] == ["light_touch abnormal reduced", "pinprick left hand normal"]
