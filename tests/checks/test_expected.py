"""Which of two readings the trade expects."""

from __future__ import annotations

import pytest

from dictate.checks.expected import IMPOSSIBLE, UNUSUAL, USUAL, lean, strangeness, with_rival
from dictate.model import Rival


def rival(kind: str, heard: str, other: str, margin: float = 0.0) -> Rival:
    """A rival of the first word."""
    return Rival(kind=kind, heard=heard, other=other, margin=margin, word=0)


@pytest.mark.parametrize(
    ("item", "value", "other", "becomes"),
    [
        ("blood_pressure", "180/62", rival("number", "180", "118"), "118/62"),
        ("blood_pressure", "118/80", rival("number", "80", "18"), "118/18"),
        ("heart_rate", "90", rival("number", "90", "19"), "19"),
        ("strength_deltoid", "4-", rival("sign", "minus", "plus"), "4+"),
        ("strength_deltoid", "4-", rival("sign", "-", ""), "4"),
        ("reflex_patellar", "3+", rival("number", "3", "2"), "2+"),
        ("gcs_total", "14/15", rival("number", "14", "4"), "4/15"),
        ("visual_acuity", "20/40", rival("number", "40", "14"), "20/14"),
        ("plantar_response", "flexor", rival("antonym", "flexor", "extensor"), "extensor"),
    ],
)
def test_the_finding_as_its_rival_has_it(said, item, value, other, becomes):
    """The other number, sign or word in its place."""
    finding = with_rival(said(item, "measured", value), other)
    assert str(finding.value) == becomes


def test_side_and_denial(said):
    """The other side; a denied sign as present."""
    assert with_rival(said("tremor", "present", side="left"), rival("side", "left", "right")).side == "right"
    assert with_rival(said("tremor", "absent"), rival("negation", "No", "")).status == "present"
    assert with_rival(said("tremor", "present"), rival("negation", "", "no")).status == "absent"


def test_a_rival_that_changes_nothing_is_none(said):
    """A word that is not in the value."""
    assert with_rival(said("heart_rate", "measured", "90"), rival("number", "5", "9")) is None
    assert with_rival(said("gait", "normal"), rival("antonym", "normal", "abnormal")) is None


def test_the_trade_leans_to_what_is_usual(said, exam, grammar):
    """190/50 among pressures of 115 is stranger than 119/50; a diastolic above the systolic cannot be."""
    series = [said("blood_pressure", "measured", text, position="standing") for text in ("115/68", "190/50", "112/70")]
    whole = exam(*series)
    middle = whole.findings[1]
    assert strangeness(middle, middle, whole, grammar) == UNUSUAL
    assert lean(middle, rival("number", "190", "119"), whole, grammar) == 1
    first = whole.findings[0]
    assert strangeness(first, first, whole, grammar) == USUAL
    assert lean(first, rival("number", "68", "168"), whole, grammar) == -IMPOSSIBLE
