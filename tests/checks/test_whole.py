"""Doubts about the examination as a whole."""

from __future__ import annotations

from datetime import datetime

from by_hand import examination

from dictate.checks import whole_queries
from dictate.model import Severity


def test_a_time_that_nobody_said_is_asked_for():
    """Once; with a time nothing is asked."""
    asked = [one for one in whole_queries(examination(examined_at=None)) if one.code == "time-missing"]
    assert [one.severity for one in asked] == [Severity.LOOK]
    timed = examination(examined_at=datetime(2026, 3, 4, 14, 30))
    assert "time-missing" not in {one.code for one in whole_queries(timed)}


def test_what_was_left_out_of_a_text_that_is_no_examination_must_be_settled():
    """With the number of findings."""
    (asked,) = (one for one in whole_queries(examination(withheld=3)) if one.code == "not-placed")
    assert asked.severity is Severity.MUST
    assert "3 findings left out" in asked.message
