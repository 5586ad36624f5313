"""The note and the comparison as pages."""

from __future__ import annotations

import re
import unicodedata
from html.parser import HTMLParser

import pytest
from by_hand import DEMOS, examination, finding, query, reflex, remark
from hypothesis import HealthCheck, given, settings
from notes.exams import HOSTILE, examinations

from dictate.grammar import Grammar, load_grammar
from dictate.model import Around, Component, Examination, RemarkKind, Side, Status, Text
from dictate.notes import compare_visits, comparison_html, note_html
from dictate.notes.drawing import NO_SIGNS
from dictate.pipeline import examine

KNOWN = set(
    "html head meta title style body header h1 p main section h2 h3 ul li span a footer figure figcaption div table "
    "thead tbody tr th td svg desc text line circle path".split()
)


class Page(HTMLParser):
    """Tags, ids, links and text of a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.ids: list[str] = []
        self.links: list[str] = []
        self.attributes: set[str] = set()
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Collect."""
        named = dict(attrs)
        self.tags.append(tag)
        self.attributes |= set(named)
        if named.get("id"):
            self.ids.append(named["id"] or "")
        if named.get("href"):
            self.links.append(named["href"] or "")

    def handle_data(self, data: str) -> None:
        """Collect."""
        self.text += data


@pytest.mark.parametrize("name", ["clinic-examination", "noisy-queries", "postural-series", "stroke-corrections"])
def test_every_link_leads_to_its_place(name: str, grammar: Grammar) -> None:
    """What stands out to its finding, a mark to its query; every finding has one place."""
    exam = examine([DEMOS / f"{name}.txt"], engine=None, grammar=grammar)
    page = Page(note_html(exam, grammar))
    assert page.links
    assert set(page.links) <= {f"#{name}" for name in page.ids}
    assert len(page.ids) == len(set(page.ids))
    assert sorted(int(one[1:]) for one in page.ids if re.fullmatch(r"f\d+", one)) == list(range(len(exam.findings)))


def test_silent_component_says_so(grammar: Grammar) -> None:
    """As in the text."""
    assert Page(note_html(examination(), grammar)).text.count("nothing dictated") == len(Component)


def test_page_asks_for_nothing_and_runs_nothing(grammar: Grammar) -> None:
    """One file; a policy forbids the rest."""
    page = note_html(examination(reflex("reflex_biceps", "2+", side=Side.LEFT)), grammar)
    assert "default-src 'none'" in page
    assert not re.search(r"<script|<link|<img|<iframe|@import|url\(|src=|https?://(?!www\.w3\.org/2000/svg)", page)


def hostile(text: str) -> Examination:
    """The text everywhere a dictation can put it."""
    return examination(
        finding(Component.MOTOR, "tone", Status.ABNORMAL, value=Text(words=text), detail=(text,), quote=text),
        finding(Component.MOTOR, "strength_all", Status.NORMAL, quote=text),
        finding(Component.REFLEXES, "reflex_biceps", Status.ABNORMAL, value=Text(words=text), side=Side.LEFT),
        patient=text,
        queries=(query(message=text, suggestions=(text,), quote=text),),
        remarks=(remark(RemarkKind.PLAN, text), remark(RemarkKind.NOT_PLACED, text)),
    )


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_is_only_text(text: str, grammar: Grammar) -> None:
    """It adds no tag, no attribute that does something, and is read as it was said."""
    exam = hostile(text)
    page = Page(note_html(exam, grammar))
    assert set(page.tags) <= KNOWN
    assert not [name for name in page.attributes if name.startswith("on") or name == "src"]
    shown = "".join(sign for sign in text if unicodedata.category(sign) != "Cc" or sign in "\t\r\n")
    shown = shown.translate(dict.fromkeys(map(ord, NO_SIGNS)))
    assert " ".join(shown.split()) in " ".join(page.text.split())
    both = Page(comparison_html(compare_visits([exam, examination()], grammar)))
    assert set(both.tags) <= KNOWN


@settings(max_examples=10, deadline=None, suppress_health_check=(HealthCheck.too_slow, HealthCheck.data_too_large))
@given(exam=examinations(load_grammar()))
def test_any_examination_makes_a_page(exam: Examination) -> None:
    """Of known tags only."""
    assert set(Page(note_html(exam, load_grammar())).tags) <= KNOWN


def test_page_says_what_the_records_say_of_the_note(grammar: Grammar) -> None:
    """A withdrawn note says so at its top, an addendum stands below; both are text, whatever was typed."""
    for text in HOSTILE:
        around = Around(banners=(f"WITHDRAWN {text}",), foot=f"Record {text}", additions=(f"ADDENDUM\n  {text}",))
        page = Page(note_html(examination(signed_by="A"), grammar, around=around))
        assert set(page.tags) <= KNOWN
        assert not [name for name in page.attributes if name.startswith("on") or name == "src"]
        places = [page.text.index(part) for part in ("WITHDRAWN", "Signed by A", "Added after signing", "ADDENDUM")]
        assert places == sorted(places)
    assert "Added after signing" not in note_html(examination(signed_by="A"), grammar)


def test_comparison_page_draws_trends(grammar: Grammar) -> None:
    """Three visits, a picture and its table."""
    exams = [examine([DEMOS / "clinic-examination.txt"], engine=None, grammar=grammar)] * 2
    page = Page(comparison_html(compare_visits(exams, grammar)))
    assert "No statement changed" in page.text
    assert "svg" not in page.tags
