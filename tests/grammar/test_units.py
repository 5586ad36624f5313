"""Units."""

from __future__ import annotations

import pytest

from dictate.grammar.units import convert


@pytest.mark.parametrize(
    ("number", "said", "wanted", "expected"),
    [
        (98.6, "[degF]", "Cel", 37.0),
        (150, "[lb_av]", "kg", 68.0388555),
        (25, "[ft_i]", "m", 7.62),
        (1, "[in_i]", "cm", 2.54),
        (1, "[stone_av]", "kg", 6.35029318),
        (1500, "mL", "L", 1.5),
        (2, "min", "s", 120),
        (36.6, "Cel", "Cel", 36.6),
    ],
)
def test_a_number_is_converted(number, said, wanted, expected):
    """1 lb = 0.45359237 kg, 1 in = 2.54 cm, 1 ft = 0.3048 m, 1 stone = 14 lb. Source: definitions (from memory)."""
    assert convert(number, said, wanted) == pytest.approx(expected, abs=1e-8)


def test_what_cannot_be_converted_is_none():
    """An unknown unit, none at all, or one that measures something else; unknown units of one name stay."""
    assert convert(3, "furlong", "m") is None
    assert convert(3, "", "m") is None
    assert convert(3, "kg", "m") is None
    assert convert(3, "furlong", "furlong") == 3
