"""The catalogue of the note's words."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest
from by_hand import ROOT

from dictate.model import Component, Position, RemarkKind, Side, Status
from dictate.notes import words


def test_every_kind_has_its_word() -> None:
    """No component, side, position or status can reach the note without a word."""
    assert list(words.COMPONENTS) == list(Component)
    assert set(words.SIDES) == set(Side)
    assert set(words.POSITIONS) == set(Position)
    assert set(words.STATUSES) == set(Status)


def test_statuses_are_told_apart() -> None:
    """No two statuses read alike."""
    assert len(set(words.STATUSES.values())) == len(Status)


def test_only_spoken_sections_are_kept_outside() -> None:
    """Talk and words not placed are no section of a note."""
    assert set(words.SECTIONS) == {RemarkKind.KEPT, RemarkKind.HISTORY, RemarkKind.IMPRESSION, RemarkKind.PLAN}


NOTES = sorted((ROOT / "dictate" / "notes").glob("*.py"))
FAULTS = {"InputError", "MachineError", "ValueError"}
NO_WORDS = re.compile(r"%|<|https?:|urn:|^[a-z_ ]+$|\\|[{}]")  # patterns, markup, addresses, lists of ids


def sentences(tree: ast.AST) -> list[str]:
    """Texts of several words that may reach a reader; faults are not part of a note, docstrings are of none."""
    silent = {id(part) for call in ast.walk(tree) if isinstance(call, ast.Call)
              and getattr(call.func, "id", "") in FAULTS for part in ast.walk(call)}  # fmt: skip
    silent |= {id(one.value) for one in ast.walk(tree) if isinstance(one, ast.Expr)}
    texts = [one for one in ast.walk(tree) if isinstance(one, ast.Constant) and isinstance(one.value, str)]
    said = [one.value for one in texts if id(one) not in silent]
    return [text for text in said if re.search(r"[A-Za-z]{2,} [A-Za-z]{2,}", text) and not NO_WORDS.search(text)]


@pytest.mark.parametrize("path", [path for path in NOTES if path.name not in ("words.py", "codes.py")], ids=str)
def test_no_sentence_stands_outside_the_catalogue(path: Path) -> None:
    """Another language is a translation, not a change of code."""
    assert sentences(ast.parse(path.read_text(encoding="utf-8"))) == []


def test_a_sentence_outside_is_found() -> None:
    """The search finds one, and leaves faults and docstrings alone."""
    code = 'def a():\n    """Some words here."""\n    raise InputError("It is wrong")\nx = "Nothing was said"'
    assert sentences(ast.parse(code)) == ["Nothing was said"]
