"""What "unchanged" was said of."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.grammar.claims import told_beside
from dictate.model import Status
from dictate.pipeline import Typed, examine


@pytest.mark.parametrize(
    ("text", "beside"),
    [
        ("Deltoid 4 on the left, unchanged.", ["left 4"]),
        ("Knee jerks unchanged, right two plus, left three plus.", ["right 2+", "left 3+"]),
        ("Left deltoid 4. Unchanged.", ["left 4"]),
        ("Left deltoid 4. Deltoid unchanged.", []),
        ("Knee jerk two plus on the right, otherwise unchanged.", []),
        ("Gait not examined, unchanged.", []),
        ("Tone normal. Power unchanged.", []),
    ],
)
def test_values_told_in_the_same_breath(text: str, beside: list[str], grammar: Grammar) -> None:
    """Those of the item, and none where it is of the rest, or a statement of its own."""
    exam = examine([Typed("typed", text)], engine=None, grammar=grammar)
    (claim,) = [one for one in exam.findings if one.status is Status.UNCHANGED]
    told = [exam.findings[at] for at in told_beside(claim, exam, grammar)]
    assert [f"{one.side.value if one.side else ''} {one.value}" for one in told] == beside
    assert [told_beside(one, exam, grammar) for one in exam.findings if one is not claim] == [[]] * (
        len(exam.findings) - 1
    )
