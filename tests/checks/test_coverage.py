"""How far statements reach."""

from __future__ import annotations

import pytest

from dictate.checks.coverage import covers_side, covers_site, is_abnormal, is_reassuring, sides_meet
from dictate.model import Side

L, R, B, M = Side.LEFT, Side.RIGHT, Side.BOTH, Side.MIDLINE


@pytest.mark.parametrize(
    ("whole", "part", "covers"),
    [
        (None, L, True),
        (None, None, True),
        (L, L, True),
        (L, R, False),
        (L, None, False),
        (B, L, True),
        (B, None, True),
        (B, M, False),
    ],
)
def test_how_a_side_covers_another(whole, part, covers):
    """No side speaks of all; a side speaks of itself, both of either."""
    assert covers_side(whole, part) is covers


@pytest.mark.parametrize(
    ("one", "other", "meet"),
    [(L, L, True), (L, R, False), (B, R, True), (None, None, True), (None, L, False), (B, M, False), (M, M, True)],
)
def test_when_sides_meet(one, other, meet):
    """Both speak of a side that was said, or neither names one."""
    assert sides_meet(one, other) is meet


@pytest.mark.parametrize(
    ("whole", "part", "covers"),
    [
        ("", "hand", True),
        ("arm", "hand", True),
        ("upper_limb", "arm", True),
        ("arm", "upper_limb", True),
        ("hand", "arm", False),
        ("toe", "great_toe", True),
        ("limb", "foot", True),
        ("leg", "hand", False),
        ("hand", "", False),
    ],
)
def test_how_a_site_covers_another(whole, part, covers):
    """The larger speaks of the smaller, none of all."""
    assert covers_site(whole, part) is covers


@pytest.mark.parametrize(
    ("item", "status", "value", "abnormal", "reassuring"),
    [
        ("tone", "abnormal", "increased", True, False),
        ("tone", "normal", None, False, True),
        ("tremor", "present", None, True, False),
        ("tremor", "absent", None, False, True),
        ("gag", "present", None, False, True),
        ("gag", "absent", None, True, False),
        ("abdominal_reflex", "absent", None, True, False),
        ("strength_deltoid", "measured", "5-", True, False),
        ("strength_deltoid", "measured", "5", False, False),
        ("reflex_patellar", "measured", "3+", False, False),
        ("reflex_patellar", "measured", "trace", True, False),
        ("heart_rate", "measured", "140", False, False),
        ("recall", "measured", "0/3", False, False),
        ("gait", "not_examined", None, False, False),
    ],
)
def test_what_is_abnormal(said, grammar, item, status, value, abnormal, reassuring):
    """Numbers are not judged, grades by their scale, presence by what is usual of the item."""
    finding = said(item, status, value)
    assert is_abnormal(finding, grammar.item(item), grammar) is abnormal
    assert is_reassuring(finding, grammar.item(item), grammar) is reassuring
