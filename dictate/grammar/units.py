"""UCUM units: a number said in one of them in another, by pint, which is loaded only when something is converted."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pint import UnitRegistry

# UCUM code → the library's name. Units not listed are not converted.
_NAMES = {
    "Cel": "degC",
    "[degF]": "degF",
    "kg": "kilogram",
    "g": "gram",
    "[lb_av]": "pound",
    "[stone_av]": "stone",
    "m": "meter",
    "cm": "centimeter",
    "mm": "millimeter",
    "[in_i]": "inch",
    "[ft_i]": "foot",
    "[yd_i]": "yard",
    "L": "liter",
    "mL": "milliliter",
    "ml": "milliliter",
    "s": "second",
    "min": "minute",
    "m/s": "meter / second",
    "km/h": "kilometer / hour",
    "[ft_i]/s": "foot / second",
    "mm[Hg]": "mmHg",
    "kPa": "kilopascal",
}
DIGITS = 9  # rounding that hides the last bits of binary fractions and no digit that anyone said


def convert(number: float, said: str, wanted: str) -> float | None:
    """The number in the wanted UCUM unit; None when one is not known or they measure different things.

    Source: the library's definitions (1 lb = 0.45359237 kg, 1 in = 2.54 cm, 1 ft = 0.3048 m, all exact).
    """
    if said == wanted:
        return number
    if said not in _NAMES or wanted not in _NAMES:
        return None
    from pint import DimensionalityError

    try:
        return round(float(_registry().Quantity(number, _NAMES[said]).to(_NAMES[wanted]).magnitude), DIGITS)
    except DimensionalityError:
        return None


@cache
def _registry() -> UnitRegistry[float]:
    """Made once: reading its definitions takes most of a second."""
    from pint import UnitRegistry

    return UnitRegistry(autoconvert_offset_to_baseunit=False)
