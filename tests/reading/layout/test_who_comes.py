"""Who comes and why is no finding. No source: how dictations begin, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    "said",
    [
        "72 year old man with ptosis. Tone normal.",
        "A 34-year-old woman with diplopia, ptosis and tremor. Tone normal.",
        "72 y/o M with left ptosis, tone normal.",
        "The gentleman with the tremor is back. Tone normal.",
        "This is the lady with the foot drop again. Tone normal.",
    ],
)
def test_the_reason_is_no_finding(rows: Rows, said: str) -> None:
    """A list of complaints is one reason, up to what was found."""
    assert rows(said) == ["tone normal"]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("72 year old man, ptosis on the left.", ["ptosis left present"]),
        ("The man with the head tremor walks normally.", ["tremor head present", "gait normal"]),
        ("72 year old man with GCS 15, alert.", ["gcs_total measured 15", "consciousness normal alert"]),
        ("65-year-old left handed man with ptosis.", ["handedness normal left"]),
    ],
)
def test_what_was_found_is_one(rows: Rows, said: str, found: list[str]) -> None:
    """Where no reason is told, something is measured, or the patient is described."""
    assert rows(said) == found
