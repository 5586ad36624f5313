"""Another language is a translation of the catalogue: no English of the program's own stands anywhere else.

Source: none; a method of localisation known as pseudo-localisation (common practice).
"""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path

import pytest
from by_hand import DEMOS
from notes.pseudo_language import MARK, marked

from dictate.grammar import Grammar

ROOT = Path(__file__).parents[2]
# Symbols, names of scales and of their authors, which no language translates; ids that pages and codes carry.
SYMBOLS = set("logmar dix hallpike hoffmann ucum sha".split())


class Shown(HTMLParser):
    """What a page shows or reads aloud: text outside styles, and labels."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.words: list[str] = []
        self.inside = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Labels are read aloud."""
        self.inside = tag
        self.words += [value or "" for name, value in attrs if name in ("aria-label", "title", "alt")]

    def handle_data(self, data: str) -> None:
        """Text."""
        if self.inside != "style":
            self.words.append(data)


def test_marks_words_and_leaves_places_for_values() -> None:
    """Else the proof would prove nothing."""
    assert marked({"a b": ("at {minutes} min", "/(10.s)")}) == {
        "a b": (f"{MARK}at {{minutes}} {MARK}min", f"/(10.{MARK}s)")
    }


@pytest.mark.parametrize("demo", sorted(path.stem for path in DEMOS.glob("*.txt")))
def test_only_dictated_words_and_names_of_the_grammar_stay(demo: str, grammar: Grammar) -> None:
    """Note, brief note, page, queries and comparison; the PDF is printed from the page."""
    sources = [DEMOS / f"{demo}.txt", DEMOS / "clinic-examination.txt"]
    done = subprocess.run(
        [sys.executable, str(Path(__file__).with_name("pseudo_language.py")), *map(str, sources)],
        capture_output=True, text=True, check=True,
        env=os.environ | {"PYTHONPATH": str(ROOT), "PYTHONIOENCODING": "utf-8"},
    )  # fmt: skip
    dictated = " ".join(path.read_text(encoding="utf-8") for path in sources)
    allowed = SYMBOLS | _words(dictated) | _words(" ".join(_names(grammar)))
    for name, text in json.loads(done.stdout).items():
        shown = " ".join(Shown(text).words) if "page" in name else text
        assert MARK in shown
        plain = {word for word in re.findall(r"[^\W\d_]{2,}", shown) if word[0].lower() != MARK}
        assert {word.lower() for word in plain} - allowed == set(), name


def _words(text: str) -> set[str]:
    return {word.lower() for word in re.findall(r"[^\W\d_]+", text)}


def _names(grammar: Grammar) -> list[str]:
    """What the grammar calls items, nerves, places and units: translated there, in files of its own, or nowhere."""
    items = grammar.items.values()
    named = [text for one in items for text in (one.name, one.nerve, one.unit, *one.units, *one.values, *one.named)]
    named += [one.supply.nerve for one in items if one.supply]
    return [one.replace("_", " ") for one in named]
