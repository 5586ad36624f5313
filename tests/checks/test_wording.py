"""The words of questions."""

from __future__ import annotations

import pytest

from dictate.checks.wording import capital, clock, item_of, name_of, phrase, place_words, topic
from dictate.checks.wording import said as what_was_said


@pytest.mark.parametrize(
    ("item", "status", "value", "more", "text"),
    [
        ("reflex_patellar", "measured", "3+", {"side": "left"}, "knee jerk left 3+"),
        ("tremor", "present", "rest", {"side": "right", "site": "hand"}, "tremor right hand rest present"),
        ("tremor", "absent", None, {}, "tremor absent"),
        ("gait", "not_examined", None, {}, "gait not examined"),
        (
            "blood_pressure",
            "measured",
            "98/60",
            {"position": "standing", "minutes": 5.0},
            "blood pressure standing, 5 min 98/60 mmHg",
        ),
        ("pupil_size", "measured", "3", {"side": "both"}, "pupils both sides 3 mm"),
    ],
)
def test_a_finding_in_words(said, grammar, item, status, value, more, text):
    """Item, place, what was said, units as people write them."""
    assert phrase(said(item, status, value, **more), grammar) == text


def test_an_item_the_grammar_lacks_is_named_by_its_id(grammar):
    """An older record may hold items that are gone."""
    assert item_of(grammar, "gait_of_old") is None
    assert name_of(grammar, "gait_of_old") == "gait of old"


def test_small_words(said, grammar):
    """A topic begins with a capital, a time is minutes and seconds."""
    finding = said("heart_rate", "measured", "70")
    assert topic(finding, grammar) == "Heart rate"
    assert (place_words(finding), what_was_said(finding)) == ("", "70/min")
    assert what_was_said(said("heart_rate", "measured", "11", unit="{words}")) == "11 words"
    assert capital("") == ""
    assert clock(102.9) == "1:42"
