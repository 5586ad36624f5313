"""Finding, Evidence, Remark."""

from __future__ import annotations

import pytest
from by_hand import evidence, finding
from pydantic import ValidationError

from dictate.model import Certainty, Component, Status


def test_a_finding_without_evidence_cannot_be_made() -> None:
    """Nothing is found that was not said."""
    with pytest.raises(ValidationError, match="evidence"):
        finding(Component.MOTOR, "tone", Status.NORMAL, evidence=())


def test_nothing_is_assumed() -> None:
    """Side, site, position, time, value and unit are empty until said."""
    one = finding(Component.MOTOR, "tone", Status.NORMAL)
    assert (one.side, one.site, one.position, one.minutes, one.value, one.unit) == (None, "", None, None, None, "")
    assert one.certainty is Certainty.STATED


def test_pieces_apart_are_joined_in_the_quote() -> None:
    """Words from two places are quoted with a gap between them."""
    one = finding(Component.MOTOR, "tone", Status.NORMAL, evidence=(evidence("on the left"), evidence("tone normal")))
    assert one.quote == "on the left ... tone normal"


def test_components_stand_in_the_order_of_every_note() -> None:
    """The order is fixed."""
    assert [component.value for component in Component] == [
        "general", "mental_status", "cranial_nerves", "motor", "sensory", "coordination_gait", "reflexes",
    ]  # fmt: skip
