"""The sentences of figures; and that nothing a reader sees is written outside the catalogue."""

from __future__ import annotations

import ast
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
from by_hand import ROOT

ROOMS = ("notes", "reckoning", "checks")
SPEAKING = ("reckoning", "checks")  # rooms whose f-strings become sentences; in notes they are markup too
MODULES = [path for room in ROOMS for path in sorted((ROOT / "dictate" / room).glob("*.py"))]
DOCUMENTING = {"InputError", "MachineError", "ValueError", "rule", "check"}  # faults, and what becomes the manual
NO_WORDS = re.compile(
    r"%|<|https?:|urn:|^[a-z_, ]+$|\\|[{}]|^[A-Z ]+$|\d{4}"
)  # patterns, markup, addresses, ids, sources
SEVERAL = re.compile(r"[A-Za-z]{2,} [A-Za-z]{2,}")


def spoken(tree: ast.AST, *, pieces: bool) -> Iterator[str]:
    """Texts that may reach a reader. pieces: a single word between two braces counts too."""
    silent = {id(part) for call in ast.walk(tree) if isinstance(call, ast.Call)
              and getattr(call.func, "id", "") in DOCUMENTING for part in ast.walk(call)}  # fmt: skip
    silent |= {id(one.value) for one in ast.walk(tree) if isinstance(one, ast.Expr)}
    for one in ast.walk(tree):
        if id(one) in silent:
            continue
        if isinstance(one, ast.Constant) and isinstance(one.value, str):
            if SEVERAL.search(one.value) and not NO_WORDS.search(one.value):
                yield one.value
        elif pieces and isinstance(one, ast.JoinedStr):
            said = "".join(part.value for part in one.values if isinstance(part, ast.Constant))
            if re.search(r"[A-Za-z]{2}", said) and not re.search(r"\d{4}", said):  # a year: a source
                yield said


@pytest.mark.parametrize("path", [path for path in MODULES if path.name != "codes.py"], ids=lambda path: path.stem)
def test_no_sentence_stands_outside_the_catalogue(path: Path) -> None:
    """Another language is a translation, not a change of code."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    assert list(spoken(tree, pieces=path.parent.name in SPEAKING)) == []


def test_a_sentence_outside_is_found() -> None:
    """The search finds one, and leaves faults, rules and docstrings alone."""
    code = 'def a():\n    """Some words here."""\n    raise InputError("It is wrong")\n'
    code += 'rule("some figure of it")\nx = "Nothing was said"\ny = f"{x} arm"'
    assert list(spoken(ast.parse(code), pieces=True)) == ["Nothing was said", " arm"]


def test_every_sentence_is_used() -> None:
    """A catalogue holds no words that nobody says."""
    package = ROOT / "dictate"
    code = " ".join(path.read_text(encoding="utf-8") for path in (*package.rglob("*.py"), *package.rglob("*.html")))
    said = Counter(re.findall(r"[A-Z_]+", code))
    for path in (package / "catalogue").glob("*.py"):
        names = re.findall(r"^([A-Z_]+) = ", path.read_text(encoding="utf-8"), re.MULTILINE)
        assert [name for name in names if said[name] < 2] == []
