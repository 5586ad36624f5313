"""Wholes and parts in one list."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.model import RemarkKind, Status
from dictate.reading import read, transcript_of_text


@pytest.mark.parametrize(
    ("text", "items"),
    [
        ("Tone, power and coordination normal.", {"tone", "strength_all", "coordination_all"}),
        ("Power, tone and reflexes normal.", {"strength_all", "tone", "reflexes_all"}),
        (
            "Tone, power, reflexes and coordination were normal.",
            {"tone", "strength_all", "reflexes_all", "coordination_all"},
        ),
        ("Tone, power and sensation normal in all four limbs.", {"tone", "strength_all", "sensory_all"}),
        ("Reflexes, biceps and triceps two plus.", {"reflex_biceps", "reflex_triceps"}),
        ("Power, deltoid and biceps four.", {"strength_deltoid", "strength_biceps"}),
        ("Gait normal, tone, power and reflexes not tested.", {"gait", "tone", "strength_all", "reflexes_all"}),
    ],
)
def test_what_is_said_behind_a_list_is_said_of_all_of_it(grammar: Grammar, text: str, items: set[str]) -> None:
    assert {finding.item for finding in read(transcript_of_text(text), grammar).findings} == items


@pytest.mark.parametrize(
    ("text", "present"),
    [
        ("Reflexes. No clonus, Hoffmann's on the right.", {"hoffmann"}),
        ("Motor. No tremor, fasciculations in the left calf.", {"fasciculations"}),
        ("Motor. No tremor or fasciculations in the left calf.", set()),
        ("Motor. No tremor, rigidity or bradykinesia on the left.", set()),
    ],
)
def test_a_no_reaches_no_name_with_a_place_of_its_own_without_an_or(
    grammar: Grammar, text: str, present: set[str]
) -> None:
    """Nobody can tell: it is present, and what stands in front of it is asked about."""
    reading = read(transcript_of_text(text), grammar)
    assert {finding.item for finding in reading.findings if finding.status is Status.PRESENT} == present
    asked = [remark.evidence.quote for remark in reading.remarks if remark.kind is RemarkKind.NOT_PLACED]
    assert bool(asked) is bool(present)
