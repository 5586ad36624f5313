"""Examinations that hypothesis makes up: anything a dictation could hold, and text meant to do harm."""

from __future__ import annotations

from datetime import UTC, datetime

from hypothesis import strategies as st

from dictate.grammar import Grammar
from dictate.model import (
    Acuity,
    Certainty,
    Choice,
    Decision,
    Evidence,
    Examination,
    Figure,
    Finding,
    Grade,
    Position,
    Pressure,
    Quantity,
    Query,
    Remark,
    RemarkKind,
    Score,
    Severity,
    Side,
    Source,
    Status,
    Text,
    Transcript,
    Value,
    Word,
)

HOSTILE = (
    '<script>alert("x")</script>',
    "</pre></div><img src=x onerror=alert(1)>",
    "]]><!DOCTYPE a [<!ENTITY b SYSTEM 'file:///c'>]>&b;",
    '=HYPERLINK("http://example.org","x")',
    "{{ 7*7 }}{% raw %}",
    "@SUM(1)\t|cmd",
    "a\x00b\x0b\x1f\ufffe",
    "\u202e\u2028 é ü 手",
    "\r=1+1",
    "\x1b[2J\x7f\x9b31m",
    "\u200f4-\u200f",
    "\U0001f9e0\U0001f469\u200d\u2695\ufe0f 'quoted' \"twice\" & `so`",
    "w" * 300,
    "4-",
)
words = st.sampled_from(HOSTILE) | st.text(st.characters(codec="utf-8"), min_size=1, max_size=12)
numbers = st.integers(0, 300).map(float) | st.floats(0, 300, width=16).map(lambda number: round(number, 2))
values = st.one_of(
    st.builds(Pressure, systolic=st.integers(40, 260), diastolic=st.none() | st.integers(20, 160)),
    st.builds(Quantity, number=numbers, note=st.sampled_from(("", "beats", "10 m in"))),
    st.builds(Quantity, number=numbers, then=numbers),
    st.builds(Quantity, number=numbers, upto=numbers),
    st.builds(Grade, scale=st.sampled_from(("mrc", "tendon_reflex", "ashworth")),
              grade=st.sampled_from(("0", "trace", "1+", "2+", "4-", "4", "5", "7+"))),
    st.builds(Score, points=st.none() | numbers, of=st.none() | numbers, mark=st.sampled_from(("", "T"))),
    st.builds(Acuity, text=st.sampled_from(("20/30", "6/9", "counting fingers"))),
    st.builds(Choice, choice=st.sampled_from(("flexor", "extensor", "irregularly_irregular"))),
    st.builds(Text, words=words),
)  # fmt: skip
evidences = st.builds(
    Evidence, first=st.just(0), last=st.just(0), quote=words, start_s=st.none() | numbers, end_s=st.none() | numbers
)


def findings(grammar: Grammar, *, value: st.SearchStrategy[Value | None] | None = None) -> st.SearchStrategy[Finding]:
    """A finding of any item."""
    return st.sampled_from(sorted(grammar.items)).flatmap(
        lambda item: st.builds(
            Finding,
            component=st.just(grammar.component_of(item)),
            item=st.just(item),
            side=st.none() | st.sampled_from(Side),
            site=st.sampled_from(("", "great_toe", "ankle", "t10", "stairs")),
            position=st.none() | st.sampled_from(Position),
            minutes=st.none() | st.sampled_from((0.0, 1.0, 2.5)),
            status=st.sampled_from(Status),
            certainty=st.sampled_from(Certainty),
            value=value or (st.none() | values),
            unit=st.sampled_from(("", "mm[Hg]", "/min", "s", "/(10.s)", "Cel")),
            detail=st.lists(words, max_size=2).map(tuple),
            excepted=st.booleans(),
            corrected=st.lists(words, max_size=1).map(tuple),
            readings=st.lists(words, max_size=1).map(tuple),
            evidence=st.lists(evidences, min_size=1, max_size=2).map(tuple),
        )
    )


def examinations(grammar: Grammar, *, most: int = 6) -> st.SearchStrategy[Examination]:
    """An examination with all that it can hold."""
    return st.builds(
        Examination,
        program=st.sampled_from(("1.0", "2.0b1")),
        grammar_sha256=st.just("a" * 64),
        patient=st.sampled_from(("", "P-17", *HOSTILE)),
        examined_at=st.sampled_from((None, datetime(2026, 3, 4, 14, 5), datetime(2026, 3, 4, 14, 5, tzinfo=UTC))),
        examined_at_from=st.sampled_from(("option", "spoken", "recording", "")),
        scope=st.sampled_from(("", "dizziness")),
        transcript=st.builds(
            Transcript,
            words=st.lists(st.builds(Word, text=words), min_size=1, max_size=3).map(tuple),
            sources=st.lists(
                st.builds(Source, name=words, kind=st.sampled_from(("recording", "text")), sha256=st.just("b" * 64)),
                min_size=1, max_size=2,
            ).map(tuple),
        ),
        findings=st.lists(findings(grammar), max_size=most).map(tuple),
        remarks=st.lists(
            st.builds(Remark, kind=st.sampled_from(RemarkKind), evidence=evidences), max_size=2
        ).map(tuple),
        figures=st.lists(
            st.builds(Figure, name=words, text=words, formula=words, source=words, value=st.none() | numbers,
                      unit=st.sampled_from(("", "mm[Hg]"))), max_size=1,
        ).map(tuple),
        queries=st.lists(
            st.builds(Query, code=st.just("side-missing"), severity=st.sampled_from(Severity), message=words,
                      quote=words, suggestions=st.lists(words, max_size=2).map(tuple)), max_size=2,
        ).map(tuple),
        decisions=st.lists(st.builds(Decision, query=st.just(0), answer=words), max_size=1).map(tuple),
        signed_by=st.sampled_from(("", "A. Examiner", HOSTILE[0])),
    )  # fmt: skip
