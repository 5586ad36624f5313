"""One small reader per value kind: a number or word beside an item → value and status."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from dictate.grammar import Item, Scale
from dictate.model import Acuity, Choice, Grade, Pressure, Quantity, Score, Side, Status, Text, Value, number_text
from dictate.reading.marks import Number
from dictate.reading.phrases.numbers import find_numbers
from dictate.reading.tokens import tokenize, transcript_of_text

_SHARPEST = 2.0  # decimal acuity: 20/10, the last line of the charts
_WEEKS = 52  # of a year
_LOWEST_SYSTOLIC = (30, 60)  # of what is taken for a pressure: anywhere, and where it is named with a lower diastolic
_LOWEST_DIASTOLIC = (20, 5)
_LARGEST_LOGMAR = 3.0  # beyond what is measured
_HIGHEST_RATING = 4  # of what is rated from none to severe
_CALENDAR = (7, 12, 52)  # "3/12": three months, in shorthand


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a value means of an item; `by_side` when one phrase holds right and left ("2/3")."""

    value: Value | None
    status: Status
    unit: str = ""
    by_side: tuple[tuple[Side, Value], ...] = ()
    readings: tuple[str, ...] = ()  # other ways to take it
    fits: int = 1  # the higher the better; 0 does not fit


LEVELS = frozenset({"sensory_level", "motor_level"})  # items whose value is a segment


def read_number(item: Item, number: Number, unit: str, scale: Scale | None) -> Meaning | None:
    """What a number phrase means of an item; None when it cannot be of this item."""
    if (number.a < 0 and not item.keeps_name and number.op != "logmar") or (
        number.op == "logmar" and item.kind != "acuity"
    ):
        return None
    if item.kind == "normality":
        if item.blanket:
            return None
        if not (item.units or item.unit or item.of or item.scored):
            return None
        counted = bool(item.units or item.unit or item.of)  # "twenty repetitions" is no score of repetition
        if counted and number.op == "/" and number.b is not None and (number.b == 0 or number.a > number.b):
            return _quantity(item, number, unit, scale)  # "0/0", "6/4": no count of so many, but right and left
        if number.op in {"/", "of"}:
            return _score(item, number, unit, scale)
        return _quantity(item, number, unit, scale) if counted else None
    if item.kind == "presence":
        if number.a == 0 and number.op in ("", "/", "of") and not number.a_sign and number.then is None:
            return Meaning(None, Status.ABSENT)  # "clonus 0 beats", "oedema 0", "murmur 0 of 6"
        graded = _levine(item, number) if item.of or item.scale else None
        if graded is not None or ((item.of or item.scale) and not item.units):
            return graded
        signed = number.a_sign == "+" and not number.op  # "tremor 2+": graded without a scale
        if not (item.unit or item.units) and (signed or (item.scored and is_rating(number) and not unit)):
            return Meaning(Text(words=number.first), Status.PRESENT)
        return _quantity(item, number, unit, scale) if item.unit or item.units else None
    reader = _READERS.get(item.kind)
    return reader(item, number, unit, scale) if reader else None


def is_rating(number: Number) -> bool:
    """One of nought to four, plain or with a sign behind it."""
    return not number.op and 0 <= number.a <= _HIGHEST_RATING and number.a == int(number.a)


def _levine(item: Item, number: Number) -> Meaning | None:
    """A murmur of n of six, an oedema of n plus."""
    if number.op in {"/", "of"} and number.b is not None:
        return Meaning(Text(words=f"{number.first}/{number.second}"), Status.PRESENT)
    if number.op == "to" and number.b is not None and item.scale:
        return Meaning(Text(words=f"{number.first} to {number.second}"), Status.PRESENT)
    if number.a_sign == "+" and item.scale:
        return Meaning(Text(words=number.first), Status.PRESENT)
    if not number.op and item.of and number.a <= item.of:
        return Meaning(Text(words=f"{number.first}/{number_text(item.of)}"), Status.PRESENT, fits=0)
    return None


def _pressure(item: Item, number: Number, unit: str, scale: Scale | None) -> Meaning | None:
    if number.op not in {"/"} or number.a_sign or number.b_sign:
        return None
    if number.palpable:
        return Meaning(Pressure(systolic=int(number.a)), Status.MEASURED, "mm[Hg]", fits=3)
    if number.b is None or number.a != int(number.a) or number.b != int(number.b):
        return None
    value = Pressure(systolic=int(number.a), diastolic=int(number.b))
    if number.a < _LOWEST_SYSTOLIC[0] or number.b < _LOWEST_DIASTOLIC[0]:
        odd = number.a >= _LOWEST_SYSTOLIC[1] and number.b >= _LOWEST_DIASTOLIC[1]
        return Meaning(value, Status.MEASURED, "mm[Hg]") if odd else None  # "BP 300 over 10": to be asked about
    return Meaning(value, Status.MEASURED, "mm[Hg]", fits=3)


def _quantity(item: Item, number: Number, unit: str, scale: Scale | None) -> Meaning | None:
    """A number with its unit; a pair "4/4 to 2/2" is right/left."""
    said = unit or ("" if item.unit_required else item.unit)
    fits = 3 if unit else 1
    if number.op == "ft" and number.b is not None:
        if "[ft_i]" in item.units or item.unit in {"cm", "m"}:
            return Meaning(Text(words=f"{number.first}'{number.second}"), Status.MEASURED, "[ft_i]", fits=3)
        return None
    if number.op == "st":
        weight = Quantity(number=number.a * _POUNDS + (number.b or 0))
        return Meaning(weight, Status.MEASURED, "[lb_av]", fits=3) if "[stone_av]" in item.units else None
    if number.op == "m":
        tall = Quantity(number=round(number.a + (number.b or 0) / 100, 2))
        return Meaning(tall, Status.MEASURED, "m", fits=3) if item.unit == "cm" and "m" in item.units else None
    if number.op == "/" and number.b is not None:
        one, two = number.then or (None, None)
        right, left = Quantity(number=number.a, then=one), Quantity(number=number.b, then=two)
        if item.sided == "never" or number.a > 30 or number.b in _CALENDAR or number.a_sign or number.b_sign:
            return None
        return Meaning(None, Status.MEASURED, said, by_side=((Side.RIGHT, right), (Side.LEFT, left)))
    if number.op == "of" or number.a_sign:
        return None
    if number.op in {"->", "to"} and number.b is not None:
        if "mm" in (item.unit, unit) and number.op in {"->", "to"}:
            return Meaning(Quantity(number=number.a, then=number.b), Status.MEASURED, said, fits=3)
        return Meaning(Quantity(number=number.a, upto=number.b), Status.MEASURED, said, fits=fits)
    if number.op == "-" and number.b is not None:
        return Meaning(Quantity(number=number.a, upto=number.b), Status.MEASURED, said, fits=fits)
    return Meaning(Quantity(number=number.a), Status.MEASURED, said, fits=fits)


def as_grade(scale: Scale, written: str) -> str:
    """The grade as the scale writes it: a reflex "2" is 2+ where only 2+ exists."""
    if written not in scale.grades and written + "+" in scale.grades:
        return written + "+"
    return written


def _grade(item: Item, number: Number, unit: str, scale: Scale | None) -> Meaning | None:
    if scale is None or number.mark or number.a != int(number.a) or number.op in ("ft", "st", "m") or number.a >= 10:
        return None

    def grade(written: str) -> Grade:
        return Grade(scale=item.scale, grade=as_grade(scale, written))

    signed = any(g.endswith("+") for g in scale.grades) and bool(number.a_sign)
    fits = 2 if as_grade(scale, number.first) in scale.grades else 1
    fits += 1 if signed else 0
    if number.b is None:
        return Meaning(grade(number.first), Status.MEASURED, fits=fits)
    whole = scale.of is not None and number.b == scale.of and not number.b_sign
    if number.op in {"/", "of", "-"} and whole:
        return Meaning(grade(number.first), Status.MEASURED, fits=3)
    if number.op == "/" and item.sided != "never" and number.a < 10 and number.b < 10:
        pair = ((Side.RIGHT, grade(number.first)), (Side.LEFT, grade(number.second)))
        return Meaning(None, Status.MEASURED, by_side=pair, fits=2)
    if number.op in {"to", "->", "-"} and number.b < 10:
        ends = (str(grade(number.first)), str(grade(number.second)))
        return Meaning(grade(number.first), Status.MEASURED, readings=ends)
    if number.op == "/":
        return Meaning(grade(number.first), Status.MEASURED, fits=1)
    return None


def _score(item: Item, number: Number, unit: str, scale: Scale | None) -> Meaning | None:
    if number.op == "/" and number.b == _WEEKS:
        return None  # "leg pain 6/52": for six weeks
    if number.op in {"/", "of"} and number.b is not None:
        of = None if item.of is not None and item.of == number.b else number.b
        return Meaning(Score(points=number.a, of=of), Status.MEASURED, fits=3)
    if number.op == "-" and number.b is not None and item.of is not None:
        return Meaning(Score(points=number.a), Status.MEASURED)
    if number.op or (number.a_sign and not (item.keeps_name and number.a_sign == "+")):
        return None
    return Meaning(Score(points=number.a, mark=number.mark), Status.MEASURED, fits=2)


def _acuity(item: Item, number: Number, unit: str, scale: Scale | None) -> Meaning | None:
    if number.op in {"/"} and number.b is not None:
        return Meaning(Acuity(text=f"{number.first}/{number.second}"), Status.MEASURED, fits=3)
    if number.a in {2020, 2025, 2030, 2040, 2050, 2060, 2070, 2080}:
        return Meaning(Acuity(text=f"20/{int(number.a) % 100}"), Status.MEASURED, fits=3)
    if number.op == "logmar" and -_LARGEST_LOGMAR <= number.a <= _LARGEST_LOGMAR:
        return Meaning(Acuity(text=f"logMAR {number.a:.{_digits(number.a)}f}"), Status.MEASURED, fits=3)
    plain = not (number.op or number.a_sign or number.mark or unit)  # "counting fingers at 1 metre": a distance
    if plain and 0 < number.a <= _SHARPEST and (number.a != int(number.a) or number.a == 1):
        return Meaning(Acuity(text=f"{number.a:.{_digits(number.a)}f}"), Status.MEASURED, fits=2)
    return None


def _digits(number: float) -> int:
    """One decimal, or two where there are two."""
    return 1 if round(number, 1) == number else 2


def _choice(item: Item, number: Number, unit: str, scale: Scale | None) -> Meaning | None:
    if (item.unit or item.units) and not number.op and not number.a_sign:
        return Meaning(Quantity(number=number.a), Status.MEASURED, unit or item.unit)
    return None


def choice_value(key: str, written: str | None, kind: str) -> Value | None:
    """The value of a named choice: its key, or what the grammar writes instead."""
    if written == "":
        return None
    if written is not None:
        return Text(words=written)
    return Choice(choice=key) if kind == "choice" else Text(words=key.replace("_", " "))


UNELICITED = frozenset({"not elicited", "not obtained", "could not be elicited", "not obtainable", "unobtainable"})
INABILITY = frozenset(
    {
        "could not",
        "unable",
        "cannot",
        "can not",
        "could not do",
        "cannot do",
        "can not do",
        "not possible",
        "impossible",
    }
)


def says_unable(words: str) -> bool:
    """ "Could not", "cannot hop": alone or with what could not be done."""
    return any(words == one or words.startswith(f"{one} ") for one in INABILITY)


_POUNDS = 14  # to the stone
LENGTHS = {"metre": "m", "metres": "m", "meter": "m", "meters": "m", "m": "m", "foot": "ft", "feet": "ft", "ft": "ft"}


_DISTANCES = {"t25fw": "25 ft", "t25w": "25 ft", "25fwt": "25 ft", "25twt": "25 ft", "10mwt": "10 m"}


def distance_in(name: str) -> str:
    """The distance a name holds: "ten metre walk" → "10 m"; empty when it holds none."""
    if (short := name.lower().replace(" ", "")) in _DISTANCES:
        return _DISTANCES[short]
    tokens = tokenize(transcript_of_text(name))
    for mark in find_numbers(tokens):
        unit = tokens[mark.end].lower if mark.end < len(tokens) else ""
        if mark.number is not None and unit in LENGTHS:
            return f"{mark.number.first} {LENGTHS[unit]}"
    return ""


_READERS: dict[str, Callable[[Item, Number, str, Scale | None], Meaning | None]] = {
    "pressure": _pressure,
    "quantity": _quantity,
    "grade": _grade,
    "score": _score,
    "acuity": _acuity,
    "choice": _choice,
}
