"""Words without a name, and what they go on about."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import transcript_of_text
from dictate.reading.read import read


def rows(grammar: Grammar, text: str) -> list[str]:
    """Item, side, status and value of every finding."""
    return [
        " ".join(filter(None, (f.item, f.side, f.status.value, str(f.value or ""))))
        for f in read(transcript_of_text(text), grammar).findings
    ]


@pytest.mark.parametrize("text", ["MMSE 28/30. QX 3.", "EDSS 3.5. F&Z 4.", "MoCA 24/30. Nine."])
def test_a_number_after_a_scale_is_not_the_scale_again(grammar: Grammar, text: str) -> None:
    """A scale without a name here would lend its points to the one before."""
    assert len(rows(grammar, text)) == 1


def test_a_side_goes_on_about_the_last_item(grammar: Grammar) -> None:
    """The second sentence has no name of its own."""
    assert rows(grammar, "Finger nose normal on the right. Dysmetria on the left.")[1:] == [
        "finger_nose left abnormal dysmetria"
    ]
