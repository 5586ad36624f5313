"""The engine with a real model, on a few seconds of sound."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from hearing.sounds import Sound, silence, tone, write_sound

from dictate.errors import InputError, MachineError
from dictate.hearing import Engine, Hints
from dictate.hearing.audio import RATE_HZ
from dictate.hearing.engine import Decoded


@pytest.fixture
def spoken(tmp_path: Path, postural: Sound) -> Path:
    """Ten seconds of speech as a recording."""
    return write_sound(tmp_path / "spoken.wav", postural)


def test_speech_is_heard_with_times(engine: Engine, spoken: Path) -> None:
    """Words in order, inside the recording, each with a probability; no network is touched."""
    transcript = engine.hear(spoken, hints=Hints())
    text = transcript.quote(0, len(transcript.words) - 1).lower()
    assert "blood pressure 148 over 86" in text
    starts = [word.start_s or 0.0 for word in transcript.words]
    assert starts == sorted(starts)
    assert all(0 <= (word.start_s or 0) <= (word.end_s or 0) <= 10.1 for word in transcript.words)
    assert all(0 <= (word.probability or 0) <= 1 for word in transcript.words)
    assert transcript.model == engine.identity
    assert transcript.untranscribed == ()


def test_times_are_those_of_the_recording(engine: Engine, spoken: Path, postural: Sound, tmp_path: Path) -> None:
    """Twenty seconds of silence before the speech move every word by twenty seconds."""
    later = write_sound(tmp_path / "later.wav", np.concatenate([silence(20.0), postural]))
    first = engine.hear(spoken, hints=Hints()).words
    moved = engine.hear(later, hints=Hints()).words
    assert moved[0].start_s == pytest.approx((first[0].start_s or 0) + 20, abs=0.4)
    assert moved[-1].end_s == pytest.approx((first[-1].end_s or 0) + 20, abs=0.6)


@pytest.mark.parametrize("kind", ["silence", "noise", "hum", "short"])
def test_no_words_where_nobody_speaks(engine: Engine, tmp_path: Path, kind: str) -> None:
    """Silence, noise, a hum and a tenth of a second give no word, also with a list of terms."""
    noise = np.random.default_rng(3).normal(0, 0.1, 8 * RATE_HZ).astype(np.float32)
    sounds = {
        "silence": np.zeros(8 * RATE_HZ, np.float32),
        "noise": noise,
        "hum": tone(8.0, hz=100),
        "short": tone(0.1),
    }
    path = write_sound(tmp_path / "a.wav", sounds[kind])
    hints = Hints(first=("heart rate", "clonus"), by_component={"reflexes": ("clonus",)}, headings={})
    transcript = engine.hear(path, hints=hints)
    assert transcript.words == ()
    assert transcript.speech == ()


def test_prompts_of_one_batch_have_one_length(engine: Engine) -> None:
    """Lists of different length are filled to the same number of tokens."""
    fill = tuple(f"term {number}" for number in range(100))
    lengths = {len(engine.prompt(terms, fill=fill, length=60)) for terms in (("clonus",), ("pulse", "oedema") * 9)}
    assert len(lengths) == 1
    assert engine.prompt(()) == engine.prompt((), fill=())


@pytest.mark.parametrize("term", ["tone", "tongue", "temperature", "power", "pulse"])
def test_a_common_word_in_a_list_is_one_token(engine: Engine, term: str) -> None:
    """As the decoder writes it, also where the model's own tokenizer takes words with t apart."""
    assert len(engine.prompt((term,))) == len(engine.prompt(())) + 2  # the word, and the mark of a prompt


@pytest.mark.parametrize("seconds", [0.001, 90.0])
def test_words_keep_inside_the_window_however_long_they_are_said_to_be(engine: Engine, seconds: float) -> None:
    """Told of more frames than a window has, or of none, the library writes where it must not: it is never told so."""
    asked: list[list[int]] = []
    whisper = engine._whisper
    view = engine.encode(tone(5.0))
    text = Decoded("power five", tuple(engine.prompt(("power", "five"))[1:3]), -0.1, 0.0)
    find = whisper.find_alignment
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(whisper, "find_alignment", lambda *given: asked.append(given[3]) or find(*given))
        words = engine.align([view, view], [text, text], [seconds, 5.0])
    assert all(2 <= frames <= 2 * len(view) for frames in asked[0])
    assert all(word.end_s <= 15.0 for word in words[0])


def test_an_unknown_device_is_one_line() -> None:
    """Only auto, cpu and cuda are devices."""
    with pytest.raises(InputError, match="--device tpu: no such device"):
        Engine(device="tpu")


def test_a_folder_that_is_no_model_is_one_line(tmp_path: Path) -> None:
    """Files of the right names and the wrong content are the machine's fault, in one line."""
    for name in ("model.bin", "config.json"):
        (tmp_path / name).write_text("{}")
    with pytest.raises(MachineError, match="cannot be loaded on cpu") as fault:
        Engine(str(tmp_path), device="cpu").encode(tone(1.0))
    assert "\n" not in str(fault.value)
