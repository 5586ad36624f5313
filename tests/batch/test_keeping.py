"""Examinations of a batch into the records: each once, whatever kills the run, never over what somebody did since."""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from sleepers import SAID, SMALL, fill, run, setting

from dictate.batch import Asked, Keeping
from dictate.batch.jobs import Candidate
from dictate.batch.ledger import Entry
from dictate.errors import InputError
from dictate.grammar import Grammar
from dictate.model import Examination
from dictate.records import Records, open_records

WHO = "A. Keeper"


@pytest.fixture
def records(tmp_path: Path) -> Iterator[Records]:
    """Records of their own."""
    with open_records(tmp_path / "records") as opened:
        yield opened


@pytest.fixture
def keep(records: Records) -> Callable[..., Keeping]:
    """What saves into them."""
    return lambda audio="until-signed": Keeping(records, who=WHO, keep_audio=audio)


def rows(out: Path) -> dict[str, dict[str, str]]:
    """batch.csv by source."""
    with (out / "batch.csv").open(encoding="utf-8", newline="") as file:
        return {row["source"]: row for row in csv.DictReader(file)}


def test_each_examination_is_a_draft_with_its_recording(
    grammar: Grammar, tmp_path: Path, records: Records, keep: Callable[..., Keeping]
) -> None:
    """As the files have it; a copy and a failure give none; batch.csv names the record."""
    folder = fill(tmp_path / "in", a=SAID, b=SMALL, copy=SAID, bad="fail|")
    run(setting(grammar), folder, tmp_path / "out", keeping=keep())
    table = rows(tmp_path / "out")
    assert {source for source, row in table.items() if row["record"]} == {"a.wav", "b.wav"}
    assert len(records.find()) == 2
    one = records.open(table["a.wav"]["record"])
    (written,) = (tmp_path / "out").glob("a-*.exam.json")
    assert one.exam == Examination.model_validate_json(written.read_bytes())
    assert (one.state, one.who, one.sounds[0].keep) == ("draft", WHO, "until-signed")
    kept = records.audio(one.key, 0)
    assert isinstance(kept, Path)
    assert kept.read_text(encoding="utf-8") == SAID
    again = run(setting(grammar), folder, tmp_path / "out", keeping=keep())
    assert (again.before, len(records.find())) == (2, 2)


def test_results_of_earlier_runs_are_saved_without_hearing(
    grammar: Grammar, tmp_path: Path, records: Records, keep: Callable[..., Keeping]
) -> None:
    """--save given later; without sound where none is to be kept."""
    folder, log = fill(tmp_path / "in", a=SAID), tmp_path / "log"
    run(setting(grammar, log=str(log)), folder, tmp_path / "out")
    tally = run(setting(grammar, log=str(log)), folder, tmp_path / "out", keeping=keep("no"))
    assert (tally.before, len(log.read_text(encoding="utf-8").splitlines())) == (1, 1)
    assert records.open(rows(tmp_path / "out")["a.wav"]["record"]).sounds == ()


@pytest.mark.parametrize("after", [False, True], ids=["before the record", "after the record"])
def test_killed_while_saving(
    grammar: Grammar, tmp_path: Path, records: Records, monkeypatch: pytest.MonkeyPatch, after: bool,
    keep: Callable[..., Keeping],
) -> None:  # fmt: skip
    """On either side of the record's own transaction: the next run makes it one record, without hearing again."""
    real = Keeping.save

    def killed(self: Keeping, exam: Examination, entry: Entry, candidate: Candidate) -> Entry:
        if after:
            real(self, exam, entry, candidate)
        raise SystemExit("killed")

    folder, log = fill(tmp_path / "in", a=SAID, b=SMALL), tmp_path / "log"
    with monkeypatch.context() as patched:
        patched.setattr(Keeping, "save", killed)
        with pytest.raises(SystemExit):
            run(setting(grammar, log=str(log)), folder, tmp_path / "out", keeping=keep())
    assert len(records.find()) == after
    run(setting(grammar, log=str(log)), folder, tmp_path / "out", keeping=keep())
    assert len(records.find()) == 2
    assert len({row["record"] for row in rows(tmp_path / "out").values()}) == 2
    assert log.read_text(encoding="utf-8").count("a.wav") == 1


def test_a_changed_recording_is_a_further_revision(
    grammar: Grammar, tmp_path: Path, records: Records, keep: Callable[..., Keeping]
) -> None:
    """Of the draft that nobody touched; what somebody worked on stays, and a new draft stands beside it."""
    out = tmp_path / "out"
    folder = fill(tmp_path / "in", a=SAID)
    run(setting(grammar), folder, out, keeping=keep())
    first = rows(out)["a.wav"]["record"]
    run(setting(grammar), fill(folder, a=f"{SAID} {SMALL}"), out, keeping=keep())
    assert (rows(out)["a.wav"]["record"], records.open(first).revision) == (first, 2)
    assert len(records.open(first).exam.findings) == 3
    one = records.open(first)
    records.save(one.exam.model_copy(update={"patient": "P-1"}), who="B. Other", why="reviewed", key=first, base=2)
    run(setting(grammar), fill(folder, a=SMALL), out, keeping=keep())
    second = rows(out)["a.wav"]["record"]
    assert second != first
    assert records.open(first).exam.patient == "P-1"
    assert len(records.open(second).exam.findings) == 1


def test_what_cannot_be_saved_is_said_and_tried_again(
    grammar: Grammar, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, records: Records, keep: Callable[..., Keeping]
) -> None:
    """Its files stand, the others are saved, the batch ends as failed, and nothing is heard twice."""
    folder, log, out = fill(tmp_path / "in", a=SAID, b=SMALL), tmp_path / "log", tmp_path / "out"
    real = Keeping.save

    def refuse(self: Keeping, exam: Examination, entry: Entry, candidate: Candidate) -> Entry:
        if entry.source == "a.wav":
            raise InputError("a.wav: changed")
        return real(self, exam, entry, candidate)

    with monkeypatch.context() as patched:
        patched.setattr(Keeping, "save", refuse)
        tally = run(setting(grammar, log=str(log)), folder, out, keeping=keep())
    assert (tally.done, tally.failed, len(records.find())) == (1, 1, 1)
    assert "not in the records: a.wav: changed" in rows(out)["a.wav"]["error"]
    tally = run(setting(grammar, log=str(log)), folder, out, keeping=keep())
    assert (tally.before, tally.failed, len(records.find())) == (2, 0, 2)
    assert rows(out)["a.wav"]["error"] == ""
    assert len(log.read_text(encoding="utf-8").splitlines()) == 2


def test_reference_is_asked_of_all(
    grammar: Grammar, tmp_path: Path, records: Records, keep: Callable[..., Keeping]
) -> None:
    """The records find them by it."""
    folder = fill(tmp_path / "in", a=SAID, b=SMALL)
    run(setting(grammar, asked=Asked(patient="P-9")), folder, tmp_path / "out", keeping=keep())
    assert len(records.find(patient="P-9")) == 2
