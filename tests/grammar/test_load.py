"""grammars/ → Grammar: strict, all faults at once with file and line."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from by_hand import small_grammar

from dictate.errors import GrammarError
from dictate.grammar import Grammar, load_grammar
from dictate.model import Component


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A complete folder of small grammar files."""
    small = small_grammar()
    place = tmp_path / "grammars"
    place.mkdir()
    for component, part in small.components.items():
        _write(place / f"{component.value}.yaml", part.model_dump(mode="json", exclude_defaults=True))
    _write(place / "common.yaml", small.common.model_dump(mode="json"))
    scale = {"name": "grades", "grades": ["0", "1"], "source": "by hand"}
    _write(place / "scales.yaml", {"scales": {"mrc": scale, "tendon_reflex": scale}})
    expects = [{"item": "gait", "why": "falls"}]
    _write(place / "scopes.yaml", {"scopes": {"falls": {"name": "falls", "expects": expects}}})
    return place


def _write(path: Path, content: object) -> None:
    path.write_text(yaml.safe_dump(content, sort_keys=False), encoding="utf-8")


def own(tmp_path: Path, text: str, name: str = "reflexes.yaml") -> Path:
    """A user's folder with one file."""
    place = tmp_path / "own"
    place.mkdir()
    (place / name).write_text(text, encoding="utf-8")
    return place


def faults(folder: Path, extra: Path | None = None) -> list[str]:
    """What load_grammar says against the files."""
    with pytest.raises(GrammarError) as caught:
        load_grammar(extra, folder=folder)
    return str(caught.value).splitlines()


def test_files_become_a_grammar(folder: Path) -> None:
    """Every component, and the SHA-256 that a note carries."""
    grammar = load_grammar(folder=folder)
    assert set(grammar.components) == set(Component)
    assert grammar.component_of("reflex_biceps") is Component.REFLEXES
    assert len(grammar.sha256) == 64


def test_own_file_extends_lists_and_replaces_the_rest(folder: Path, tmp_path: Path) -> None:
    """A user adds a phrase with three lines."""
    extra = own(tmp_path, "items:\n  reflex_biceps:\n    name: biceps jerk\n    terms: [elbow tap]\n")
    item = load_grammar(extra, folder=folder).item("reflex_biceps")
    assert (item.name, item.terms, item.scale) == ("biceps jerk", ("elbow tap",), "tendon_reflex")


def test_own_file_changes_the_digest(folder: Path, tmp_path: Path) -> None:
    """A note tells with which words it was read."""
    extra = own(tmp_path, "items:\n  reflex_biceps:\n    terms: [elbow tap]\n")
    assert load_grammar(extra, folder=folder).sha256 != load_grammar(folder=folder).sha256


def test_all_faults_at_once_with_their_lines(folder: Path, tmp_path: Path) -> None:
    """Each mistake is a line of its own, with file and line."""
    extra = own(tmp_path, "items:\n  reflex_biceps:\n    termz: [x]\n  gait:\n    kind: normal\n")
    told = faults(folder, extra)
    assert "reflexes.yaml:3:" in told[0]
    assert "reflexes.yaml:5:" in told[1]
    assert any("reflexes.yaml:4: gait belongs to coordination_gait.yaml" in line for line in told)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("items:\n  reflex_biceps:\n    terms: [no]\n", "reflexes.yaml:3:"),
        ("items:\n  a: {}\n  a: {}\n", "given twice"),
        ("items: [\n", "reflexes.yaml:"),
        ("items:\n  reflex_biceps:\n    scale: tendon\n", 'scale "tendon" is not known: did you mean tendon_reflex?'),
        ("items:\n  reflex_biceps:\n    covers: [gate]\n", 'item "gate" is not known: did you mean gait?'),
    ],
)
def test_mistakes_a_user_makes(folder: Path, tmp_path: Path, text: str, told: str) -> None:
    """An unquoted no, a key given twice, broken YAML, a name misspelt."""
    assert told in " ".join(faults(folder, own(tmp_path, text)))


def test_a_file_name_misspelt(folder: Path, tmp_path: Path) -> None:
    """A file that nobody would read is refused, not ignored."""
    told = faults(folder, own(tmp_path, "", "reflex.yaml"))
    assert "no such grammar file: did you mean reflexes.yaml?" in told[0]


def test_a_missing_file_is_named(folder: Path) -> None:
    """The packaged folder must be complete."""
    (folder / "motor.yaml").unlink()
    assert faults(folder) == [f"{folder}: motor.yaml is missing"]


def test_an_item_at_two_components(folder: Path) -> None:
    """An id belongs to one component."""
    text = (folder / "motor.yaml").read_text(encoding="utf-8")
    (folder / "motor.yaml").write_text(text + "  gait:\n    name: gait\n    kind: normality\n", encoding="utf-8")
    assert "gait is given twice" in " ".join(faults(folder))


def test_a_folder_that_is_not_there(folder: Path, tmp_path: Path) -> None:
    """Named in one line."""
    assert faults(folder, tmp_path / "none") == [
        f"{tmp_path / 'none'}: no such folder of grammar files: check the name"
    ]


def test_packaged_grammar_is_sound(grammar: Grammar) -> None:
    """The files that came with the program load without a fault."""
    assert len(grammar.items) > 150


def test_phrases_learnt_at_review_are_read_beside_the_users_own(folder: Path, tmp_path: Path) -> None:
    """The user's files and the program's in `learnt/` both add; a change is seen at the next load."""
    place = own(tmp_path, "items:\n  reflex_biceps:\n    terms: [elbow tap]\n")
    assert load_grammar(place, folder=folder).item("reflex_biceps").terms == ("elbow tap",)
    (place / "learnt").mkdir()
    kept = place / "learnt" / "reflexes.yaml"
    kept.write_text("items:\n  reflex_biceps:\n    terms: [arm tap]\n", encoding="utf-8")
    grammar = load_grammar(place, folder=folder)
    assert grammar.item("reflex_biceps").terms == ("elbow tap", "arm tap")
    kept.write_text("items:\n  reflex_biceps:\n    terms: [forearm tap]\n", encoding="utf-8")
    assert load_grammar(place, folder=folder).item("reflex_biceps").terms == ("elbow tap", "forearm tap")
    kept.unlink()
    assert load_grammar(place, folder=folder).sha256 != grammar.sha256
