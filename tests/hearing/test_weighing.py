"""How well texts fit the sound, by the real model."""

from __future__ import annotations

from pathlib import Path

import ctranslate2
import numpy as np
from hearing.sounds import Sound, write_sound

from dictate.hearing.engine import Engine
from dictate.hearing.weighing import as_array, storage
from dictate.model import Hints


def test_what_was_said_outweighs_what_was_not(engine: Engine, postural: Sound, tmp_path: Path) -> None:
    """In a demonstration the words of its transcript fit better than other numbers, and texts come out in order."""
    path = write_sound(tmp_path / "postural.wav", postural)
    transcript = engine.hear(path, hints=Hints())
    at = next(place for place, word in enumerate(transcript.words) if word.text.startswith("148"))
    words = transcript.words[at - 2 : at + 3]
    start_s, end_s = words[0].start_s, words[-1].end_s
    assert start_s is not None
    assert end_s is not None
    said = " ".join(word.text for word in words)
    others = [said.replace("148", other) for other in ("118", "140", "184")] * 3
    scores = engine.weigh(transcript.sources[0].sha256, start_s, end_s, [others[0], said, *others])
    engine.forget()
    assert len(scores) == 11
    assert scores[1] > max(scores[0], *scores[2:]) + 2


def test_nothing_is_told_of_a_recording_that_was_not_heard(engine: Engine) -> None:
    """No views, no answer."""
    engine.forget()
    assert engine.weigh("0" * 64, 0.0, 1.0, ["pulse"]) == []


def test_common_words_are_known_and_mishearings_are_not(engine: Engine) -> None:
    """What the recogniser's vocabulary holds whole."""
    assert engine.knows("Standing")
    assert engine.knows("pressure")
    assert not engine.knows("retropeption")


class OnCard:
    """A view in a graphics card's memory: nothing can be read from it before it is brought over."""

    device = "cuda"

    def __init__(self, view: np.ndarray) -> None:
        self.view = view

    def to_device(self, device: ctranslate2.Device) -> ctranslate2.StorageView:
        assert device == ctranslate2.Device.cpu
        return storage([self.view])


def test_a_view_is_brought_over_from_a_graphics_card() -> None:
    """The encoder's answer stays where it was made; weighing needs it here."""
    view = np.arange(12, dtype=np.float32).reshape(4, 3)
    assert np.array_equal(as_array(storage([view])), view)
    assert np.array_equal(as_array(OnCard(view)), view)
