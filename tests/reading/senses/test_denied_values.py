"""A denial in front of names, told of the word behind them. No source: how findings are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Neither the left nor the right pupil reacts.", ["pupil_reaction both abnormal not normal"]),
        ("Neither the right nor the left plantar is extensor.", ["plantar_response both normal"]),
        ("Neither ankle jerk is present.", ["reflex_achilles both measured 0"]),
        ("Neither carotid has a bruit.", ["carotid_bruit absent"]),
        ("None of the reflexes is increased.", ["reflex_all normal"]),
        ("Nowhere is there any wasting.", ["bulk normal"]),
        ("All but the left triceps are full.", ["strength_triceps left abnormal not normal"]),
        ("Everything except tandem is normal.", ["tandem_gait abnormal not normal"]),
    ],
)
def test_the_word_behind_the_names_is_denied(rows: Rows, text: str, wanted: list[str]) -> None:
    """And no name between the denial and it is left with it affirmed."""
    assert rows(text) == wanted


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("The right biceps is not four but three.", ["strength_biceps right measured 3"]),
        ("The left deltoid is four, not five.", ["strength_deltoid left measured 4"]),
        ("Neither deltoid is five.", []),
    ],
)
def test_a_number_that_is_denied_was_not_found(rows: Rows, text: str, wanted: list[str]) -> None:
    assert rows(text) == wanted


@pytest.mark.parametrize("lead", ["I don't think the left leg is", "I doubt the left leg is"])
def test_what_is_only_thought_is_not_certain(rows: Rows, lead: str) -> None:
    """Denied, and doubted."""
    assert rows(f"{lead} weak.") == ["strength_lower_limb left normal ?"]
