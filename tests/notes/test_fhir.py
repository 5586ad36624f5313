"""Examination ↔ FHIR R4 document: valid by three outside readers, and the same examination when read back."""

from __future__ import annotations

import builtins
import json
import sys
import xml.etree.ElementTree as ET
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from by_hand import DEMOS, examination, finding, reflex, remark
from hypothesis import HealthCheck, given, settings
from notes.exams import HOSTILE, examinations
from notes.outside import general_library, official_schema, schema_faults

from dictate.errors import InputError, MachineError
from dictate.grammar import Grammar, load_grammar
from dictate.model import (
    Around,
    Certainty,
    Component,
    Examination,
    Position,
    Pressure,
    RemarkKind,
    Side,
    Source,
    Status,
    Text,
    Transcript,
)
from dictate.notes import codes
from dictate.notes.fhir import bundle_of, examination_of, note_fhir, validate
from dictate.pipeline import examine

NOW = datetime(2026, 3, 5, 9, 0, tzinfo=UTC)
NAMES = ("clinic-examination", "noisy-queries", "postural-series", "stroke-corrections")
QUICK, FULL = 50, 1000
SLOWLY = (HealthCheck.too_slow, HealthCheck.data_too_large)


def bundle(exam: Examination, grammar: Grammar, **more: Any) -> dict[str, Any]:
    """The document as a reader gets it."""
    content: dict[str, Any] = json.loads(json.dumps(bundle_of(exam, grammar, written_at=NOW, **more)))
    return content


def resources(content: dict[str, Any], kind: str) -> list[dict[str, Any]]:
    """All resources of one kind."""
    return [entry["resource"] for entry in content["entry"] if entry["resource"]["resourceType"] == kind]


@pytest.fixture(scope="module")
def demos(grammar: Grammar) -> dict[str, Examination]:
    """The demonstration dictations, read from their text."""
    return {name: examine([DEMOS / f"{name}.txt"], engine=None, grammar=grammar) for name in NAMES}


@pytest.mark.parametrize("name", NAMES)
def test_demonstration_is_valid_and_reads_back(name: str, demos: dict[str, Examination], grammar: Grammar) -> None:
    """fhir.resources (R4B) takes it, and nothing is lost on the way there and back."""
    content = bundle(demos[name], grammar)
    validate(content)
    assert examination_of(content) == demos[name]


@pytest.mark.parametrize("name", NAMES)
def test_demonstration_fits_the_official_schema(name: str, demos: dict[str, Examination], grammar: Grammar) -> None:
    """The JSON schema that HL7 publishes with R4."""
    schema = official_schema()
    assert schema_faults(schema, bundle(demos[name], grammar)) == []


@pytest.mark.parametrize("name", NAMES)
def test_general_library_validates_and_reads_it(
    name: str, demos: dict[str, Examination], grammar: Grammar, tmp_path: Path
) -> None:
    """A library that knows nothing of this program finds no error, and finds every number and every text."""
    content = bundle(demos[name], grammar)
    seen = general_library(content, tmp_path)
    assert seen["errors"] == []
    assert seen["xml_is_the_same"]
    said = [one["valueQuantity"]["value"] for one in resources(content, "Observation") if "valueQuantity" in one]
    assert seen["quantities"] == said
    pressures = [f.value for f in demos[name].findings if isinstance(f.value, Pressure)]
    assert seen["components"] == [n for one in pressures for n in (one.systolic, one.diastolic)]


def _valid_and_same(exam: Examination, grammar: Grammar) -> None:
    content = bundle(exam, grammar)
    validate(content)
    assert examination_of(content) == exam


@settings(max_examples=QUICK, deadline=None, suppress_health_check=SLOWLY)
@given(exam=examinations(load_grammar()))
def test_generated_examinations_are_valid_and_read_back(exam: Examination) -> None:
    """Any examination, hostile text included."""
    _valid_and_same(exam, load_grammar())


@settings(max_examples=QUICK // 5, deadline=None, suppress_health_check=SLOWLY)
@given(exam=examinations(load_grammar()))
def test_generated_examinations_fit_the_official_schema(exam: Examination) -> None:
    """Which is stricter about white space than the models are."""
    assert schema_faults(official_schema(), bundle(exam, load_grammar())) == []


@pytest.mark.slow
@settings(max_examples=FULL, deadline=None, suppress_health_check=SLOWLY)
@given(exam=examinations(load_grammar(), most=8))
def test_a_thousand_examinations_are_valid_and_read_back(exam: Examination) -> None:
    """The same, a thousand times."""
    _valid_and_same(exam, load_grammar())


@pytest.mark.slow
@settings(max_examples=FULL, deadline=None, suppress_health_check=SLOWLY)
@given(exam=examinations(load_grammar(), most=4))
def test_a_thousand_examinations_fit_the_official_schema(exam: Examination) -> None:
    """The same against the JSON schema of R4."""
    assert schema_faults(official_schema(), bundle(exam, load_grammar())) == []


def test_seven_sections_in_order(grammar: Grammar) -> None:
    """Nothing dictated has a reason and no entry; what was dictated has entries and no reason."""
    exam = examination(
        reflex("reflex_biceps", "2+", side=Side.LEFT), finding(Component.GENERAL, "lungs", Status.NORMAL)
    )
    sections = resources(bundle(exam, grammar), "Composition")[0]["section"]
    assert [one["code"]["coding"][0]["code"] for one in sections] == [component.value for component in Component]
    for one, said in zip(sections, (True, False, False, False, False, False, True), strict=True):
        assert ("entry" in one, "emptyReason" in one) == (said, not said)
    assert sections[3]["emptyReason"]["text"] == "nothing dictated"


@pytest.mark.parametrize(
    ("status", "reason"), [(Status.NOT_EXAMINED, "not-performed"), (Status.NOT_ASSESSABLE, "unknown")]
)
def test_what_was_not_examined_has_a_reason_and_no_value(grammar: Grammar, status: Status, reason: str) -> None:
    """The value set is FHIR's data-absent-reason."""
    exam = examination(finding(Component.COORDINATION_GAIT, "gait", status, detail=("hip pain",)))
    one = resources(bundle(exam, grammar), "Observation")[0]
    assert one["dataAbsentReason"]["coding"][0] == {"system": codes.ABSENT_REASON, "code": reason}
    assert not [name for name in one if name.startswith("value")]
    assert one["note"] == [{"text": "hip pain"}]


def test_pressure_has_components_site_and_position(grammar: Grammar) -> None:
    """The panel has no value of its own. Source: FHIR R4 blood pressure profile, codes 85354-9, 8480-6, 8462-4."""
    exam = examination(
        finding(Component.GENERAL, "blood_pressure", Status.MEASURED, value=Pressure(systolic=142, diastolic=84),
                unit="mm[Hg]", side=Side.RIGHT, position=Position.STANDING, minutes=3.0)
    )  # fmt: skip
    one = resources(bundle(exam, grammar), "Observation")[0]
    assert {"system": "http://loinc.org", "code": "85354-9"} in one["code"]["coding"]
    parts = {part["code"]["coding"][0]["code"]: part["valueQuantity"] for part in one["component"]}
    assert {code: (part["value"], part["code"]) for code, part in parts.items()} == {
        "8480-6": (142, "mm[Hg]"),
        "8462-4": (84, "mm[Hg]"),
    }
    assert one["bodySite"]["text"] == "right"
    assert "valueQuantity" not in one
    position = next(part for part in one["extension"] if part["url"] == codes.BODY_POSITION)
    assert position["valueCodeableConcept"]["text"] == "standing"


def test_palpable_pressure_has_no_diastolic_number(grammar: Grammar) -> None:
    """What could only be felt is not made up."""
    exam = examination(
        finding(Component.GENERAL, "blood_pressure", Status.MEASURED, value=Pressure(systolic=90), unit="mm[Hg]")
    )
    diastolic = resources(bundle(exam, grammar), "Observation")[0]["component"][1]
    assert "valueQuantity" not in diastolic
    assert diastolic["dataAbsentReason"]["coding"][0]["code"] == "unknown"


def test_side_not_said_is_no_body_site(grammar: Grammar) -> None:
    """Never both by default."""
    one = resources(bundle(examination(reflex("reflex_biceps", "2+")), grammar), "Observation")[0]
    assert "bodySite" not in one


def test_doubtful_finding_has_no_coded_value(grammar: Grammar) -> None:
    """A reader who looks at the value alone sees the doubt."""
    exam = examination(reflex("reflex_biceps", "3+", certainty=Certainty.UNCERTAIN, quote="possible three plus"))
    one = resources(bundle(exam, grammar), "Observation")[0]
    assert one["valueString"] == "possible 3+"
    assert "valueCodeableConcept" not in one


def test_denied_kind_is_no_value(grammar: Grammar) -> None:
    """ "No rest tremor" must not read as the value "rest"."""
    exam = examination(finding(Component.MOTOR, "tremor", Status.ABSENT, value=Text(words="rest")))
    one = resources(bundle(exam, grammar), "Observation")[0]
    assert "valueString" not in one
    assert one["valueCodeableConcept"]["text"] == "absent (rest)"
    assert one["interpretation"][0]["coding"][0]["code"] == "NEG"


@pytest.mark.parametrize(
    ("state", "status"),
    [("draft", "preliminary"), ("signed", "final"), ("amended", "amended"), ("withdrawn", "entered-in-error")],
)
def test_state_of_the_record(grammar: Grammar, state: Any, status: str) -> None:
    """On the document and on every observation."""
    content = bundle(examination(reflex("reflex_biceps", "2+")), grammar, state=state)
    validate(content)
    found = [one["status"] for kind in ("Composition", "Observation") for one in resources(content, kind)]
    assert set(found) == {status}


@pytest.mark.parametrize("text", HOSTILE)
def test_names_reasons_and_addenda_are_only_text(grammar: Grammar, text: str) -> None:
    """Whatever was typed: the document is valid, its narratives are well-formed, and it reads back."""
    exam = examination(reflex("reflex_biceps", "2+", side=Side.LEFT), signed_by=text, patient=text)
    around = Around(banners=(text,), foot=text, additions=(text, text))
    document = bundle_of(exam, grammar, written_at=NOW, state="withdrawn", around=around)
    validate(document)
    for resource in (entry["resource"] for entry in document["entry"]):
        for one in (resource, *resource.get("section", ())):
            if "text" in one:
                assert {tag.tag.rpartition("}")[2] for tag in ET.fromstring(one["text"]["div"]).iter()} <= {
                    "div",
                    "pre",
                }
    assert [one["title"] for one in document["entry"][0]["resource"]["section"][7:]] == ["Added after signing"] * 2
    assert examination_of(json.loads(json.dumps(document))) == exam


def test_unsigned_is_preliminary_and_signed_is_final(grammar: Grammar) -> None:
    """Where no state is given, the signature tells."""
    found = [resources(bundle(examination(signed_by=name), grammar), "Composition")[0] for name in ("", "A. Examiner")]
    assert [one["status"] for one in found] == ["preliminary", "final"]
    assert [len(one["author"]) for one in found] == [1, 2]


def test_provenance_names_program_examiner_and_recording(grammar: Grammar) -> None:
    """The recording by its SHA-256; an examiner who is not named is said to be so."""
    transcript = Transcript(sources=(Source(name="a.flac", kind="recording", sha256="c" * 64),))
    content = bundle(examination(transcript=transcript), grammar)
    origin = resources(content, "Provenance")[0]
    assert [agent["type"]["coding"][0]["code"] for agent in origin["agent"]] == ["assembler", "author"]
    assert origin["agent"][1]["who"]["display"] == "the examiner, not named"
    by_url = {entry["fullUrl"]: entry["resource"] for entry in content["entry"]}
    recording = by_url[origin["entity"][0]["what"]["reference"]]
    assert recording["masterIdentifier"]["value"] == "c" * 64
    assert by_url[origin["agent"][0]["who"]["reference"]]["resourceType"] == "Device"


def test_time_without_zone_is_a_date(grammar: Grammar) -> None:
    """FHIR wants a zone beside a time: none is made up."""
    exam = examination(
        reflex("reflex_biceps", "2+"), examined_at=datetime(2026, 3, 4, 23, 30), examined_at_from="option"
    )
    assert resources(bundle(exam, grammar), "Observation")[0]["effectiveDateTime"] == "2026-03-04"


def test_every_reference_has_its_resource(demos: dict[str, Examination], grammar: Grammar) -> None:
    """A document carries all it speaks of."""
    content = bundle(demos["postural-series"], grammar)
    known = {entry["fullUrl"] for entry in content["entry"]}

    def references(part: Any) -> list[str]:
        if isinstance(part, dict):
            own = [part["reference"]] if isinstance(part.get("reference"), str) else []
            return own + [one for value in part.values() for one in references(value)]
        return [one for value in part for one in references(value)] if isinstance(part, list) else []

    assert set(references(content)) <= known


def test_other_documents_are_refused() -> None:
    """A Bundle of somebody else is no examination."""
    with pytest.raises(InputError, match="not one of this program"):
        examination_of({"resourceType": "Bundle", "entry": [{"resource": {"resourceType": "Composition"}}]})


def test_missing_extra_is_one_line(grammar: Grammar, monkeypatch: pytest.MonkeyPatch) -> None:
    """It says how to get it."""
    real = builtins.__import__

    def without(name: str, *more: Any, **named: Any) -> Any:
        if name.startswith("fhir"):
            raise ImportError(name)
        return real(name, *more, **named)

    for name in [name for name in sys.modules if name.startswith("fhir.resources")]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(MachineError, match=r"pip install 'dictate\[fhir\]'"):
        note_fhir(examination(), grammar, written_at=NOW)


def test_invalid_document_is_not_handed_on() -> None:
    """What the models refuse never reaches a file."""
    with pytest.raises(MachineError, match="no valid FHIR"):
        validate({"resourceType": "Bundle", "type": "nonsense", "entry": "x"})


def test_spoken_sections_stand_behind_the_seven(grammar: Grammar) -> None:
    """History, impression and plan as dictated, hostile text escaped."""
    said = ((RemarkKind.PLAN, "Plan. MRI <b>"), (RemarkKind.HISTORY, "History. Falls."))
    exam = examination(remarks=tuple(remark(kind, text) for kind, text in said))
    content = bundle(exam, grammar)
    validate(content)
    spoken = resources(content, "Composition")[0]["section"][7:]
    assert [one["title"] for one in spoken] == ["HISTORY (as dictated)", "PLAN (as dictated)"]
    assert "MRI &lt;b&gt;" in spoken[1]["text"]["div"]
    assert examination_of(content) == exam
