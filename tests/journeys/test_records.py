"""Records as people keep them: from the dictation to the signed note, and killed at any moment in between."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from by_hand import ROOT
from records.visits import BY, heard, note_of, recording, visit

from dictate.model import Decision
from dictate.records import open_records
from dictate.records.place import SOUNDS

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
    unseen = keep("sign", key, "--by", BY)
    assert "must be looked at before signing" in unseen.stderr
    signed = keep("sign", key, "--by", BY, "--passed-over")
    assert signed.returncode == 0, signed.stderr
    assert "patient: P-1" in signed.stderr
    assert "look 1 of " in signed.stderr
    assert signed.stdout.startswith(f"Signed by {BY}, ")
    amended = keep("amend", key, "--by", BY, "--reason", "forgotten", "-", stdin="Jaw jerk normal.")
    assert amended.stdout.startswith(signed.stdout)
    assert "Jaw jerk normal." in amended.stdout.removeprefix(signed.stdout)
    again = keep("sign", key, "--by", BY)
    assert again.returncode == 1
    assert "is no draft" in again.stderr
    withdrawn = keep("withdraw", key, "--by", BY, "--reason", "another patient's")
    assert withdrawn.stdout.startswith("WITHDRAWN ")
    assert signed.stdout.rstrip() in withdrawn.stdout
    head = signed.stdout.rstrip().rsplit(" ", 1)[1]
    verified = keep("records", "verify", "--head", head)
    assert (verified.returncode, verified.stdout) == (0, "1 record, all as written\n")
    other = keep("records", "verify", "--head", "0" * 64)
    assert (other.returncode, other.stdout) == (1, f"head {'0' * 64}: is not in the chain\n")


def work(folder: Path, audio: Path, tell: int) -> None:
    """Save, save with a recording, sign, amend, for ever; every thing done is told once it is done."""
    with open_records(folder) as records:
        while True:
            one = records.save(visit(), who=BY, why="dictated")
            os.write(tell, f"{one.key} {one.revision} {one.head}\n".encode())
            two = records.save(
                heard(audio), who=BY, why="more", key=one.key, base=1, audio=[audio], keep="until-signed"
            )
            os.write(tell, f"{two.key} {two.revision} {two.head}\n".encode())
            three = records.sign(one.key, by=BY, note=note_of)
            os.write(tell, f"{three.key} {three.revision} {three.head}\n".encode())
            four = records.amend(one.key, by=BY, why="forgotten", text="Jaw jerk normal.")
            os.write(tell, f"{four.key} {four.revision} {four.head}\n".encode())


def killed(folder: Path, audio: Path, after_s: float) -> list[str]:
    """Lines that a process told before it was killed without warning."""
    hear, tell = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            os.close(hear)
            work(folder, audio, tell)
        finally:
            os._exit(1)
    os.close(tell)
    with open(hear, encoding="ascii") as told:
        first = told.readline()
        time.sleep(after_s)
        os.kill(child, signal.SIGKILL)
        lines = [first, *told.read().splitlines()]
    assert os.WIFSIGNALED(os.waitpid(child, 0)[1])
    return [line.strip() for line in lines if line.strip()]


def kill_and_look(folder: Path, audio: Path, times: int) -> None:
    """Whatever the moment: what was told is there, the database opens, the chain verifies, no litter stays."""
    luck = random.Random(times)
    told: list[str] = []
    for _ in range(times):
        told += killed(folder, audio, luck.uniform(0, 0.15))
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
