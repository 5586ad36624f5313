"""How long a title is in force on typed lines. No source: how limbs and eyes are typed, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]

ARM = ("Left arm", "Tone increased", "Power 4", "tone left upper_limb abnormal increased")
EYE = ("Left eye", "Acuity 6/12", "Disc pale", "visual_acuity left measured 6/12")


@pytest.mark.parametrize(("title", "one", "two", "first"), [ARM, EYE])
def test_a_title_in_front_of_its_findings_ends_with_its_line(
    rows: Rows, title: str, one: str, two: str, first: str
) -> None:
    """A title alone on its line holds for the lines below it."""
    other = title.replace("Left", "Right")  # nobody says where the last one ends
    alone = rows(f"{title}\n{one}\n{two}\n{other}\n{one}\n")
    in_front = rows(f"{title}. {one}.\n{two}\n{other}. {one}.\n")
    assert alone[0] == in_front[0] == first
    assert "left" in alone[1]
    assert "left" not in in_front[1]
