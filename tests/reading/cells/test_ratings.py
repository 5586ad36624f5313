"""reading.ratings: what is rated in one place is what is rated in the next."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Rigidity: neck 1, right arm 2, left leg 0.",
            ["tone neck abnormal rigidity 1", "tone right arm abnormal rigidity 2", "tone left leg normal"],
        ),
        (
            "Rest tremor: right hand 2, left hand 1, jaw 0.",
            ["tremor right hand present rest 2", "tremor left hand present rest 1", "tremor jaw absent rest"],
        ),
        ("Tremor of the right hand, none on the left.", ["tremor right hand present", "tremor left hand absent"]),
    ],
)
def test_the_sign_and_its_kind_are_those_of_the_reading_before(rows: Rows, text: str, wanted: list[str]) -> None:
    """And without a kind nothing more is said."""
    assert rows(text) == wanted


def test_a_number_of_a_list_rates_nothing(rows: Rows) -> None:
    """What follows it is numbered."""
    assert rows("1. Tremor absent 2. Rigidity none 3. Bradykinesia mild")[:2] == ["tremor absent", "tone normal"]
