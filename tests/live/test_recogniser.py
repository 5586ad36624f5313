"""Questions between two pieces of sound: answered by the process that heard the phrase."""

from __future__ import annotations

import queue
from typing import Any

from live.fakes import BeepMaker, spoken

from dictate.hearing.microphone import to_pcm
from dictate.live.ear import Ear
from dictate.live.recogniser import Finished, Heard, Knows, Weigh
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
