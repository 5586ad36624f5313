"""Codes of FHIR documents: LOINC where surely known, own names for everything else; docs/fhir.md lists them."""

from __future__ import annotations

from dictate.model import Component, Status

LOINC = "http://loinc.org"
UCUM = "http://unitsofmeasure.org"
CATEGORY = "http://terminology.hl7.org/CodeSystem/observation-category"
INTERPRETATION = "http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation"
ABSENT_REASON = "http://terminology.hl7.org/CodeSystem/data-absent-reason"
EMPTY_REASON = "http://terminology.hl7.org/CodeSystem/list-empty-reason"
PARTICIPANT = "http://terminology.hl7.org/CodeSystem/provenance-participant-type"
BODY_POSITION = "http://hl7.org/fhir/StructureDefinition/observation-bodyPosition"
DATA_ABSENT = "http://hl7.org/fhir/StructureDefinition/data-absent-reason"
OWN = "urn:dictate:"  # component, item, named-scale, place, position, status, choice, scale:NAME, part, sha256
IS_FINDING, IS_FIGURE, IS_EXAMINATION = f"{OWN}finding", f"{OWN}figure", f"{OWN}examination"
IS_UNCERTAIN = f"{OWN}uncertain"

ITEMS: dict[str, tuple[str, ...]] = {  # source of each in docs/fhir.md
    "blood_pressure": ("85354-9",),
    "heart_rate": ("8867-4",),
    "respiratory_rate": ("9279-1",),
    "temperature": ("8310-5",),
    "oxygen_saturation": ("2708-6", "59408-5"),
    "weight": ("29463-7",),
    "height": ("8302-2",),
    "body_mass_index": ("39156-5",),
    "head_circumference": ("9843-4",),
    "gcs_eye": ("9267-6",),
    "gcs_verbal": ("9270-0",),
    "gcs_motor": ("9268-4",),
    "gcs_total": ("9269-2",),
    "nihss_total": ("72089-6",),
}
SCALES = {  # named scales of one item, by the grammar's names
    "MMSE": "72106-8",
    "MoCA": "72172-0",
    "PHQ-9": "44261-6",
    "GAD-7": "70274-6",
    "modified Rankin scale": "75859-9",
}
SYSTOLIC, DIASTOLIC = "8480-6", "8462-4"
DOCUMENT = "29545-1"  # physical findings
SECTIONS = {Component.MENTAL_STATUS: "10190-7"}
VITAL_UNITS = {  # units that the vital signs profiles of FHIR R4 allow; with another one it is an "exam" observation
    "blood_pressure": ("mm[Hg]",),
    "heart_rate": ("/min",),
    "respiratory_rate": ("/min",),
    "temperature": ("Cel", "[degF]"),
    "oxygen_saturation": ("%",),
    "weight": ("g", "kg", "[lb_av]"),
    "height": ("cm", "[in_i]"),
    "body_mass_index": ("kg/m2",),
    "head_circumference": ("cm", "[in_i]"),
}
STATUSES = {Status.NORMAL: "N", Status.ABNORMAL: "A", Status.PRESENT: "POS", Status.ABSENT: "NEG"}
REASONS = {Status.NOT_EXAMINED: "not-performed", Status.NOT_ASSESSABLE: "unknown"}
STATES = {"draft": "preliminary", "signed": "final", "amended": "amended", "withdrawn": "entered-in-error"}
COMPARATORS = {  # of a number that was said as a bound
    "more than": ">",
    "greater than": ">",
    "longer than": ">",
    "less than": "<",
    "fewer than": "<",
    "at least": ">=",
    "at most": "<=",
    "no more than": "<=",
    "up to": "<=",
    "above": ">",
    "over": ">",
    "below": "<",
    "under": "<",
}
EMPTY = "unavailable"  # neither "nil known" nor "not asked": a silent component may have been examined
