"""Criteria on falls of pressure."""

from __future__ import annotations

import pytest
from reckoning.series import changes, figures, pressure, series

from dictate.reckoning.falls import fall_verdict


def test_a_fall_at_once_that_does_not_last_is_not_met():
    """Met immediately, not from one minute on."""
    verdict, sentence = fall_verdict(changes("supine 142/84 > 0 min 108/66 > 1 min 138/82 > 3 min 140/84"))
    assert verdict == "not met"
    assert "did not last" in sentence


def test_a_fall_at_once_without_a_later_reading_is_not_judged():
    """Whether it lasted is not known."""
    assert fall_verdict(changes("supine 142/84 > 0 min 108/66"))[0] == "not judged"


def test_a_late_fall_without_an_early_reading_leaves_the_time_open():
    """Met at five minutes, nothing read up to three: neither classical nor delayed."""
    assert fall_verdict(changes("supine 142/84 > 5 min 118/80"))[0] == "met, time open"


def test_a_fall_that_recovers_is_said_to():
    """Met at one minute, not at three."""
    verdict, sentence = fall_verdict(changes("supine 142/84 > 1 min 120/80 > 3 min 140/84"))
    assert verdict == "classical"
    assert "not met at 3 min" in sentence


def test_rates_alone_are_not_judged():
    """Without pressures no verdict on a fall, and no figure."""
    rates = "supine - 70 > 3 min - 104"
    assert fall_verdict(changes(rates))[0] == "not judged"
    assert figures("orthostatic hypotension criterion", series(rates)) == ()


def test_the_larger_fall_is_judged_only_with_a_high_lying_pressure():
    """140 systolic or 90 diastolic lying."""
    name = "fall of 30 systolic"
    assert figures(name, series("supine 139/89 > 1 min 109/70")) == ()
    assert len(figures(name, series("supine 140/89 > 1 min 109/70"))) == 1
    assert len(figures(name, series("supine 139/90 > 1 min 109/70"))) == 1


@pytest.mark.parametrize(("text", "count"), [("supine 100/60 > 1 min 90/58", 0), ("supine 100/60 > 1 min 89/58", 1)])
def test_a_low_standing_pressure_is_stated_by_itself(text, count):
    """Below 90, not at 90."""
    assert len(figures("low standing pressure", series(text))) == count


def test_the_word_for_no_verdict_is_written():
    """The note says not judged, never nothing."""
    (figure,) = figures("orthostatic hypotension criterion", series("supine 142/84 > 0 min 108/66"))
    assert "not judged" in figure.text


def test_not_met_names_its_readings():
    """And says when none was taken in the first three minutes."""
    assert fall_verdict(changes("supine 142/84 > 1 min 138/82 > 3 min 140/84"))[1] == "not met at 1 and 3 min"
    assert fall_verdict(changes("supine 142/84 > 5 min 138/82"))[1] == "not met at 5 min; none from 1 to 3 min"


def test_a_reading_without_its_minute_is_not_judged_unless_it_meets():
    """Whether it was read in time is not known; met, it is met with the time open."""
    assert fall_verdict(changes("supine 142/84 > standing 138/82")) == (
        "not judged",
        "the time since standing was not said",
    )
    assert fall_verdict(changes("supine 142/84 > standing 118/82"))[0] == "met, time open"


def test_an_initial_fall_needs_its_recovery():
    """Reached and recovered, reached and not, reached without a later reading."""
    name = "initial fall"
    (figure,) = figures(name, series("supine 140/80 > 10 s 95/70 > 1 min 138/80"))
    assert "reached, with recovery at 1 min; a cuff cannot confirm it" in figure.text
    (figure,) = figures(name, series("supine 140/80 > 0 min 95/70 > 1 min 118/80"))
    assert figure.text.endswith("reached; no recovery at 1 min")
    (figure,) = figures(name, series("supine 140/80 > 10 s 95/70"))
    assert figure.text.endswith("recovery not shown: no later reading")
    assert figures(name, series("supine 140/80 > 1 min 95/70")) == ()


def test_sitting_to_standing_says_what_is_open():
    """Met at a minute, met without one, not judged."""
    name = "sit-to-stand criterion"
    (figure,) = figures(name, series("sitting 130/80 > standing 112/78"))
    assert "met, but the time since standing was not said" in figure.text
    (figure,) = figures(name, series("sitting 130/80 > 0 min 112/78"))
    assert "not judged" in figure.text
    (figure,) = figures(name, series("supine - 60 > sitting 130/80 > 1 min 112/78, 80"))
    assert "met at 1 min" in figure.text


def test_a_short_time_of_lying_is_named():
    """Supine hypertension is read after five minutes; said to be two, it is named."""
    name = "fall of 30 systolic"
    for minutes, named in (("2", True), ("5", False)):
        lying = pressure("150/80", "supine", detail=(f"after {minutes} min lying",))
        (figure,) = figures(name, (lying, pressure("118/70", "standing", 1.0)))
        assert (", after 2 min, not 5)" in figure.text) is named
