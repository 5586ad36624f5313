"""The harness: what was said against what was heard."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any, ClassVar, cast

import numpy as np
import pytest

from dictate.hearing import Engine
from dictate.hearing.chunks import Span
from dictate.hearing.engine import Decoded, Timed
from evaluation.compare import Tally, compare_rows, compare_words, pairs, words_of
from evaluation.cuts import PHRASE, measure, runs, table
from evaluation.sound import CONDITIONS, RATE_HZ, levelled, resampled, write_wave

Row = dict[str, str]


def row(item: str, value: str, **more: str) -> Row:
    """A row of a findings table."""
    return {"item": item, "side": "", "site": "", "position": "", "minutes": "", "status": "measured", "value": value,
            "quote": value, **more}  # fmt: skip


def ask(item: str, severity: str = "must", code: str = "unsure-hearing", side: str = "") -> Row:
    """A row of a table of queries."""
    return {"item": item, "side": side, "severity": severity, "code": code}


@pytest.mark.parametrize(
    ("said", "written"),
    [
        ("one forty two over eighty four", "142/84"),
        ("one hundred and six", "106"),
        ("four minus", "4-"),
        ("two plus right", "2+ right"),
        ("thirty kilograms", "30 kg"),
        ("nineteen out of thirty", "19 out of 30"),
    ],
)
def test_numbers_are_compared_however_they_are_written(said: str, written: str) -> None:
    """Words and digits are one."""
    assert words_of(said) == words_of(written)


def test_words_are_paired_by_least_changes() -> None:
    """A word more, a word less, a word wrong."""
    assert pairs(["no", "ankle", "clonus", "seen"], ["no", "clonus", "seen", "left"]) == [
        ("no", "no"),
        ("ankle", ""),
        ("clonus", "clonus"),
        ("seen", "seen"),
        ("", "left"),
    ]
    tally = Tally()
    compare_words("pulse seventy two", "pulse 17 2", ["pulse"], tally)
    assert (tally.words, tally.numbers, tally.numbers_right, tally.terms_right) == (2, 1, 0, 1)


def test_only_a_wrong_row_that_nothing_points_at_is_silent() -> None:
    """Right, wrong and asked, wrong and silent, missing."""
    gold = [row("pulse", "72"), row("weight", "80"), row("height", "170"), row("recall", "2/3")]
    rows = [row("pulse", "72"), row("weight", "18"), row("height", "117")]
    tally = Tally()
    compare_rows(gold, rows, [ask("weight")], tally)
    assert (tally.rows, tally.right, tally.silent_wrong, tally.silent_missing, tally.must) == (3, 1, 1, 1, 1)


def test_a_query_about_the_other_side_excuses_nothing() -> None:
    """It points elsewhere."""
    tally = Tally()
    compare_rows([row("knee", "2+", side="left")], [row("knee", "3+", side="left")], [ask("knee", side="right")], tally)
    assert tally.silent_wrong == 1


@pytest.mark.parametrize("condition", sorted(CONDITIONS))
def test_every_condition_keeps_length_and_finite_values(condition: str) -> None:
    """And the speech is still louder than the pause."""
    time = np.arange(2 * RATE_HZ) / RATE_HZ
    speech = levelled((np.sin(2 * np.pi * 440 * time) * (time < 1)).astype(np.float32))
    found = CONDITIONS[condition](speech, np.random.default_rng(1))
    assert len(found) == len(speech)
    assert np.isfinite(found).all()
    assert np.std(found[: RATE_HZ // 2]) > np.std(found[-RATE_HZ // 4 :])


def test_resampling_keeps_the_pitch() -> None:
    """A tone of 440 Hz stays one."""
    tone = np.sin(2 * np.pi * 440 * np.arange(22050) / 22050).astype(np.float32)
    found = resampled(tone, 22050)
    assert len(found) == RATE_HZ
    assert np.argmax(np.abs(np.fft.rfft(found))) == 440


STATEMENTS = (
    "alpha bravo charlie delta echo.",
    "foxtrot golf hotel india juliet.",
    "kilo lima mike november oscar.",
    "papa quebec romeo sierra tango.",
    "uniform victor whiskey xray zulu.",
)


class Placed:
    """Hears the statements, each in three seconds of its own; a word that is left out leaves its time empty."""

    times: ClassVar = {
        word: 3.2 * at + 0.6 * place for at, line in enumerate(STATEMENTS) for place, word in enumerate(line.split())
    }

    def spans(self, _samples: object) -> list[Span]:
        """With pauses so short that the chunk leaves nothing of them out."""
        return [Span(int(3.2 * at * RATE_HZ), int((3.2 * at + 3) * RATE_HZ)) for at in range(len(STATEMENTS))]

    def encode(self, _samples: object, *, window_s: int | None = None) -> np.ndarray:
        return np.zeros((50 * (window_s or 18), 4), np.float32)

    def prompt(self, terms: Sequence[str]) -> list[int]:
        """A mark, one token a word, two marks."""
        words = " ".join(terms).split()
        return [*([0] if words else []), *(1 + list(self.times).index(word) for word in words), 98, 99]

    def decode(self, views: list[Any], _prompts: object, *, beam: int) -> list[Decoded]:
        tokens = tuple(range(1, 1 + len(self.times)))
        return [Decoded(f"beam {beam}", tokens, -0.2, 0.0) for _ in views]

    def align(self, _views: object, texts: list[Decoded], _seconds: object) -> list[list[Timed]]:
        words = list(self.times.items())
        return [
            [Timed(" " + words[t - 1][0], words[t - 1][1], words[t - 1][1] + 0.6, 0.9) for t in text.tokens]
            for text in texts
        ]


def test_a_cut_is_noticed_where_its_time_stays_without_words(tmp_path: Path) -> None:
    """Two words and more leave over 0.65 s without words; nothing is named where nothing is cut."""
    seconds = np.arange(int(3.2 * len(STATEMENTS) * RATE_HZ)) / RATE_HZ
    write_wave(tmp_path / "said.wav", (0.1 * np.sin(2 * np.pi * 150 * seconds)).astype(np.float32))
    counts = measure(tmp_path, cast(Engine, Placed()))
    assert (counts["spans"], counts["false alarms"]) == (5, 0)
    assert counts["1 word"] == 1
    assert (
        counts["2 words noticed"] == counts["3 words noticed"] == counts["a phrase of four words and more noticed"] == 1
    )
    assert "| 2 words | 1/1 | 100.0% |" in table(counts)


def test_phrases_end_at_marks_and_runs_leave_something_of_the_chunk() -> None:
    """Two marks make one phrase of four words; three short ones before a mark are none."""
    timed = [Timed(f" {word}", 0.0, 0.1, 0.9) for word in "Tone is normal. Power five out of five. Gait".split()]
    assert list(runs(timed, PHRASE)) == [(3, 7)]
    assert list(runs(timed[:3], 2)) == [(0, 1)]
    assert not list(runs(timed[:3], 3))
