"""From a recording to its transcript, with ears told what to hear."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from hearing.ears import FakeEars, heard
from hearing.sounds import tone, write_sound

from dictate.hearing.audio import RATE_HZ
from dictate.hearing.chunks import Span
from dictate.hearing.hear import hear_recording
from dictate.hearing.kept import Views
from dictate.model import Hints, ModelIdentity


class Listener(FakeEars):
    """Finds one voiced span a block, from 1 s to 5 s."""

    identity = ModelIdentity(name="fake", sha256="0" * 64)

    def spans(self, samples: np.ndarray) -> list[Span]:
        """The one span, where the block is long enough."""
        return [Span(RATE_HZ, 5 * RATE_HZ)] if len(samples) >= 5 * RATE_HZ else []

    def keep(self, sha256: str, views: Views) -> None:
        """Nothing is weighed later."""

    def language(self, view: np.ndarray) -> tuple[str, float]:
        """English, always."""
        return "en", 1.0


def test_words_and_spans_in_recording_time(tmp_path: Path) -> None:
    """Times count from the start of the recording, progress ends at one."""
    shares: list[float] = []
    path = write_sound(tmp_path / "a.wav", tone(8.0))
    transcript = hear_recording(
        Listener(lambda *_: heard("pulse 72 regular")), path, hints=Hints(), progress=shares.append
    )
    assert transcript.quote(0, 2) == "pulse 72 regular"
    assert transcript.words[0].start_s == 0.8
    assert [(each.start_s, each.end_s) for each in transcript.speech] == [(1.0, 5.0)]
    assert transcript.untranscribed == ()
    assert transcript.model is not None
    assert transcript.model.name == "fake"
    assert transcript.sources[0].duration_s == 8.0
    assert shares[-1] == 1.0


def test_speech_that_gave_no_words_is_named(tmp_path: Path) -> None:
    """Nothing heard in a voiced span is not silence."""
    path = write_sound(tmp_path / "a.wav", tone(8.0))
    transcript = hear_recording(Listener(lambda *_: heard("")), path, hints=Hints())
    assert transcript.words == ()
    assert [(each.start_s, each.end_s) for each in transcript.untranscribed] == [(1.0, 5.0)]
