"""The harness: what was said against what was heard."""

from __future__ import annotations

import numpy as np
import pytest

from evaluation.compare import Tally, compare_rows, compare_words, pairs, words_of
from evaluation.sound import CONDITIONS, RATE_HZ, levelled, resampled

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
