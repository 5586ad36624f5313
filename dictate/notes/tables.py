"""Tables and files: findings.csv, queries.csv, exam.json, transcript.json."""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Callable, Iterable

from dictate.model import Examination, Finding, Query, number_text
from dictate.notes.phrases import rough, visible

FINDING_COLUMNS = (
    "component", "item", "side", "site", "position", "minutes", "status", "certainty", "value", "unit", "detail",
    "quote", "start_s", "end_s",
)  # fmt: skip
QUERY_COLUMNS = (
    "code", "severity", "component", "item", "side", "message", "suggestions", "quote", "start_s", "end_s",
)  # fmt: skip
FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\n", *"＝＋－＠")  # in full width too: some spreadsheets take both
UNSEEN = ' \t\n\u00a0\u2028\u2029\u200b\u200c\u200d\u2060\ufeff"'  # a spreadsheet may pass over them
PLAIN_NUMBER = re.compile(r"[+-]?\d+(\.\d+)?")
TIME_DIGITS = 3
SHARE_DIGITS = 4


def findings_csv(exam: Examination) -> str:
    """One row per finding, in the order dictated."""
    return table(FINDING_COLUMNS, (_finding_row(finding) for finding in exam.findings))


def queries_csv(exam: Examination) -> str:
    """One row per open query."""
    return table(QUERY_COLUMNS, (_query_row(query) for query in exam.open_queries))


def exam_json(exam: Examination) -> str:
    """The whole examination."""
    return json.dumps(_short(exam.model_dump(mode="json")), ensure_ascii=False, indent=1) + "\n"


def transcript_json(exam: Examination) -> str:
    """Words with start, end, probability; where they came from; where voice was found."""
    return json.dumps(_short(exam.transcript.model_dump(mode="json")), ensure_ascii=False, indent=1) + "\n"


FILES: dict[str, Callable[[Examination], str]] = {  # ending → writer; the note itself needs the grammar too
    "exam.json": exam_json,
    "findings.csv": findings_csv,
    "queries.csv": queries_csv,
    "transcript.json": transcript_json,
}


def _finding_row(finding: Finding) -> tuple[str, ...]:
    return (
        finding.component.value,
        finding.item,
        finding.side.value if finding.side else "",
        finding.site,
        finding.position.value if finding.position else "",
        "" if finding.minutes is None else number_text(finding.minutes),
        finding.status.value,
        finding.certainty.value,
        "" if finding.value is None else str(finding.value),
        finding.unit,
        "; ".join(filter(None, (rough(finding), *finding.detail))),
        _one_line(finding.quote),
        _seconds(finding.evidence[0].start_s),
        _seconds(finding.evidence[-1].end_s),
    )


def _query_row(query: Query) -> tuple[str, ...]:
    return (
        query.code,
        query.severity.value,
        query.component.value if query.component else "",
        query.item,
        query.side.value if query.side else "",
        _one_line(query.message),
        " | ".join(query.suggestions),
        _one_line(query.quote),
        _seconds(query.start_s),
        _seconds(query.end_s),
    )


def table(columns: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> str:
    """A CSV table whose cells no spreadsheet takes for a formula."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(columns)
    writer.writerows(tuple(_safe(cell) for cell in row) for row in rows)
    return out.getvalue()


def _safe(cell: str) -> str:
    """A spreadsheet must show what was said, never calculate it.

    Neither behind blanks and signs that nobody sees, nor on a row that a carriage return would begin.
    """
    cell = visible(cell.replace("\r\n", "\n").replace("\r", "\n"))
    shown = cell.lstrip(UNSEEN)
    risky = cell[:1] in FORMULA_STARTS or shown.startswith(FORMULA_STARTS)
    return f"'{cell}" if risky and not PLAIN_NUMBER.fullmatch(cell) else cell


def _one_line(words: str) -> str:
    return " ".join(words.split())


def _seconds(time_s: float | None) -> str:
    return "" if time_s is None else number_text(round(time_s, TIME_DIGITS))


def _short(content: object, digits: int = TIME_DIGITS) -> object:
    """Numbers without digits that mean nothing; a probability keeps one more."""
    if isinstance(content, float):
        return round(content, digits)
    if isinstance(content, dict):
        return {key: _short(value, SHARE_DIGITS if key == "probability" else digits) for key, value in content.items()}
    if isinstance(content, list):
        return [_short(value, digits) for value in content]
    return content
