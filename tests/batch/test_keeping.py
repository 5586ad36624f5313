"""Examinations of a batch into the records: each once, whatever kills the run, never over what somebody did since."""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator
from datetime import datetime
from pathlib import Path

import pytest
from sleepers import SAID, SMALL, fill, run, setting

from dictate.batch import Asked, Keeping
from dictate.batch.jobs import Candidate
from dictate.batch.ledger import Entry
from dictate.batch.work import open_counts
from dictate.cli.earlier import tied_to_last
from dictate.errors import InputError
from dictate.grammar import Grammar
from dictate.model import Examination
from dictate.notes import write_note
from dictate.pipeline import Typed, examine
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
    return lambda audio="until-signed": Keeping(records, who=WHO, keep_audio=audio, tie=tied_to_last)


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


VISITS = (
    "made 2026-02-01|Motor. Left deltoid unchanged. Gait normal.",
    "made 2026-03-01|Motor. Left deltoid unchanged. Gait ataxic.",
    "made 2026-04-01|Motor. Left deltoid three plus. Gait unchanged since the last visit.",
    "Motor. Left deltoid unchanged. Gait unchanged.",  # when, nobody knows
)


def said_before(out: Path) -> list[dict[str, tuple[str, str]]]:
    """Day and words of the earlier record by item, of each visit as it is written, in the order of VISITS."""
    exams = [Examination.model_validate_json(path.read_bytes()) for path in out.glob("*.exam.json")]
    exams.sort(key=lambda exam: str(exam.examined_at or "9"))
    return [{one.item: (one.earlier.day, one.earlier.said) for one in exam.findings if one.earlier} for exam in exams]


def save_first(grammar: Grammar, records: Records) -> None:
    """The visit that everything else comes after."""
    said = [Typed("first", "Motor. Left deltoid four minus.")]
    exam = examine(said, engine=None, grammar=grammar, patient="P-1", examined_at=datetime(2026, 1, 1))
    records.save(exam, who=WHO, why="dictated")


@pytest.mark.parametrize("names", ["abcd", "dcba", "bdac"])
def test_unchanged_is_tied_to_the_visit_before(
    grammar: Grammar, tmp_path: Path, records: Records, keep: Callable[..., Keeping], names: str
) -> None:
    """One in the records or of the folder, whichever was heard first; none of the folder where no time is known."""
    save_first(grammar, records)
    folder, out = fill(tmp_path / "in", **dict(zip(names, VISITS, strict=True))), tmp_path / "out"
    tally = run(setting(grammar, asked=Asked(patient="P-1")), folder, out, keeping=keep())
    assert (tally.done, tally.failed, len(records.find())) == (4, 0, 5)
    assert said_before(out) == [
        {"strength_deltoid": ("2026-01-01", "4-")},
        {"strength_deltoid": ("2026-02-01", "4-")},
        {"gait": ("2026-03-01", "ataxic")},
        {"strength_deltoid": ("2026-01-01", "4-")},
    ]
    for row in rows(out).values():
        exam = Examination.model_validate_json((out / f"{row['name']}.exam.json").read_bytes())
        assert records.open(row["record"]).exam == exam
        assert (int(row["must"]), int(row["look"])) == open_counts(exam)
        assert (out / f"{row['name']}.note.txt").read_text(encoding="utf-8") == write_note(exam, grammar)


def test_unchanged_of_nobody_or_not_saved_is_asked(
    grammar: Grammar, tmp_path: Path, records: Records, keep: Callable[..., Keeping]
) -> None:
    """Without a reference, as with `note`; without --save the records are not opened."""
    save_first(grammar, records)
    folder = fill(tmp_path / "in", a=VISITS[0])
    run(setting(grammar), folder, tmp_path / "nobody", keeping=keep())
    run(setting(grammar, asked=Asked(patient="P-1")), folder, tmp_path / "unsaved")
    for out in (tmp_path / "nobody", tmp_path / "unsaved"):
        assert said_before(out) == [{}]
        assert int(rows(out)["a.wav"]["must"]) == 1


def test_killed_before_what_is_unchanged_is_saved(
    grammar: Grammar, tmp_path: Path, records: Records, monkeypatch: pytest.MonkeyPatch, keep: Callable[..., Keeping]
) -> None:
    """The next run ties and saves it, and hears nothing again; a third run has nothing to do."""
    save_first(grammar, records)
    folder, out, log = fill(tmp_path / "in", a=VISITS[1], b=VISITS[0]), tmp_path / "out", tmp_path / "log"
    prepared = setting(grammar, asked=Asked(patient="P-1"), log=str(log))
    saved: list[str] = []
    real = Keeping.save

    def killed(self: Keeping, exam: Examination, entry: Entry, candidate: Candidate) -> Entry:
        if saved:
            raise SystemExit("killed")
        saved.append(entry.source)
        return real(self, exam, entry, candidate)

    with monkeypatch.context() as patched:
        patched.setattr(Keeping, "save", killed)
        with pytest.raises(SystemExit):
            run(prepared, folder, out, keeping=keep())
    assert (saved, len(records.find())) == (["b.wav"], 2)
    for _ in range(2):
        tally = run(prepared, folder, out, keeping=keep())
        assert (tally.done, tally.before, tally.failed, len(records.find())) == (0, 2, 0, 3)
    assert said_before(out) == [{"strength_deltoid": ("2026-01-01", "4-")}, {"strength_deltoid": ("2026-02-01", "4-")}]
    assert len(log.read_text(encoding="utf-8").splitlines()) == 2
