"""Examination ↔ FHIR R4 document: a Bundle that any FHIR reader takes, and that reads back as the same examination."""

from __future__ import annotations

import base64
import hashlib
import json
import uuid
from collections.abc import Iterator
from datetime import datetime
from typing import Any, Literal

from dictate.catalogue import note as words
from dictate.errors import InputError, MachineError
from dictate.grammar import Grammar
from dictate.model import Around, Component, Examination, Source
from dictate.notes import codes
from dictate.notes.codes import OWN
from dictate.notes.drawing import safe
from dictate.notes.fhir_findings import (
    Frame,
    figure_observation,
    figure_of,
    finding_of,
    kept,
    narrative,
    observation,
    rest_of,
)
from dictate.notes.fhir_values import Json, clean, concept
from dictate.notes.layout import lay_out
from dictate.notes.questions import sections
from dictate.notes.text import section_text, write_note
from dictate.settings import PROGRAM

State = Literal["draft", "signed", "amended", "withdrawn"]
URN = "urn:uuid:"
NAMESPACE = uuid.uuid5(uuid.NAMESPACE_OID, f"{OWN}document")


def note_fhir(
    exam: Examination,
    grammar: Grammar,
    *,
    written_at: datetime,
    state: State | None = None,
    around: Around | None = None,
) -> str:
    """The document as JSON, validated first. written_at: now, with its zone. Raises: MachineError without the extra."""
    bundle = bundle_of(exam, grammar, written_at=written_at, state=state, around=around)
    validate(bundle)
    return json.dumps(bundle, ensure_ascii=False, indent=1) + "\n"


def validate(bundle: Json) -> None:
    """Hold a Bundle against the models of FHIR R4B. Raises: MachineError when they or the extra `fhir` say no."""
    try:
        from fhir.resources.R4B.bundle import Bundle
    except ImportError as fault:
        raise MachineError("--format fhir: fhir.resources is missing: pip install 'dictate[fhir]'") from fault
    try:
        Bundle.model_validate(bundle)
    except ValueError as fault:
        reason = " ".join(str(fault).split())[:300]
        raise MachineError(f"--format fhir: the document is no valid FHIR, nothing was written: {reason}") from fault


def bundle_of(
    exam: Examination,
    grammar: Grammar,
    *,
    written_at: datetime,
    state: State | None = None,
    around: Around | None = None,
) -> Json:
    """The document Bundle. state: draft unless the examination is signed. around: what the records say of it."""
    return _Document(
        exam, grammar, written_at, state or ("signed" if exam.signed_by else "draft"), around or Around()
    ).bundle()


def examination_of(bundle: Json) -> Examination:
    """The examination that a Bundle of bundle_of() was made of. Raises: InputError when it is none."""
    resources = [entry.get("resource", {}) for entry in bundle.get("entry", ())]
    kinds = {kind: [one for one in resources if one.get("resourceType") == kind] for kind in (
        "Composition", "Patient", "Practitioner", "Device", "Observation", "DocumentReference")}  # fmt: skip
    if not kinds["Composition"] or not rest_of(kinds["Composition"][0], codes.IS_EXAMINATION):
        raise InputError("the FHIR document is not one of this program: it can be read only by other FHIR readers")
    read = _read(kinds) | rest_of(kinds["Composition"][0], codes.IS_EXAMINATION)
    return Examination.model_validate_json(json.dumps(read))


def _read(kinds: dict[str, list[Json]]) -> Json:
    """What the resources' own fields say."""
    own = [(one, {extension["url"] for extension in one.get("extension", ())}) for one in kinds["Observation"]]
    versions = {one.get("type", {}).get("text"): one["value"] for one in kinds["Device"][0]["version"]}
    data = next(d["content"][0]["attachment"]["data"] for d in kinds["DocumentReference"] if _holds_words(d))
    patient = kinds["Patient"][0] if kinds["Patient"] else {}
    return {
        "program": versions.get(words.VERSION_PROGRAM, ""),
        "grammar_sha256": versions.get(words.VERSION_GRAMMAR, ""),
        "patient": patient.get("identifier", [{"value": ""}])[0]["value"],
        "signed_by": kinds["Practitioner"][0]["name"][0]["text"] if kinds["Practitioner"] else "",
        "transcript": json.loads(base64.b64decode(data)),
        "findings": [finding_of(one).model_dump(mode="json") for one, urls in own if codes.IS_FINDING in urls],
        "figures": [figure_of(one).model_dump(mode="json") for one, urls in own if codes.IS_FIGURE in urls],
    }


def _holds_words(document: Json) -> bool:
    return "data" in document["content"][0]["attachment"]


class _Document:
    """The resources of one document; every reference is made of the examination's own content."""

    def __init__(self, exam: Examination, grammar: Grammar, written_at: datetime, state: State, around: Around) -> None:
        self.exam, self.grammar, self.around = exam, grammar, around
        self.stamp = written_at.isoformat(timespec="seconds")
        self.seed = hashlib.sha256(exam.model_dump_json().encode()).hexdigest()
        self.status = codes.STATES[state]
        self.subject = {"reference": self._url("patient")} if clean(exam.patient) else {"display": words.NO_PATIENT}
        examined = exam.examined_at
        at = "" if examined is None else examined.date().isoformat()
        if examined is not None and examined.tzinfo is not None:
            at = examined.isoformat(timespec="seconds")
        self.frame = Frame(self.status, self.subject, at)

    def bundle(self) -> Json:
        content = dict(self._resources())
        kinds: dict[str, list[Json]] = {}
        for resource in content.values():
            kinds.setdefault(resource["resourceType"], []).append(resource)
        kinds = {kind: kinds.get(kind, []) for kind in ("Patient", "Practitioner", "Observation", *kinds)}
        read = _read(kinds)
        rest = {name: said for name, said in self.exam.model_dump(mode="json").items() if read.get(name) != said}
        entries = {"composition": self._composition(rest), **content}
        return {
            "resourceType": "Bundle",
            "identifier": {"system": "urn:ietf:rfc:3986", "value": self._url("bundle")},
            "type": "document",
            "timestamp": self.stamp,
            "entry": [
                {"fullUrl": self._url(name), "resource": self._with_id(name, one)} for name, one in entries.items()
            ],
        }

    def _url(self, name: str) -> str:
        return f"{URN}{uuid.uuid5(NAMESPACE, self.seed + name)}"

    def _with_id(self, name: str, resource: Json) -> Json:
        head = {"resourceType": resource["resourceType"], "id": self._url(name).removeprefix(URN)}
        return {**head, **resource}

    def _resources(self) -> Iterator[tuple[str, Json]]:
        exam = self.exam
        if clean(exam.patient):
            yield "patient", {"resourceType": "Patient", "text": narrative(exam.patient),
                              "identifier": [{"value": clean(exam.patient)}]}  # fmt: skip
        if clean(exam.signed_by):
            yield "examiner", {"resourceType": "Practitioner", "text": narrative(exam.signed_by),
                               "name": [{"text": clean(exam.signed_by)}]}  # fmt: skip
        yield "program", self._device()
        for at, finding in enumerate(exam.findings):
            yield f"finding {at}", observation(finding, self.grammar, self.frame)
        for at, figure in enumerate(exam.figures):
            sources = [self._url(f"finding {one}") for one in figure.inputs if one < len(exam.findings)]
            yield f"figure {at}", figure_observation(figure, self.frame, sources)
        for at, source in enumerate(exam.transcript.sources):
            yield f"source {at}", _source(source)
        yield "transcript", self._transcript()
        yield "provenance", self._provenance()

    def _device(self) -> Json:
        model = self.exam.transcript.model
        versions = {words.VERSION_PROGRAM: self.exam.program, words.VERSION_GRAMMAR: self.exam.grammar_sha256}
        if model is not None:
            versions[words.VERSION_MODEL.format(name=clean(model.name))] = model.sha256
        return {
            "resourceType": "Device",
            "text": narrative(f"{PROGRAM} {self.exam.program}"),
            "deviceName": [{"name": PROGRAM, "type": "user-friendly-name"}],
            "version": [{"type": {"text": name}, "value": clean(said) or "-"} for name, said in versions.items()],
        }

    def _transcript(self) -> Json:
        data = base64.b64encode(self.exam.transcript.model_dump_json().encode()).decode()
        attachment = {"contentType": "application/json", "title": words.TRANSCRIPT, "data": data}
        return _document(words.TRANSCRIPT, attachment)

    def _provenance(self) -> Json:
        examiner = {"display": words.EXAMINER_NOT_NAMED}
        if clean(self.exam.signed_by):
            examiner = {"reference": self._url("examiner")}
        agents = (("assembler", {"reference": self._url("program")}), ("author", examiner))
        sources = [self._url(f"source {at}") for at in range(len(self.exam.transcript.sources))]
        content: Json = {
            "resourceType": "Provenance",
            "target": [{"reference": self._url("composition")}],
            "recorded": self.stamp,
            "agent": [{"type": concept(codes.PARTICIPANT, role), "who": who} for role, who in agents],
        }
        if sources:
            content["entity"] = [{"role": "source", "what": {"reference": source}} for source in sources]
        return content

    def _composition(self, rest: Json) -> Json:
        authors = [{"reference": self._url("program")}]
        content: Json = {
            "resourceType": "Composition",
            "text": _block("\n".join((*self.around.banners, write_note(self.exam, self.grammar), self.around.foot))),
            "extension": [kept(codes.IS_EXAMINATION, rest)],
            "status": self.status,
            "type": concept(codes.LOINC, codes.DOCUMENT, words.PAGE_TITLE),
            "subject": self.subject,
            "date": self.stamp,
            "author": authors,
            "title": words.PAGE_TITLE,
        }
        if clean(self.exam.signed_by):
            authors.append({"reference": self._url("examiner")})
            content["attester"] = [{"mode": "professional", "party": {"reference": self._url("examiner")}}]
        return content | {"section": self._sections()}

    def _sections(self) -> list[Json]:
        entries: dict[Component, list[str]] = {component: [] for component in Component}
        for at, finding in enumerate(self.exam.findings):
            entries[finding.component].append(f"finding {at}")
        for at, figure in enumerate(self.exam.figures):
            inputs = [one for one in figure.inputs if one < len(self.exam.findings)]
            first = self.exam.findings[inputs[0]].component if inputs else Component.GENERAL
            entries[first].append(f"figure {at}")
        layout = lay_out(self.exam, self.grammar)
        found = []
        for component, names in entries.items():
            known = codes.SECTIONS.get(component)
            more = ((codes.LOINC, known),) if known else ()
            section: Json = {
                "title": words.NAMES[component],
                "code": concept(f"{OWN}component", component.value, words.NAMES[component], *more),
                "text": _block(section_text(layout, component)),
            }
            if names:
                section["entry"] = [{"reference": self._url(name)} for name in names]
            else:
                section["emptyReason"] = concept(codes.EMPTY_REASON, codes.EMPTY, words.NOTHING)
            found.append(section)
        return [*found, *_spoken(self.exam), *_added(self.around)]


def _spoken(exam: Examination) -> list[Json]:
    """History, impression, plan: as dictated, behind the seven sections; text only, for nothing was read from them."""
    return [
        {
            "title": heading,
            "code": concept(f"{OWN}spoken", kind.value, heading),
            "text": _block("\n".join(sections(exam)[heading])),
        }
        for kind, heading in words.SECTIONS.items()
        if heading in sections(exam)
    ]


def _added(around: Around) -> list[Json]:
    """What was added after signing, one section for each; text only."""
    return [
        {"title": words.ADDED, "code": concept(f"{OWN}spoken", "added", words.ADDED), "text": _block(one)}
        for one in around.additions
    ]


def _block(text: str) -> Json:
    return {
        "status": "generated",
        "div": f'<div xmlns="http://www.w3.org/1999/xhtml"><pre>{safe(text)}</pre></div>',
    }


def _source(source: Source) -> Json:
    attachment: dict[str, Any] = {"title": clean(source.name) or "-"}
    if source.created_at is not None and source.created_at.tzinfo is not None:
        attachment["creation"] = source.created_at.isoformat(timespec="seconds")
    named = {"masterIdentifier": {"system": f"{OWN}sha256", "value": source.sha256}}
    return _document(words.SOURCE_KINDS[source.kind], attachment, named)


def _document(kind: str, attachment: Json, named: Json | None = None) -> Json:
    return {
        "resourceType": "DocumentReference",
        **(named or {}),
        "status": "current",
        "type": {"text": kind},
        "content": [{"attachment": attachment}],
    }
