"""A catalogue in a language that nobody speaks, every word marked; prints what the program then writes.

`python pseudo_language.py TEXT EARLIER` in a process of its own: the catalogue is replaced
before any module takes from it.
"""

from __future__ import annotations

import json
import re
import sys
from pathlib import Path
from types import ModuleType
from typing import Any

from dictate.catalogue import figures, note, queries

MARK = "\u0292"  # in front of every word of the catalogue; no dictation holds it
KEYS = {"INSIDE", "TURNING", "TOLD", "ABBREVIATIONS", "LANGUAGE"}  # ids of the grammar and of the page, no words
PROSE = re.compile(r"(\{[^{}]*\})|([^\W\d_]+)")


def marked(value: Any) -> Any:
    """The same constant with every word of its texts marked; what stands in braces and the keys stay."""
    if isinstance(value, str):
        return PROSE.sub(lambda found: found[1] or MARK + found[2], value)
    if isinstance(value, dict):
        return {key: marked(one) for key, one in value.items()}
    return type(value)(marked(one) for one in value) if type(value) in (tuple, list) else value


def replace(module: ModuleType) -> None:
    """Every constant of a catalogue in the other language."""
    for name, value in list(vars(module).items()):
        if name.isupper() and name not in KEYS:
            setattr(module, name, marked(value))


def written(text: Path, earlier: Path) -> dict[str, str]:
    """Everything that is handed on, by its name."""
    from dictate.grammar import load_grammar
    from dictate.notes import compare_visits, comparison_html, comparison_text, note_html, write_note
    from dictate.pipeline import examine

    grammar = load_grammar()
    now, before = (examine([path], engine=None, grammar=grammar) for path in (text, earlier))
    comparison = compare_visits((before, now), grammar)
    return {
        "note": write_note(now, grammar),
        "brief": write_note(now, grammar, brief=True),
        "page": note_html(now, grammar),
        "comparison": comparison_text(comparison),
        "comparison page": comparison_html(comparison),
    }


if __name__ == "__main__":
    for one in (note, queries, figures):
        replace(one)
    json.dump(written(Path(sys.argv[1]), Path(sys.argv[2])), sys.stdout)
