"""How far an exception reaches, and what it says without words of its own. From memory, no source."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Cranial nerves unremarkable except for the hearing.",
            ["cranial_nerves_all normal", "hearing abnormal not normal"],
        ),
        ("Power normal except the left deltoid.", ["strength_all normal", "strength_deltoid left abnormal not normal"]),
        (
            "Cranial nerves normal apart from a left facial droop.",
            ["cranial_nerves_all normal", "facial_strength left abnormal facial droop"],
        ),
        ("Gait normal except that tandem was not tried.", ["gait normal", "tandem_gait not_examined"]),
    ],
)
def test_what_is_excepted_was_not_so(rows, phrase, findings):
    """A test named as an exception was not normal; a sign, or what has words of its own, says it itself."""
    assert rows(phrase) == findings


def test_how_sure_an_exception_is_stands_in_front_of_it(rows):
    """The hedge was once an exception by itself: strength, not normal."""
    found = rows("Power full throughout apart from maybe a bit of weakness in the right hand.")
    assert found == ["strength_all normal", "strength_upper_limb_distal right abnormal a bit weakness ?"]
