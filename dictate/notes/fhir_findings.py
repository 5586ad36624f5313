"""One finding or computed figure ↔ one FHIR Observation."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import Any

from dictate.catalogue import note as words
from dictate.grammar import Grammar, scale_named
from dictate.model import Certainty, Figure, Finding, Status
from dictate.notes import codes
from dictate.notes.codes import OWN
from dictate.notes.drawing import safe
from dictate.notes.fhir_values import Json, clean, concept, quantity, read_value, value_of
from dictate.notes.phrases import capital, hedge, one_line, phrase, place, rough, statement, title

SAID = (Status.MEASURED, Status.NORMAL, Status.ABNORMAL)
UNSAID = "-"  # in a place's code: no side, no site
STANDING = f"{OWN}minutes-standing"


@dataclass(frozen=True)
class Frame:
    """What all Observations of one document share."""

    status: str  # preliminary, final, amended, entered-in-error
    subject: Json
    effective: str = ""  # FHIR dateTime; empty: not stated


def observation(finding: Finding, grammar: Grammar, frame: Frame) -> Json:
    """The finding as an Observation; what its fields cannot hold stands in an extension."""
    text = f"{capital(title(finding, grammar))}: {phrase(finding, grammar)}"
    content: Json = {
        "resourceType": "Observation",
        "text": narrative(text),
        "status": frame.status,
        "category": _category(finding),
        "code": _code(finding, grammar),
        "subject": frame.subject,
        **_effective(frame),
        **_said(finding, grammar),
    }
    where = place(finding)
    if where:
        code = f"{finding.side.value if finding.side else UNSAID} {finding.site or UNSAID}"
        content["bodySite"] = concept(f"{OWN}place", code, where)
    notes = [{"text": clean(detail)} for detail in (rough(finding), *finding.detail) if clean(detail)]
    if notes:
        content["note"] = notes
    content["extension"] = _extensions(finding)
    rest = _rest(finding.model_dump(mode="json"), _read(content))
    content["extension"].append(kept(codes.IS_FINDING, rest))
    return content


def finding_of(content: Json) -> Finding:
    """The finding that an Observation of this program was made of."""
    return Finding.model_validate_json(json.dumps(_read(content) | rest_of(content, codes.IS_FINDING)))


def figure_observation(figure: Figure, frame: Frame, sources: list[str]) -> Json:
    """A computed figure as an Observation that names what it was computed from."""
    value: Json = {"valueString": clean(figure.text) or UNSAID}
    if figure.value is not None:
        value = {"valueQuantity": quantity(figure.value, figure.unit)}
    content: Json = {
        "resourceType": "Observation",
        "text": narrative(words.COMPUTED.format(text=one_line(figure.text))),
        "extension": [kept(codes.IS_FIGURE, figure.model_dump(mode="json"))],
        "status": frame.status,
        "category": [concept(codes.CATEGORY, "exam")],
        "code": {"text": clean(figure.name) or UNSAID},
        "subject": frame.subject,
        **_effective(frame),
        **value,
        "note": [{"text": said} for said in (clean(figure.text), clean(figure.formula), clean(figure.source)) if said],
    }
    if sources:
        content["derivedFrom"] = [{"reference": source} for source in sources]
    return content if content["note"] else {key: part for key, part in content.items() if key != "note"}


def figure_of(content: Json) -> Figure:
    """The figure that an Observation of this program was made of."""
    return Figure.model_validate_json(json.dumps(rest_of(content, codes.IS_FIGURE)))


def narrative(text: str) -> Json:
    """A sentence as the human-readable part of a resource."""
    return {"status": "generated", "div": f'<div xmlns="http://www.w3.org/1999/xhtml">{safe(clean(text))}</div>'}


def kept(url: str, rest: Json) -> Json:
    """What FHIR has no field for, as JSON in an extension."""
    return {"url": url, "valueString": json.dumps(rest, ensure_ascii=True, separators=(",", ":"))}


def rest_of(content: Json, url: str) -> Json:
    """What kept() put there; empty when it is not there."""
    for one in content.get("extension", ()):
        if one["url"] == url:
            rest: Json = json.loads(one["valueString"])
            return rest
    return {}


def _rest(whole: Json, read: Json) -> Json:
    return {name: said for name, said in whole.items() if (read[name] != said if name in read else said)}


def _category(finding: Finding) -> list[Json]:
    allowed = codes.VITAL_UNITS.get(finding.item, ())
    vital = bool(allowed) and (finding.value is None or finding.unit in allowed)
    kind = concept(codes.CATEGORY, "vital-signs" if vital else "exam")
    return [kind, concept(f"{OWN}component", finding.component.value, words.NAMES[finding.component])]


def _code(finding: Finding, grammar: Grammar) -> Json:
    known = [(codes.LOINC, code) for code in codes.ITEMS.get(finding.item, ())]
    scale = scale_named(finding, grammar)  # its item stands for many scales: its code alone would mix them up
    known += [(f"{OWN}named-scale", scale)] if scale else []
    known += [(codes.LOINC, codes.SCALES[scale])] if scale in codes.SCALES else []
    return concept(f"{OWN}item", finding.item, title(finding, grammar), *known)


def _effective(frame: Frame) -> Json:
    if frame.effective:
        return {"effectiveDateTime": frame.effective}
    return {"_effectiveDateTime": {"extension": [{"url": codes.DATA_ABSENT, "valueCode": "unknown"}]}}


def _said(finding: Finding, grammar: Grammar) -> Json:
    """Value, interpretation or the reason why there is none. A doubtful statement is text only, never a coded value."""
    own = (f"{OWN}status", finding.status.value)
    if finding.status in codes.REASONS:
        reason = concept(codes.ABSENT_REASON, codes.REASONS[finding.status], words.STATUSES[finding.status], own)
        return {"dataAbsentReason": reason}
    meant = concept(*own, words.STATUSES[finding.status])
    if finding.certainty is Certainty.UNCERTAIN:
        text = clean(f"{hedge(finding, grammar)} {statement(finding, grammar)}")
        return {"valueString": text, "interpretation": [meant]}
    said = value_of(finding) if finding.status in SAID else {}
    if finding.status is Status.MEASURED:
        absent = {"dataAbsentReason": concept(codes.ABSENT_REASON, "unknown")}
        return said or absent
    if finding.status in codes.STATUSES:
        meant = concept(codes.INTERPRETATION, codes.STATUSES[finding.status], words.STATUSES[finding.status], own)
    if not said:
        said = {"valueCodeableConcept": concept(*own, statement(finding, grammar))}
    return {**said, "interpretation": [meant]}


def _extensions(finding: Finding) -> list[Json]:
    found: list[Json] = []
    if finding.position is not None:
        name = finding.position.value
        found.append({"url": codes.BODY_POSITION, "valueCodeableConcept": concept(f"{OWN}position", name)})
    if finding.minutes is not None:
        found.append({"url": STANDING, "valueQuantity": quantity(finding.minutes, "min")})
    if finding.certainty is Certainty.UNCERTAIN:
        found.append({"url": codes.IS_UNCERTAIN, "valueBoolean": True})
    return found


def _read(content: Json) -> Json:
    """What the Observation's own fields say of the finding; fields it does not hold are not named."""
    value, unit = read_value(content)
    side, site = _own(content.get("bodySite", {}), "place", f"{UNSAID} {UNSAID}").split(" ", 1)
    marks = {one["url"]: one for one in content.get("extension", ())}
    read: dict[str, Any] = {
        "component": next((_own(one, "component") for one in content["category"] if _own(one, "component")), ""),
        "item": _own(content["code"], "item"),
        "side": None if side == UNSAID else side,
        "site": "" if site == UNSAID else site,
        "position": None,
        "minutes": None,
        "status": _status(content),
        "certainty": "uncertain" if codes.IS_UNCERTAIN in marks else "stated",
        "value": value,
        "unit": unit,
        "detail": [note["text"] for note in content.get("note", ())],
        "excepted": False,
        "corrected": [],
        "readings": [],
    }
    if codes.BODY_POSITION in marks:
        read["position"] = _own(marks[codes.BODY_POSITION]["valueCodeableConcept"], "position")
    if STANDING in marks:
        read["minutes"] = float(marks[STANDING]["valueQuantity"]["value"])
    return read


def _status(content: Json) -> str:
    for said in (content.get("dataAbsentReason", {}), *content.get("interpretation", ())):
        status = _own(said, "status")
        if status:
            return status
    return Status.MEASURED.value


def _own(said: Json, system: str, default: str = "") -> str:
    """The code of one of this program's own systems."""
    for coding in said.get("coding", ()):
        if coding.get("system") == f"{OWN}{system}":
            return str(coding["code"])
    return default
