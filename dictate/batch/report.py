"""What a batch says of its grammar: counts by component, most frequent queries, worst recognised terms."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from pathlib import Path
from statistics import fmean
from typing import Literal

from pydantic import ValidationError

from dictate.batch.table import table
from dictate.model import Component, Examination, RemarkKind
from dictate.model.base import Frozen

COLUMNS = ("kind", "what", "count", "examinations", "share", "probability")
MOST = 20  # lines of each kind
FEWEST = 3  # times an item must have been heard to be judged
WORDS = 6  # of a stretch that was not placed

Kind = Literal["examinations", "unread", "component", "query", "term", "not-placed"]


class Line(Frozen):
    """One line of the report. share: of all examinations. probability: mean, of the words heard."""

    kind: Kind
    what: str
    count: int
    examinations: int
    share: float
    probability: float | None = None


def report_of(folder: Path) -> tuple[Line, ...]:
    """All lines, from the exam.json files of a folder of results; one that cannot be read is counted."""
    total = unread = 0
    counts: dict[tuple[Kind, str], int] = Counter()
    seen: dict[tuple[Kind, str], int] = Counter()
    heard: dict[str, list[float]] = defaultdict(list)
    doubted: Counter[str] = Counter()
    for exam in _examinations(folder):
        if exam is None:
            unread += 1
            continue
        total += 1
        own = Counter(_said(exam))
        for key, number in own.items():
            counts[key] += number
            seen[key] += 1
        for item, probability in _hearings(exam):
            heard[item].append(probability)
        doubted.update(query.item for query in exam.queries if query.code in ("repaired-hearing", "unsure-hearing"))
    lines = [Line(kind="examinations", what="all", count=total, examinations=total, share=1.0 if total else 0.0)]
    if unread:
        lines.append(Line(kind="unread", what="exam.json", count=unread, examinations=0, share=0.0))
    for kind in ("component", "query", "not-placed"):
        for key, number in _foremost(counts, kind):
            lines.append(_line(key, number, seen[key], total))
    return (*lines, *_terms(heard, doubted, total))


def report_csv(lines: Iterable[Line]) -> str:
    """report.csv."""
    rows = (
        (
            line.kind,
            line.what,
            str(line.count),
            str(line.examinations),
            f"{line.share:.3f}",
            "" if line.probability is None else f"{line.probability:.3f}",
        )
        for line in lines
    )
    return table(COLUMNS, rows)


def report_text(lines: Iterable[Line]) -> str:
    """report.txt: the same for people."""
    titles = {
        "examinations": "EXAMINATIONS",
        "unread": "EXAMINATIONS THAT COULD NOT BE READ",
        "component": "FINDINGS BY COMPONENT (findings, share of examinations)",
        "query": "MOST FREQUENT QUERIES (queries, share of examinations)",
        "not-placed": "WORDS MOST OFTEN PART OF NOTHING (times, share of examinations)",
        "term": "WORST RECOGNISED TERMS (mean probability of their words, times heard, times doubted)",
    }
    text: list[str] = []
    last = ""
    for line in lines:
        if line.kind != last:
            text += ["", titles[line.kind]] if text else [titles[line.kind]]
            last = line.kind
        if line.kind == "term":
            text.append(f"  {line.what:44}{line.probability or 0:6.2f}{line.count:7}{line.examinations:7}")
        else:
            text.append(f"  {line.what:44}{line.count:7}{line.share:8.0%}")
    return "\n".join(text) + "\n"


def _examinations(folder: Path) -> Iterator[Examination | None]:
    for path in sorted(folder.glob("*.exam.json")):
        try:
            yield Examination.model_validate_json(path.read_text(encoding="utf-8"))
        except (OSError, UnicodeDecodeError, ValidationError):
            yield None


def _said(exam: Examination) -> Iterator[tuple[Kind, str]]:
    for finding in exam.findings:
        yield "component", finding.component.value
    for query in exam.queries:
        yield "query", f"{query.code} {query.item}".strip()
    for remark in exam.remarks:
        if remark.kind is RemarkKind.NOT_PLACED:
            words = "".join(sign for sign in remark.evidence.quote.lower() if sign.isalnum() or sign.isspace()).split()
            yield "not-placed", " ".join(words[:WORDS])


def _hearings(exam: Examination) -> Iterator[tuple[str, float]]:
    """Item of each finding, and the probability of the least certain word it was taken from."""
    words = exam.transcript.words
    for finding in exam.findings:
        heard = [
            word.probability
            for piece in finding.evidence
            for word in words[piece.first : piece.last + 1]
            if word.probability is not None
        ]
        if heard:
            yield finding.item, min(heard)


def _foremost(counts: dict[tuple[Kind, str], int], kind: str) -> list[tuple[tuple[Kind, str], int]]:
    """The components in their order; of the rest the most frequent, words only where they came more than once."""
    own = [(key, number) for key, number in counts.items() if key[0] == kind]
    if kind == "component":
        order = [component.value for component in Component]
        return sorted(own, key=lambda one: order.index(one[0][1]))
    own = [one for one in own if kind != "not-placed" or one[1] > 1]
    return sorted(own, key=lambda one: (-one[1], one[0]))[:MOST]


def _line(key: tuple[Kind, str], number: int, seen: int, total: int) -> Line:
    return Line(kind=key[0], what=key[1], count=number, examinations=seen, share=seen / total)


def _terms(heard: dict[str, list[float]], doubted: Counter[str], total: int) -> Iterator[Line]:
    """Items by the mean of their least certain words; `examinations` of such a line are the queries about hearing."""
    means = {item: fmean(found) for item, found in heard.items() if len(found) >= FEWEST}
    for item in sorted(means, key=lambda item: (means[item], item))[:MOST]:
        yield Line(
            kind="term",
            what=item,
            count=len(heard[item]),
            examinations=doubted[item],
            share=doubted[item] / len(heard[item]) if total else 0.0,
            probability=round(means[item], 4),
        )
