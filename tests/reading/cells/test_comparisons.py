"""Comparisons: which side is worse, not where it was found."""

from __future__ import annotations

import pytest

from dictate.model import Side


@pytest.mark.parametrize(
    ("phrase", "detail"),
    [
        ("pinprick reduced, worse on the left", "worse on the left"),
        ("tone increased, more on the left", "more on the left"),
    ],
)
def test_a_comparison_after_a_finding_is_its_detail(cells, phrase, detail):
    """The side of the comparison is not the side of the finding."""
    (cell,) = cells(phrase)
    assert cell.side is None
    assert cell.detail == [detail]


def test_a_comparison_alone_is_the_finding(cells):
    """ "Weaker than the right" says that it was not as it should be, in its own words."""
    (cell,) = cells("deltoid weaker than the right")
    assert [(node.text, node.mark.has("abnormal")) for node in cell.values] == [("weaker than the right", True)]
    assert cell.side is None


def test_the_finding_keeps_the_words(rows):
    """Abnormal, as said; the right side is not claimed."""
    assert rows("Deltoid weaker than the right.") == ["strength_deltoid abnormal weaker than the right"]


def test_a_side_of_its_own_stays(cells):
    """ "Mild dysmetria on the left" is on the left, whatever is worse."""
    first, second = cells("finger to nose mild dysmetria on the right, severe dysmetria on the left")
    assert (first.side, second.side) == (Side.RIGHT, Side.LEFT)
