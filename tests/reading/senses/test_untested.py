"""What was not tested, and who was not watched."""

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
        (
            "Sensory. Neither light touch nor pinprick could be tested.",
            ["light_touch not_assessable", "pinprick not_assessable"],
        ),
        (
            "Sensory. Neither light touch nor pinprick was tested.",
            ["light_touch not_examined", "pinprick not_examined"],
        ),
        ("Sensory. Neither light touch nor pinprick was impaired.", ["light_touch normal", "pinprick normal"]),
        ("Gait. I did not see her walk.", ["gait not_examined"]),
        ("Gait. I did not see any freezing.", ["freezing absent"]),
        ("Sensory. No Romberg today.", ["romberg not_examined"]),
        ("I did not formally test coordination.", ["coordination_all not_examined"]),
    ],
)
def test_what_is_denied_is_the_examining(grammar: Grammar, say: str, wanted: list[str]) -> None:
    """A test that was not done is never a finding that was not there."""
    assert rows(grammar, say) == wanted
