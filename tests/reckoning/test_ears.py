"""Rinne and Weber together."""

from __future__ import annotations

import pytest
from reckoning.series import figures, finding

from dictate.model import Choice, Component, Side, Status, Text

NAME = "Rinne and Weber"


def ear(item: str, side: Side | None, status: Status, value: object = None):
    """A finding of the ears."""
    return finding(item, value, component=Component.CRANIAL_NERVES, side=side, status=status)


POSITIVE = (Status.NORMAL, Choice(choice="positive"))
NEGATIVE = (Status.ABNORMAL, Choice(choice="negative"))
MIDLINE = ear("weber", None, Status.NORMAL)


def test_both_tests_are_read_together():
    """Weber to the left, Rinne positive on both sides, right worse."""
    found = (
        ear("rinne", Side.BOTH, *POSITIVE),
        ear("weber", None, Status.ABNORMAL, Text(words="left")),
        ear("hearing", Side.RIGHT, Status.ABNORMAL, Text(words="reduced")),
    )
    (figure,) = figures(NAME, found)
    assert figure.text == "Rinne and Weber together fit a sensorineural loss, right; no cause is claimed"
    assert figure.inputs == (0, 1, 2)


def test_the_usual_result_is_not_written():
    """Rinne positive on both sides, Weber in the middle."""
    assert figures(NAME, (ear("rinne", Side.BOTH, *POSITIVE), MIDLINE)) == ()


@pytest.mark.parametrize(
    "found",
    [
        (ear("rinne", Side.RIGHT, *NEGATIVE), MIDLINE),
        (ear("rinne", Side.RIGHT, *NEGATIVE), ear("rinne", Side.LEFT, *POSITIVE)),
        (ear("rinne", Side.BOTH, Status.ABNORMAL, Choice(choice="equal")), MIDLINE),
        (ear("rinne", Side.BOTH, *NEGATIVE), ear("rinne", Side.LEFT, *POSITIVE), MIDLINE),
        (ear("rinne", None, *NEGATIVE), MIDLINE),
        (ear("rinne", Side.BOTH, *NEGATIVE), ear("weber", None, Status.ABNORMAL)),
        (ear("rinne", Side.BOTH, *NEGATIVE), MIDLINE, MIDLINE),
        (ear("rinne", Side.BOTH, Status.NOT_EXAMINED), MIDLINE),
    ],
)
def test_nothing_is_read_from_missing_parts(found):
    """One side, no Weber, equal, contradicting, side not said, Weber without its side, twice, not examined."""
    assert figures(NAME, found) == ()
