"""Comparisons of visits as text, as a table and as JSON."""

from __future__ import annotations

import csv
import io
import json
from datetime import datetime
from pathlib import Path

from by_hand import examination, finding, reflex

from dictate.catalogue.note import KINDS
from dictate.grammar import Grammar
from dictate.model import Component, Examination, Side, Status, Text
from dictate.notes import compare_visits, comparison_csv, comparison_json, comparison_text
from dictate.notes.compared import COLUMNS
from dictate.notes.directions import Kind
from dictate.pipeline import Typed, examine


def visit(grade: str, **more: object) -> Examination:
    """A reflex of the left side."""
    return examination(reflex("reflex_biceps", grade, side=Side.LEFT), **more)


def test_text_says_what_changed(grammar: Grammar) -> None:
    """Under a heading, by component, earlier and later side by side."""
    text = comparison_text(compare_visits([visit("2+", patient="P-17"), visit("3+")], grammar))
    assert text.startswith("COMPARISON OF VISITS\nPatient: P-17\nVisit 1, time of examination not stated\n")
    assert "\nCHANGED (nothing says which is better)\n  Reflexes: biceps reflex left: 2+, now 3+\n" in text


def test_no_change_is_said_and_the_unchanged_is_listed(grammar: Grammar) -> None:
    """Silence would be no answer."""
    text = comparison_text(compare_visits([visit("2+"), visit("2+")], grammar))
    assert "\nNo statement changed\n\nUNCHANGED\n  Reflexes: biceps reflex left: 2+\n" in text


def test_the_unchanged_that_say_the_same_stand_together(grammar: Grammar) -> None:
    """What changed keeps a row for each."""
    was = "Naming normal. Repetition normal. Right deltoid 4. Right biceps 4."
    now = "Mental status normal. Right deltoid 3. Right biceps 3."
    exams = [examine([Typed("typed", one)], engine=None, grammar=grammar) for one in (was, now)]
    text = comparison_text(compare_visits(exams, grammar))
    assert '\n  Mental status: naming, repetition: normal, as said: "Mental status normal"\n' in text
    assert "\n  Motor: deltoid right: 4, now 3; biceps right: 4, now 3\n" in text


def test_every_kind_has_its_heading() -> None:
    """No row can be left out."""
    assert set(KINDS) == {kind.value for kind in Kind}


def test_order_against_the_dates_is_said(grammar: Grammar) -> None:
    """Compared as given, and told."""
    late, early = (visit("2+", examined_at=datetime(2026, month, 1)) for month in (9, 3))
    assert "contradict this order" in comparison_text(compare_visits([late, early], grammar))
    assert "contradict this order" not in comparison_text(compare_visits([early, late], grammar))


def test_a_visit_that_was_withdrawn_or_amended_says_so(grammar: Grammar) -> None:
    """Its statements are compared as they were signed; a draft, a signed note and a file have nothing to tell."""
    exams = [visit("2+")] * 2
    lines = comparison_text(compare_visits(exams, grammar, ["withdrawn", "amended"])).splitlines()
    assert lines[2].endswith("(WITHDRAWN: entered in error)")
    assert "the addenda" in lines[3] or "addenda" in lines[4]
    assert comparison_text(compare_visits(exams, grammar, ["signed", None])) == comparison_text(
        compare_visits(exams, grammar)
    )


def test_csv_columns_and_formula_cells(grammar: Grammar) -> None:
    """One row per statement; a cell that a spreadsheet would calculate is escaped."""
    harm = finding(Component.MOTOR, "tone", Status.ABNORMAL, value=Text(words="=1+1"))
    rows = list(csv.DictReader(io.StringIO(comparison_csv(compare_visits([visit("2+"), examination(harm)], grammar)))))
    assert tuple(rows[0]) == COLUMNS
    assert {row["item"]: row["later_value"] for row in rows} == {"tone": "'=1+1", "reflex_biceps": ""}


def test_json_names_rows_and_visits(grammar: Grammar) -> None:
    """Kinds, values and places of the findings."""
    content = json.loads(comparison_json(compare_visits([visit("2+"), visit("3+"), visit("1+")], grammar)))
    assert (content["format"], len(content["visits"])) == ("dictate/comparison", 3)
    assert [(row["earlier"], row["change"], row["later_at"]) for row in content["differences"]] == [
        ("1", "changed", [0]),
        ("2", "changed", [0]),
    ]
    assert [one["values"] for one in content["trends"]] == [["2+", "3+", "1+"]]


def test_three_visits_are_told_one_after_the_other(grammar: Grammar) -> None:
    """And as a trend."""
    text = comparison_text(compare_visits([visit("2+"), visit("3+"), visit("1+")], grammar))
    assert text.count("FROM visit") == 2
    assert "OVER ALL VISITS\n  biceps reflex left: 2+, then 3+, then 1+\n" in text


def test_golden_comparison(grammar: Grammar) -> None:
    """The two visits of one invented patient, read by a person."""
    here = Path(__file__).parent
    exams = [examine([here / "visits" / f"visit-{n}.txt"], engine=None, grammar=grammar) for n in (1, 2)]
    text = comparison_text(compare_visits(exams, grammar))
    assert text == (here / "golden" / "comparison.txt").read_text(encoding="utf-8")


def test_table_calculates_nothing_that_was_dictated(grammar: Grammar) -> None:
    """A dictated formula is text in the table of a comparison too."""
    one = examination(finding(Component.MOTOR, "tone", Status.ABNORMAL, value=Text(words="=1+1")))
    table = comparison_csv(compare_visits([one, examination()], grammar))
    assert "'=1+1" in table
    assert ",=1+1" not in table
