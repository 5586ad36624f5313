"""Pictures as SVG: well formed, with title and description, and nothing that only colour tells."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest
from notes.exams import HOSTILE

from dictate.notes.drawing import NO_SIGNS, dot, drawing, label, line, path, safe, tag

SVG = "{http://www.w3.org/2000/svg}"


def test_title_and_description_come_first() -> None:
    """As SVG asks of a picture that is read aloud."""
    root = ET.fromstring(drawing("Title", "What it shows", 10, 20, dot(1, 2, filled=True)))
    assert [child.tag for child in root][:2] == [f"{SVG}title", f"{SVG}desc"]
    assert (root.get("role"), root.get("viewBox")) == ("img", "0 0 10 20")


@pytest.mark.parametrize("text", HOSTILE)
def test_any_text_is_only_text(text: str) -> None:
    """Markup in a dictation draws nothing."""
    root = ET.fromstring(drawing(text, text, 10, 10, label(text, 1, 2)))
    assert [child.tag.removeprefix(SVG) for child in root] == ["title", "desc", "text"]
    shown = "".join(sign for sign in text if (sign >= " " or sign in "\t\n") and sign not in NO_SIGNS)
    assert root[2].text == shown


def test_attributes_are_escaped() -> None:
    """A quotation mark closes nothing."""
    assert ET.fromstring(tag("g", id='a"b<c')).get("id") == 'a"b<c'


def test_only_ink_and_its_absence() -> None:
    """The ink is that of the page, so dark pages and grey printers show the same."""
    marks = (
        dot(1, 1, filled=True)
        + dot(1, 1, filled=False)
        + line(0, 0, 1, 1, dash="2 2")
        + path("M0 0 L1 1")
        + label("x", 1, 1)
    )
    assert set(re.findall(r'(?:fill|stroke)="([^"]+)"', marks)) == {"currentColor", "none"}


def test_signs_that_xml_forbids_are_left_out() -> None:
    """A page with one would not open."""
    assert safe("a\x00b\x0b\ufffec<") == "abc&lt;"
