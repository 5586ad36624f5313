"""Number phrases → Number: "one forty two over eighty four" → 142/84, "four minus" → 4-, "twenty thirty" → 20/30."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark, Number, Role
from dictate.reading.phrases.cardinals import STONES, Cardinals
from dictate.reading.tokens import Token

ROMAN = {w: n for n, w in enumerate("i ii iii iv v vi vii viii ix x xi xii".split(), start=1)}
CHART_LINES = {  # distance of an acuity chart, in feet or metres → its lines
    20: {10, 12, 15, 16, 20, 25, 30, 32, 40, 50, 60, 63, 70, 80, 100, 125, 150, 160, 200, 400},
    6: {5, 6, 9, 12, 15, 18, 24, 36, 60},
}
_GOING = {
    *((word, "to") for word in "going decreasing constricting reacting down falling reducing reactive react".split()),
    *((word, "to") for word in "constrict contracting shrinking".split()),
    ("which", "constrict", "to"),
    *((word, "down", "to") for word in "going coming come comes goes constricting".split()),
    ("becoming",),
    ("->",),
    ("to",),
}
_COUNTED = {"correct", "right", "times", "trials", "movements", "attempts", "responses"}
_SCORED = {"rass", "score", "of", "is", "was", "at"}
_METRES = frozenset({"metre", "metres", "meter", "meters", "m"})
_CENTIMETRES = frozenset({"centimetres", "centimeters", "cm"})
_BEHIND_HEIGHT = frozenset({"", ",", ".", ";", "and", "tall", "weight", "weighs"})
_TALLEST_FT, _INCHES = 9, 12  # "25 feet 5.2 seconds" is no height
_TIMES = {"seconds", "second", "sec", "secs", "s"}
_EYES = {"acuity", "acuities", "va", "vas", "vision", "snellen", "bcva"}
_HEAT = {"temperature", "temp"}
_FEVER = (33, 43)
_MOST_LETTERS = 4
_FORK_OF = 8
_LOWEST_FELT = 40  # "120 palpable": a pressure by touch
_LENGTHS = frozenset("cm mm centimetres centimeters millimetres millimeters inches inch metres meters".split())
_LOGMAR = "logmar"
_HOW_MANY = (("of",), ("of", "the"), ("out", "of"), ("out", "of", "the"))  # words behind "none"
_DARK = tuple(map(str.split, ("in the dark", "in dim light", "in dark", "in darkness")))
_BRIGHT = tuple(map(str.split, ("in the light", "in light", "in bright light", "in room light")))
_MM = {"mm", "millimetre", "millimetres", "millimeter", "millimeters"}


class _Reader(Cardinals):
    """Reads number phrases at a place of the token list."""

    def signed(self, i: int) -> tuple[float, str, int] | None:
        """A number with the sign of a grade: "four minus", "2+", "+2", "++"."""
        if crosses := self.crosses(i):
            return float(crosses), "+", i + crosses
        if self.at(i, same_sentence=False) == "+":
            if self.at(i + 1).isdigit() and self.tokens[i + 1].glued:
                return float(self.words[i + 1]), "+", i + 2
            return None
        below = self._below_zero(i)
        if below is not None:
            return below
        found = self.cardinal(i)
        if found is None:
            return None
        number, end = found
        sign = self.at(end)
        if sign in {"plus", "minus"}:
            return number, "+" if sign == "plus" else "-", end + 1
        if sign in {"+", "-"} and (self.tokens[end].glued or sign == "+"):
            after = self.at(end + 1)
            tight = bool(after) and self.tokens[end + 1].glued and (after[0].isdigit())
            if not tight:
                return number, sign, end + 1
        return number, "", end

    def _below_zero(self, i: int) -> tuple[float, str, int] | None:
        """ "RASS minus two", "RASS -2": a minus behind a word, and not behind a number or at the start of a line."""
        minus = self.at(i)
        before = self.at(i - 1, same_sentence=False) if i and minus in {"minus", "-"} else ""
        if not before.isalpha() or self.tokens[i - 1].ends_line:
            return None
        if minus == "-" and not (before in _SCORED and self.at(i + 1)[:1].isdigit() and self.tokens[i + 1].glued):
            return None
        found = self.cardinal(i + 1)
        return None if found is None or self.cardinal(i - 1) is not None else (-found[0], "", found[1])

    def phrase(self, i: int) -> tuple[Number, int] | None:
        """The longest number phrase from place i."""
        for special in (self._broken_pressure, self._roman_of, self._logmar):
            if (whole := special(i)) is not None:
                return whole
        first = self.signed(i) or self._none_of(i)
        if first is None:
            return None
        a, sign, end = first
        word = self.at(end)
        if word == _LOGMAR:
            return Number(a=a, op=_LOGMAR), end + 1
        glued = end < len(self.tokens) and self.tokens[end].glued
        named = not glued and self.at(end + 1)[:1].isdigit()  # "RR 18 T 36.9": a temperature
        if word == "t" and (glued or self.tokens[end].text == "T") and not sign and not named:
            return Number(a=a, mark="T"), end + 1
        if word in {"palpable", "palp"} and a >= _LOWEST_FELT:
            return Number(a=a, palpable=True, op="/"), end + 1
        if word in {"eighth", "eighths"} and not sign:
            return Number(a=a, op="of", b=_FORK_OF), end + 1  # of the graduated tuning fork
        if word in {"feet", "foot", "ft", "'", "’"} and not sign:
            inches = self.cardinal(end + 1)
            if inches is not None and a < _TALLEST_FT and inches[0] < _INCHES and self.at(inches[1]) not in _TIMES:
                stop = inches[1] + (1 if self.at(inches[1]) in {"inches", "inch", "in", '"', "”"} else 0)
                return Number(a=a, op="ft", b=inches[0]), stop
        parts = self._tall(a, end + 1) if word in _METRES else self.stones(a, end + 1) if word in STONES else None
        if parts is not None and not sign:
            return parts
        tenths = self.cardinal(end) if _FEVER[0] <= a < _FEVER[1] and not sign and self._of_heat(i) else None
        if tenths is not None and tenths[0] in range(10):
            return Number(a=a + tenths[0] / 10), tenths[1]
        joined = self._joined(a, sign, end)
        if joined is not None:
            return self._going(*joined)
        return self._going(Number(a=a, a_sign=sign), end)

    def _none_of(self, i: int) -> tuple[float, str, int] | None:
        """ "None of three": no number but in front of how many there are."""
        if self.at(i) not in {"none", "nil"}:
            return None
        counted = (i + 1 + len(words) for words in _HOW_MANY if tuple(self.words[i + 1 : i + 1 + len(words)]) == words)
        return (0.0, "", i + 1) if any(self.cardinal(at) is not None for at in counted) else None

    def _tall(self, metres: float, end: int) -> tuple[Number, int] | None:
        """ "One metre seventy five", "1 m 82": a height in metres and centimetres, with nothing counted behind."""
        found = self.cardinal(end)
        if metres not in (1, 2) or found is None or found[0] not in range(10, 100):
            return None
        behind = self.at(found[1])
        stop = found[1] + (behind in _CENTIMETRES)
        return (Number(a=metres, op="m", b=found[0]), stop) if self.at(stop) in _BEHIND_HEIGHT else None

    def _logmar(self, i: int) -> tuple[Number, int] | None:
        """ "logMAR 0.2", "logMAR minus 0.1": an acuity, whatever stands behind it."""
        if self.at(i, same_sentence=False) != _LOGMAR:
            return None
        below = self.at(i + 1) in {"minus", "-"}
        found = self.cardinal(i + 1 + below)
        return None if found is None else (Number(a=-found[0] if below else found[0], op=_LOGMAR), found[1])

    def _joined(self, a: float, sign: str, end: int) -> tuple[Number, int] | None:
        """ "n over m", "n out of m", "20 30"."""
        end += self.at(end) in _COUNTED and self.at(end + 1) in {"of", "out"}  # "three correct of five"
        word, after, op = self.at(end), self.at(end + 1), ""
        if word in {"over", "/"} or self._is_over(word, a, end + 1):
            op, end = "/", end + 1
        elif (word, after) == ("out", "of"):
            op, end = "of", end + 2 + (self.at(end + 2) == "the")
        elif word == "of" and self.cardinal(end + 1 + (after == "the")) is not None:
            op, end = "of", end + 1 + (after == "the")  # "one of the three"
        elif (a in CHART_LINES and not sign and (two := self.cardinal(end)) and two[0] in CHART_LINES[int(a)]) and (
            self._of_eyes(end) if a == 6 else not self._has_unit(two[1])
        ):
            return Number(a=a, op="/", b=two[0]), two[1]
        elif word == "-" and self.tokens[end].glued and (two := self.cardinal(end + 1)) and self.tokens[end + 1].glued:
            lines = CHART_LINES.get(int(a), ())
            line = two[0] in lines and not sign and self._of_eyes(end)  # "acuity 6-9": as some recognisers write it
            return Number(a=a, a_sign=sign, op="/" if line else "-", b=two[0]), two[1]
        if not op:
            return None
        if self.at(end) in {"palpable", "palp", "p"} and op == "/":
            return Number(a=a, palpable=True, op="/"), end + 1
        second = self.signed(end) if self.at(end) else None  # nothing runs on into another recording
        if second is None:
            return None
        b, b_sign, stop = second
        if self.at(stop) in ("a", "b", "c") and self.tokens[stop].glued:
            return None  # "5a 4 / 5b 0": the next item of a form
        letters = self.cardinal(stop) if b_sign and op == "/" and a in (6, 20) and b >= 5 else None  # "20/40 minus one"
        if letters is not None and letters[0] in range(1, _MOST_LETTERS + 1):
            b_sign, stop = f"{b_sign}{int(letters[0])}", letters[1]
        return Number(a=a, a_sign=sign, op=op, b=b, b_sign=b_sign), stop

    def _is_over(self, word: str, a: float, second: int) -> bool:
        """ "142 on 84", "142 by 84", "four by five", "six by nine": other words for over, where nothing else fits."""
        if word not in {"on", "by"} or (two := self.cardinal(second)) is None:
            return False
        if a >= 60 and 30 <= two[0] < a and self.at(two[1]) not in ("percent", "%"):  # "100 on 40 percent" oxygen
            return True
        lines = CHART_LINES.get(int(a), ())
        return word == "by" and (two[0] in lines or a <= two[0] == 5) and self.at(two[1]) not in _LENGTHS

    def _of_heat(self, i: int) -> bool:
        """ "temperature thirty seven two": tenths of a degree, said without their point."""
        return any(self.at(place, same_sentence=False) in _HEAT for place in range(max(0, i - 2), i))

    def _of_eyes(self, end: int) -> bool:
        """Whether acuity is spoken of here, or ends the sentence before: "six nine" is a line of the chart there."""
        for place in range(end - 1, -1, -1):
            if self.words[place] in _EYES:
                return True
            if place < end - 1 and self.tokens[place].ends_sentence:
                return place > 0 and self.words[place - 1] in _EYES
        return False

    def _has_unit(self, end: int) -> bool:
        return self.at(end) in {"seconds", "minutes", "second", "minute", "beats", "degrees", "kilos", "kg"}

    def _going(self, number: Number, end: int) -> tuple[Number, int]:
        """ "four millimetres going to two", "4/4 decreasing to 2/2", "five in the dark three in the light"."""
        place = end + 1 if self.at(end) in _MM else end
        if (dark := self._one_of(_DARK, place)) > place:
            dark += 1 if self.at(dark) in {",", "and"} else 0
            dark += 1 if self.at(dark) == "and" else 0
            dark += max((len(way) for way in _GOING if tuple(self.words[dark : dark + len(way)]) == way), default=0)
            second = self.cardinal(dark)
            if second is not None:
                start = second[1] + (1 if self.at(second[1]) in _MM else 0)
                if (bright := self._one_of(_BRIGHT, start)) > start:
                    return Number(a=number.a, op="->", b=second[0]), bright
            place = dark
        for going in sorted(_GOING, key=len, reverse=True):
            if tuple(self.words[place : place + len(going)]) != going or not self.at(place):
                continue
            start = place + len(going)
            second_phrase = self.signed(start)
            if second_phrase is None:
                continue
            b, b_sign, stop = second_phrase
            if number.op == "/" and number.b is not None and self.at(stop) in {"/", "over"}:
                last = self.cardinal(stop + 1)
                if last is not None and number.a < _LOWEST_FELT:  # "140/80 -> 110/70" is two pressures, and no pupils
                    return Number(a=number.a, op="/", b=number.b, then=(b, last[0])), last[1]
            if number.op:
                continue
            op = "to" if going == ("to",) else "->"
            return Number(a=number.a, a_sign=number.a_sign, op=op, b=b, b_sign=b_sign), stop
        return number, end

    def _one_of(self, phrases: Sequence[Sequence[str]], place: int) -> int:
        """Where the one of the phrases that stands here ends; the place itself when none does."""
        found = (place + len(one) for one in phrases if self.words[place : place + len(one)] == list(one))
        return next(found, place)

    def _broken_pressure(self, i: int) -> tuple[Number, int] | None:
        """The recogniser's ways of breaking a systolic: "1 19 over 50", "1-16 over", "1.82 over", "160 to over 90"."""
        parts: list[float] = []
        place = i
        while len(parts) < 3 and self.at(place, same_sentence=place > i)[:1].isdigit():
            parts.append(float(self.words[place]))
            place += 1
            if self.at(place) in {",", "-"} and self.at(place + 1)[:1].isdigit() and len(parts) < 3:
                place += 1
        extra = 0.0
        tens = len(parts) == 1 and parts[0] % 10 == 0
        if tens and self.at(place) in {"to", "for", "two", "four"} and self.at(place + 1) in {"over", "/"}:
            extra, place = (2.0 if self.at(place) in {"to", "two"} else 4.0), place + 1
        if not parts or self.at(place) not in {"over", "/"}:
            return None
        systolic = _join_digits(parts)
        if systolic is None or (len(parts) == 1 and not extra and parts[0] == int(parts[0])):
            return None
        second = self.cardinal(place + 1)
        if second is None or systolic + extra < 50:
            return None
        return Number(a=systolic + extra, op="/", b=second[0], tens=extra), second[1]

    def _roman_of(self, i: int) -> tuple[Number, int] | None:
        """ "II/VI" of a murmur."""
        text = self.tokens[i].text
        roman = text.isupper() and text.lower() in ROMAN
        if not roman or self.at(i + 3) in {"/", ":"} or (i > 0 and self.at(i - 1) == "/"):
            return None  # as nerves in a list are ("III/IV/VI:")
        if self.at(i + 1) == "/" and self.at(i + 2) in ROMAN:
            return Number(a=float(ROMAN[text.lower()]), op="/", b=float(ROMAN[self.words[i + 2]])), i + 3
        return None


def _join_digits(parts: list[float]) -> float | None:
    """Pieces of one systolic pressure put together; None when they make none."""
    if len(parts) == 1:
        whole = round(parts[0] * 100)
        return float(whole) if parts[0] != int(parts[0]) and 1 <= parts[0] < 3 and 70 <= whole <= 260 else parts[0]
    if any(p != int(p) for p in parts):
        return None
    if parts[0] in (1, 2):
        joined = float("".join(str(int(p)) for p in parts))
        return joined if 100 <= joined <= 260 else None
    if len(parts) == 2 and parts[0] % 10 == 0 and parts[0] >= 100 and parts[1] < 10:
        return parts[0] + parts[1]
    return None


def find_numbers(tokens: Sequence[Token]) -> list[Mark]:
    """Every number phrase of the text, as marks that do not overlap."""
    reader = _Reader(tokens)
    marks: list[Mark] = []
    place = 0
    while place < len(tokens):
        row = reader.in_a_row(place)
        number, end = (None, row) if row else reader.phrase(place) or (None, place + 1)
        if number is not None:
            marks.append(Mark(start=place, end=end, roles=(Role("number"),), number=number))
        place = end
    return marks
