"""The note and the comparison as one page each: no script, no request, everything escaped by the template."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from dictate.catalogue import note as words
from dictate.grammar import Grammar
from dictate.model import Around, Examination
from dictate.notes.compared import Visits, by_kind, from_to, head, row_texts, trend_text
from dictate.notes.drawing import NO_SIGNS
from dictate.notes.layout import lay_out
from dictate.notes.pictures import pictures_of
from dictate.notes.questions import listed, not_placed, query_text, sections
from dictate.notes.summary import summary
from dictate.notes.text import head as note_head
from dictate.notes.trend_picture import trend_pictures

if TYPE_CHECKING:
    from jinja2 import Environment

NOT_SHOWN = dict.fromkeys(
    (*range(9), 11, 12, *range(14, 32), *range(127, 160), *map(ord, NO_SIGNS))
)  # no sign of any page


def note_html(exam: Examination, grammar: Grammar, *, brief: bool = False, around: Around | None = None) -> str:
    """The note as a page; what stands out is linked to its place. around: what the records say of it."""
    signed = bool(exam.signed_by)
    asked = {heading: listed(exam, severity) for severity, heading in words.QUERIES.items()}
    return _page(
        "note.html",
        title=words.PAGE_TITLE,
        head=note_head(exam),
        around=around or Around(),
        standouts=summary(exam, grammar),
        layout=lay_out(exam, grammar, brief=brief),
        pictures=pictures_of(exam, grammar),
        spoken=sections(exam),
        asked={
            heading: {number: query_text(exam, query) for number, query in queries.items()}
            for heading, queries in asked.items()
            if queries and not signed
        },
        placed=() if signed else not_placed(exam),
    )


def comparison_html(visits: Visits) -> str:
    """The comparison as a page, with a picture of every number over three visits or more."""
    pairs = [
        {
            "name": from_to(visits, at),
            "nothing": not one.changes,
            "kinds": {
                words.KINDS[kind]: {component: row_texts(rows) for component, rows in components.items()}
                for kind, components in by_kind(one).items()
            },
        }
        for at, one in enumerate(visits.comparisons)
    ]
    return _page(
        "comparison.html",
        title=words.COMPARISON.capitalize(),
        head=head(visits),
        pairs=pairs,
        trends=[trend_text(trend) for trend in visits.trends],
        pictures=trend_pictures(visits.trends),
    )


def _page(template: str, **content: object) -> str:
    text: str = _templates().get_template(template).render(words=words, **content)
    return text.translate(NOT_SHOWN)


def _templates() -> Environment:
    from jinja2 import Environment, PackageLoader, StrictUndefined

    pages = Environment(
        loader=PackageLoader("dictate.notes", "."),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    filters: Mapping[str, Any] = {"title_case": _title_case}
    pages.filters.update(filters)
    return pages


def _title_case(heading: str) -> str:
    """A heading of the note as a page writes it: `CRANIAL NERVES` → `Cranial nerves`."""
    name, bracket, rest = heading.partition(" (")
    return (name[:1] + name[1:].lower() if name.isupper() else name) + bracket + rest
