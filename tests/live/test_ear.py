"""The recogniser's process: it hears, dies, is started anew, and loses nothing."""

from __future__ import annotations

import os
import queue
import signal
from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from live.fakes import BeepMaker, spoken

from dictate.hearing.microphone import to_pcm
from dictate.live import ear as ear_module
from dictate.live.ear import Died, Ear
from dictate.live.recogniser import Finished, Heard, Knows, Ready, Whole
from dictate.live.safe_sound import header
from dictate.model import Hints

KNOWN = ("Reflexes.", "Biceps two plus on the right.", "Gait normal.")


@pytest.fixture
def events() -> queue.SimpleQueue[Any]:
    """What the ear says."""
    return queue.SimpleQueue()


def until(events: queue.SimpleQueue[Any], kind: type) -> Iterator[Any]:
    """Events up to the first of a kind."""
    while True:
        event = events.get(timeout=60)
        yield event
        if isinstance(event, kind):
            return


def texts(heard: list[Any]) -> list[str]:
    """Words of the phrases."""
    return [" ".join(word.text for word in each.words) for each in heard if isinstance(each, Heard)]


def test_phrases_then_the_whole(events: queue.SimpleQueue[Any], tmp_path: Path) -> None:
    """Each phrase with its time; then a whole recording in the same process."""
    sound = to_pcm(spoken(KNOWN, KNOWN))
    ear = Ear(BeepMaker(KNOWN), Hints(), events)
    try:
        for at in range(0, len(sound), 3200):
            ear.add(sound[at : at + 3200])
        ear.end()
        got = list(until(events, Finished))
        assert isinstance(got[0], Ready)
        assert texts(got) == list(KNOWN)
        assert ear.behind_s == 0
        first = next(each for each in got if isinstance(each, Heard))
        assert first.start_s == pytest.approx(0.6, abs=0.05)
        assert first.end_s == pytest.approx(1.2, abs=0.05)
        path = tmp_path / "a.wav"
        path.write_bytes(header(len(sound)) + sound)
        ear.whole(path)
        (whole,) = until(events, Whole)
        assert " ".join(word.text for word in whole.transcript.words) == " ".join(KNOWN)
    finally:
        ear.close()


@pytest.mark.parametrize("at", range(3))
def test_dies_while_hearing(events: queue.SimpleQueue[Any], tmp_path: Path, at: int) -> None:
    """It is started anew and hears that phrase again: each phrase comes once."""
    sound = to_pcm(spoken(KNOWN, KNOWN))
    ear = Ear(BeepMaker(KNOWN, die_at=KNOWN[at], mark=str(tmp_path / "died")), Hints(), events)
    try:
        ear.add(sound)
        ear.end()
        got = list(until(events, Finished))
    finally:
        ear.close()
    assert [event.for_good for event in got if isinstance(event, Died)] == [False]
    assert texts(got) == list(KNOWN)


def signalled(events: queue.SimpleQueue[Any], number: signal.Signals) -> list[Any]:
    """What is told when the recogniser gets a signal between two phrases."""
    ear = Ear(BeepMaker(KNOWN), Hints(), events)
    try:
        ear.add(to_pcm(spoken(KNOWN[:1], KNOWN)))
        got = list(until(events, Heard))
        assert ear.process is not None
        assert ear.process.pid is not None
        os.kill(ear.process.pid, number)
        ear.add(to_pcm(spoken(KNOWN[1:], KNOWN)))
        ear.end()
        return [*got, *until(events, Finished)]
    finally:
        ear.close()


def test_killed_from_outside(events: queue.SimpleQueue[Any]) -> None:
    """kill -9 between two phrases."""
    assert texts(signalled(events, signal.SIGKILL)) == list(KNOWN)


def test_hung(events: queue.SimpleQueue[Any], monkeypatch: pytest.MonkeyPatch) -> None:
    """One that says nothing any more is killed and started anew, which is said; nothing is lost."""
    monkeypatch.setattr(ear_module, "HUNG_S", 2.0)
    got = signalled(events, signal.SIGSTOP)
    assert [(event.reason, event.for_good) for event in got if isinstance(event, Died)] == [
        ("the recogniser hung", False)
    ]
    assert texts(got) == list(KNOWN)


def test_no_model(events: queue.SimpleQueue[Any]) -> None:
    """Said once, for good, in the words of the error."""
    ear = Ear(BeepMaker(KNOWN, missing=True), Hints(), events)
    (died,) = until(events, Died)
    ear.close()
    assert died.for_good
    assert "install one" in died.reason


def test_dies_again_and_again(events: queue.SimpleQueue[Any], tmp_path: Path) -> None:
    """It is not started for ever."""
    ear = Ear(BeepMaker(KNOWN, die_at=KNOWN[0], mark=str(tmp_path / "no" / "folder")), Hints(), events)
    ear.add(to_pcm(spoken(KNOWN, KNOWN)))
    ear.end()
    deaths = []
    while not deaths or not deaths[-1].for_good:
        event = events.get(timeout=60)
        deaths += [event] if isinstance(event, Died) else []
    ear.close()
    assert len(deaths) == 3


def test_phrases_before_questions(events: queue.SimpleQueue[Any], monkeypatch: pytest.MonkeyPatch) -> None:
    """A question is handed over while no sound waits and no phrase is about to end."""
    monkeypatch.setattr(Ear, "_serve", lambda _: None)
    ear, sent = Ear(BeepMaker(KNOWN), Hints(), events), []
    there: Any = SimpleNamespace(send=sent.append)
    block, question = bytes(3200), Knows("gait")
    ear._question = question
    ear.add(block)
    given = ear._answer(there, 0, pressing=False)
    ear.add(block)
    given = ear._answer(there, given, pressing=True)
    ear._answer(there, given, pressing=False)
    ear.end()
    ear._answer(there, given, pressing=True)
    assert sent == [(block, False), (block, False), question, (b"", True)]


def test_taken_up_in_the_middle(events: queue.SimpleQueue[Any]) -> None:
    """Times count from the start of the dictation."""
    ear = Ear(BeepMaker(KNOWN), Hints(), events, first=160_000)
    try:
        ear.add(to_pcm(spoken(KNOWN[:1], KNOWN)))
        ear.end()
        (heard,) = [each for each in until(events, Finished) if isinstance(each, Heard)]
    finally:
        ear.close()
    assert heard.start_s == pytest.approx(10.6, abs=0.05)
