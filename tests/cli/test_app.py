"""The app: commands, and errors as one line with an exit status."""

from __future__ import annotations

import subprocess
import sys

import pytest

from dictate.cli import app as app_module
from dictate.errors import DictateError, GrammarError, InputError, MachineError

HEAVY = ("faster_whisper", "ctranslate2", "av", "spacy", "pydantic", "numpy", "yaml")


def run_with(fault: BaseException, monkeypatch: pytest.MonkeyPatch) -> int:
    """Exit status of main() when a command raises `fault`."""

    def command(**_: object) -> None:
        raise fault

    monkeypatch.setattr(app_module, "app", command)
    with pytest.raises(SystemExit) as stop:
        app_module.main()
    return int(stop.value.code or 0)


@pytest.mark.parametrize("kind", [InputError, MachineError, DictateError])
def test_fault_is_one_line_and_status_1(
    kind: type[DictateError], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """No traceback for what the user can mend."""
    assert run_with(kind("a.wav: the file is empty"), monkeypatch) == 1
    assert capsys.readouterr() == ("", "dictate: a.wav: the file is empty\n")


def test_grammar_faults_are_one_line_each(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """All faults of grammar files are shown at once."""
    assert run_with(GrammarError(("a.yaml:1: x", "b.yaml:2: y")), monkeypatch) == 1
    assert capsys.readouterr().err == "a.yaml:1: x\nb.yaml:2: y\n"


def test_stopped_by_hand(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """Ctrl-C ends quietly with the shell's usual status."""
    assert run_with(KeyboardInterrupt(), monkeypatch) == 130
    assert capsys.readouterr().err == "stopped\n"


def test_help_loads_nothing_heavy() -> None:
    """`dictate --help` answers at once, for no recogniser, reader or model is loaded."""
    code = (
        "import sys\nfrom dictate.cli.app import app\n"
        "try:\n    app(['--help'])\nexcept SystemExit:\n    pass\n"
        f"print([name for name in {HEAVY!r} if name in sys.modules])"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.splitlines()[-1] == "[]"
    assert "Supports licensed practice" in run.stdout
    assert "no diagnosis" in " ".join(run.stdout.split())


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ("note --nonsense", "note: no such option: --nonsense"),
        ("note --pateint 1 x", "note: no such option: --pateint (Possible options: --patient)"),
        ("note --age x y", "note: --age: should be a valid number, unable to parse string as a number"),
        ("note", "note: missing argument 'SOURCE...'"),
        ("records move k", "records move: missing option '--patient'"),
        ("records --item=", "records: --item: is empty: say it, or leave the option out"),
        ("sign x", "sign: --by: name who signs"),
        ("batch", "batch: name a FOLDER and --out DIR, or --report DIR"),
        ("export x --format a\x1b\nb", "export: --format: 'a"),
    ],
)
def test_wrong_usage_is_one_line(
    given: str, told: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """What is wrong, in which command, and where to read on; status 2."""
    monkeypatch.setattr(sys, "argv", ["dictate", *given.split(" ")])
    with pytest.raises(SystemExit) as stop:
        app_module.main()
    out, error = capsys.readouterr()
    command = told.partition(":")[0]
    assert (stop.value.code, out, error.count("\n")) == (2, "", 1)
    assert error.startswith(f"dictate {told}")
    assert error.endswith(f": see `dictate {command} --help`\n")
    assert error.strip().isprintable()


def test_without_a_command_the_help_comes(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing was wrong: nothing was asked for."""
    monkeypatch.setattr(sys, "argv", ["dictate"])
    with pytest.raises(SystemExit) as stop:
        app_module.main()
    assert stop.value.code == 2
    assert "Supports licensed practice" in capsys.readouterr().err


def test_what_a_command_ends_with_is_the_status(monkeypatch: pytest.MonkeyPatch) -> None:
    """Also 0; the parser no longer ends the program itself."""
    for status in (0, 3):
        monkeypatch.setattr(app_module, "app", lambda status=status, **_: status or None)
        with pytest.raises(SystemExit) as stop:
            app_module.main()
        assert stop.value.code == status


def test_a_file_that_refuses_is_named(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """What is at fault is that file, not where the note is printed."""
    assert run_with(PermissionError(13, "Permission denied", "/a/file"), monkeypatch) == 1
    assert capsys.readouterr().err == "dictate: /a/file: cannot be used: permission denied: check its permissions\n"
