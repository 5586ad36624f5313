"""Words of ability: of the task they stand beside, and of nothing else."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.reading import read, transcript_of_text


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Coordination. Is able to walk on his heels.", [("heel_walk", "normal")]),
        ("Can't walk on heels, toes he manages.", [("heel_walk", "abnormal"), ("toe_walk", "normal")]),
        ("Can't hop on the left, can on the right.", [("hop", "abnormal"), ("hop", "normal")]),
        ("Coordination. Heel walk, can you look at me please.", []),
    ],
)
def test_what_was_managed_is_normal(grammar: Grammar, text: str, wanted: list[tuple[str, str]]) -> None:
    """Common practice, no source: a task that is managed is normal."""
    findings = read(transcript_of_text(text), grammar).findings
    assert [(finding.item, finding.status.value) for finding in findings] == wanted


def test_words_of_every_title_are_in_a_finding(grammar: Grammar) -> None:
    """A name said alone in front of what was found of it is part of the evidence."""
    reading = read(transcript_of_text("Pupils. Right three, left five."), grammar)
    assert [finding.evidence[0].quote.split()[0] for finding in reading.findings] == ["Pupils.", "Pupils."]
    assert not reading.remarks
