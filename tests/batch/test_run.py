"""Batch: candidates in, result files and batch.csv out; what is done is passed over, what fails stops nothing."""

from __future__ import annotations

import csv
import os
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from sleepers import SAID, SMALL, Sleeper, fill, run, setting

from dictate.batch import Asked, Batch, Ledger, find, work
from dictate.batch.crew import DIED, alone
from dictate.batch.jobs import Candidate, Job, Outcome, Place
from dictate.cli.files import write_files
from dictate.errors import MachineError
from dictate.grammar import Grammar
from dictate.model import Action, Decision, Examination, ModelIdentity
from dictate.notes import exam_json
from dictate.review import apply


def table(out: Path) -> dict[str, dict[str, str]]:
    """batch.csv by source."""
    with (out / "batch.csv").open(encoding="utf-8", newline="") as file:
        return {row["source"]: row for row in csv.DictReader(file)}


def heard(log: Path) -> list[str]:
    """Names of what was heard, in order."""
    return [line.split()[0] for line in log.read_text(encoding="utf-8").splitlines()] if log.exists() else []


def test_one_bad_file_never_stops_the_rest(grammar: Grammar, tmp_path: Path) -> None:
    """Each has its line: what is broken, empty, no file, or what the program itself stumbles over."""
    folder = fill(tmp_path / "in", a=SAID, b="fail|", c="break|", d="grow|" + SAID, e=SAID + " Gait normal.")
    (folder / "none.wav").symlink_to(tmp_path / "nowhere.wav")
    (folder / "sick.wav").symlink_to("/proc/self/mem")  # opens, and gives an error when it is read
    (folder / "empty.txt").touch()
    os.mkfifo(folder / "pipe.wav")
    tally = run(setting(grammar), folder, tmp_path / "out")
    rows = table(tmp_path / "out")
    assert (tally.done, tally.failed, tally.settled) == (2, 7, 9)
    assert {source: row["error"].partition(": ")[2] for source, row in rows.items() if row["state"] == "failed"} == {
        "b.wav": "damaged",
        "c.wav": "please report it, without the recording",
        "d.wav": "changed while it was read: run again when it is complete",
        "empty.txt": "the text is empty: give the words of the dictation",
        "none.wav": "no such file, or a link to nothing: check it",
        "pipe.wav": "not a regular file: name a recording",
        "sick.wav": "cannot be read: input/output error",
    }
    assert "a message that must not get out" not in rows["c.wav"]["error"]
    assert [rows[name]["findings"] for name in ("a.wav", "e.wav")] == ["2", "3"]


def test_what_is_done_is_not_done_again(grammar: Grammar, tmp_path: Path) -> None:
    """A changed one is, as are one whose note is gone, one that failed, and all when something else is asked."""
    log, out = tmp_path / "log", tmp_path / "out"
    folder = fill(tmp_path / "in", a=SAID, b=SMALL, c=f"fail|{SAID}", d=SAID + SMALL)
    first = run(setting(grammar, log=str(log)), folder, out)
    assert (first.done, first.failed) == (3, 1)
    log.unlink()
    fill(folder, a=SAID + " Clonus absent.")
    next(out.glob("d-*.note.txt")).unlink()
    second = run(setting(grammar, log=str(log)), folder, out)
    assert sorted(heard(log)) == ["a.wav", "c.wav", "d.wav"]
    assert (second.done, second.before, second.failed) == (2, 1, 1)
    assert table(out)["a.wav"]["findings"] == "3"
    log.unlink()
    third = run(setting(grammar, log=str(log), asked=Asked(brief=True)), folder, out)
    assert (third.done, third.before) == (3, 0)
    fourth = run(setting(grammar, log=str(log), asked=Asked(brief=True), sha256="2" * 64), folder, out)
    assert (fourth.done, fourth.before) == (3, 0)


def reviewed(path: Path, grammar: Grammar) -> bytes:
    """Something is decided about the results, as `dictate review` does; what the file holds then."""
    exam = Examination.model_validate_json(path.read_bytes())
    after = apply(exam, Decision(action=Action.ADD, answer="clonus absent"), grammar)
    write_files(path.parent, {path.name: exam_json(after)})
    return path.read_bytes()


def test_what_was_reviewed_is_never_written_over(grammar: Grammar, tmp_path: Path) -> None:
    """Another model, program or option reads it no more; another recording is said, and its results are to be moved."""
    log, out = tmp_path / "log", tmp_path / "out"
    folder = fill(tmp_path / "in", a=SAID, b=SMALL)
    run(setting(grammar, log=str(log)), folder, out)
    (path,) = out.glob("a-*.exam.json")
    kept = reviewed(path, grammar)
    log.unlink()
    again = run(setting(grammar, log=str(log), asked=Asked(brief=True)), folder, out)
    assert (again.done, again.before, again.reviewed, again.failed) == (1, 1, 1, 0)
    assert heard(log) == ["b.wav"]
    assert path.read_bytes() == kept
    fill(folder, a=SAID + " Gait normal.")
    for _ in range(2):
        assert run(setting(grammar, log=str(log)), folder, out).failed == 1
        assert "was reviewed since: its files stay" in table(out)["a.wav"]["error"]
        assert path.read_bytes() == kept
    path.rename(tmp_path / "moved.exam.json")
    assert run(setting(grammar, log=str(log)), folder, out).failed == 0
    assert table(out)["a.wav"]["findings"] == "3"


def test_what_is_reviewed_while_its_recording_is_heard_again(grammar: Grammar, tmp_path: Path) -> None:
    """What was decided meanwhile stays, too."""
    out = tmp_path / "out"
    folder = fill(tmp_path / "in", a=SAID)
    run(setting(grammar), folder, out)
    fill(folder, a=SAID + " Gait normal.")
    (path,) = out.glob("a-*.exam.json")
    kept = b""
    with Ledger(out) as ledger, alone(setting(grammar)) as crew:
        submit = crew.submit

        def slow(job: Job, done: Callable[[Job, Callable[[], Outcome]], None]) -> None:
            nonlocal kept
            kept = reviewed(path, grammar)
            submit(job, done)

        crew.submit = slow  # type: ignore[method-assign]
        tally = Batch(setting(grammar), crew, ledger, write=write_files).run(find(str(folder)).candidates)
    assert tally.failed == 1
    assert "was reviewed since" in table(out)["a.wav"]["error"]
    assert path.read_bytes() == kept


def test_earlier_results_are_named_when_the_changed_recording_fails(grammar: Grammar, tmp_path: Path) -> None:
    """Its old note stands beside a failure, and the line says so."""
    folder = fill(tmp_path / "in", a=SAID)
    run(setting(grammar), folder, tmp_path / "out")
    fill(folder, a="fail|")
    run(setting(grammar), folder, tmp_path / "out")
    assert table(tmp_path / "out")["a.wav"]["error"].endswith("of an earlier reading)")


def test_the_same_recording_twice_is_noticed(grammar: Grammar, tmp_path: Path) -> None:
    """It is heard once, whatever its names; which one is the first does not change from run to run."""
    log, out = tmp_path / "log", tmp_path / "out"
    folder = fill(tmp_path / "in", b=SAID, ward__c=SAID)
    tally = run(setting(grammar, log=str(log)), folder, out)
    assert (tally.done, tally.same, heard(log)) == (1, 1, ["b.wav"])
    fill(folder, a=SAID)
    tally = run(setting(grammar, log=str(log)), folder, out)
    assert (tally.before, tally.same, len(heard(log))) == (1, 2, 1)
    assert {source: row["same_as"] for source, row in table(out).items()} == {
        "a.wav": "b.wav", "b.wav": "", "ward/c.wav": "b.wav",
    }  # fmt: skip


@pytest.mark.parametrize("copies", [("a", "c"), ("c", "d"), ("a", "aa")])
def test_a_copy_is_heard_when_the_first_is_another_now(
    grammar: Grammar, tmp_path: Path, copies: tuple[str, str]
) -> None:
    """Recorded over, or damaged: what its copies hold is not lost, whichever is taken first."""
    for what in (SMALL, "fail|"):
        folder, out = tmp_path / what[:4] / "in", tmp_path / what[:4] / "out"
        run(setting(grammar), fill(folder, b=SAID), out)
        fill(folder, **{"b": what, copies[0]: SAID, copies[1]: SAID})
        tally = run(setting(grammar), folder, out)
        rows = table(out)
        assert tally.settled == 3
        assert rows["b.wav"]["state"] == ("done" if what == SMALL else "failed")
        assert (rows[f"{copies[0]}.wav"]["state"], rows[f"{copies[0]}.wav"]["findings"]) == ("done", "2")
        assert rows[f"{copies[1]}.wav"]["same_as"] == f"{copies[0]}.wav"


def test_a_recording_that_is_part_of_two_examinations_is_noticed(grammar: Grammar, tmp_path: Path) -> None:
    """Both are written, and the second names the first."""
    folder = fill(tmp_path / "in", v1__a=SAID, v1__b=SMALL, v2__a=SAID)
    tally = run(setting(grammar), folder, tmp_path / "out", together=True)
    rows = table(tmp_path / "out")
    assert (tally.done, rows["v2/"]["same_as"], rows["v1/"]["findings"]) == (2, "v1/", "3")


def test_several_patients_in_one_recording_are_asked_about(grammar: Grammar, tmp_path: Path) -> None:
    """A query that must be settled, counted in batch.csv."""
    folder = fill(tmp_path / "in", a=f"{SAID} Next patient. Left biceps one plus.")
    run(setting(grammar), folder, tmp_path / "out")
    assert int(table(tmp_path / "out")["a.wav"]["must"]) >= 1
    assert "several-patients" in next((tmp_path / "out").glob("*.queries.csv")).read_text(encoding="utf-8")


def test_order_changes_nothing(grammar: Grammar, tmp_path: Path) -> None:
    """The same files whichever way round they were heard."""
    folder = fill(tmp_path / "in", a=SAID, b=SMALL, c="Left biceps seven plus.", d="Pronator drift on the left.")
    made = []
    for turned in (False, True):
        out = tmp_path / f"out{turned}"
        candidates = find(str(folder)).candidates
        one = setting(grammar)
        work.prepare(one)
        with Ledger(out) as ledger:
            Batch(one, Direct(one.run), ledger, write=write_files).run(candidates[::-1] if turned else candidates)
        made.append({path.name: path.read_bytes() for path in out.glob("?-*")})
    assert len(made[0]) == 20
    assert made[0] == made[1]


class Direct:
    """A crew that works at once, or does what the test says with a job."""

    def __init__(self, key: str, *, first: Callable[[Job], Outcome | None] = lambda job: None) -> None:
        self.key, self.first, self.jobs = key, first, list[Job]()
        self.open = self.most = 0

    def room(self) -> int:
        """Two."""
        return 2

    def identify(self) -> ModelIdentity:
        """The sleeper's."""
        return Sleeper().identity

    def check(self) -> None:
        """Always there."""

    def submit(self, job: Job, done: Callable[[Job, Callable[[], Outcome]], None]) -> None:
        """At once."""
        self.jobs.append(job)
        outcome = self.first(job) or work.do(self.key, job)
        done(job, lambda: outcome)


@pytest.fixture
def direct(grammar: Grammar) -> Iterator[Callable[..., tuple[Direct, Callable[[Path | str, Path], Batch]]]]:
    """A crew that works at once, and what starts a batch with it."""
    one = setting(grammar)
    work.prepare(one)

    def make(**how: Callable[[Job], Outcome | None]) -> tuple[Direct, Callable[[Path | str, Path], Batch]]:
        crew = Direct(one.run, **how)

        def go(folder: Path | str, out: Path) -> Batch:
            with Ledger(out) as ledger:
                batch = Batch(one, crew, ledger, write=write_files)
                batch.run(find(str(folder)).candidates)
            return batch

        return crew, go

    yield make
    work.release(one.run)


Make = Callable[..., tuple[Direct, Callable[[Path | str, Path], Batch]]]


def test_sound_is_sent_along_where_a_worker_does_not_see_it(direct: Make, tmp_path: Path) -> None:
    """It is asked for once; after that all sound travels with its job."""
    crew, go = direct(first=lambda job: None if job.sent else Outcome(unseen=True))
    batch = go(fill(tmp_path / "in", a=SAID, b=SMALL, c="Clonus absent."), tmp_path / "out")
    assert batch.tally.done == 3
    assert sum(not job.sent for job in crew.jobs) <= crew.room()
    assert {job.source: job.sent for job in crew.jobs if job.sent}["b.wav"] == (SMALL.encode(),)


def test_address_that_only_the_batch_reaches(direct: Make, tmp_path: Path) -> None:
    """A worker fetches what it can; the rest is sent along, and what is gone or has grown since is said."""
    folder = fill(tmp_path / "in", a=SAID, b=SMALL, c="Clonus absent.", gone=SAID + SMALL)

    def first(job: Job) -> Outcome | None:
        if job.source == "a.wav":
            (folder / "gone.wav").unlink()
            fill(folder, c="Clonus absent. And so on")
        away = replace(job, paths=tuple(path.replace("file://", "file:///elsewhere") for path in job.paths))
        return None if job.sent else work.do(crew.key, away if job.source == "b.wav" else job)

    crew, go = direct(first=first)
    batch = go(f"file://{folder}", tmp_path / "out")
    said = {source: row["error"] or row["findings"] for source, row in table(tmp_path / "out").items()}
    assert said.pop("gone.wav").startswith("gone.wav: cannot be fetched")
    assert said == {
        "a.wav": "2",
        "b.wav": "1",
        "c.wav": "c.wav: changed while it was read: run again when it is complete",
    }
    assert [job.sent for job in crew.jobs if job.sent] == [(SMALL.encode(),)]
    assert (batch.tally.done, batch.tally.failed) == (2, 2)


def test_job_that_workers_die_of_is_tried_alone_and_then_said(direct: Make, tmp_path: Path) -> None:
    """A neighbour that died of it is not blamed: alone it is heard."""
    seen: list[str] = []

    def deadly(job: Job) -> Outcome | None:
        seen.append(job.source)
        poisoned = job.source == "b.wav" or (job.source == "a.wav" and seen.count("a.wav") == 1)
        return Outcome(error=DIED) if poisoned else None

    _, go = direct(first=deadly)
    batch = go(fill(tmp_path / "in", a=SAID, b=SMALL, c="Clonus absent."), tmp_path / "out")
    assert seen == ["a.wav", "b.wav", "c.wav", "a.wav", "b.wav"]
    assert (batch.tally.done, batch.tally.failed) == (2, 1)
    assert table(tmp_path / "out")["b.wav"]["error"] == DIED


def test_no_more_jobs_are_under_way_than_there_is_room(direct: Make, tmp_path: Path) -> None:
    """However many there are to do."""
    crew, go = direct()
    held: list[Callable[[], None]] = []
    most = 0

    def slow(job: Job, done: Callable[[Job, Callable[[], Outcome]], None]) -> None:
        nonlocal most
        crew.jobs.append(job)
        held.append(lambda: done(job, lambda: Outcome(error="x")))
        most = max(most, len(held))
        if len(held) == crew.room() or len(crew.jobs) == 9:
            while held:
                held.pop()()

    crew.submit = slow  # type: ignore[method-assign]
    batch = go(fill(tmp_path / "in", **{f"f{number}": f"fail| {number}" for number in range(9)}), tmp_path / "out")
    assert (batch.tally.failed, most) == (9, crew.room())


def test_scheduler_that_is_gone_ends_the_batch_and_keeps_what_is_done(direct: Make, tmp_path: Path) -> None:
    """One line, and a table that says what is done."""
    crew, go = direct()
    whole = crew.submit

    def gone(job: Job, done: Callable[[Job, Callable[[], Outcome]], None]) -> None:
        if job.source != "b.wav":
            return whole(job, done)

        def fault() -> Outcome:
            raise MachineError("the scheduler is gone")

        return done(job, fault)

    crew.submit = gone  # type: ignore[method-assign]
    folder = fill(tmp_path / "in", a=SAID, b=SMALL)
    with pytest.raises(MachineError, match="gone"):
        go(folder, tmp_path / "out")
    assert list(table(tmp_path / "out")) == ["a.wav"]


def test_arrivals_are_settled_while_the_folder_fills(grammar: Grammar, tmp_path: Path) -> None:
    """None means: nothing at the moment."""
    folder = fill(tmp_path / "in", a=SAID, b=SMALL)
    first, second = find(str(folder)).candidates
    one = setting(grammar)
    work.prepare(one)
    with Ledger(tmp_path / "out") as ledger:
        batch = Batch(one, Direct(one.run), ledger, write=write_files)
        assert batch.run([first, None, second, first]).settled == 3
    assert batch.tally.before == 1, "given twice, done once"


def test_arrival_that_changes_while_it_is_heard_is_heard_again(grammar: Grammar, tmp_path: Path) -> None:
    """What came last counts."""
    folder = fill(tmp_path / "in", a=f"sleep 0.5|{SMALL}")

    def looks() -> Iterator[Candidate | None]:
        yield find(str(folder)).candidates[0]
        fill(folder, a=SAID)
        yield find(str(folder)).candidates[0]

    with Ledger(tmp_path / "out") as ledger, alone(one := setting(grammar)) as crew:
        Batch(one, crew, ledger, write=write_files).run(looks())
    assert (table(tmp_path / "out")["a.wav"]["state"], table(tmp_path / "out")["a.wav"]["findings"]) == ("done", "2")


def test_unreadable_folder_is_a_line(grammar: Grammar, tmp_path: Path) -> None:
    """With what to do."""
    one = setting(grammar)
    with Ledger(tmp_path) as ledger:
        tally = Batch(one, Direct(one.run), ledger, write=write_files).run([Candidate("ward/", (), "cannot be read")])
    assert (tally.failed, table(tmp_path)["ward/"]["error"]) == (1, "ward/: cannot be read")


def test_full_disk_ends_the_batch(grammar: Grammar, tmp_path: Path) -> None:
    """Nothing is recorded as done whose files are not there."""
    one = setting(grammar)
    work.prepare(one)

    def full(folder: Path, files: object) -> None:
        raise MachineError("no space left")

    with Ledger(tmp_path / "out") as ledger:
        batch = Batch(one, Direct(one.run), ledger, write=full)
        path = fill(tmp_path / "in", a=SAID) / "a.wav"
        with pytest.raises(MachineError, match="no space"):
            batch.run([Candidate("a.wav", (Place(str(path), 1, ""),))])
        assert not ledger.entries
