"""Heart-rate criterion and ratio."""

from __future__ import annotations

import pytest
from reckoning.series import changes, figures, finding, series

from dictate.model import Choice, Status
from dictate.reckoning.rates import rise_verdict


def test_a_rise_without_pressures_is_open():
    """Whether the pressure fell is not known."""
    verdict, sentence = rise_verdict(changes("supine - 70 > 3 min - 104"), age=34)
    assert verdict == "open"
    assert "no pressures" in sentence


def test_a_rise_at_once_is_not_judged():
    """A rate read at once does not show that the rise lasts."""
    assert rise_verdict(changes("supine 118/74, 68 > 0 min 114/76, 104"), age=34)[0] == "not judged"


def test_one_reading_is_said_to_be_one():
    """A single rate cannot show that the rise is sustained."""
    assert "one reading" in rise_verdict(changes("supine 118/74, 68 > 5 min 114/76, 98"), age=34)[1]
    two = "supine 118/74, 68 > 3 min 114/76, 98 > 5 min 114/76, 98"
    assert "one reading" not in rise_verdict(changes(two), age=34)[1]


def test_without_age_two_rises_of_forty_meet_both_limits():
    """From 40 on the age does not matter; between 30 and 40 it does."""
    two = "supine 118/74, 60 > 3 min 114/76, 101 > 5 min 114/76, 100"
    assert rise_verdict(changes(two), age=None)[0] == "met"
    verdict, sentence = rise_verdict(changes("supine 118/74, 60 > 5 min 114/76, 99"), age=None)
    assert verdict == "open"
    assert "age" in sentence


@pytest.mark.parametrize("later", ["", " > 5 min 114/76, 94"])
def test_without_age_one_rise_of_forty_is_open_with_and_without_a_later_one_of_thirty(later):
    """Lasting for an adult, not at 16 years; so one reading decides no more. Source: Freeman 2011 (lasting)."""
    verdict, sentence = rise_verdict(changes(f"supine 118/74, 60 > 3 min 114/76, 102{later}"), age=None)
    assert verdict == "open"
    assert sentence == "+42 at 3 min: one reading alone reaches 40 (12 to 19 y); age not given"


def test_without_age_a_rise_that_does_not_last_by_either_limit_is_not_met():
    """42 at three minutes, 10 at five: not lasting at any age. Source: Freeman 2011 (lasting), arithmetic."""
    text = "supine 118/74, 60 > 3 min 114/76, 102 > 5 min 114/76, 70"
    assert rise_verdict(changes(text), age=None)[0] == "not met"


def test_no_ratio_when_the_rhythm_is_irregular():
    """The ratio needs sinus rhythm."""
    readings = series("supine 150/85, 65 > 3 min 106/66, 73")
    rhythm = finding("heart_rhythm", Choice(choice="irregular"), status=Status.ABNORMAL)
    assert len(figures("rate to pressure ratio", readings)) == 1
    assert figures("rate to pressure ratio", (*readings, rhythm)) == ()


def test_no_rates_no_figure():
    """Pressures alone say nothing of the rate."""
    assert figures("postural heart-rate criterion", series("supine 150/85 > 3 min 106/66")) == ()


def test_a_rise_that_does_not_last_is_not_met():
    """30 at one minute only, and later less."""
    verdict, sentence = rise_verdict(changes("supine 118/74, 60 > 1 min 114/76, 92 > 5 min 114/76, 70"), age=34)
    assert (verdict, sentence) == ("not met", "not met: +32 at 1 min did not last (+10 later)")


def test_a_rise_without_its_minute_is_open():
    """Reached, and when it was is not known."""
    assert rise_verdict(changes("supine 118/74, 60 > standing 114/76, 95"), age=34)[0] == "open"
    assert rise_verdict(changes("supine 118/74, 60 > standing 114/76, 80"), age=34)[0] == "not judged"


def test_no_ratio_when_the_rhythm_is_paced():
    """Said of the rhythm in any words."""
    readings = series("supine 150/85, 65 > 3 min 106/66, 73")
    paced = finding("heart_rhythm", Choice(choice="regular"), status=Status.NORMAL)
    spoken = (paced.evidence[0].model_copy(update={"quote": "rhythm regular, paced"}),)
    assert figures("rate to pressure ratio", (*readings, paced.model_copy(update={"evidence": spoken}))) == ()


def test_a_rise_that_does_not_reach_the_limit_of_the_age_names_it():
    """39 at 19 years; without an age the two limits differ and none is named."""
    aged = rise_verdict(changes("supine 110/70, 66 > 5 min 112/72, 105 > 8 min 112/72, 104"), age=19)
    assert aged == ("not met", "not met (largest rise +39, limit 40, age 19)")
    assert rise_verdict(changes("supine 110/70, 66 > 5 min 112/72, 80"), age=None)[1] == "not met (largest rise +14)"
