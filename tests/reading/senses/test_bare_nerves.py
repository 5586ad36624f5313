"""Numbers that name cranial nerves."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Seven normal.", ["facial_strength normal"]),
        ("The twelfth was normal.", ["tongue normal"]),
        ("Five and seven normal on both sides.", ["facial_sensation both normal", "facial_strength both normal"]),
        (
            "V VII normal, VIII not tested.",
            ["facial_sensation normal", "facial_strength normal", "hearing not_examined"],
        ),
        ("Eight: normal. Nine and ten: not tested.", ["hearing normal", "palate not_examined"]),
        ("III, IV and VI full, XI ok.", ["eye_movements normal", "trapezius normal"]),
        (
            "Seven: normal on the right, weak on the left.",
            ["facial_strength right normal", "facial_strength left abnormal weak"],
        ),
        ("Two through twelve were intact.", ["cranial_nerves_2_12 normal"]),
        (
            "Two to twelve normal except a partial right sixth.",
            ["cranial_nerves_2_12 normal", "abduction_deficit right present partial"],
        ),
        ("I not tested, II acuities 6/6.", ["smell not_examined", "visual_acuity measured 6/6"]),
    ],
)
def test_a_number_with_a_word_for_how_it_was_names_its_nerve(rows: Rows, text: str, wanted: list[str]) -> None:
    """Common practice, no source: nerves are told by their numbers, in Roman or in words."""
    assert rows(f"Cranial nerves. {text}") == wanted


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Pupils 4 mm. 3 brisk on the left.",
            ["pupil_size measured 4", "pupil_size left measured 3", "pupil_reaction left normal brisk"],
        ),
        ("Pupils equal. Seven patients waiting.", ["anisocoria absent"]),
        ("III, IV, VI: no nystagmus.", ["nystagmus absent"]),
    ],
)
def test_other_numbers_name_no_nerve(rows: Rows, text: str, wanted: list[str]) -> None:
    """A number behind a measured item is a value, one without a word for how it was says nothing."""
    assert rows(f"Cranial nerves. {text}") == wanted


def test_elsewhere_a_number_is_a_number(rows: Rows) -> None:
    """Only under the cranial nerves."""
    assert not [one for one in rows("Motor. Tone normal. Seven normal.") if one.startswith("facial_strength")]
