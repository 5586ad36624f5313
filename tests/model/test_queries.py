"""Query, Severity, Decision."""

from __future__ import annotations

from by_hand import query

from dictate.model import Severity


def test_two_severities_are_written_as_the_tables_promise() -> None:
    """must is settled before signing, look is passed over once."""
    assert [severity.value for severity in Severity] == ["must", "look"]


def test_a_query_may_concern_no_item() -> None:
    """A doubt about the whole examination has neither component nor item."""
    asked = query("several-patients", "next patient heard")
    assert (asked.component, asked.item, asked.side, asked.findings) == (None, "", None, ())
