"""The note as PDF."""

from __future__ import annotations

import builtins
import re
import zlib
from typing import Any

import pytest
from by_hand import DEMOS, examination, finding, reflex
from notes.exams import HOSTILE
from notes.test_html import hostile
from weasyprint import HTML

from dictate.errors import MachineError
from dictate.grammar import Grammar
from dictate.model import Component, Position, Pressure, Quantity, Side, Status, Text
from dictate.notes import note_html, note_pdf
from dictate.notes.pdf import _refuse, page_pdf
from dictate.pipeline import examine

ACTIONS = (b"/JavaScript", b"/JS", b"/Launch", b"/URI", b"/EmbeddedFile", b"/AcroForm")
STREAM = re.compile(rb"stream\r?\n(.*?)\r?\nendstream", re.DOTALL)
A4_HIGH = 297 / 25.4 * 96  # pixels


def unpacked(made: bytes) -> bytes:
    """The file with its packed parts unpacked: objects lie in them too."""
    parts = [made]
    for found in STREAM.finditer(made):
        packed = zlib.decompressobj()
        try:
            parts.append(packed.decompress(found[1]))
        except zlib.error:
            continue  # not packed, or a picture
    return b"\n".join(parts)


def actions_in(made: bytes) -> list[bytes]:
    """What a reader of the file could be made to do by it."""
    return [mark for mark in ACTIONS if mark in unpacked(made)]


def test_an_outside_address_would_be_seen() -> None:
    """Objects are packed, so that looking at the bytes of the file alone finds nothing."""
    made = page_pdf('<a href="https://example.org/x">x</a>')
    assert actions_in(made) == [b"/URI"]


def test_note_is_a_pdf(grammar: Grammar) -> None:
    """Made without any request: the test would fail on a socket."""
    made = note_pdf(examination(reflex("reflex_biceps", "3+", side=Side.LEFT)), grammar)
    assert made.startswith(b"%PDF-")
    assert made.rstrip().endswith(b"%%EOF")


def test_hostile_text_makes_a_pdf_without_action(grammar: Grammar) -> None:
    """Text only: no script, no form, no outside address, no file inside."""
    made = note_pdf(hostile(" ".join(HOSTILE)), grammar)
    assert made.startswith(b"%PDF-")
    assert actions_in(made) == []


def test_labels_of_drawings_are_no_group(grammar: Grammar) -> None:
    """Viewers cut the edge of the first sign of a group: 84 looked like 54 in pages made pictures."""
    exam = examination(reflex("reflex_biceps", "3+", side=Side.LEFT))
    assert 'text-anchor="end"' in note_html(exam, grammar)
    made = note_pdf(exam, grammar)
    assert b"/Form" in made
    assert b"/Transparency" not in made


def test_nothing_is_fetched() -> None:
    """Not even a file."""
    with pytest.raises(ValueError, match="fetches nothing"):
        _refuse("file:///etc/hostname")


def test_missing_extra_is_one_line(grammar: Grammar, monkeypatch: pytest.MonkeyPatch) -> None:
    """It says how to get it."""
    real = builtins.__import__

    def without(name: str, *more: Any, **named: Any) -> Any:
        if name == "weasyprint":
            raise ImportError(name)
        return real(name, *more, **named)

    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(MachineError, match=r"pip install 'dictate\[pdf\]'"):
        note_pdf(examination(), grammar)


@pytest.mark.parametrize("name", ["clinic-examination", "noisy-queries", "postural-series", "stroke-corrections"])
def test_pages_are_well_used(name: str, grammar: Grammar) -> None:
    """No heading is the last of its page, and the last page holds more than a query and the foot."""
    exam = examine([DEMOS / f"{name}.txt"], engine=None, grammar=grammar)
    pages = [_lines(page._page_box) for page in HTML(string=note_html(exam, grammar)).render().pages]
    for lines in pages[:-1]:
        _, last = max(lines)
        assert last not in {"h2", "h3", "figcaption"}
    lowest, _ = max(pages[-1])
    assert lowest > 0.4 * A4_HIGH


def _lines(page: Any) -> list[tuple[float, str]]:
    """Foot of each line of text in pixels from the top of the page, and its element; without the page's number."""
    boxes = [box for box in page.descendants() if type(box).__name__ == "TextBox" and box.element_tag]
    return [(box.position_y + box.height, box.element_tag) for box in boxes if not box.element_tag.startswith("@")]


@pytest.mark.parametrize("word", ["lightheaded", "x" * 90])
def test_words_of_a_table_stay_whole_and_on_the_paper(word: str, grammar: Grammar) -> None:
    """ "lightheade" and "d" stood in two lines; a word longer than its column is cut rather than lost at the edge."""
    said = (
        finding(Component.GENERAL, "blood_pressure", Status.MEASURED, position=Position.SUPINE,
                value=Pressure(systolic=152, diastolic=88), unit="mm[Hg]"),
        finding(Component.GENERAL, "blood_pressure", Status.MEASURED, position=Position.STANDING, minutes=1.0,
                value=Pressure(systolic=130, diastolic=80), unit="mm[Hg]"),
        finding(Component.GENERAL, "heart_rate", Status.MEASURED, position=Position.STANDING, minutes=1.0,
                value=Quantity(number=82), unit="/min"),
        finding(Component.GENERAL, "orthostatic_symptoms", Status.PRESENT, position=Position.STANDING, minutes=1.0,
                value=Text(words=word)),
    )  # fmt: skip
    made = HTML(string=note_html(examination(*said), grammar), url_fetcher=_refuse).render()
    boxes = [box for page in made.pages for box in page._page_box.descendants()]
    cells = [box for box in boxes if box.element_tag == "td"]
    right = max(box.position_x + box.border_width() for box in cells)
    assert right <= made.pages[0].width
    lines = [box.text for cell in cells for box in cell.descendants() if hasattr(box, "text")]
    assert (word in lines) is (len(word) < 20)
    assert word in "".join(lines)
