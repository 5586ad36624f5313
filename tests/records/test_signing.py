"""What may be done with a record in which state, and what is refused."""

from __future__ import annotations

import pytest
from records.visits import doubtful, visit

from dictate.errors import InputError, OpenQueries
from dictate.model import Decision, Severity
from dictate.records import must_be_settled, open_looks, pass_over
from dictate.records.signing import must_be_draft, must_be_said

LOOK, MUST = Severity.LOOK, Severity.MUST


def test_queries_are_named_by_the_numbers_of_the_draft() -> None:
    """Those that are settled have none."""
    exam = doubtful(LOOK, MUST, LOOK, MUST, decisions=(Decision(query=1, answer="left"),))
    with pytest.raises(OpenQueries, match=r"^here: 1 query must be settled .*: \[\?3\] doubt 4\?: do this$"):
        must_be_settled(exam, "here", "do this")


def test_a_must_cannot_be_passed_over() -> None:
    """Only a look can."""
    with pytest.raises(OpenQueries, match=r"\[\?1\] doubt 1\?"):
        must_be_settled(doubtful(MUST), "here", "", passed=(0,))
    must_be_settled(doubtful(LOOK), "here", "", passed=(0,))


def test_looks_that_are_passed_over_are_decided() -> None:
    """With what was decided before."""
    exam = doubtful(LOOK, LOOK, decisions=(Decision(query=0, answer="keep the words"),))
    assert [at for at, _ in open_looks(exam)] == [1]
    assert [one.query for one in pass_over(exam, [1]).decisions] == [0, 1]
    assert open_looks(pass_over(exam, [1])) == []


@pytest.mark.parametrize("field", ["signed_by", "countersigned_by"])
def test_a_signature_from_elsewhere_is_no_signature(field: str) -> None:
    """Whatever field says so."""
    with pytest.raises(InputError, match="signed already"):
        must_be_draft(visit(**{field: "A"}))


def test_blanks_are_nothing() -> None:
    """And stand around nothing."""
    assert must_be_said("  a b ", "who") == "a b"
    assert must_be_said("a\x1b[2J\tb\nc\x07", "who") == "a[2J b\nc"
    with pytest.raises(InputError, match="who: is empty"):
        must_be_said(" \n", "who")
