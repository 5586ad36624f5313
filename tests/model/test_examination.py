"""Examination: format version, open queries."""

from __future__ import annotations

import json

import pytest
from by_hand import examination, query
from pydantic import ValidationError

from dictate.model import FORMAT, FORMAT_VERSION, Decision, Examination, Severity


def test_open_queries_are_those_without_a_decision() -> None:
    """In the order asked."""
    first, second, third = query("a"), query("b"), query("c")
    exam = examination(queries=(first, second, third), decisions=(Decision(query=1, answer="left"),))
    assert exam.open_queries == (first, third)


def test_only_musts_keep_a_note_from_being_signed() -> None:
    """A look does not."""
    must, look = query("a"), query("b", severity=Severity.LOOK)
    assert examination(queries=(look, must)).open_musts == (must,)


def test_format_and_version_are_written() -> None:
    """Programs can tell what they read."""
    written = json.loads(examination().model_dump_json())
    assert (written["format"], written["version"]) == (FORMAT, FORMAT_VERSION)


def test_another_format_version_is_refused() -> None:
    """A file from the future is not half understood."""
    written = json.loads(examination().model_dump_json()) | {"version": FORMAT_VERSION + 1}
    with pytest.raises(ValidationError, match="version"):
        Examination.model_validate_json(json.dumps(written))
