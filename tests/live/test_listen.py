"""A whole session, from sound to transcript, with a recogniser that hears beeps."""

from __future__ import annotations

import errno
import os
import signal
import tempfile
import threading
import time
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from hearing.sounds import write_sound
from live.fakes import BeepEngine, BeepMaker, Lines, spoken

from dictate.errors import MachineError
from dictate.grammar import Grammar
from dictate.hearing.hear import hear_recording
from dictate.hearing.microphone import FileSource, Piece, Trouble, to_pcm
from dictate.live.ear import Died
from dictate.live.kept import Facts, Kept, Said
from dictate.live.listen import Result, Session
from dictate.live.safe_sound import SafeSound
from dictate.model import Hints

KNOWN = (
    "Reflexes.", "Biceps two plus on the right.", "Three plus on the left.", "Pause dictation.",
    "Gait normal.", "Resume dictation.", "Romberg negative.", "End of dictation.", "Knee jerk two plus right.",
)  # fmt: skip
NOW = datetime(2026, 3, 4, 14, 30)


@pytest.fixture(autouse=True)
def own_passing_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What is rescued from a full disk goes with the test."""
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))


class Played:
    """Sound as a microphone gives it, with whatever happens to it."""

    plays = True

    def __init__(self, *what: Any) -> None:
        self.what = what

    def pieces(self, stop: threading.Event) -> Iterator[Piece | Trouble]:
        for each in self.what:
            if isinstance(each, Trouble):
                yield each
                continue
            if callable(each):
                each()
                continue
            pcm = to_pcm(spoken(each, KNOWN))
            for at in range(0, len(pcm), 3200):
                if stop.is_set():
                    return
                yield Piece(pcm[at : at + 3200])


def session(place: Path, grammar: Grammar, source: Any, **more: Any) -> tuple[Session, Lines, Kept]:
    """A new dictation."""
    kept = more.pop("kept", None) or Kept.begin(place, Facts(started_at=NOW, **more.pop("facts", {})))
    screen = Lines()
    make = more.pop("make", BeepMaker(KNOWN))
    return Session(source, kept, grammar, make, screen, **more), screen, kept


def items(result: Result) -> list[tuple[str, str, str]]:
    """Findings of the end."""
    return [(f.item, str(f.side or ""), str(f.value or f.status.value)) for f in result.exam.findings]


REFLEXES = [("reflex_biceps", "right", "2+"), ("reflex_biceps", "left", "3+")]


def test_same_as_the_recording_heard_at_once(tmp_path: Path, grammar: Grammar) -> None:
    """Played through the live path, a recording gives the words that it gives as a recording."""
    path = write_sound(tmp_path / "a.wav", spoken([KNOWN[0], KNOWN[1], KNOWN[2], KNOWN[6]], KNOWN))
    live, screen, kept = session(tmp_path / "s", grammar, FileSource(path, fast=True), fast=True, name="a.wav")
    result = live.run()
    plain = hear_recording(BeepEngine(KNOWN), path, hints=Hints())
    assert result.whole
    assert result.exam.transcript.words == plain.words
    assert result.changed == ()
    assert "= Biceps reflex right: 2+" in screen.text
    assert screen.lines[-1] == "closed"
    assert kept.pieces()[0].read_bytes()[44:] == path.read_bytes()[-len(kept.pieces()[0].read_bytes()) + 44 :]


def test_controls_are_no_part_of_the_note(tmp_path: Path, grammar: Grammar) -> None:
    """Nor is what is said in a pause, or after the end; and the sound of it all is kept."""
    told = [KNOWN[0], KNOWN[1], KNOWN[3], KNOWN[4], KNOWN[5], KNOWN[6], KNOWN[7]]
    live, screen, kept = session(tmp_path, grammar, Played(told))
    result = live.run()
    assert [item for item, _, _ in items(result)] == ["reflex_biceps", "romberg"]
    assert "dictation" not in " ".join(word.text for word in result.exam.transcript.words).lower()
    assert screen.text.count("understood") == 3
    assert kept.samples() > 16_000 * 8


def test_recogniser_killed(tmp_path: Path, grammar: Grammar) -> None:
    """Said at once; the dictation loses nothing."""
    made: list[Session] = []

    def kill() -> None:
        while not (made[0].ear.process and "Biceps" in screen.text):
            time.sleep(0.02)
        os.kill(made[0].ear.process.pid or 0, signal.SIGKILL)

    live, screen, _ = session(tmp_path, grammar, Played(KNOWN[:2], kill, KNOWN[2:3]))
    made.append(live)
    result = live.run()
    assert items(result) == REFLEXES
    assert "started anew, recording goes on" in screen.text
    assert screen.text.count("= Biceps reflex right") == 1


def test_microphone_vanishes_and_comes_back(tmp_path: Path, grammar: Grammar) -> None:
    """Both parts are in the note; a statement does not run across the gap."""
    gone, back = Trouble("the microphone is gone"), Trouble("the microphone is back", gap=True)
    live, screen, kept = session(tmp_path, grammar, Played(KNOWN[:2], gone, back, [KNOWN[8]]))
    result = live.run()
    assert [item for item, _, _ in items(result)] == ["reflex_biceps", "reflex_patellar"]
    assert len(kept.pieces()) == 2
    assert "! the microphone is gone" in screen.text
    assert "! the microphone is back" in screen.text


def test_disk_stays_full(tmp_path: Path, grammar: Grammar) -> None:
    """The dictation goes on, its end is heard from memory, and where the sound lies is said."""

    def full(file: int, data: bytes) -> int:
        if os.fstat(file).st_size > 40_000:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        return os.write(file, data)

    live, screen, kept = session(
        tmp_path, grammar, Played(KNOWN[:3]), open_sound=lambda path: SafeSound(path, write=full)
    )
    result = live.run()
    assert items(result) == REFLEXES
    assert "the sound cannot be written (no space left on device)" in screen.text
    assert "the whole sound is in" in screen.text
    assert kept.samples() < 30_000


def test_what_was_heard_live_has_its_time(tmp_path: Path, grammar: Grammar, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the whole cannot be heard, its note knows as well as any other when the recording was made."""

    def refuse(*_: Any, **__: Any) -> Any:
        raise MachineError("no")

    monkeypatch.setattr("dictate.live.listen.hear_whole", refuse)
    live, _, _ = session(tmp_path, grammar, Played(KNOWN[:3]), created_at=NOW)
    result = live.run()
    assert (items(result), result.whole) == (REFLEXES, False)
    assert (result.exam.examined_at, result.exam.examined_at_from) == (NOW, "recording")


def test_no_model(tmp_path: Path, grammar: Grammar) -> None:
    """One line; what was recorded until then waits to be taken up."""
    live, _, kept = session(tmp_path, grammar, Played(KNOWN[:2]), make=BeepMaker(KNOWN, missing=True))
    with pytest.raises(MachineError, match="--resume"):
        live.run()
    assert kept.samples() > 0


def test_interrupted_and_taken_up(tmp_path: Path, grammar: Grammar) -> None:
    """A file goes on at the very sample: the end is as if nothing had happened, and no phrase comes twice."""
    path = write_sound(tmp_path / "a.wav", spoken([KNOWN[0], KNOWN[1], KNOWN[2], KNOWN[6]], KNOWN))
    sound = to_pcm(spoken([KNOWN[0], KNOWN[1], KNOWN[2], KNOWN[6]], KNOWN))
    facts = {"file": str(path)}
    live, screen, kept = session(tmp_path / "s", grammar, FileSource(path), facts=facts)
    fault: list[Exception] = []

    def run() -> None:
        try:
            live.run()
        except MachineError as error:
            fault.append(error)

    thread = threading.Thread(target=run)
    thread.start()
    while "Biceps" not in screen.text:
        time.sleep(0.02)
    live._events.put(Died("gone", for_good=True))
    thread.join(30)
    assert fault
    kept.close()
    again = Kept.resume(tmp_path / "s")
    assert 0 < again.samples() < len(sound) // 2
    source = FileSource(path, fast=True, skip=again.samples())
    more, screen, kept = session(tmp_path / "s", grammar, source, kept=again, fast=True)
    result = more.run()
    assert kept.pieces()[0].read_bytes()[44:] == sound
    assert items(result)[:2] == REFLEXES
    assert "[0:00] Reflexes." not in screen.text


def test_talk_with_the_patient(tmp_path: Path, grammar: Grammar) -> None:
    """What is said to the patient, and what a second voice answers, gives no finding that nothing is asked about."""
    told = (
        "Motor.", "Deltoid four on the left.", "Can you look over here, please.", "It's weaker on the left.",
        "No pain.", "Is it the same on both sides?", "Reflexes.", "Biceps two plus on the right.", "Does that hurt?",
        "My left leg is weak.", "I can't feel that side.", "That's good.",
    )  # fmt: skip
    source = FileSource(write_sound(tmp_path / "a.wav", spoken(told, told)), fast=True)
    live, screen, _ = session(tmp_path / "s", grammar, source, make=BeepMaker(told), fast=True)
    exam = live.run().exam
    asked = {at for query in exam.queries for at in query.findings}
    dictated = {("strength_deltoid", "4"), ("reflex_biceps", "2+")}
    taken = {(one.item, str(one.value)) for at, one in enumerate(exam.findings) if at not in asked}
    assert taken <= dictated <= {(one.item, str(one.value)) for one in exam.findings}
    assert "weaker" in screen.text
    shown = {line.strip() for line in screen.lines if line.strip().startswith("=")}
    assert shown == {"= Deltoid left: 4", "= Biceps reflex right: 2+"}


@pytest.mark.skipif(os.geteuid() != 0, reason="a small file system is mounted by root only")
def test_small_disk(tmp_path: Path, grammar: Grammar) -> None:
    """A real disk that fills up: said, and the note holds what was dictated after that."""
    place = tmp_path / "small"
    place.mkdir()
    if os.system(f"mount -t tmpfs -o size=96k tmpfs {place} 2>/dev/null"):
        pytest.skip("mounting is not allowed here")
    try:
        live, screen, kept = session(place, grammar, Played(KNOWN[:3]))
        assert items(live.run()) == REFLEXES
        assert "the sound cannot be written (no space left on device)" in screen.text
        assert "the whole sound is in" in screen.text
        assert kept.samples() * 2 < 96_000
        kept.close()
    finally:
        os.system(f"umount {place}")


def test_clock_runs_on_while_a_dictation_is_interrupted(tmp_path: Path, grammar: Grammar) -> None:
    """Minutes of standing are those of the room, not those of the sound; a recording has no others than its own."""
    for file, missed in (("", 120), ("a.wav", 0)):
        place = tmp_path / (file or "microphone")
        kept = Kept.begin(place, Facts(started_at=NOW, file=file))
        SafeSound(kept.next_piece()).close()
        os.utime(kept.pieces()[0], (time.time() - 120,) * 2)
        kept.log(Said(words=(), start_s=10.0, end_s=11.0, done=0, control="start_clock"))
        kept.close()
        live, _, _ = session(place, grammar, Played(), kept=Kept.resume(place))
        live.ear.close()
        assert live.follower.clock.started_s == pytest.approx(10 - missed, abs=20)


def test_stop_ends_properly(tmp_path: Path, grammar: Grammar) -> None:
    """What was recorded until then is heard to its end."""
    live, _, _ = session(tmp_path, grammar, Played(KNOWN[:3], lambda: live.stop(), KNOWN[4:5]))
    assert items(live.run()) == REFLEXES
