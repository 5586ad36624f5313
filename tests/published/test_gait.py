"""Walking: speeds and limits.

Sources: definition of the foot (0.3048 m) · Cutter GR et al. Brain 1999 and NINDS common data elements (looked up):
mean of two trials, 180 s · Cruz-Jentoft AJ et al. Age Ageing 2019 (looked up, secondary): 0.8 m/s or less, 20 s ·
Shumway-Cook A et al. Physical Therapy 2000, as pooled by Barry E et al. 2014 (looked up): 13.5 s · CDC STEADI
(looked up, secondary): 12 s · Schmitz-Hübsch T et al. Neurology 2006 (looked up): tandem steps of SARA item 1 ·
Goldman MD et al. Neurology 2013 (looked up: abstract): bands of the 25-foot walk ·
Hobart J et al. Neurology 2013 (looked up: abstract): speed over 25 feet better by 20 % ·
Springer BA et al. J Geriatr Physical Therapy 2007 (whole seconds looked up, secondary; decimals from memory) ·
Perry J et al. Stroke 1995 (quoted by Schmid 2007, looked up): bands of speed.
"""

from __future__ import annotations

import pytest
from reckoning.series import figures, finding

from dictate.grammar.walks import Walk, faster_percent, walk_change
from dictate.model import Component, Conventions, Earlier, Quantity, Text
from dictate.reckoning.balance import stance_means

GAIT = {"component": Component.COORDINATION_GAIT}


def walks(*words: str) -> tuple:
    """Timed walks."""
    return tuple(finding("timed_walk", Text(words=one), unit="s", **GAIT) for one in words)


@pytest.mark.parametrize(
    ("words", "speed"),
    [
        ("25 ft in 4 s", 1.905),
        ("25 ft in 5 s", 1.524),
        ("25 ft in 6 s", 1.27),
        ("25 ft in 8 s", 0.9525),
        ("10 m in 8 s", 1.25),
        ("10 m in 10 s", 1.0),
        ("10 m in 12.5 s", 0.8),
        ("10 m in 25 s", 0.4),
        ("6 m in 5 s", 1.2),
        ("4 m in 5 s", 0.8),
    ],
)
def test_speeds(words, speed):
    """25 ft are 7.62 m. Source: definition of the foot, arithmetic."""
    (figure,) = figures("walking speed", walks(words))
    assert figure.value == pytest.approx(speed, abs=1e-4)
    assert ("0.8 m/s or less" in figure.text) is (speed <= 0.8)


@pytest.mark.parametrize(
    ("seconds", "band"),
    [("5.99", "below 6 s"), ("6", "from 6 s, below 8 s"), ("7.99", "from 6 s, below 8 s"), ("8", "8 s or more")],
)
def test_bands_of_the_25_foot_walk(seconds, band):
    """Three bands with edges at 6 and 8 s. Source: Goldman 2013 (looked up: abstract)."""
    (figure,) = figures("walking speed", walks(f"25 ft in {seconds} s"))
    assert f"band {band} (Goldman 2013)" in figure.text


@pytest.mark.parametrize(
    ("seconds", "band"),
    [
        ("25", "0.8 m/s or less; band 0.4 to 0.8 m/s (Perry 1995)"),
        ("26", "0.8 m/s or less; band below 0.4 m/s (Perry 1995)"),
        ("12.5", "0.8 m/s or less; band 0.4 to 0.8 m/s (Perry 1995)"),
        ("12.4", "above 0.8 m/s"),
    ],
)
def test_bands_of_walking_speed(seconds, band):
    """10 m: 0.4 and 0.8 m/s fall in the middle band. Source: Perry 1995, quoted by Schmid 2007 (looked up)."""
    (figure,) = figures("walking speed", walks(f"10 m in {seconds} s"))
    assert figure.text.endswith(f", {band}")


def test_the_mean_is_of_times_not_of_speeds():
    """5.2 and 4.8 s: 5.0 s and 1.524 m/s. Source: Cutter 1999; NINDS common data elements (looked up)."""
    (figure,) = figures("walking speed", walks("25 ft in 5.2 s", "25 ft in 4.8 s"))
    assert figure.value == pytest.approx(1.524, abs=1e-4)


@pytest.mark.parametrize(("seconds", "within"), [("180", True), ("181", False)])
def test_a_trial_ends_at_180_seconds(seconds, within):
    """Beyond it the walk was not completed. Source: NINDS common data elements (looked up)."""
    assert bool(figures("walking speed", walks(f"25 ft in {seconds} s"))) is within


@pytest.mark.parametrize(("seconds", "limits"), [(11.9, 0), (12.0, 1), (13.4, 1), (13.5, 2), (19.9, 2), (20.0, 3)])
def test_limits_of_the_timed_up_and_go(seconds, limits):
    """12, 13.5 and 20 s, each reached at its own number. Source: CDC STEADI; Shumway-Cook 2000; Cruz-Jentoft 2019."""
    (figure,) = figures("timed up and go", (finding("timed_up_and_go", Quantity(number=seconds), unit="s", **GAIT),))
    reached = [limit for limit in ("12 s (", "13.5 s (Sh", "20 s (Cr") if limit in figure.text]
    assert len(reached) == (limits or 1)
    assert ("below 12 s" in figure.text) is (not limits)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("10 steps", "not more than ten"),
        ("11 steps", "more than ten"),
        ("1 misstep", "up to"),
        ("2 missteps", "more than"),
    ],
)
def test_tandem_steps(words, said):
    """More than ten steps, up to one misstep. Source: Schmitz-Hübsch 2006 (looked up)."""
    (figure,) = figures("tandem steps", (finding("tandem_gait", Text(words=words), **GAIT),))
    assert f"{words} ({said}" in figure.text


@pytest.mark.parametrize(
    ("before", "now", "percent", "met"),
    [(6.0, 5.0, 20.0, True), (6.0, 5.01, 19.8, False), (6.0, 4.8, 25.0, True), (5.0, 6.0, -16.7, False)],
)
def test_the_change_of_the_25_foot_walk(before, now, percent, met):
    """20 % of speed, reached at 6.0 to 5.0 s; 20 % more time is 16.7 % less speed. Source: Hobart 2013 (arithmetic)."""
    assert faster_percent(before, now) == pytest.approx(percent, abs=0.05)
    text = walk_change(Walk(25, "ft", before), Walk(25, "ft", now))
    assert text.endswith("(Hobart 2013): met" if met else "(Hobart 2013): not met")


def test_the_change_since_the_earlier_record_names_both_times():
    """Where the walk is tied to one; the mean of the trials counts. Source: Hobart 2013; NINDS (looked up)."""
    earlier = Earlier(record="a1", day="2026-03-04", said="25 ft in 6 s", agrees=False)
    tied = tuple(one.model_copy(update={"earlier": earlier}) for one in walks("25 ft in 5.2 s", "25 ft in 4.8 s"))
    (figure,) = figures("25-foot walk since the earlier visit", tied)
    assert figure.text == (
        "25-foot walk, 25 ft in 6 s at the earlier visit (2026-03-04), now 25 ft in 5 s: "
        "speed +20 %; faster by 20 % or more (Hobart 2013): met"
    )
    assert figures("25-foot walk since the earlier visit", walks("25 ft in 5 s")) == ()
    other = (tied[0].model_copy(update={"earlier": earlier.model_copy(update={"said": "10 m in 8 s"})}),)
    assert figures("25-foot walk since the earlier visit", other) == ()


@pytest.mark.parametrize(
    ("age", "seconds"),
    [
        (18, 44),
        (39, 44),
        (40, 41),
        (49, 41),
        (50, 41),
        (59, 41),
        (60, 32),
        (69, 32),
        (70, 21),
        (79, 21),
        (80, 9),
        (99, 9),
    ],
)
def test_the_means_of_standing_on_one_leg(age, seconds):
    """Best of three, eyes open, by bands of age. Source: Springer 2007 (whole seconds looked up, secondary)."""
    means = stance_means(age)
    assert means is not None
    assert means[0] == pytest.approx(seconds, abs=1)


def test_standing_on_one_leg_is_shown_only_on_request():
    """Protocols do not mix, and the decimals are recalled: off. Source: own rule."""
    assert Conventions().one_leg_norms is False
    assert stance_means(17) is None
    assert stance_means(100) is None
