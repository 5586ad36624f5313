"""A small grammar, and findings made by hand."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from dictate.checks import run_checks
from dictate.grammar import CommonFile, ComponentFile, Grammar, Item, Scale, Scope, ScopeItem
from dictate.grammar.schema import CommonWords, Limits, Noteworthy
from dictate.model import (
    Acuity,
    Choice,
    Component,
    Evidence,
    Examination,
    Finding,
    Grade,
    Position,
    Pressure,
    Quantity,
    Query,
    Score,
    Side,
    Status,
    Text,
    Transcript,
    Word,
)

Make = Callable[..., Finding]
C = Component
ITEMS: dict[Component, dict[str, Item]] = {
    C.GENERAL: {
        "blood_pressure": Item(name="blood pressure", kind="pressure", sided="may", positions=True, unit="mm[Hg]"),
        "heart_rate": Item(
            name="heart rate",
            kind="quantity",
            positions=True,
            unit="/min",
            limits=Limits(low=1, high=299, source="own"),
        ),
        "heart_rhythm": Item(name="rhythm", kind="choice"),
        "temperature": Item(
            name="temperature",
            kind="quantity",
            unit="Cel",
            units={"Cel": ("degrees",), "[degF]": ("fahrenheit",)},
            unit_required=True,
            limits=Limits(low=26, high=45, source="Wang 2020"),
        ),
        "weight": Item(
            name="weight",
            kind="quantity",
            unit="kg",
            units={"kg": ("kilos",), "[lb_av]": ("pounds",)},
            unit_required=True,
            limits=Limits(low=0, high=250, source="Wang 2020"),
        ),
        "murmur": Item(name="murmur", kind="presence", scale="levine"),
        "orthostatic_symptoms": Item(name="orthostatic symptoms", kind="presence", positions=True),
        "general_all": Item(name="general examination", kind="normality", blanket=True),
    },
    C.MENTAL_STATUS: {
        "consciousness": Item(name="consciousness", kind="choice"),
        "speech": Item(name="speech", kind="choice"),
        "gcs_eye": Item(name="eye opening", kind="score", of=4, limits=Limits(low=1, high=4, source="Teasdale 2014")),
        "gcs_verbal": Item(name="verbal", kind="score", of=5, limits=Limits(low=1, high=5, source="Teasdale 2014")),
        "gcs_motor": Item(name="motor", kind="score", of=6, limits=Limits(low=1, high=6, source="Teasdale 2014")),
        "gcs_total": Item(
            name="coma scale", kind="score", of=15, limits=Limits(low=3, high=15, source="Teasdale 2014")
        ),
        "digit_span_forward": Item(name="digit span forward", kind="quantity", terms=("digit span forward",)),
        "digit_span_backward": Item(name="digit span backward", kind="quantity", terms=("digit span backward",)),
        "recall": Item(name="recall", kind="score"),
        "mental_status_all": Item(name="mental status", kind="normality", blanket=True),
    },
    C.CRANIAL_NERVES: {
        "smell": Item(name="smell", kind="normality", sided="may", nerve="I"),
        "visual_acuity": Item(name="visual acuity", kind="acuity", sided="paired", nerve="II"),
        "pupil_size": Item(
            name="pupils", kind="quantity", sided="paired", unit="mm", terms=("pupils", "pupil"), nerve="II/III"
        ),
        "pupil_reaction": Item(name="pupil reaction", kind="choice", sided="paired", nerve="II/III"),
        "ptosis": Item(name="ptosis", kind="presence", sided="paired", nerve="III", units={"mm": ("millimetres",)}),
        "nystagmus": Item(name="nystagmus", kind="presence", sided="may", nerve="VIII"),
        "facial_strength": Item(name="facial strength", kind="normality", sided="paired", nerve="VII"),
        "gag": Item(name="gag", kind="presence", sided="paired", alone=False, nerve="IX X"),
        "cranial_nerves_2_12": Item(name="cranial nerves II to XII", kind="normality", blanket=True),
        "cranial_nerves_3_6": Item(name="cranial nerves III to VI", kind="normality", blanket=True),
        "cranial_nerves_all": Item(name="cranial nerves", kind="normality", blanket=True),
    },
    C.MOTOR: {
        "tone": Item(name="tone", kind="normality", sided="paired", sited=True),
        "tremor": Item(name="tremor", kind="presence", sided="paired", sited=True),
        "dystonia": Item(name="dystonia", kind="presence", sided="may", sited=True),
        "fasciculations": Item(name="fasciculations", kind="presence", sided="paired", sited=True),
        "pronator_drift": Item(name="pronator drift", kind="presence", sided="paired"),
        "finger_taps": Item(name="finger taps", kind="quantity", sided="paired", unit="/(10.s)"),
        "grip_strength": Item(name="grip", kind="quantity", sided="may", unit="kg"),
        "strength_deltoid": Item(name="deltoid", kind="grade", scale="mrc", sided="paired", terms=("deltoid",)),
        "strength_wrist_extensors": Item(
            name="wrist extensors",
            kind="grade",
            scale="mrc",
            sided="paired",
            terms=("wrist extensor", "wrist extensors"),
        ),
        "strength_quadriceps": Item(name="quadriceps", kind="grade", scale="mrc", sided="paired"),
        "strength_upper_limb": Item(
            name="strength of the arms",
            kind="grade",
            scale="mrc",
            sided="paired",
            blanket=True,
            covers=("strength_deltoid", "strength_wrist_extensors"),
        ),
        "strength_all": Item(name="strength", kind="grade", scale="mrc", blanket=True),
        "motor_all": Item(name="motor examination", kind="normality", blanket=True),
    },
    C.SENSORY: {
        "pinprick": Item(name="pinprick", kind="normality", sided="paired", sited=True),
        "sensory_level": Item(name="sensory level", kind="text"),
        "romberg": Item(name="Romberg", kind="choice"),
        "sensory_all": Item(name="sensation", kind="normality", blanket=True),
    },
    C.COORDINATION_GAIT: {
        "gait": Item(name="gait", kind="normality"),
        "finger_nose": Item(name="finger to nose", kind="normality", sided="paired"),
        "coordination_all": Item(name="coordination", kind="normality", blanket=True, covers=("finger_nose",)),
        "nihss_total": Item(name="stroke scale", kind="score", of=42),
        "nihss_facial": Item(name="stroke scale, face", kind="score", of=3),
        "nihss_gaze": Item(name="stroke scale, gaze", kind="score", of=2),
    },
    C.REFLEXES: {
        "reflex_biceps": Item(
            name="biceps jerk", kind="grade", scale="tendon_reflex", sided="paired", terms=("biceps reflex",)
        ),
        "reflex_patellar": Item(
            name="knee jerk", kind="grade", scale="tendon_reflex", sided="paired", terms=("knee jerk",)
        ),
        "reflex_achilles": Item(
            name="ankle jerk",
            kind="grade",
            scale="tendon_reflex",
            sided="paired",
            terms=("ankle jerk",),
            context_terms=("ankles",),
        ),
        "plantar_response": Item(name="plantar response", kind="choice", sided="paired", terms=("plantar",)),
        "abdominal_reflex": Item(
            name="abdominal reflex",
            kind="presence",
            sided="paired",
            alone=False,
            noteworthy=Noteworthy(statuses=("absent",), source="own"),
        ),
        "reflex_all": Item(name="reflexes", kind="grade", scale="tendon_reflex", blanket=True),
        "reflexes_all": Item(name="reflexes", kind="normality", blanket=True),
    },
}
SCALES = {
    "mrc": Scale(
        name="muscle strength",
        grades=("0", "1", "2-", "2", "2+", "3-", "3", "3+", "4-", "4", "4+", "5-", "5"),
        of=5,
        normal=("5",),
        source="MRC 1976",
    ),
    "tendon_reflex": Scale(
        name="tendon reflex",
        grades=("0", "trace", "1+", "2+", "3+", "4+"),
        of=4,
        normal=("1+", "2+", "3+"),
        source="Hallett 1993",
    ),
    "levine": Scale(name="murmur", grades=("1", "2", "3", "4", "5", "6"), of=6, source="Freeman and Levine 1933"),
}
SCOPES = {
    "dizziness": Scope(
        name="dizziness",
        expects=(
            ScopeItem(item="blood_pressure", why="own"),
            ScopeItem(item="nystagmus", why="own"),
            ScopeItem(item="gait", why="own"),
            ScopeItem(item="romberg", why="own"),
        ),
    )
}


@pytest.fixture(scope="session")
def grammar() -> Grammar:
    """A grammar of a few items."""
    words = CommonWords.model_construct(strikes=("strike that",))
    common = CommonFile.model_construct(words=words, plurals=("jerks", "ankles", "plantars", "pupils", "hands", "toes"))
    components = {
        component: ComponentFile(component=component, headings=(component.value,), items=items)
        for component, items in ITEMS.items()
    }
    return Grammar(components=components, common=common, scales=SCALES, scopes=SCOPES, sha256="0" * 64)


def _value(item: Item, value: Any) -> Any:
    """A value written as in a findings table, as its model."""
    if not isinstance(value, str):
        return value
    if item.kind == "pressure":
        systolic, diastolic = value.split("/")
        return Pressure(systolic=int(systolic), diastolic=int(diastolic) if diastolic.isdigit() else None)
    if item.kind == "score":
        points, _, of = value.partition("/")
        if points == "T":
            return Score(points=None, mark="T")
        mark = "T" if points.endswith("T") else ""
        return Score(points=float(points.rstrip("T")), of=float(of) if of else None, mark=mark)
    if item.kind == "quantity":
        return Quantity(number=float(value))
    if item.kind == "grade":
        return Grade(scale=item.scale, grade=value)
    if item.kind == "acuity":
        return Acuity(text=value)
    return Choice(choice=value) if item.kind == "choice" else Text(words=value)


@pytest.fixture
def said(grammar: Grammar) -> Make:
    """Make a finding: said("reflex_patellar", "measured", "3+", side="left", quote="left knee jerk three plus")."""

    def make(item: str, status: str, value: Any = None, *, quote: str = "", **more: Any) -> Finding:
        model = grammar.item(item)
        if "side" in more:
            more["side"] = Side(more["side"])
        if "position" in more:
            more["position"] = Position(more["position"])
        return Finding(
            component=grammar.component_of(item),
            item=item,
            status=Status(status),
            value=_value(model, value),
            unit=more.pop("unit", "" if model.unit_required else model.unit),
            evidence=(Evidence(first=0, last=0, quote=quote or model.name),),
            **more,
        )

    return make


@pytest.fixture
def exam() -> Callable[..., Examination]:
    """Make an examination of findings in the order given, each at its own word."""

    def make(*findings: Finding, **more: Any) -> Examination:
        placed = tuple(
            finding.model_copy(
                update={
                    "evidence": tuple(piece.model_copy(update={"first": at, "last": at}) for piece in finding.evidence)
                }
            )
            for at, finding in enumerate(findings)
        )
        words = tuple(Word(text=f"word{at}") for at in range(len(findings) + 1))
        more.setdefault("transcript", Transcript(words=words))
        return Examination(program="0", grammar_sha256="0" * 64, findings=placed, **more)

    return make


@pytest.fixture
def ask(grammar: Grammar, exam: Callable[..., Examination]) -> Callable[..., tuple[Query, ...]]:
    """The queries of one code about these findings."""

    def run(code: str, *findings: Finding, **more: Any) -> tuple[Query, ...]:
        return tuple(query for query in run_checks(exam(*findings, **more), grammar) if query.code == code)

    return run
