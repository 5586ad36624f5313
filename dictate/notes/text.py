"""Examination → the note as plain text, in fixed order of components."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.model import Component, Examination, RemarkKind
from dictate.notes.layout import Layout, Line, Part, lay_out
from dictate.notes.phrases import STAY, age_line, one_line, visible
from dictate.notes.questions import clock, listed, not_placed, query_text, sections
from dictate.notes.summary import summary

WIDTH = 100
__all__ = ["WIDTH", "clock", "head", "section_text", "write_note"]


def write_note(exam: Examination, grammar: Grammar, *, brief: bool = False) -> str:
    """The note. brief: what is plainly normal, absent or not examined shares a line."""
    lines = [line for part in head(exam) for line in _wrap(part, depth=0)]
    lines += [*_summary(exam, grammar), *_components(lay_out(exam, grammar, brief=brief)), *_sections(exam)]
    if not exam.signed_by:
        lines += [*_queries(exam), *_not_placed(exam)]
    lines += ["", *textwrap.wrap(words.CAUTION, WIDTH)]
    return visible("\n".join(lines).replace(STAY, " ")) + "\n"


def head(exam: Examination) -> tuple[str, ...]:
    """State, people, patient, age and time of examination, a line each."""
    count = len(exam.open_queries)
    queries = words.ONE_QUERY if count == 1 else words.QUERY_COUNT.format(count=count)
    first = _signature(exam) if exam.signed_by else words.DRAFT.format(count=queries)
    people = ((form, getattr(exam, name)) for name, form in words.PEOPLE.items())
    who = [form.format(name=one_line(name)) for form, name in people if name]
    time = words.NOT_STATED
    if exam.examined_at is not None:
        stamp = exam.examined_at.isoformat(sep=" ", timespec="minutes")
        time = words.EXAMINED.format(time=stamp, origin=words.EXAMINED_FROM[exam.examined_at_from])
    return first, *who, _patient(exam), *filter(None, (age_line(exam.person),)), time


def _patient(exam: Examination) -> str:
    """The reference given; else what was dictated as one, which nobody confirmed."""
    if exam.patient:
        return words.PATIENT.format(patient=one_line(exam.patient))
    spoken = [one.evidence.quote for one in exam.remarks if one.kind is RemarkKind.REFERENCE]
    quote = "; ".join(one_line(quote).strip(" ,.;:") for quote in dict.fromkeys(spoken))
    return words.PATIENT_SPOKEN.format(quote=quote) if quote else words.NO_PATIENT


def _signature(exam: Examination) -> str:
    at = exam.signed_at
    time = "" if at is None else words.SIGNED_AT.format(time=at.isoformat(sep=" ", timespec="minutes"))
    return words.SIGNED.format(name=one_line(exam.signed_by), time=time)


def marked(part: Part) -> str:
    """A part of a line with the numbers of its queries."""
    return STAY.join((part.text, *(f"[?{number}]" for number in part.marks)))


def _summary(exam: Examination, grammar: Grammar) -> list[str]:
    out = []
    for one in summary(exam, grammar):
        said = "; ".join(f"{name} {', '.join(map(marked, parts))}".strip() for name, parts in one.items)
        out += _wrap(f"{words.NAMES[one.component]}: {said}", depth=1)
    return ["", words.NOTEWORTHY, *out] if out else []


def section_text(layout: Layout, component: Component) -> str:
    """The lines of one component, without its heading."""
    lines = [text for line in layout.components[component] for text in _finish(line)] or _wrap(words.NOTHING, depth=1)
    return "\n".join(lines).replace(STAY, " ")


def _components(layout: Layout) -> list[str]:
    out: list[str] = []
    for component in layout.components:
        out += ["", words.COMPONENTS[component], section_text(layout, component)]
    for figure in layout.loose:
        out += _wrap(words.COMPUTED.format(text=one_line(figure)), depth=1)
    return out


def _finish(line: Line) -> Iterator[str]:
    yield from _wrap(f"{line.label} {line.between.join(map(marked, line.parts))}".strip(), depth=line.depth)
    for figure in line.computed:
        yield from _wrap(words.COMPUTED.format(text=one_line(figure)), depth=line.depth + 1)


def _sections(exam: Examination) -> list[str]:
    out: list[str] = []
    for heading, quotes in sections(exam).items():
        out += ["", heading, *(text for quote in quotes for text in _wrap(quote, depth=1))]
    return out


def _queries(exam: Examination) -> list[str]:
    out: list[str] = []
    for severity, heading in words.QUERIES.items():
        shown = listed(exam, severity)
        if shown:
            out += ["", heading]
            for number, query in shown.items():
                out += _wrap(f"[?{number}] {query_text(exam, query)}", depth=1)
    return out


def _not_placed(exam: Examination) -> list[str]:
    out: list[str] = []
    for one in not_placed(exam):
        out += _wrap(one.text + ("" if one.query is None else f" [?{one.query}]"), depth=1)
    return ["", words.NOT_PLACED, *out] if out else []


def _wrap(text: str, *, depth: int) -> list[str]:
    indent = "  " * depth
    return textwrap.wrap(
        text,
        WIDTH,
        initial_indent=indent,
        subsequent_indent=indent + "    ",
        break_long_words=False,
        break_on_hyphens=False,
    )
