"""Following a dictation: controls, the clock, a pause, and what is said back."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest
from live.fakes import Lines

from dictate.grammar import Grammar
from dictate.live.following import Follower
from dictate.live.kept import Facts, Kept, Mute, Said
from dictate.live.recogniser import Heard
from dictate.live.tones import Muting, Sounds
from dictate.model import Stretch, Word


class Played(Sounds):
    """Sounds that are only counted."""

    def __init__(self) -> None:
        super().__init__(Muting(on_mute=lambda _: None), play=None)
        self.tones: list[str] = []
        self.read: list[str] = []
        self.reading = False

    @property
    def speaks(self) -> bool:
        return self.reading

    def tone(self, tone: str, *, now_s: float) -> None:  # type: ignore[override]
        self.tones.append(tone)

    def read_aloud(self, text: str, *, now_s: object) -> bool:  # type: ignore[override]
        self.read.append(text)
        return True


class Bedside:
    """A follower whose phrases come ten seconds apart."""

    def __init__(self, place: Path, grammar: Grammar, **facts: str) -> None:
        self.kept = Kept.begin(place, Facts(started_at=datetime(2026, 3, 4, 14, 30), **facts))  # type: ignore[arg-type]
        self.screen, self.sounds, self.stopped, self.now_s = Lines(), Played(), 0, 0.0
        self.follower = self.following(grammar)

    def following(self, grammar: Grammar) -> Follower:
        return Follower(self.kept, grammar, self.screen, now_s=lambda: self.now_s, stop=self.stop, sounds=self.sounds)

    def stop(self) -> None:
        self.stopped += 1

    def say(self, text: str, *, lost: bool = False) -> str:
        """The lines that follow."""
        count, self.now_s = len(self.screen.lines), self.now_s + 10
        words = tuple(
            Word(text=word, start_s=self.now_s + at / 2, end_s=self.now_s + at / 2 + 0.4, probability=0.9)
            for at, word in enumerate(text.split())
        )
        stretch = (Stretch(start_s=self.now_s, end_s=self.now_s + 1),) if lost else ()
        end_s = self.now_s + len(words) / 2
        self.follower.heard(Heard(words, stretch, self.now_s, end_s, int(end_s * 16_000)))
        return "\n".join(self.screen.lines[count:])

    def wait(self, seconds: float) -> str:
        """The lines that time brings."""
        count, self.now_s = len(self.screen.lines), self.now_s + seconds
        self.follower.tick()
        return "\n".join(self.screen.lines[count:])


@pytest.fixture
def bed(tmp_path: Path, grammar: Grammar) -> Bedside:
    """Nothing said yet."""
    return Bedside(tmp_path, grammar)


def test_tones_tell_taken_from_doubtful(bed: Bedside) -> None:
    """Without looking: taken, doubtful, not placed; nothing for a heading."""
    bed.say("Reflexes.")
    bed.say("Biceps two plus on the right.")
    bed.say("Knee jerk three plus.")
    bed.say("Juggler veins not extended.")
    bed.say("", lost=True)
    assert bed.sounds.tones == ["taken", "doubtful", "not placed", "not placed"]


def test_pause_and_resume(bed: Bedside) -> None:
    """What is said between is kept as sound, and is no part of the note."""
    bed.say("Gait normal.")
    assert "understood: paused" in bed.say("Pause dictation.")
    assert bed.say("Knee jerk three plus on the left.") == ""
    assert bed.say("Start the clock.") == ""
    assert not bed.follower.clock.runs
    assert "understood: listening again" in bed.say("Resume dictation.")
    bed.say("Romberg negative.")
    assert {finding.item for finding in bed.follower.whole().findings} == {"gait", "romberg"}
    (mute,) = [entry for entry in bed.kept.entries() if isinstance(entry, Mute)]
    assert (mute.start_s, mute.end_s, mute.why) == (20.9, 50.0, "paused")


def test_ended_while_paused(bed: Bedside) -> None:
    """The pause reaches to the end."""
    bed.say("Pause dictation.")
    assert "end of dictation" in bed.say("End of dictation.")
    assert bed.stopped == 1
    bed.follower.leave_pause()
    assert [entry.why for entry in bed.kept.entries() if isinstance(entry, Mute)] == ["paused"]


def test_read_back(bed: Bedside) -> None:
    """The last finding, on the screen and aloud."""
    assert "nothing taken yet" in bed.say("Read that back.")
    bed.say("Knee jerk three plus on the left.")
    bed.say("Reflexes.")
    assert "Knee jerk left: 3+" in bed.say("Read that back.")
    assert bed.sounds.read[-1] == "Knee jerk left: 3+"


def test_deaf_while_it_reads_aloud(bed: Bedside) -> None:
    """It says so, and when it listens again; a pause goes on."""
    bed.sounds.reading = True
    assert "> reading aloud, not listening" in bed.wait(1)
    assert bed.wait(1) == ""
    bed.sounds.reading = False
    assert "> listening" in bed.wait(1)
    bed.say("Pause dictation.")
    bed.sounds.reading = True
    bed.wait(1)
    bed.sounds.reading = False
    assert "> paused" in bed.wait(1)


def test_an_order_in_a_pause_is_none_after_a_crash_either(bed: Bedside, grammar: Grammar) -> None:
    """Neither the clock starts, nor does the pause begin anew."""
    bed.say("Pause dictation.")
    bed.say("Start the clock.")
    bed.say("Pause dictation.")
    again = bed.following(grammar)
    again.restore()
    assert not again.clock.runs
    assert again.paused
    bed.now_s = 100.0
    again.leave_pause()
    assert [entry.start_s for entry in bed.kept.entries() if isinstance(entry, Mute)] == [10.9]


def test_still_open(bed: Bedside) -> None:
    """Without a scope: what must be settled."""
    assert "nothing taken yet" in bed.say("What is still open?")
    bed.say("Gait normal.")
    assert bed.say("What is still open?").endswith(" nothing")
    bed.say("Knee jerk three plus.")
    assert "which side" in bed.say("What is still open?").lower()


def test_still_open_of_a_scope(tmp_path: Path, grammar: Grammar) -> None:
    """With a scope: what it asks for, on the screen all the time, less what was said."""
    bed = Bedside(tmp_path, grammar, scope="dizziness")
    bed.say("Heart rhythm regular.")
    before = " ".join(bed.follower.view.still_open)
    bed.say("Romberg negative.")
    assert "omberg" in before
    assert "omberg" not in " ".join(bed.follower.view.still_open)


def test_the_screen_takes_back_and_puts_together(bed: Bedside) -> None:
    """What it shows of a value said in two phrases; and of what is open names only, to be read from afar."""
    bed.say("Left deltoid four.")
    bed.say("Minus.")
    assert bed.follower.view.taken == ["Deltoid left: 4-", "no longer: Deltoid left: 4"]
    assert bed.follower.view.doubts == []


def test_what_is_open_is_short(tmp_path: Path, grammar: Grammar) -> None:
    """Names on the screen, a line a component when it is asked for."""
    bed = Bedside(tmp_path, grammar, scope="dizziness")
    bed.say("Heart rhythm regular.")
    assert "nystagmus" in bed.follower.view.still_open
    assert all(len(name.split()) < 9 for name in bed.follower.view.still_open)
    assert "Cranial nerves: hearing, nystagmus" in bed.say("What is still open?")


def test_clock_starts_at_standing(bed: Bedside) -> None:
    """Rings at its minutes, suggests the minute of a reading that has none, stops when the patient sits."""
    bed.say("Lying, blood pressure 140 over 80.")
    assert "standing clock started" in bed.say("Standing, blood pressure 120 over 70.")
    assert "standing for" not in bed.wait(50)
    assert "standing for 1 min" in bed.wait(12)
    bed.say("Pupils equal.")
    assert "standing for 3 min" in bed.wait(110)
    said = bed.say("Standing, blood pressure 118 over 70.")
    assert "(clock: 3:" in said
    assert "not said" in said
    assert bed.follower.whole().findings[-1].minutes is None  # a suggestion, never a value
    assert "stopped" in bed.say("Sitting, blood pressure 130 over 80.")
    assert bed.sounds.tones.count("clock") == 2


def test_clock_by_voice(bed: Bedside) -> None:
    """From when it was said."""
    assert "standing clock started" in bed.say("Start the clock.")
    assert "standing for 1 min" in bed.wait(61)


def test_clock_rings_as_the_scope_asks(tmp_path: Path, grammar: Grammar) -> None:
    """A scope has minutes of its own; one without them rings as ever."""
    assert Bedside(tmp_path / "a", grammar, scope="dizziness").follower.clock.marks == (1.0, 3.0, 5.0)
    assert Bedside(tmp_path / "b", grammar, scope="neuropathy").follower.clock.marks == (1.0, 3.0)
    assert Bedside(tmp_path / "c", grammar, scope="headache").follower.clock.marks == (1.0, 3.0, 5.0)


def test_clock_of_an_interrupted_dictation(bed: Bedside, grammar: Grammar) -> None:
    """It runs on, and what rang before does not ring again."""
    bed.say("Start the clock.")
    assert "1 min" in bed.wait(70)
    bed.say("Pupils equal.")
    again = bed.following(grammar)
    again.restore()
    again.clock.miss(100)  # until it was taken up
    assert again.clock.due(bed.now_s) == [3.0]


def test_no_clock_for_a_stance(bed: Bedside) -> None:
    """Standing on one leg is no reading."""
    bed.say("Standing on one leg unsteady.")
    assert not bed.follower.clock.runs


def test_taken_up_again(bed: Bedside, grammar: Grammar) -> None:
    """What was heard before the crash is known: findings, the pause, how far it was heard."""
    bed.say("Knee jerk three plus on the left.")
    bed.say("Pause dictation.")
    again = bed.following(grammar)
    done = again.restore()
    assert again.paused
    assert [finding.item for finding in again.whole().findings] == ["reflex_patellar"]
    last = [entry for entry in bed.kept.entries() if isinstance(entry, Said)][-1]
    assert done == last.done > 0
