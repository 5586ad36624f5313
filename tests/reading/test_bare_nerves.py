"""Numbers that name cranial nerves."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


def rows(grammar: Grammar, text: str) -> list[str]:
    """Item, side and status of every finding."""
    found = read(transcript_of_text(f"Cranial nerves. {text}"), grammar).findings
    return [" ".join(filter(None, [f.item, f.side and f.side.value, f.status.value])) for f in found]


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
            ["facial_strength right normal", "facial_strength left abnormal"],
        ),
        ("Two through twelve were intact.", ["cranial_nerves_2_12 normal"]),
        (
            "Two to twelve normal except a partial right sixth.",
            ["cranial_nerves_2_12 normal", "abduction_deficit right present"],
        ),
        ("I not tested, II acuities 6/6.", ["smell not_examined", "visual_acuity measured"]),
    ],
)
def test_a_number_with_a_word_for_how_it_was_names_its_nerve(grammar: Grammar, text: str, wanted: list[str]) -> None:
    """Common practice, no source: nerves are told by their numbers, in Roman or in words."""
    assert rows(grammar, text) == wanted


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Pupils 4 mm. 3 brisk on the left.",
            ["pupil_size measured", "pupil_size left measured", "pupil_reaction left normal"],
        ),
        ("Pupils equal. Seven patients waiting.", ["anisocoria absent"]),
        ("III, IV, VI: no nystagmus.", ["nystagmus absent"]),
    ],
)
def test_other_numbers_name_no_nerve(grammar: Grammar, text: str, wanted: list[str]) -> None:
    """A number behind a measured item is a value, one without a word for how it was says nothing."""
    assert rows(grammar, text) == wanted


def test_elsewhere_a_number_is_a_number(grammar: Grammar) -> None:
    """Only under the cranial nerves."""
    found = read(transcript_of_text("Motor. Tone normal. Seven normal."), grammar).findings
    assert "facial_strength" not in {f.item for f in found}
