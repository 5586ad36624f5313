"""How far something reaches over the body."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import read, transcript_of_text


def rows(grammar: Grammar, say: str) -> list[str]:
    """Item, side, site, status and value of each finding."""
    found = read(transcript_of_text(say), grammar).findings
    told = ((f.item, f.side and f.side.value, f.site, f.status.value, f.value and str(f.value)) for f in found)
    return [" ".join(part for part in parts if part) for parts in told]


@pytest.mark.parametrize(
    ("say", "wanted"),
    [
        ("Light touch reduced from the toes to the knees bilaterally.", ["light_touch both knee abnormal reduced"]),
        ("Pinprick reduced in the legs to the knees on both sides.", ["pinprick both knee abnormal reduced"]),
        (
            "Pinprick reduced in the left leg and the left hand.",
            ["pinprick left leg abnormal reduced", "pinprick left hand abnormal reduced"],
        ),
    ],
)
def test_where_it_ends_is_the_place(grammar: Grammar, say: str, wanted: list[str]) -> None:
    """The place that is reached stands in the finding."""
    assert rows(grammar, say) == wanted
