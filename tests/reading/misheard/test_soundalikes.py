"""Numbers that sound alike."""

from __future__ import annotations

import pytest

from dictate.reading.misheard.soundalikes import MOST, number_rivals


# Pairs seen in recordings of synthetic voices: what was said, what was written.
@pytest.mark.parametrize(
    ("said", "heard"),
    [("118", "180"), ("115", "150"), ("119", "190"), ("113", "130"), ("19", "90"), ("15", "50"), ("30", "13")],
)
def test_what_was_said_is_a_rival_of_what_was_heard(said: str, heard: str) -> None:
    """In both directions."""
    assert said in number_rivals(heard)
    assert heard in number_rivals(said)


def test_never_many_and_never_itself() -> None:
    """At most four, all different, for every number that is dictated."""
    for number in range(10, 300):
        rivals = number_rivals(str(number))
        assert len(rivals) <= MOST
        assert str(number) not in rivals
        assert len(set(rivals)) == len(rivals)


def test_a_unit_that_was_written_is_not_dropped() -> None:
    """142 is no mishearing of 140: the two was heard; 140 may have lost one."""
    assert "140" not in number_rivals("142")
    assert "142" in number_rivals("140")
