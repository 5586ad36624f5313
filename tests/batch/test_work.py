"""What a worker does: one job → the texts of its result files; the model is loaded once per process."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from sleepers import SAID, fill, setting

from dictate.batch import Asked, Setting, work
from dictate.batch.contents import digest_of
from dictate.batch.jobs import Job, Outcome
from dictate.grammar import Grammar

MODEL = "1" * 64


@pytest.fixture
def ready(grammar: Grammar) -> Iterator[Setting]:
    """A setting that this process keeps."""
    one = setting(grammar)
    work.prepare(one)
    yield one
    work.release(one.run)


def job(path: Path, *, model: str = MODEL) -> Job:
    """One recording in place."""
    return Job(path.name, "name", (str(path),), (digest_of(str(path)),), model)


def test_recording_becomes_the_five_files(ready: Setting, tmp_path: Path) -> None:
    """With what batch.csv says of it."""
    fill(tmp_path, a=SAID)
    outcome = work.do(ready.run, job(tmp_path / "a.wav"))
    assert sorted(outcome.files) == ["exam.json", "findings.csv", "note.txt", "queries.csv", "transcript.json"]
    assert "Biceps reflex: right 2+, left 3+" in outcome.files["note.txt"]
    assert (outcome.findings, outcome.looks, outcome.error) == (2, 1, "")
    assert outcome.sound_s == len(SAID.split()) / 2
    assert outcome.model
    assert outcome.model.sha256 == MODEL


def test_model_is_made_once(ready: Setting, tmp_path: Path) -> None:
    """And let go with its setting."""
    made: list[int] = []
    counting = replace(ready, make_engine=lambda: made.append(1) or ready.make_engine())  # type: ignore[func-returns-value]
    work.prepare(counting)
    fill(tmp_path, a=SAID, b=SAID)
    for name in ("a.wav", "b.wav"):
        assert not work.do(ready.run, job(tmp_path / name)).error
    assert made == [1]


def test_text_needs_no_model(grammar: Grammar, tmp_path: Path) -> None:
    """A batch of transcripts runs where no model is."""
    one = replace(setting(grammar, asked=Asked(scope="dizziness", age=70)), make_engine=lambda: 1 / 0)  # type: ignore[arg-type, return-value]
    work.prepare(one)
    (tmp_path / "a.txt").write_text(SAID, encoding="utf-8")
    outcome = work.do(one.run, job(tmp_path / "a.txt", model=""))
    assert (outcome.findings, outcome.error, outcome.model) == (2, "", None)
    assert outcome.looks > 1, "the scope asks"
    work.release(one.run)


def test_what_is_wrong_with_it_is_its_error(ready: Setting, tmp_path: Path) -> None:
    """One line, and no files."""
    fill(tmp_path, a="fail|")
    outcome = work.do(ready.run, job(tmp_path / "a.wav"))
    assert (outcome.error, outcome.files) == ("a.wav: damaged", {})


def test_file_that_grows_while_it_is_read(ready: Setting, tmp_path: Path) -> None:
    """No note is made of half a dictation."""
    fill(tmp_path, a=f"grow|{SAID}")
    outcome = work.do(ready.run, job(tmp_path / "a.wav"))
    assert "changed while it was read" in outcome.error
    assert not outcome.files


def test_file_of_another_machine_is_asked_for(ready: Setting, tmp_path: Path) -> None:
    """Not there, or there with other content: send it along; sent along it is heard."""
    fill(tmp_path, a=SAID)
    here = job(tmp_path / "a.wav")
    away = replace(here, paths=("/elsewhere/a.wav",))
    assert work.do(ready.run, away) == Outcome(unseen=True)
    assert work.do(ready.run, replace(here, contents=("0" * 64,))) == Outcome(unseen=True)
    assert work.do(ready.run, replace(away, sent=(SAID.encode(),))).findings == 2


def test_worker_with_another_model_or_version_refuses(ready: Setting, tmp_path: Path) -> None:
    """Results of one batch come from one program and one model."""
    fill(tmp_path, a=SAID)
    assert "another model" in work.do(ready.run, job(tmp_path / "a.wav", model="2" * 64)).error
    other = replace(ready, program="0.0.0", run="other")
    work.prepare(other)
    assert "the batch 0.0.0" in work.do(other.run, job(tmp_path / "a.wav")).error
    work.release(other.run)


def test_two_batches_of_one_worker_have_their_own_models(ready: Setting, tmp_path: Path) -> None:
    """Asked the same but for the model, neither hears with the other's."""
    fill(tmp_path, a=SAID)
    second = setting(ready.grammar, sha256="2" * 64)
    assert second.key == ready.key
    work.prepare(second)
    for run, model in ((ready.run, MODEL), (second.run, "2" * 64), (ready.run, MODEL)):
        outcome = work.do(run, job(tmp_path / "a.wav", model=model))
        assert not outcome.error
        assert outcome.model
        assert outcome.model.sha256 == model
    work.release(second.run)
