"""What a mark may mean, and numbers as they are written."""

from __future__ import annotations

import pytest

from dictate.reading.marks import Mark, Number, Role


@pytest.mark.parametrize(
    ("number", "first", "second"),
    [
        (Number(a=4, a_sign="-"), "4-", ""),
        (Number(a=2, a_sign="+", op="/", b=4), "2+", "4"),
        (Number(a=36.8), "36.8", ""),
        (Number(a=1, mark="T"), "1T", ""),
        (Number(a=142, op="/", b=84), "142", "84"),
        (Number(a=3, a_sign="+", op="to", b=4, b_sign="-"), "3+", "4-"),
    ],
)
def test_a_number_is_written_with_its_sign(number, first, second):
    """Whole numbers without a decimal, signs and marks behind them."""
    assert (number.first, number.second) == (first, second)


def test_a_mark_gives_its_roles_by_kind_and_item():
    """The first role of a kind; of one item, when it is named; the empty name means any item's."""
    general, own = Role("normal"), Role("normal", "gait")
    mark = Mark(0, 1, (own, general), text="steady")
    assert mark.role("normal") is own
    assert mark.role("normal", "") is general
    assert mark.role("normal", "tone") is None
    assert mark.role("absent") is None


def test_a_mark_has_any_of_several_kinds():
    """One of them is enough."""
    mark = Mark(0, 1, (Role("side", key="left"),))
    assert mark.has("site", "side")
    assert not mark.has("site", "number")


def test_only_leaves_one_meaning():
    """The words and their place stay; number and other meanings go."""
    mark = Mark(3, 4, (Role("number"), Role("item", "gait")), number=Number(a=1), text="one")
    assert mark.only("filler") == Mark(3, 4, (Role("filler"),), text="one")
    assert mark.only("item", "smell").roles == (Role("item", "smell"),)
