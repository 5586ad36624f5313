"""Walking speed, timed up and go, tandem steps."""

from __future__ import annotations

from reckoning.series import figures, finding

from dictate.model import Component, Quantity, Status, Text

SPEED, UP_AND_GO, TANDEM = "walking speed", "timed up and go", "tandem steps"
GAIT = {"component": Component.COORDINATION_GAIT}


def walk(words: str):
    """A timed walk as text: `10 m in 8 s`."""
    return finding("timed_walk", Text(words=words), unit="s", **GAIT)


def test_speed_is_distance_over_time():
    """Written as text or as a number of seconds with its distance."""
    (figure,) = figures(SPEED, (walk("10 m in 12 s"),))
    assert figure.text == "Walking speed 0.83 m/s (10 m in 12 s), above 0.8 m/s"
    seconds = finding("timed_walk", Quantity(number=12, note="10 m in"), unit="s", **GAIT)
    (other,) = figures(SPEED, (seconds,))
    assert (other.text, other.unit) == (figure.text, "m/s")


def test_trials_of_one_distance_are_averaged():
    """Another distance is a figure of its own."""
    (short, long) = figures(SPEED, (walk("25 ft in 5.2 s"), walk("25 ft in 4.8 s"), walk("10 m in 10 s")))
    assert "25 ft in 5 s, mean of 2 trials" in short.text
    assert short.inputs == (0, 1)
    assert long.value == 1


def test_no_speed_from_missing_parts():
    """No distance, no time, a range, a time beyond the trial's end, not examined."""
    assert figures(SPEED, (finding("timed_walk", Quantity(number=12), unit="s", **GAIT),)) == ()
    assert figures(SPEED, (walk("10 m"),)) == ()
    assert figures(SPEED, (walk("25 ft in 181 s"),)) == ()
    ranged = finding("timed_walk", Quantity(number=12, upto=14, note="10 m in"), unit="s", **GAIT)
    assert figures(SPEED, (ranged,)) == ()
    assert figures(SPEED, (finding("timed_walk", status=Status.NOT_EXAMINED, **GAIT),)) == ()


def test_the_time_of_rising_and_walking_names_the_limits():
    """A number that is no plain time is left alone."""
    (figure,) = figures(UP_AND_GO, (finding("timed_up_and_go", Quantity(number=11), unit="s", **GAIT),))
    assert figure.text == "Timed up and go 11 s: below 12 s (CDC STEADI)"
    assert figures(UP_AND_GO, (finding("timed_up_and_go", Quantity(number=1), unit="min", **GAIT),)) == ()
    assert figures(UP_AND_GO, (finding("timed_up_and_go", Quantity(number=11, upto=12), unit="s", **GAIT),)) == ()


def test_tandem_steps_need_their_word():
    """A bare number may be steps or missteps."""
    (figure,) = figures(TANDEM, (finding("tandem_gait", Quantity(number=8, note="steps"), **GAIT),))
    assert "8 steps (not more than ten)" in figure.text
    (figure,) = figures(TANDEM, (finding("tandem_gait", Text(words="12 steps, 1 misstep"), **GAIT),))
    apart = (
        finding("tandem_gait", Quantity(number=12, note="steps"), **GAIT),
        finding("tandem_gait", Quantity(number=1, note="misstep"), **GAIT),
    )
    (same,) = figures(TANDEM, apart)
    assert (same.text, same.inputs) == (figure.text, (0, 1))
    assert "12 steps (more than ten), 1 misstep (up to one)" in figure.text
    assert figures(TANDEM, (finding("tandem_gait", Quantity(number=10), **GAIT),)) == ()
    assert figures(TANDEM, (finding("tandem_gait", status=Status.NOT_EXAMINED, **GAIT),)) == ()


def test_walks_under_other_conditions_are_not_averaged():
    """With a stick and without are two walks; the first and the second trial are one."""
    stick = finding("timed_walk", Text(words="25 ft in 6 s"), detail=("with a stick",), **GAIT)
    free = finding("timed_walk", Text(words="25 ft in 7 s"), **GAIT)
    with_stick, alone = figures(SPEED, (stick, free))
    assert "(25 ft in 6 s with a stick)" in with_stick.text
    assert "(25 ft in 7 s)" in alone.text
    trials = tuple(
        finding("timed_walk", Text(words=f"25 ft in {seconds} s"), detail=("with a stick", trial), **GAIT)
        for seconds, trial in ((6, "first trial"), (7, "second trial"))
    )
    (mean,) = figures(SPEED, trials)
    assert "(25 ft in 6.5 s with a stick, mean of 2 trials)" in mean.text
