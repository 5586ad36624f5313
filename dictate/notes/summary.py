"""What stands out: the findings that the top of the note repeats, none that was not dictated."""

from __future__ import annotations

from dataclasses import dataclass

from dictate.grammar import Grammar
from dictate.model import Component, Examination, Finding
from dictate.notes.layout import Part
from dictate.notes.phrases import phrase, short_title, stands_out, title
from dictate.notes.questions import marks_of


@dataclass(frozen=True)
class Standout:
    """The noteworthy findings of one component by item, in the order dictated."""

    component: Component
    items: tuple[tuple[str, tuple[Part, ...]], ...]  # name of the item, what is said of it


def summary(exam: Examination, grammar: Grammar) -> tuple[Standout, ...]:
    """Noteworthy findings by component, in the words of the note."""
    marks = marks_of(exam)
    found: dict[Component, dict[str, list[Part]]] = {component: {} for component in Component}
    for at, finding in enumerate(exam.findings):
        if stands_out(finding, grammar):
            part = Part(phrase(finding, grammar), at, marks.get(at, ()))
            found[finding.component].setdefault(_name(finding, part.text, grammar), []).append(part)
    return tuple(
        Standout(component, tuple((name, tuple(parts)) for name, parts in items.items()))
        for component, items in found.items()
        if items
    )


def _name(finding: Finding, said: str, grammar: Grammar) -> str:
    """The item's name; empty where what is said of it begins with it ("tongue fasciculations")."""
    name = short_title(finding, grammar) if finding.position else title(finding, grammar)
    return "" if said.startswith(f"{name} ") else name
