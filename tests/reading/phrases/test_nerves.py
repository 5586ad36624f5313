"""Numbers of cranial nerves as titles, ranges and lists."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("VII: no weakness.", ["facial_strength normal"]),
        ("XII: normal.", ["tongue normal"]),
        ("I: not tested.", ["smell not_examined"]),
        ("III, IV, VI: no nystagmus.", ["nystagmus absent"]),
        ("Hearing normal. IX, X: normal.", ["hearing normal", "palate normal"]),
    ],
)
def test_a_number_with_a_colon_is_the_title(rows: Rows, text: str, wanted: list[str]) -> None:
    """What follows is of that nerve, and never of what was named before."""
    assert rows(text) == wanted


def test_a_range_is_a_blanket_and_a_list_is_not(rows: Rows) -> None:
    """ "V and VII" are not all of them."""
    assert rows("CN II-XII intact.") == ["cranial_nerves_2_12 normal"]
    assert rows("Cranial nerves V and VII normal.") == ["facial_sensation normal", "facial_strength normal"]


def test_a_murmur_keeps_its_grade(rows: Rows) -> None:
    """The same letters are a grade elsewhere."""
    assert rows("Murmur II/VI.") == ["murmur present 2/6"]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("IX to XII normal.", ["cranial_nerves_9_12 normal"]),
        ("CN: II-XII NAD.", ["cranial_nerves_2_12 normal"]),
        ("Face symmetric. IX–XII intact.", ["facial_strength normal", "cranial_nerves_9_12 normal"]),
        ("VII: no weakness.", ["facial_strength normal"]),
    ],
)
def test_a_range_of_roman_numbers_needs_no_name(rows, text, wanted):
    """Where a phrase begins. Common practice, no source."""
    assert rows(text) == wanted
