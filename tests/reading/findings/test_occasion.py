"""Whether a text holds an examination at all: somewhere its words stand close together as findings."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from by_hand import DEMOS

from dictate.model import RemarkKind
from dictate.reading.findings.occasion import LEAST
from dictate.reading.read import Reading

TALK = (
    "So we went up the hill on Sunday and the dog ran ahead of us through the wet grass, and when we came to the gate "
    "there was the old man from the mill with a basket full of pears, and he told us about the flood and the bridge "
    "and how they had carried the chairs up into the loft, and we listened until it was dark and the bell rang. "
)


@pytest.mark.parametrize("path", sorted(DEMOS.glob("*.txt")), ids=lambda path: path.stem)
def test_a_dictation_keeps_its_findings_in_a_sea_of_talk(reading: Callable[[str], Reading], path: object) -> None:
    """Ten times as many words of talk around it do not drown an examination."""
    text = path.read_text(encoding="utf-8")  # type: ignore[attr-defined]
    alone, drowned = reading(text), reading(f"{TALK * 10}\n\n{text}\n\n{TALK * 10}")
    kept = [one.item for one in drowned.findings]
    assert [one.item for one in alone.findings if one.item not in kept] == []


def test_two_plain_sentences_are_enough(reading: Callable[[str], Reading]) -> None:
    """A short examination after a long talk."""
    said = (
        "Tone normal, power five out of five throughout, biceps reflex two plus on both sides. Gait steady, no tremor."
    )
    assert len(reading(TALK * 4 + said).findings) >= 5


def test_a_heading_says_that_an_examination_follows(reading: Callable[[str], Reading]) -> None:
    """What stands under a heading is taken as said there."""
    assert [one.item for one in reading(f"{TALK}\nMotor examination:\nTone normal.").findings] == ["tone"]


def test_a_short_text_is_never_judged(reading: Callable[[str], Reading]) -> None:
    """One finding among few words stands."""
    few = " ".join(TALK.split()[: LEAST - 20]) + ". There is a tremor."
    assert [one.item for one in reading(few).findings] == ["tremor"]


def test_what_is_not_taken_stays_in_view(reading: Callable[[str], Reading]) -> None:
    """A stray finding in a long talk is not placed, and so is asked about."""
    found = reading(TALK * 2 + "There was a tremor in his voice.")
    assert found.findings == ()
    assert any("tremor" in one.evidence.quote for one in found.remarks if one.kind is RemarkKind.NOT_PLACED)
