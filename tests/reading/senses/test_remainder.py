"""What the rest is the rest of."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "rest"),
    [
        ("Left deltoid 4/5, 5/5 elsewhere.", "strength_all measured 5"),
        ("Power: left deltoid 4/5, normal elsewhere.", "strength_all normal"),
        ("Power: left deltoid 4/5, otherwise normal.", "strength_all normal"),
        ("Motor. Left deltoid 4/5. Otherwise normal.", "motor_all normal"),
        ("Tone increased in the left leg, normal elsewhere.", "tone normal"),
        ("Reflexes: knees 3+, otherwise 2+.", "reflex_all measured 2+"),
        ("Fields: left homonymous hemianopia, otherwise full.", "visual_fields normal"),
        ("Eye movements: left eye fails to abduct, otherwise full.", "eye_movements normal"),
        ("Tongue: wasted on the left, otherwise normal.", "tongue normal"),
        ("Cranial nerves: left ptosis, otherwise normal.", "cranial_nerves_all normal"),
    ],
)
def test_the_rest_reaches_no_further_than_what_was_spoken_of(rows: Rows, text: str, rest: str) -> None:
    """Strength behind a muscle, the sited item behind its site, a component behind its heading."""
    assert rows(text)[1:] == [rest]


@pytest.mark.parametrize(
    "text",
    [
        "Cranial nerves. Left ptosis. The other cranial nerves are normal.",
        "Cranial nerves. Left ptosis. The rest of the cranial nerves were normal.",
    ],
)
def test_the_other_nerves_are_not_all_of_them(grammar: Grammar, text: str) -> None:
    """The finding says so, and its words too."""
    whole = read(transcript_of_text(text), grammar).findings[-1]
    assert whole.excepted
    assert whole.quote.split()[0] in ("other", "The")
