"""House rules: sizes, a test file per module, words of the manual, no traces of one machine."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from by_hand import ROOT
from typer.main import get_command

from dictate.catalogue import note as words
from dictate.cli.app import app
from dictate.examples import run_examples
from dictate.grammar import load_grammar
from dictate.model import Component

PACKAGE = ROOT / "dictate"
LONGEST_MODULE = 300
LONGEST_FUNCTION = 50
TEXTS = ("*.py", "*.md", "*.yaml", "*.toml", "*.txt", "*.csv", "*.html", "run")
MACHINE = re.compile(r"(?<![\w.])/(?:work|tmp|root|home|Users|opt)/\w|\blocalhost:\d|pypi\.org|huggingface\.co")
OWN = ".venv venv build dist .git .mypy_cache .ruff_cache .pytest_cache .hypothesis .import_linter_cache".split()
OWN.append("node_modules")  # of tests/outside


def modules() -> list[Path]:
    """Every module of the program."""
    return sorted(path for path in PACKAGE.rglob("*.py"))


def name_of(path: Path) -> str:
    """A module's path from the package down."""
    return path.relative_to(PACKAGE).as_posix()


def texts() -> Iterator[Path]:
    """Every text of the checkout that people read."""
    for pattern in TEXTS:
        for path in ROOT.rglob(pattern):
            if not set(path.relative_to(ROOT).parts) & set(OWN) and "egg-info" not in str(path):
                yield path


def functions(path: Path) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Every function of a module."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node


def listed(path: Path) -> str:
    """The module's row in DEVELOPERS.md."""
    text = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or "-"
    return f"| `{name_of(path)}` | {text.splitlines()[0]} |"


def write_list() -> None:
    """Write the file list of DEVELOPERS.md anew, in the order of the folders."""
    manual = ROOT / "DEVELOPERS.md"
    table = "\n".join(["| file | what it holds |", "|---|---|", *map(listed, modules())])
    before, _, after = manual.read_text(encoding="utf-8").partition("## Files\n")
    rest = after[after.index("\n`grammars/`") :]
    manual.write_text(f"{before}## Files\n\n{table}\n{rest}", encoding="utf-8")


def write_note() -> None:
    """Write the note that the README shows anew, from the recording."""
    run = [str(Path(sys.executable).with_name("dictate")), "note", str(ROOT / "demo_audio" / "clinic-examination.flac")]
    note = subprocess.run(run, capture_output=True, text=True, check=True).stdout
    readme = ROOT / "README.md"
    text = readme.read_text(encoding="utf-8")
    before, after = text.split("```text\n", 1)
    readme.write_text(f"{before}```text\n{note}```{after.split('```', 1)[1]}", encoding="utf-8")


@pytest.mark.parametrize("path", modules(), ids=name_of)
def test_module_fits_a_reader(path: Path) -> None:
    """A module is split by meaning past 300 lines, a function past 50; its first line says what it is."""
    text = path.read_text(encoding="utf-8")
    assert len(text.splitlines()) <= LONGEST_MODULE
    long = [one.name for one in functions(path) if one.end_lineno and one.end_lineno - one.lineno >= LONGEST_FUNCTION]
    assert not long
    assert ast.get_docstring(ast.parse(text)), "no docstring"


@pytest.mark.parametrize("path", [path for path in modules() if path.name != "__init__.py"], ids=name_of)
def test_module_has_its_tests(path: Path) -> None:
    """notes/text.py is tested in tests/notes/test_text.py."""
    inside = path.relative_to(PACKAGE)
    assert (ROOT / "tests" / inside.parent / f"test_{inside.name}").is_file()


@pytest.mark.parametrize("path", modules(), ids=name_of)
def test_module_is_free_of_shortcuts(path: Path) -> None:
    """No bare assert, no broad except, no import of the package root."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        assert not isinstance(node, ast.Assert), node.lineno
        if isinstance(node, ast.ExceptHandler):
            caught = ast.unparse(node.type) if node.type else ""
            assert caught not in ("", "Exception", "BaseException"), node.lineno
        if isinstance(node, ast.ImportFrom):
            assert node.module != "dictate", node.lineno


@pytest.mark.parametrize("path", modules(), ids=name_of)
def test_developers_list_every_module(path: Path) -> None:
    """The list in DEVELOPERS.md says of each module what its own first line says."""
    assert listed(path) in (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_developers_list_no_module_that_is_gone() -> None:
    """One row per module, no more."""
    manual = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert len(re.findall(r"^\| `[\w/]+\.py` \|", manual, re.MULTILINE)) == len(modules())


def test_no_traces_of_one_machine() -> None:
    """No path of somebody's machine, and no registry's address, in any file."""
    found = [
        f"{path.relative_to(ROOT)}:{number}"
        for path in texts()
        if path != Path(__file__)
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if MACHINE.search(line)
    ]
    assert not found


def commands() -> list[str]:
    """Every command that exists."""
    top = get_command(app)
    found = []
    for name, command in top.commands.items():  # type: ignore[attr-defined]
        inner = getattr(command, "commands", None)
        found += [f"{name} {one}" for one in inner] if inner else [name]
    return found


@pytest.mark.parametrize("command", commands())
def test_every_command_is_in_the_readme(command: str) -> None:
    """And no other is."""
    assert f"`dictate {command}" in (ROOT / "README.md").read_text(encoding="utf-8")


def test_readme_names_no_command_that_is_not_there() -> None:
    """A command promised is a command that runs."""
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    named = {" ".join(words.split()[:2]) for words in re.findall(r"`dictate ([a-z]+(?: [a-z]+)?)", readme)}
    known = set(commands()) | {command.split()[0] for command in commands()}
    assert {words for words in named if words not in known and words.split()[0] not in known} == set()


def test_readme_shows_a_note_of_the_demonstration() -> None:
    """A draft with all seven components, in their order, and the caution at its foot."""
    shown = (ROOT / "README.md").read_text(encoding="utf-8").split("```text\n", 1)[1].split("```", 1)[0]
    assert re.match(r"DRAFT, not signed, \d+ (query|queries) open\n", shown)
    assert [line for line in shown.splitlines() if line in words.COMPONENTS.values()] == list(words.COMPONENTS.values())
    assert words.CAUTION.split(".")[0] in shown


def test_readme_shows_how_to_add_a_phrase(tmp_path: Path) -> None:
    """The example of a user's own file loads, and its own example holds."""
    block = re.search(
        r"^```yaml\n# (\w+)\.yaml\n(.*?)^```$", (ROOT / "README.md").read_text(encoding="utf-8"), re.M | re.S
    )
    assert block
    (tmp_path / f"{block[1]}.yaml").write_text(block[2], encoding="utf-8")
    outcomes = run_examples(load_grammar(tmp_path), [Component(block[1])])
    own = [one for one in outcomes if one.example.say.startswith("quads jerk")]
    assert [one.faults for one in own] == [()]


def test_every_check_code_is_in_the_readme() -> None:
    """With its severity, as the checks have it."""
    from dictate.checks import catalogue

    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    missing = [one.code for one in catalogue() if f"| `{one.code}` | {one.severity} |" not in readme]
    assert not missing


def test_readme_has_two_commands() -> None:
    """One that hears the demonstration, one that runs the tests."""
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    blocks = re.findall(r"^```sh\n(.*?)^```$", readme, re.MULTILINE | re.DOTALL)
    assert [block.split()[-2:] for block in blocks] == [
        ["note", "demo_audio/clinic-examination.flac"],
        ["&&", ".venv/bin/pytest"],
    ]


if __name__ == "__main__":
    write_list()
    write_note()
