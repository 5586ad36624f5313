"""Questions between two pieces of sound: answered by the process that heard the phrase."""

from __future__ import annotations

import multiprocessing
import queue
import threading
from typing import Any

from live.fakes import BeepEngine, BeepMaker, spoken

from dictate.hearing.microphone import to_pcm
from dictate.live.ear import Ear
from dictate.live.recogniser import Finished, Heard, Knows, More, Weigh, _hear_on
from dictate.model import Hints

KNOWN = ("Reflexes.", "Biceps two plus on the right.")


def test_asked_about_a_phrase() -> None:
    """A stretch of a phrase can be weighed, one where nobody spoke cannot; nobody answers when it is closed."""
    events: queue.SimpleQueue[Any] = queue.SimpleQueue()
    ear = Ear(BeepMaker(KNOWN), Hints(), events)
    try:
        ear.add(to_pcm(spoken(KNOWN, KNOWN)))
        ear.end()
        heard = []
        while not isinstance(event := events.get(timeout=60), Finished):
            heard += [event] if isinstance(event, Heard) else []
        assert len(heard) == 2
        assert len(ear.ask(Weigh("", heard[1].start_s, heard[1].end_s, ("two", "three"))).weighed) == 2
        assert ear.ask(Weigh("", 90.0, 91.0, ("two",))).weighed == ()
        assert ear.ask(Knows("two")).known
    finally:
        ear.close()
    assert ear.ask(Knows("two")).to is None


def test_pressing_in_a_pause_that_may_end_a_phrase() -> None:
    """Not while someone speaks, and not before anybody spoke."""
    here, there = multiprocessing.Pipe()
    engine: Any = BeepEngine(KNOWN)
    thread = threading.Thread(target=_hear_on, args=(there, engine, Hints(), 0))
    thread.start()
    sound, asked = to_pcm(spoken(KNOWN[:1], KNOWN)), []  # 0.6 s of silence, 0.6 s of voice, 0.6 s of silence
    for at in range(0, len(sound), 3200):
        while not isinstance(message := here.recv(), More):
            pass
        asked.append(message.pressing)
        here.send((sound[at : at + 3200], False))
    here.recv()
    here.send(None)
    thread.join(10)
    assert asked[:12] == [False] * 12
    assert asked[14:] == [True, True, False, False]
