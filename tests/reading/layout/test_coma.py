"""Parts of the coma scale told without its name. No source: how they are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dictate.grammar import Grammar
from dictate.pipeline import Typed, examine

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    "said",
    [
        "Eyes 3. Verbal 4. Motor 6. Total 13.",
        "She opens her eyes to voice, so eye 3. Verbal 4, she is confused, motor 6. Total 13.",
        "Eye 3, verbal 4, motor 6, total 13.",
    ],
)
def test_the_parts_are_named_by_each_other(rows: Rows, said: str) -> None:
    """Over full stops, and with talk between."""
    assert rows(said) == [
        "gcs_eye measured 3",
        "gcs_verbal measured 4",
        "gcs_motor measured 6",
        "gcs_total measured 13",
    ]


def test_a_total_that_does_not_add_up_must_be_asked(grammar: Grammar) -> None:
    """Teasdale and Jennett, Lancet 1974: the parts are 3 + 4 + 6."""
    exam = examine([Typed("x", "Eyes 3. Verbal 4. Motor 6. Total 12.")], engine=None, grammar=grammar)
    assert "total-mismatch" in {query.code for query in exam.open_musts}


@pytest.mark.parametrize("said", ["Left eye 6/9. Motor 5/5.", "Verbal fluency 12. Eyes normal.", "Eyes 3. Motor 5."])
def test_two_parts_are_none(rows: Rows, said: str) -> None:
    """Eyes and motor are said of much else."""
    assert not [one for one in rows(said) if one.startswith("gcs")]
