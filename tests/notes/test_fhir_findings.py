"""One finding or computed figure ↔ one FHIR Observation."""

from __future__ import annotations

import pytest
from by_hand import figure, finding, reflex

from dictate.grammar import Grammar
from dictate.model import Certainty, Component, Finding, Position, Quantity, Score, Side, Status, Text
from dictate.notes import codes
from dictate.notes.fhir_findings import (
    Frame,
    figure_observation,
    figure_of,
    finding_of,
    narrative,
    observation,
    rest_of,
)

FRAME = Frame("preliminary", {"display": "x"})


@pytest.mark.parametrize("status", Status)
@pytest.mark.parametrize("certainty", Certainty)
def test_every_status_reads_back(status: Status, certainty: Certainty, grammar: Grammar) -> None:
    """With and without a value."""
    for value in (None, Text(words="slow")):
        one = finding(Component.MOTOR, "tone", status, certainty=certainty, value=value, side=Side.LEFT, site="arm")
        assert finding_of(observation(one, grammar, FRAME)) == one


def test_extension_holds_only_what_fhir_cannot(grammar: Grammar) -> None:
    """Of a plain grade that is the evidence alone."""
    one = reflex("reflex_biceps", "2+", side=Side.LEFT, detail=("with reinforcement",))
    assert set(rest_of(observation(one, grammar, FRAME), codes.IS_FINDING)) == {"evidence"}


def test_place_position_and_time(grammar: Grammar) -> None:
    """As own codes with plain words."""
    one = finding(Component.GENERAL, "heart_rate", Status.MEASURED, position=Position.STANDING, minutes=3.0)
    content = observation(one, grammar, FRAME)
    assert {part["url"] for part in content["extension"]} == {
        codes.BODY_POSITION, "urn:dictate:minutes-standing", codes.IS_FINDING,
    }  # fmt: skip


@pytest.mark.parametrize(
    ("item", "unit", "category"),
    [("weight", "kg", "vital-signs"), ("weight", "[stone_av]", "exam"), ("tone", "", "exam")],
)
def test_category(item: str, unit: str, category: str, grammar: Grammar) -> None:
    """A vital sign in a unit that the profile forbids claims to be none."""
    one = Finding.model_validate(
        finding(grammar.component_of(item), item, Status.MEASURED, value=Text(words="x"), unit=unit).model_dump()
    )
    assert observation(one, grammar, FRAME)["category"][0]["coding"][0]["code"] == category


def test_a_scale_has_a_code_of_its_own(grammar: Grammar) -> None:
    """EDSS and MMSE share their items with other scales; a receiver must not put them in one row."""
    codings = {}
    for item, name in (("named_score", "EDSS"), ("cognitive_total", "MMSE"), ("cognitive_total", "total")):
        one = finding(Component.MENTAL_STATUS, item, Status.MEASURED, value=Score(points=3.5), detail=(name,))
        content = observation(one, grammar, FRAME)["code"]
        codings[name] = content["text"], [(part["system"], part["code"]) for part in content["coding"][1:]]
    assert codings == {
        "EDSS": ("EDSS", [("urn:dictate:named-scale", "EDSS")]),
        "MMSE": ("MMSE", [("urn:dictate:named-scale", "MMSE"), (codes.LOINC, "72106-8")]),
        "total": ("cognitive total", []),
    }


def test_figure_names_its_sources() -> None:
    """And reads back."""
    one = figure("mean pressure 100 mmHg", 0)
    content = figure_observation(one, FRAME, ["urn:uuid:1"])
    assert content["derivedFrom"] == [{"reference": "urn:uuid:1"}]
    assert figure_of(content) == one


def test_narrative_is_escaped() -> None:
    """Markup is text."""
    assert "&lt;b&gt;" in narrative("<b>")["div"]


def test_a_number_said_as_about_so_much(grammar: Grammar) -> None:
    """As a note beside the number, for R4 has no comparator for it; read back it is no detail."""
    quote = "respiratory rate about 32 at rest"
    one = finding(
        Component.GENERAL, "respiratory_rate", Status.MEASURED, value=Quantity(number=32), unit="/min",
        detail=("at rest",), quote=quote,
    )  # fmt: skip
    content = observation(one, grammar, FRAME)
    assert content["note"] == [{"text": "about"}, {"text": "at rest"}]
    assert finding_of(content) == one
