"""Registering checks, and the order of queries."""

from __future__ import annotations

import re

import pytest

from dictate.checks import catalogue, check, run_checks
from dictate.model import Earlier, Evidence, Remark, RemarkKind, Severity

CODES = {
    "side-missing": "must",
    "position-missing": "must",
    "time-missing": "must",
    "unit-missing": "look",
    "value-implausible": "must",
    "values-conflict": "must",
    "contradiction": "must",
    "total-mismatch": "must",
    "unsure-hearing": "must",
    "repaired-hearing": "look",
    "speech-not-transcribed": "must",
    "not-placed": "look",
    "odd-sound": "look",
    "blanket-unbounded": "must",
    "scope-item-missing": "look",
    "patient-mismatch": "must",
    "several-patients": "must",
    "whose-words": "must",
}


def test_all_checks_are_registered_with_their_severity():
    """The catalogue holds exactly the known codes, each with its severity."""
    assert {one.code: one.severity for one in catalogue()} == CODES


def test_every_check_explains_itself():
    """Every check says what it asks, why, and gives an example."""
    for one in catalogue():
        text = one.ask.__doc__ or ""
        assert "Why:" in text, one.code
        assert "Example:" in text, one.code
        assert re.match(r"\S.*\.( .*)?$", text.splitlines()[0]), one.code


def test_a_code_is_registered_once():
    """A second check of the same code is refused."""
    with pytest.raises(ValueError, match="two checks have the code side-missing"):
        check("side-missing", severity="must")(lambda exam, grammar: iter(()))


def test_queries_stand_in_the_order_of_the_words(said, exam, grammar):
    """A query about an earlier word comes first, whatever check raised it."""
    first = said("reflex_patellar", "measured", "7+", side="left")
    second = said("pronator_drift", "present")
    remark = Remark(kind=RemarkKind.NOT_PLACED, evidence=Evidence(first=9, last=9, quote="kindly"))
    queries = run_checks(exam(first, second, remarks=(remark,)), grammar)
    assert [query.code for query in queries] == ["value-implausible", "side-missing", "not-placed"]


def test_a_finding_is_asked_about_once_by_each_check(said, ask):
    """A finding that contradicts two statements makes one query."""
    queries = ask(
        "contradiction",
        said("cranial_nerves_2_12", "normal"),
        said("nystagmus", "absent"),
        said("nystagmus", "present"),
    )
    assert len(queries) == 1


def test_a_query_points_at_its_finding(said, ask):
    """Item, side, quote and place of the finding stand in the query."""
    (query,) = ask(
        "value-implausible",
        said("gait", "normal"),
        said("reflex_patellar", "measured", "7+", side="right", quote="right knee jerk seven plus"),
    )
    assert (query.item, query.side, query.quote, query.findings) == (
        "reflex_patellar",
        "right",
        "right knee jerk seven plus",
        (1,),
    )
    assert query.severity is Severity.MUST


def test_a_plain_examination_raises_nothing(said, exam, grammar):
    """Normal findings without side need no interruption."""
    quiet = exam(
        said("blood_pressure", "measured", "128/76"),
        said("heart_rate", "measured", "70"),
        said("consciousness", "normal", "alert"),
        said("cranial_nerves_2_12", "normal"),
        said("strength_all", "measured", "5"),
        said("tone", "normal"),
        said("reflex_all", "measured", "2+"),
        said("plantar_response", "normal", "flexor", quote="plantars flexor"),
        said("tremor", "absent"),
        said("gait", "normal"),
    )
    assert run_checks(quiet, grammar) == ()


def test_an_earlier_record_bounds_unchanged(said, exam, grammar):
    """ "Unchanged" that is tied to an earlier record is not asked about."""
    one = said("tone", "unchanged")
    assert [query.code for query in run_checks(exam(one), grammar)] == ["blanket-unbounded"]
    tied = one.model_copy(update={"earlier": Earlier(record="k7", said="normal")})
    assert run_checks(exam(tied), grammar) == ()
