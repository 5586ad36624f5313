"""Faults of grammar files that only all files together show: names that point nowhere, terms of two items."""

from __future__ import annotations

from pathlib import Path

import pytest

from dictate.errors import GrammarError
from dictate.grammar import load_grammar
from dictate.grammar.faults import line_of, unknown

BAD = {
    "reflexes.yaml": """items:
  reflex_biceps:
    terms: [no, elbow tap]
    termz: [x]
  reflex_foo:
    name: foo
    kind: gradde
    terms: [foo jerk]
  reflex_patellar:
    scale: tendon
    terms: "quads jerk"
  reflex_achilles:
    terms: []
    examples:
      - {say: "ankle tap two plus", find: [{item: reflex_achiles, value: "2+"}]}
      - {say: 5, find: [{value: 0}]}
  reflex_new:
    name: new reflex
""",
    "motor.yaml": """items:
  tone:
    terms: [muscle feel]
  tone:
    terms: [other]
  bulk:
    terms: [a]
  bulk:
    terms: [b]
""",
    "coordination_gait.yaml": "items:\n  gait:\n    terms: [gang\n  x: y\n",
    "mental_status.yaml": "items:\n  mood:\n    terms: [Stimmung f\udcfcr]\n",
    "cranial_nerves.yaml": """component: brain
items:
  ptosis:
    terms: [biceps jerk]
    covers: [nope]
  nystagmus:
    values:
      "1": {say: [0], status: sometimes}
""",
    "sensory.yaml": "- a\n- b\n",
    "scopes.yaml": "scopes:\n  mine: {name: mine, expects: [{item: gaitt, why: x}]}\n",
    "scales.yaml": "scales:\n  mrc: {grades: 5}\n",
    "common.yaml": "words:\n  talk: [yes]\n",
    "reflex.yaml": "x: 1\n",
}
TOLD = [
    "reflexes.yaml:3: items.reflex_biceps.terms.0: false is no text: put it in quotes",
    "reflexes.yaml:4: items.reflex_biceps.termz: no such key",
    "reflexes.yaml:7: items.reflex_foo.kind: input should be 'pressure'",
    "reflexes.yaml:11: items.reflex_patellar.terms: must be a list",
    'reflexes.yaml:10: scale "tendon" is not known: did you mean tendon_reflex?',
    "reflexes.yaml:13: reflex_achilles: terms holds no phrase",
    'reflexes.yaml:15: item "reflex_achiles" is not known: did you mean reflex_achilles?',
    "reflexes.yaml:16: items.reflex_achilles.examples.1.say: 5 is no text: put it in quotes",
    "reflexes.yaml:16: items.reflex_achilles.examples.1.find.0.value: 0 is no text: put it in quotes",
    "reflexes.yaml:17: items.reflex_new.kind: must be given for a new one",
    "motor.yaml:4: 'tone' is given twice",
    "motor.yaml:8: 'bulk' is given twice",
    "coordination_gait.yaml:4: did not find expected",
    "mental_status.yaml:1: cannot be read",
    "cranial_nerves.yaml:1: component: input should be 'general'",
    'cranial_nerves.yaml:4: "biceps jerk" names reflex_biceps already: one term, one item',
    'cranial_nerves.yaml:5: item "nope" is not known',
    "cranial_nerves.yaml:8: items.nystagmus.values.1.say.0: 0 is no text: put it in quotes",
    "cranial_nerves.yaml:8: items.nystagmus.values.1.status: input should be 'measured'",
    "sensory.yaml:1: must hold keys and values",
    'scopes.yaml:2: item "gaitt" is not known: did you mean gait?',
    "scales.yaml:2: scales.mrc.grades: must be a list",
    "common.yaml:2: words.talk.0: true is no text: put it in quotes",
    "reflex.yaml:1: no such grammar file: did you mean reflexes.yaml?",
]


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """What is said against a folder full of mistakes."""
    tmp_path = tmp_path_factory.mktemp("own")
    for name, text in BAD.items():
        (tmp_path / name).write_bytes(text.encode("utf-8", "surrogateescape"))
    with pytest.raises(GrammarError) as caught:
        load_grammar(tmp_path)
    return [line.removeprefix(f"{tmp_path}/") for line in str(caught.value).splitlines()]


@pytest.mark.parametrize("fault", TOLD)
def test_every_mistake_is_told_at_once(told: list[str], fault: str) -> None:
    """With its file and its line, whatever else is wrong."""
    assert any(line.startswith(fault) for line in told), told


def test_nothing_else_is_told_and_nothing_loaded(told: list[str]) -> None:
    """One line a mistake; the packaged grammar is as it was."""
    assert len(told) == len(TOLD), told
    assert "elbow tap" not in load_grammar().item("reflex_biceps").terms


def test_a_file_that_must_not_be_read_is_named(tmp_path: Path) -> None:
    """A folder where a file should be stands for a file that cannot be opened."""
    (tmp_path / "motor.yaml").mkdir()
    with pytest.raises(GrammarError, match=r"motor\.yaml:1: cannot be read"):
        load_grammar(tmp_path)


def test_the_line_is_that_of_the_deepest_part_found() -> None:
    """A key that is not there is told at the line of what holds it."""
    text = "items:\n  gait:\n    terms:\n      - a\n      - b\n"
    assert [line_of(text, loc) for loc in (("items", "gait", "terms", 1), ("items", "gait", "kind"), ("x",))] == [
        5,
        2,
        1,
    ]


def test_the_nearest_name_is_offered() -> None:
    """Only where one is near."""
    assert unknown("item", "gaitt", ["gait", "tone"]) == 'item "gaitt" is not known: did you mean gait?'
    assert unknown("item", "zzz", ["gait"]) == 'item "zzz" is not known'
