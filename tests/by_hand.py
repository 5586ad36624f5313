"""Models made by hand, and a grammar of a few items: a test needs neither recogniser nor reader."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, get_origin

from dictate.grammar import CommonFile, ComponentFile, Grammar, Item
from dictate.grammar.schema import CommonWords
from dictate.model import (
    Component,
    Evidence,
    Examination,
    Figure,
    Finding,
    Grade,
    Query,
    Remark,
    RemarkKind,
    Severity,
    Source,
    Status,
    Transcript,
    Word,
)

ROOT = Path(__file__).parent.parent
DEMOS = ROOT / "demo_audio"


def evidence(quote: str = "as said", *, first: int = 0, start_s: float | None = None) -> Evidence:
    """Words of the transcript; two seconds long where they have a time."""
    end_s = None if start_s is None else start_s + 2
    return Evidence(first=first, last=first + len(quote.split()) - 1, quote=quote, start_s=start_s, end_s=end_s)


def finding(component: Component, item: str, status: Status, *, quote: str = "as said", **more: Any) -> Finding:
    """A finding with one piece of evidence."""
    more.setdefault("evidence", (evidence(quote),))
    return Finding(component=component, item=item, status=status, **more)


def reflex(item: str, grade: str, **more: Any) -> Finding:
    """A graded tendon reflex."""
    value = Grade(scale="tendon_reflex", grade=grade)
    return finding(Component.REFLEXES, item, Status.MEASURED, value=value, **more)


def transcript(text: str = "as said") -> Transcript:
    """A typed transcript."""
    words = tuple(Word(text=part) for part in text.split())
    return Transcript(words=words, sources=(Source(name="text", kind="text", sha256="0" * 64),))


def examination(*findings: Finding, **more: Any) -> Examination:
    """An examination without provenance worth naming."""
    more.setdefault("transcript", transcript())
    return Examination(program="0", grammar_sha256="0" * 64, findings=findings, **more)


def query(code: str = "side-missing", message: str = "which side?", **more: Any) -> Query:
    """An open query that must be settled."""
    more.setdefault("severity", Severity.MUST)
    return Query(code=code, message=message, **more)


def figure(text: str, *inputs: int) -> Figure:
    """A computed figure."""
    return Figure(name="figure", text=text, inputs=inputs)


def remark(kind: RemarkKind, quote: str, **more: Any) -> Remark:
    """Words that became no finding."""
    return Remark(kind=kind, evidence=evidence(quote, **more))


def small_grammar(**more: Item) -> Grammar:
    """A grammar with the items that the tests of the note speak of; `more` goes to the general component."""
    items: dict[Component, dict[str, Item]] = {
        Component.GENERAL: {
            "blood_pressure": Item(name="blood pressure", kind="pressure", sided="may", positions=True),
            "heart_rate": Item(name="heart rate", kind="quantity", positions=True),
            "orthostatic_symptoms": Item(name="orthostatic symptoms", kind="presence", positions=True),
            "lungs": Item(name="lungs", kind="normality"),
            "cyanosis": Item(name="cyanosis", kind="presence"),
            **more,
        },
        Component.MENTAL_STATUS: {"recall": Item(name="recall", kind="score")},
        Component.CRANIAL_NERVES: {
            "pupil_size": Item(name="pupil size", kind="quantity", sided="paired", nerve="II/III"),
            "hearing": Item(name="hearing", kind="normality", sided="paired", nerve="VIII"),
            "facial_sensation": Item(name="facial sensation", kind="normality", sided="paired", nerve="V"),
            "cranial_nerves_2_12": Item(name="cranial nerves II to XII", kind="normality", blanket=True),
        },
        Component.MOTOR: {"strength_all": Item(name="strength", kind="grade", scale="mrc", blanket=True)},
        Component.SENSORY: {"vibration": Item(name="vibration", kind="quantity", sided="paired", sited=True)},
        Component.COORDINATION_GAIT: {
            "gait": Item(name="gait", kind="normality"),
            "heel_shin": Item(name="heel to shin", kind="normality", sided="paired"),
        },
        Component.REFLEXES: {
            "reflex_biceps": Item(name="biceps reflex", kind="grade", scale="tendon_reflex", sided="paired"),
            "plantar_response": Item(name="plantar response", kind="choice", sided="paired"),
        },
    }
    return Grammar(
        components={c: ComponentFile(component=c, headings=(c.value,), items=named) for c, named in items.items()},
        common=_common(),
        scales={},
        scopes={},
        sha256="0" * 64,
    )


def _common() -> CommonFile:
    """Every list and mapping empty, but for the words of doubt."""
    empty = {name: {} if get_origin(of.annotation) is dict else [] for name, of in CommonFile.model_fields.items()}
    spoken = {key: [] for key in CommonWords.model_fields} | {"hedges": ["possible", "probably", "i think"]}
    return CommonFile.model_validate_json(json.dumps({**empty, "words": spoken}))
