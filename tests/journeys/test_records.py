"""Records as people keep them: from the dictation to the signed note, and killed at any moment in between."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest
from by_hand import ROOT
from records.visits import BY, heard, note_of, recording, visit

from dictate.grammar import Grammar
from dictate.model import Action, Decision
from dictate.pipeline import examine_transcript
from dictate.reading import transcript_of_text
from dictate.records import Records, Stored, open_records
from dictate.records.place import SOUNDS
from dictate.review.kept import RecordShelf
from dictate.review.sitting import Sitting

Run = Callable[..., "subprocess.CompletedProcess[str]"]
DOUBTFUL = (
    "Reflexes. Biceps two plus on the right, three plus on the left. Left triceps seven plus. Purple elephants sing."
)


@pytest.fixture
def keep(dictate: Run, cut_off: Path, tmp_path: Path) -> Run:
    """The program with records of its own."""
    folder = tmp_path / "records"

    def run(*arguments: str, stdin: str = "") -> subprocess.CompletedProcess[str]:
        path = os.pathsep.join((str(cut_off), str(ROOT)))
        return dictate(*arguments, stdin=stdin, env={"DICTATE_RECORDS": str(folder), "PYTHONPATH": path})

    return run


def test_from_dictation_to_withdrawal(keep: Run, tmp_path: Path) -> None:
    """Saved, refused, settled, signed, amended, withdrawn, verified: each by its own process."""
    saved = keep("note", "-", "--save", "--patient", "P-1", stdin=DOUBTFUL)
    assert saved.returncode == 0, saved.stderr
    assert saved.stdout.startswith("DRAFT, not signed, ")
    key = saved.stderr.split("record ")[1].split(",")[0]
    refused = keep("sign", key, "--by", BY)
    assert (refused.returncode, refused.stdout) == (1, "")
    assert "must be settled before signing: [?1] " in refused.stderr
    assert refused.stderr.count("\n") == 1
    with open_records(tmp_path / "records") as records:
        one = records.open(key)
        musts = [at for at, query in enumerate(one.exam.queries) if query in one.exam.open_musts]
        decided = one.exam.model_copy(update={"decisions": tuple(Decision(query=at, answer="3+") for at in musts)})
        records.save(decided, who=BY, why="settled", key=key, base=one.revision)
    signed = keep("sign", key, "--by", BY, "--passed-over")
    assert signed.returncode == 0, signed.stderr
    assert "patient: P-1" in signed.stderr
    assert "look 1 of " in signed.stderr
    assert signed.stdout.startswith(f"Signed by {BY}, ")
    amended = keep("amend", key, "--by", BY, "--reason", "forgotten", "-", stdin="Jaw jerk normal.")
    assert amended.stdout.startswith(signed.stdout)
    assert "Jaw jerk normal." in amended.stdout.removeprefix(signed.stdout)
    withdrawn = keep("withdraw", key, "--by", BY, "--reason", "another patient's")
    assert withdrawn.stdout.startswith("WITHDRAWN ")
    assert signed.stdout.rstrip() in withdrawn.stdout
    head = signed.stdout.rstrip().rsplit(" ", 1)[1]
    verified = keep("records", "verify", "--head", head)
    assert (verified.returncode, verified.stdout) == (0, "1 record, all as written\n")


def work(folder: Path, audio: Path, tell: Callable[[Stored], None]) -> None:
    """Save, save with a recording, sign, amend, for ever; every thing done is told once it is done."""
    with open_records(folder) as records:
        while True:
            one = records.save(visit(), who=BY, why="dictated")
            tell(one)
            tell(
                records.save(heard(audio), who=BY, why="more", key=one.key, base=1, audio=[audio], keep="until-signed")
            )
            tell(records.sign(one.key, by=BY, note=note_of))
            tell(records.amend(one.key, by=BY, why="forgotten", text="Jaw jerk normal."))


def killed(work: Callable[[Callable[[Stored], None]], None], after_s: float, count: int = 1) -> list[str]:
    """Lines that a process told, one when each thing was done, before it was killed some time after that many."""
    hear, tell = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            os.close(hear)
            work(lambda one: os.write(tell, f"{one.key} {one.revision} {one.head}\n".encode()) and None)
        finally:
            os._exit(1)
    os.close(tell)
    with open(hear, encoding="ascii") as told:
        lines = [told.readline() for _ in range(count)]
        time.sleep(after_s)
        os.kill(child, signal.SIGKILL)
        lines += told.read().splitlines()
    assert os.WIFSIGNALED(os.waitpid(child, 0)[1])
    return [line.strip() for line in lines if line.strip()]


def kill_and_look(folder: Path, audio: Path, times: int) -> None:
    """Whatever the moment: what was told is there, the database opens, the chain verifies, no litter stays."""
    luck = random.Random(times)
    told: list[str] = []
    for _ in range(times):
        told += killed(lambda tell: work(folder, audio, tell), luck.uniform(0, 0.15))
        with open_records(folder) as records:
            assert records.verify() == []
            newest = {one.key: one.revision for one in records.find()}
            for line in told[-40:]:
                key, revision, _ = line.split()
                assert newest[key] >= int(revision)
            key, revision, head = told[-1].split()
            one = records.open(key)
            assert one.exam.findings == visit().findings
            if one.revision == int(revision):
                assert one.head == head
            kept = records.audio(key, 0)
            assert one.state == "draft" or kept is None
            assert kept is None or (isinstance(kept, Path) and kept.read_bytes() == audio.read_bytes())
        assert not list(folder.rglob("*.part"))
    with open_records(folder) as records:
        with records._ledger.read() as db:
            seals = {row.seal.decode() for row in records._ledger.rows(db)}
        assert {line.split()[2] for line in told} <= seals
        live = sum(one.state == "draft" and one.revision == 2 for one in records.find())
        assert len(list((folder / SOUNDS).iterdir())) == live


def test_killed_while_saving_and_signing(tmp_path: Path) -> None:
    """Twenty times at random moments."""
    kill_and_look(tmp_path / "records", recording(tmp_path, content=b"sound" * 20_000), 20)


@pytest.mark.slow
def test_killed_two_hundred_times(tmp_path: Path) -> None:
    """The full count."""
    kill_and_look(tmp_path / "records", recording(tmp_path, content=b"sound" * 20_000), 200)


MADE = (0, 1, 2, 3, 2, 3, 3, 3)  # decisions after each revision: saved, three answers, one taken back and made again


def settle(records: Records, key: str, grammar: Grammar, tell: Callable[[Stored], None]) -> None:
    """Answer every question of a record as the page does, sign it, add to it; each told once it is done."""
    sitting = Sitting(RecordShelf(records, key, grammar, account="A"), grammar, who=BY)
    while order := sitting.open_places():
        question = sitting.question(order[0])
        first = next((one for one in question.choices if one.key), None)
        sitting.decide(first.decision if first else Decision(query=order[0], answer="", action=Action.AS_SAID))
        tell(records.open(key))
    sitting.undo()
    tell(records.open(key))
    sitting.decide(Decision(query=sitting.open_places()[0], answer="", action=Action.SEEN))
    tell(records.open(key))
    sitting.sign(by=BY)
    tell(records.open(key))
    sitting.amend("Jaw jerk normal.", by=BY, why="forgotten")
    tell(records.open(key))


def kill_settling(folder: Path, grammar: Grammar, times: int) -> set[str]:
    """Whatever the moment: each decision, signature and addendum that was told is there. Returns the states met."""
    luck, states = random.Random(times), set[str]()
    exam = examine_transcript(transcript_of_text(DOUBTFUL), grammar=grammar, patient="P-1")
    with open_records(folder) as records:
        keys = [records.save(exam, who=BY, why="dictated").key for _ in range(times)]

    def work(key: str, tell: Callable[[Stored], None]) -> None:
        with open_records(folder) as records:
            tell(records.open(key))
            settle(records, key, grammar, tell)
            time.sleep(9)

    for at, key in enumerate(keys):  # the first ones at once behind each revision, so that every state is met
        wait = 0 if at < len(MADE) else luck.uniform(0, 0.05)
        told = killed(partial(work, key), wait, count=at % len(MADE) + 1)
        with open_records(folder) as records:
            one = records.open(key)
            last = [line.split() for line in told][-1]
            assert one.revision >= int(last[1])
            assert one.revision > int(last[1]) or one.head == last[2]
            assert len(one.exam.decisions) == MADE[one.revision - 1]
            states.add(one.state if one.state != "draft" else f"draft {len(one.exam.decisions)}")
            assert (one.state == "draft") == (one.note == "")
            with records._ledger.read() as db:
                seals = {row.seal.decode() for row in records._ledger.rows_of(db, key)}
            assert {line.split()[2] for line in told} <= seals
            sitting = Sitting(RecordShelf(records, key, grammar, account="A"), grammar, who=BY)
            assert sitting.exam == one.exam
    with open_records(folder) as records:
        assert records.verify() == []
    return states


def test_killed_while_settling_and_signing(tmp_path: Path, grammar: Grammar) -> None:
    """Twenty times; the moments reach from the first answer to the addendum."""
    assert {"draft 1", "draft 2", "draft 3", "amended"} <= kill_settling(tmp_path / "records", grammar, 20)


@pytest.mark.slow
def test_killed_while_settling_two_hundred_times(tmp_path: Path, grammar: Grammar) -> None:
    """The full count."""
    assert {"draft 1", "draft 2", "draft 3", "signed", "amended"} <= kill_settling(tmp_path / "records", grammar, 200)


@pytest.mark.slow
def test_the_program_itself_is_killed(cut_off: Path, tmp_path: Path) -> None:
    """`dictate note --save` at thirty moments of its life: what it said is saved is saved."""
    folder, luck = tmp_path / "records", random.Random(3)
    path = os.pathsep.join((str(cut_off), str(ROOT)))
    env = {**os.environ, "DICTATE_RECORDS": str(folder), "PYTHONPATH": path, "DICTATE_GRAMMAR": str(tmp_path)}
    (tmp_path / "visit.txt").write_text(DOUBTFUL, encoding="utf-8")
    told = []
    for _ in range(30):
        command = [sys.executable, "-m", "dictate.cli.app", "note", str(tmp_path / "visit.txt"), "--save"]
        with subprocess.Popen(command, env=env, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True) as run:
            time.sleep(luck.uniform(0.5, 4))
            run.kill()
            told += [line.split()[2].strip(",") for line in run.communicate()[1].splitlines() if "saved: " in line]
        with open_records(folder) as records:
            assert records.verify() == []
            assert set(told) <= {one.key for one in records.find()}
