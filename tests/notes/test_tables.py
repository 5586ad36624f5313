"""findings.csv, queries.csv, exam.json, transcript.json."""

from __future__ import annotations

import csv
import io
import json

import pytest
from by_hand import evidence, examination, finding, query, reflex
from notes.exams import HOSTILE
from notes.test_html import hostile

from dictate.model import (
    Component,
    Decision,
    Examination,
    Position,
    Pressure,
    Quantity,
    Severity,
    Side,
    Source,
    Status,
    Text,
    Transcript,
    Value,
    Word,
)
from dictate.notes import FILES, exam_json, findings_csv, queries_csv, transcript_json


def rows(table: str) -> list[dict[str, str]]:
    """The table read back."""
    return list(csv.DictReader(io.StringIO(table)))


def test_findings_columns_are_fixed() -> None:
    """Programs rely on names and order of the columns."""
    assert findings_csv(examination()) == (
        "component,item,side,site,position,minutes,status,certainty,value,unit,detail,quote,start_s,end_s\n"
    )


def test_queries_columns_are_fixed() -> None:
    """Programs rely on names and order of the columns."""
    assert queries_csv(examination()) == ("code,severity,component,item,side,message,suggestions,quote,start_s,end_s\n")


def test_finding_row() -> None:
    """Every field of a finding has its cell."""
    one = finding(
        Component.GENERAL, "blood_pressure", Status.MEASURED, value=Pressure(systolic=104, diastolic=58),
        unit="mm[Hg]", side=Side.RIGHT, position=Position.STANDING, minutes=3.0, detail=("large cuff", "after rest"),
        evidence=(evidence("one oh four over\nfifty eight", start_s=12.34567),),
    )  # fmt: skip
    assert rows(findings_csv(examination(one))) == [
        {
            "component": "general", "item": "blood_pressure", "side": "right", "site": "", "position": "standing",
            "minutes": "3", "status": "measured", "certainty": "stated", "value": "104/58", "unit": "mm[Hg]",
            "detail": "large cuff; after rest", "quote": "one oh four over fifty eight", "start_s": "12.346",
            "end_s": "14.346",
        }
    ]  # fmt: skip


def test_what_was_not_said_is_empty() -> None:
    """No default side, site, position, time or value."""
    row = rows(findings_csv(examination(finding(Component.GENERAL, "lungs", Status.NORMAL))))[0]
    assert {row[key] for key in ("side", "site", "position", "minutes", "value", "unit", "start_s")} == {""}


@pytest.mark.parametrize(
    ("value", "cell"),
    [
        (Text(words='=HYPERLINK("x")'), '\'=HYPERLINK("x")'),
        (Text(words="@sum"), "'@sum"),
        (Text(words="-2+3"), "'-2+3"),
        (Text(words="＝1+1"), "'＝1+1"),
        (Text(words="\n=1+1"), "'\n=1+1"),
        (Text(words="\t=1+1"), "'\t=1+1"),
        (Text(words="\r=1+1"), "'\n=1+1"),
        (Text(words="reduced\r=1+1"), "reduced\n=1+1"),
        (Text(words="reduced\r\n=1+1"), "reduced\n=1+1"),
        (Text(words=" =1+1"), "' =1+1"),
        (Text(words="\ufeff=1+1"), "'\ufeff=1+1"),
        (Text(words="\x00\u202e=1+1"), "'=1+1"),
        (Text(words="\u200f4-\u200f"), "4-"),
        (Quantity(number=-2), "-2"),
        (Text(words="4-"), "4-"),
    ],
)
def test_spreadsheet_never_calculates(value: Value, cell: str) -> None:
    """A cell that a spreadsheet would take for a formula is escaped; a plain number is not."""
    one = finding(Component.MOTOR, "tone", Status.ABNORMAL, value=value)
    assert rows(findings_csv(examination(one)))[0]["value"] == cell


def test_query_row() -> None:
    """Suggestions are separated by a bar; the item concerned stands in its columns."""
    asked = query(component=Component.REFLEXES, item="reflex_biceps", suggestions=("left", "right"), quote="two plus")
    assert rows(queries_csv(examination(queries=(asked,)))) == [
        {
            "code": "side-missing", "severity": "must", "component": "reflexes", "item": "reflex_biceps", "side": "",
            "message": "which side?", "suggestions": "left | right", "quote": "two plus", "start_s": "", "end_s": "",
        }
    ]  # fmt: skip


def test_settled_query_leaves_the_table() -> None:
    """Only open queries are rows."""
    exam = examination(queries=(query("a"), query("b")), decisions=(Decision(query=0, answer="right"),))
    assert [row["code"] for row in rows(queries_csv(exam))] == ["b"]


def test_exam_json_reads_back_as_the_same_examination() -> None:
    """Nothing is lost on the way to the file and back."""
    exam = examination(reflex("reflex_biceps", "2+", side=Side.LEFT), queries=(query(severity=Severity.LOOK),))
    written = exam_json(exam)
    assert Examination.model_validate_json(written) == exam
    assert json.loads(written)["format"] == "dictate/examination"


def test_transcript_json_keeps_words_and_times() -> None:
    """Words with start, end and probability, shortly written."""
    word = Word(text="Knees", start_s=1.23456, end_s=1.5, probability=0.98765)
    sources = (Source(name="a.flac", kind="recording", sha256="0" * 64),)
    exam = examination(transcript=Transcript(words=(word,), sources=sources))
    written = json.loads(transcript_json(exam))["words"][0]
    assert (written["text"], written["start_s"], written["end_s"], written["probability"]) == (
        "Knees",
        1.235,
        1.5,
        0.9877,
    )


def test_every_file_has_its_ending() -> None:
    """The files that belong to an examination, besides the note."""
    assert set(FILES) == {"exam.json", "findings.csv", "queries.csv", "transcript.json"}


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_adds_no_row_and_no_formula(text: str) -> None:
    """Whatever a line ends with for a spreadsheet: as many rows as findings, and none of their cells calculates."""
    exam = hostile(text)
    for table, count in ((findings_csv(exam), len(exam.findings)), (queries_csv(exam), len(exam.queries))):
        assert "\r" not in table
        cells = [cell for row in csv.reader(io.StringIO(table)) for cell in row]
        assert len(cells) == (count + 1) * len(next(csv.reader(io.StringIO(table))))
        assert not [cell for cell in cells if cell.strip().startswith(("=", "@"))]


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_is_kept_in_json_as_it_was(text: str) -> None:
    """The file for programs loses nothing, and holds no raw control sign."""
    exam = hostile(text)
    written = exam_json(exam)
    assert Examination.model_validate_json(written) == exam
    assert not [sign for sign in written if sign < " " and sign != "\n"]


@pytest.mark.parametrize(
    ("quote", "detail", "cell"),
    [
        ("respiratory rate about 32 at rest", ("at rest",), "about; at rest"),
        ("respiratory rate 32 at rest", ("at rest",), "at rest"),
        ("respiratory rate about, well, at most 32", ("at most",), "at most"),
    ],
)
def test_a_number_said_as_about_so_much(quote: str, detail: tuple[str, ...], cell: str) -> None:
    """Stands among the details as it was said: the table gave the bare number."""
    value = Quantity(number=32)
    one = finding(Component.GENERAL, "respiratory_rate", Status.MEASURED, value=value, detail=detail, quote=quote)
    (row,) = rows(findings_csv(examination(one)))
    assert (row["value"], row["detail"]) == ("32", cell)
