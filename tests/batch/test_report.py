"""What a batch says of its grammar: counts by component, most frequent queries, worst recognised terms."""

from __future__ import annotations

import csv
import io
from pathlib import Path

from by_hand import evidence, examination, finding, query, reflex, remark

from dictate.batch import report_csv, report_of, report_text
from dictate.model import Component, Examination, RemarkKind, Source, Status, Transcript, Word


def spoken(*probabilities: float) -> Transcript:
    """Words that were heard with these probabilities."""
    words = tuple(Word(text="word", start_s=0.0, end_s=1.0, probability=each) for each in probabilities)
    return Transcript(words=words, sources=(Source(name="a", kind="recording", sha256="0" * 64),))


def write(folder: Path, *exams: Examination) -> None:
    """Results of a batch."""
    for number, exam in enumerate(exams):
        (folder / f"{number}.exam.json").write_text(exam.model_dump_json(), encoding="utf-8")


def test_counts(tmp_path: Path) -> None:
    """Findings and queries, and in how many examinations they were."""
    knee = reflex("reflex_patellar", "2+")
    gait = finding(Component.COORDINATION_GAIT, "gait", Status.NORMAL)
    asks = query(item="reflex_patellar")
    lost = remark(RemarkKind.NOT_PLACED, "Wobbly, it was")
    write(
        tmp_path,
        examination(knee, knee, gait, queries=(asks, asks), remarks=(lost,)),
        examination(knee, remarks=(lost, remark(RemarkKind.NOT_PLACED, "Once only"))),
    )
    (tmp_path / "bad.exam.json").write_text("{", encoding="utf-8")
    rows = list(csv.reader(io.StringIO(report_csv(report_of(tmp_path)))))[1:]
    assert rows == [
        ["examinations", "all", "2", "2", "1.000", ""],
        ["unread", "exam.json", "1", "0", "0.000", ""],
        ["component", "coordination_gait", "1", "1", "0.500", ""],
        ["component", "reflexes", "3", "2", "1.000", ""],
        ["query", "side-missing reflex_patellar", "2", "1", "0.500", ""],
        ["not-placed", "wobbly it was", "2", "2", "1.000", ""],
    ]


def test_worst_recognised_terms_come_first(tmp_path: Path) -> None:
    """By the least certain word of each finding; what was heard twice is too little to judge."""
    heard = [
        finding(Component.GENERAL, item, Status.NORMAL, evidence=(evidence(first=first, quote="two words"),))
        for item, first in (("well", 0), ("badly", 2), ("rarely", 2))
    ]
    exam = examination(*heard, transcript=spoken(0.9, 0.8, 0.9, 0.3), queries=(query("unsure-hearing", item="badly"),))
    write(tmp_path, exam, exam, examination(*heard[:2], transcript=spoken(0.9, 0.8, 0.9, 0.6)))
    lines = [line for line in report_of(tmp_path) if line.kind == "term"]
    assert [(line.what, line.count, line.examinations, line.probability) for line in lines] == [
        ("badly", 3, 2, 0.4),
        ("well", 3, 0, 0.8),
    ]


def test_for_people(tmp_path: Path) -> None:
    """Each kind once under its title; an empty folder is an empty report."""
    write(tmp_path, examination(reflex("reflex_patellar", "2+")))
    text = report_text(report_of(tmp_path))
    assert text.splitlines()[:2] == ["EXAMINATIONS", f"  {'all':44}      1    100%"]
    assert "FINDINGS BY COMPONENT" in text
    assert report_of(tmp_path / "none")[0].count == 0
