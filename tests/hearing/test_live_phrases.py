"""Phrases end at pauses, never twice, never lost."""

from __future__ import annotations

import functools
import itertools
import random

import numpy as np
import pytest
from by_hand import DEMOS
from hearing.sounds import noise, silence, tone
from live.fakes import BeepEngine, spoken

from dictate.hearing.audio import RATE_HZ, Recording
from dictate.hearing.chunks import Span
from dictate.hearing.engine import Engine
from dictate.hearing.live_phrases import END_S, KEPT_S, LONGEST_S, SOON_MS, Phrase, PhraseCutter, PhraseHearer
from dictate.model import Hints

HUSH = 0.01


def loud(samples: np.ndarray, *, pause_s: float = 0.3) -> list[Span]:
    """Voice is where it is loud; pauses under 0.3 s are bridged, as the real search does."""
    found: list[Span] = []
    frame = 160
    level = np.abs(samples[: len(samples) // frame * frame]).reshape(-1, frame).max(axis=1, initial=0) > HUSH
    for is_loud, group in itertools.groupby(enumerate(level), key=lambda each: bool(each[1])):
        places = [at for at, _ in group]
        if not is_loud:
            continue
        span = Span(places[0] * frame, (places[-1] + 1) * frame)
        if found and span.start - found[-1].end < pause_s * RATE_HZ:
            span = Span(found.pop().start, span.end)
        found.append(span)
    return found


def phrases(sound: np.ndarray, *, step: int = 1600) -> list[Phrase]:
    """All phrases of a sound that comes in blocks."""
    cutter, found = PhraseCutter(loud), []
    for at in range(0, len(sound), step):
        cutter.add(sound[at : at + step])
        while phrase := cutter.take():
            found.append(phrase)
    while phrase := cutter.take(ended=True):
        found.append(phrase)
    assert cutter.first == cutter.end  # nothing is left over
    return found


def talk(*lengths: float) -> np.ndarray:
    """Voice and pause in turn, beginning with a pause."""
    return np.concatenate([tone(s) if at % 2 else silence(s) for at, s in enumerate(lengths)])


@pytest.mark.parametrize("step", [160, 1600, 16_000, 160_000])
def test_phrases_end_at_pauses(step: int) -> None:
    """Whatever the size of the blocks; times count from the start."""
    found = phrases(talk(1.0, 1.0, 0.5, 2.0, 0.2, 1.0, 0.7, 0.5, 2.0), step=step)
    assert [(round(p.start_s, 1), round(p.end_s, 1)) for p in found] == [(1.0, 2.0), (2.5, 5.7), (6.4, 6.9)]


def test_phrase_comes_soon_after_its_end() -> None:
    """Within the pause that ends it and one block."""
    sound, cutter = talk(0.5, 1.0, 2.0), PhraseCutter(loud)
    for at in range(0, len(sound), 1600):
        cutter.add(sound[at : at + 1600])
        if cutter.take():
            break
    assert (at + 1600) / RATE_HZ - 1.5 <= END_S + 0.21


def test_speech_without_a_pause_is_cut() -> None:
    """No phrase is longer than the recogniser's window, and no sound between two is lost."""
    found = phrases(talk(1.0, 40.0, 1.0))
    assert all(len(phrase.samples) <= LONGEST_S * RATE_HZ + 1600 for phrase in found)
    assert len(found) >= 3
    for one, other in itertools.pairwise(found):
        assert one.first + len(one.samples) >= other.first + other.spans[0].start - 1


def test_silence_is_let_go() -> None:
    """Memory does not grow while nobody speaks."""
    cutter = PhraseCutter(loud)
    for _ in range(100):
        cutter.add(silence(1.0))
        assert cutter.take() is None
    assert cutter.end - cutter.first <= (KEPT_S + 0.1) * RATE_HZ
    assert cutter.end == 100 * RATE_HZ


def test_last_phrase_without_a_pause_behind_it() -> None:
    """The end of the dictation ends it."""
    assert len(phrases(talk(0.5, 1.0))) == 1


@pytest.mark.parametrize("seed", range(12))
def test_hearing_ahead_changes_no_word(seed: int) -> None:
    """Whatever the pauses and the size of the blocks: each sentence is heard once."""
    chance = random.Random(seed)
    known = [f"Sentence {number}." for number in range(30)]
    told = [chance.choice(known) for _ in range(12)]
    parts = [silence(0.5)]
    for sentence in told:
        parts.append(spoken([sentence], known, pause_s=0.0))
        parts.append(silence(chance.choice([0.12, 0.18, 0.22, 0.25, 0.28, 0.3, 0.33, 0.38, 0.42, 0.7])))
    sound, engine = np.concatenate(parts), BeepEngine(known)
    quick = functools.partial(loud, pause_s=SOON_MS / 1000)
    cutter, hearer = PhraseCutter(loud, quick=quick), PhraseHearer(engine, Hints())
    heard: list[str] = []
    at, begun = 0, 0
    while at < len(sound):
        step = chance.choice([800, 1600, 1600, 3200, 8000])
        cutter.add(sound[at : at + step])
        at += step
        while phrase := cutter.take(ended=at >= len(sound)):
            words, _ = hearer.hear(phrase)
            heard += [word.text for word in words]
        if soon := cutter.soon():
            hearer.hear_ahead(soon)
            begun += 1
    assert " ".join(heard) == " ".join(told)
    assert begun > 0


def test_phrase_heard_ahead_is_encoded_once() -> None:
    """Its views are made in its pause; when speech goes on they are let go."""
    known = ["Biceps two plus.", "Gait normal."]
    engine, made = BeepEngine(known), []
    encode = engine.encode
    engine.encode = lambda samples, **more: made.append(len(samples)) or encode(samples, **more)  # type: ignore[method-assign]
    hearer, sound = PhraseHearer(engine, Hints()), spoken(known, known, pause_s=0.25)
    first, both = Span(4000, 13600), Span(len(sound) - 13600, len(sound) - 4000)
    short, long = Phrase(0, sound[:16000], (first,)), Phrase(0, sound, (Span(first.start, both.end),))
    hearer.hear_ahead(short)
    hearer.hear_ahead(short)
    assert [word.text for word in hearer.hear(short)[0]] == known[0].split()
    assert len(made) == 1
    hearer.hear_ahead(short)
    assert [word.text for word in hearer.hear(long)[0]] == " ".join(known).split()
    assert len(made) == 3


def test_words_of_phrases_are_those_of_the_recording(engine: Engine) -> None:
    """Real speech, cut as it comes: nearly the words that the whole gives, in time; none in noise."""
    path = DEMOS / "postural-series.flac"
    (block,) = Recording(path).blocks()
    sound = block.samples[: 16 * RATE_HZ]
    cutter, heard, hearer = PhraseCutter(engine.spans), [], PhraseHearer(engine, Hints())
    for at in range(0, len(sound), 4800):
        cutter.add(sound[at : at + 4800])
        while phrase := cutter.take():
            words, lost = hearer.hear(phrase)
            heard += words
            assert lost == []
            assert all(phrase.start_s - 0.5 <= (word.start_s or 0.0) <= phrase.end_s + 0.5 for word in words)
    text = " ".join(word.text for word in heard).lower()
    assert "148 over 86" in text
    assert "142 over 84" in text
    cutter = PhraseCutter(engine.spans)
    cutter.add(noise(5.0))
    assert cutter.take(ended=True) is None
