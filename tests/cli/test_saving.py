"""From the command line into the records."""

from __future__ import annotations

from pathlib import Path

import pytest
from by_hand import transcript
from typer.testing import CliRunner, Result

from dictate.cli.app import app
from dictate.cli.saving import joined
from dictate.errors import InputError, Locked, RecordError
from dictate.grammar import Grammar
from dictate.model import Action, Decision, Examination, Severity
from dictate.pipeline import examine_transcript, reconsider
from dictate.reading import transcript_of_text
from dictate.records import open_records
from dictate.review.decisions import apply, undo
from dictate.review.typed import Refused

FIRST = "Reflexes. Left biceps seven plus. Triceps two plus on both sides."
MORE = "Plantar response flexor on both sides."


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Records of their own."""
    monkeypatch.setenv("DICTATE_RECORDS", str(tmp_path / "records"))
    monkeypatch.delenv("DICTATE_PASSPHRASE", raising=False)
    return tmp_path / "records"


def run(*arguments: str, stdin: str = "") -> Result:
    """Run a command in this process."""
    return CliRunner().invoke(app, arguments, input=stdin)


def key_in(result: Result) -> str:
    """The key that was told."""
    return str(result.stderr.split("record ")[1].split(",")[0])


def first(grammar: Grammar) -> Examination:
    """An examination with a must."""
    return examine_transcript(transcript_of_text(FIRST, name="first"), grammar=grammar, patient="P-1")


def test_a_further_dictation_joins_the_record(folder: Path) -> None:
    """Both are in the note; the same twice, another patient and a stranger's key are refused."""
    key = key_in(run("note", "-", "--save", "--patient", "P-1", stdin=FIRST))
    result = run("note", "-", "--record", key, stdin=MORE)
    assert f"record {key}, revision 2" in result.stderr
    assert "Plantar response: both sides flexor" in result.stdout
    assert "Triceps reflex: both sides 2+" in result.stdout
    assert "Patient: P-1" in result.stdout
    assert "part of the record already" in str(run("note", "-", "--record", key, stdin=MORE).exception)
    assert isinstance(run("note", "-", "--record", key, "--patient", "P-2", stdin=MORE).exception, InputError)
    assert isinstance(run("note", "-", "--record", "zzzzzz", stdin=MORE).exception, RecordError)
    with open_records(folder) as records:
        assert records.open(key).revision == 2


def test_what_could_not_be_saved_is_printed(folder: Path) -> None:
    """What was heard is not lost."""
    folder.write_text("in the way", encoding="utf-8")
    result = run("note", "-", "--save", stdin=FIRST)
    assert result.exception is not None
    assert "Triceps reflex: both sides 2+" in result.stdout


def test_joining_keeps_decisions_and_corrections(grammar: Grammar) -> None:
    """What was settled stays, is not asked again, and what comes new is asked."""
    before = first(grammar)
    (at,) = [n for n, query in enumerate(before.queries) if query.severity is Severity.MUST]
    corrected = before.model_copy(
        update={"findings": before.findings[1:], "decisions": (Decision(query=at, answer="remove"),)}
    )
    more = transcript_of_text("Knee jerk nine plus on the left.", name="more")
    after = joined(corrected, more, grammar, age=None)
    assert after.findings[: len(corrected.findings)] == corrected.findings
    assert [one.item for one in after.findings[len(corrected.findings) :]] == ["reflex_patellar"]
    assert after.decisions == corrected.decisions
    assert after.queries[: len(before.queries)] == before.queries
    assert [query.item for query in after.open_musts] == ["reflex_patellar"]


def test_undo_goes_back_to_the_further_dictation(grammar: Grammar) -> None:
    """What was decided before it is not carried out twice: a finding taken out once takes no other with it."""
    before = apply(first(grammar), Decision(action=Action.REMOVE, finding=0, answer="remove"), grammar)
    further = joined(before, transcript_of_text("Right knee jerk two plus.", name="more"), grammar, age=None)
    with pytest.raises(Refused, match="since the further dictation"):
        undo(further, grammar)
    at = next(n for n, one in enumerate(further.findings) if one.item == "reflex_patellar")
    one = apply(further, Decision(finding=at, answer="3+"), grammar)
    two = apply(one, Decision(action=Action.ADD, answer="Left ankle jerk one plus."), grammar)
    assert undo(two, grammar).findings == one.findings
    for after in (undo(one, grammar), undo(two, grammar, count=9)):
        assert after.findings == further.findings
        assert after.decisions == further.decisions == before.decisions
        assert after.open_queries == further.open_queries
        assert after.transcript == further.transcript


def test_joining_without_decisions_reads_all_anew(grammar: Grammar) -> None:
    """As if it had been dictated in one."""
    after = joined(first(grammar), transcript_of_text(MORE, name="more"), grammar, age=None)
    assert {one.item for one in after.findings} == {"reflex_biceps", "reflex_triceps", "plantar_response"}
    with pytest.raises(InputError, match="part of the record already"):
        joined(first(grammar), first(grammar).transcript, grammar, age=None)


def test_locked_records_ask_for_their_passphrase(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """From the variable; where nobody sits at the keyboard, one line says so."""
    monkeypatch.setenv("DICTATE_PASSPHRASE", "open sesame")
    run("note", "-", "--save", stdin=FIRST)
    assert "all as written" in run("records", "verify").stdout
    monkeypatch.delenv("DICTATE_PASSPHRASE")
    assert isinstance(run("records", "verify").exception, Locked)


def test_typed_text_has_no_recording(folder: Path) -> None:
    """Whatever --keep-audio says."""
    key = key_in(run("note", "-", "--save", "--keep-audio", "always", stdin=FIRST))
    with open_records(folder) as records:
        assert records.open(key).sounds == ()
    assert transcript().sources[0].kind == "text"


def test_figures_of_a_joined_record_are_those_of_all_its_findings(grammar: Grammar) -> None:
    """Also the tables that need the grammar, and also where something was decided before."""
    said = "Biceps reflex two plus on the right, three plus on the left. Deltoid four minus."
    before = examine_transcript(transcript_of_text(said, name="first"), grammar=grammar)
    decided = before.model_copy(update={"decisions": (Decision(query=0, answer="right"),)})
    after = joined(decided, transcript_of_text("Gait normal.", name="more"), grammar, age=None)
    assert any(figure.text.startswith("Reflexes differ") for figure in after.figures)
    assert after.figures == reconsider(after, grammar).figures
