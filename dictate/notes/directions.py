"""How one statement about an item differs from another: which way is better, where the item or its scale says so."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum

from dictate.catalogue import note as words
from dictate.grammar import Grammar, better_way, conditions_of, name_detail, scale_named
from dictate.grammar.number_words import BELOW_TWENTY
from dictate.grammar.walks import walk_change, walk_of
from dictate.model import BOUNDS, Acuity, Finding, Grade, Pressure, Quantity, Score, Status, Text, Value, number_text
from dictate.notes.phrases import one_line, stands_out
from dictate.notes.slots import JUDGED


class Kind(StrEnum):
    """What became of a statement between two visits."""

    NEW = "new"
    NEW_BY_NAME = "new by name"  # last time its whole component was said to be normal
    WORSE = "worse"
    BETTER = "better"
    GONE = "gone"
    NOT_NAMED = "not named this time"  # and its whole component was said to be normal
    CHANGED = "changed"  # different, and nothing says which is better
    NOT_SO = "not so"  # said to be unchanged, and it is not
    NOT_COMPARABLE = "not comparable"
    NOT_EXAMINED = "not examined this time"
    NOT_ASSESSABLE = "not assessable this time"
    NOT_DICTATED = "nothing dictated this time"
    NOT_EXAMINED_BEFORE = "not examined last time"
    NOT_ASSESSABLE_BEFORE = "not assessable last time"
    NOT_DICTATED_BEFORE = "nothing dictated last time"
    UNCHANGED = "unchanged"


@dataclass(frozen=True)
class Change:
    """What became of it, the difference of numbers, and why it cannot be compared."""

    kind: Kind
    difference: str = ""
    reason: str = ""


ACUITY = "visual_acuity"
SEVERITY = {
    "minimal": 1, "subtle": 1, "slight": 2, "mild": 2, "moderate": 3, "marked": 4, "severe": 4, "profound": 5,
}  # fmt: skip
DIGITS = {word: str(at) for word, at in BELOW_TWENTY.items() if at <= 10}
# Acuity in words, worst first; no number is put to any of them. Source: Holladay 2004; Bach (order, looked up).
SEEN = ("no light perception", "light perception", "hand movements", "counting fingers")
# A line of an ordinary chart is more than any: counting fingers is 0.014. Source: Schulze-Bonsel 2006 (from memory).
CHART = 0.05  # 20/400, its largest letter
ABSENT = words.STATUSES[Status.ABSENT]
TIMED = re.compile(r"([\d.]+ \w+ in) (\d+(?:\.\d+)?) s")


def change(earlier: Finding, later: Finding, grammar: Grammar) -> Change:
    """What became of a statement; both say something of the same item at the same place in the same position."""
    if earlier.status in JUDGED and later.status in JUDGED:
        found = _of_judged(earlier, later, grammar)
    elif earlier.status is later.status:
        found = _of_values(earlier, later, grammar)
    else:
        found = _of_measured_and_judged(earlier, later, grammar)
    if found.kind is Kind.UNCHANGED and earlier.certainty is not later.certainty:
        return Change(Kind.CHANGED, reason=words.DOUBT_DIFFERS)
    return found


def beside_whole(found: Change, *, named_now: bool) -> Change:
    """The same where only one visit named it, and the other said that the whole component was normal.

    That may not have been meant of it ("reflexes normal", of a plantar response): it clears no sign, and shows none.
    """
    if found.kind not in (Kind.NEW, Kind.GONE, Kind.WORSE, Kind.BETTER, Kind.CHANGED):
        return found
    return Change(Kind.NEW_BY_NAME if named_now else Kind.NOT_NAMED)


def _of_judged(earlier: Finding, later: Finding, grammar: Grammar) -> Change:
    was, now = stands_out(earlier, grammar), stands_out(later, grammar)
    if was != now:
        return Change(Kind.NEW if now else Kind.GONE)
    if not now and Status.NORMAL in (earlier.status, later.status):
        return Change(Kind.UNCHANGED)
    if earlier.status is not later.status:
        return Change(Kind.CHANGED)
    if not now and later.status is Status.ABSENT:
        return Change(Kind.UNCHANGED)
    return _of_values(earlier, later, grammar)


def _of_measured_and_judged(earlier: Finding, later: Finding, grammar: Grammar) -> Change:
    """A normal stands for the one normal grade of a scale that has only one; else normal against what stands out."""
    one, other = _as_grade(earlier, later, grammar), _as_grade(later, earlier, grammar)
    if isinstance(one.value, Grade) and isinstance(other.value, Grade):
        return _of_values(one, other, grammar)
    was, now = stands_out(earlier, grammar), stands_out(later, grammar)
    if was != now and Status.NORMAL in (earlier.status, later.status):
        return Change(Kind.NEW if now else Kind.GONE)
    if _is_some(earlier, grammar) and _is_none(later):
        return Change(Kind.WORSE)
    if _is_none(earlier) and _is_some(later, grammar):
        return Change(Kind.BETTER)
    return Change(Kind.NOT_COMPARABLE, reason=words.SAID_OTHERWISE)


def _is_none(finding: Finding) -> bool:
    """Whether it is told to be absent: less of it there cannot be."""
    return finding.status in (Status.ABSENT, Status.ABNORMAL) and _plain(str(finding.value or "")) == ABSENT


def _is_some(finding: Finding, grammar: Grammar) -> bool:
    """Whether it is a number of what is better the more there is, and more than nothing."""
    value = finding.value
    number = value.number if isinstance(value, Quantity) else value.points if isinstance(value, Score) else None
    return finding.status is Status.MEASURED and better_way(finding, grammar) > 0 and (number or 0) > 0


def _as_grade(finding: Finding, other: Finding, grammar: Grammar) -> Finding:
    scale = grammar.scales.get(other.value.scale) if isinstance(other.value, Grade) else None
    if finding.status is not Status.NORMAL or finding.value is not None or scale is None or len(scale.normal) != 1:
        return finding
    value = Grade(scale=other.value.scale, grade=scale.normal[0]) if isinstance(other.value, Grade) else None
    return finding.model_copy(update={"value": value})


def _of_values(earlier: Finding, later: Finding, grammar: Grammar) -> Change:
    old, new = earlier.value, later.value
    bounds = [{part for part in one.detail if part in BOUNDS} for one in (earlier, later)]
    if old == new and earlier.unit == later.unit and bounds[0] == bounds[1]:
        return _same_value(earlier, later, grammar)
    if any(bounds):
        return Change(Kind.NOT_COMPARABLE, reason=words.BOUND)
    old, new = (_acuity(timed(value), later.item) for value in (old, new))
    if old is None or new is None:
        return Change(Kind.CHANGED)
    if type(old) is not type(new) or not _alike(old, new, named=bool(scale_named(later, grammar))):
        return Change(Kind.NOT_COMPARABLE, reason=words.SAID_OTHERWISE)
    if earlier.unit != later.unit:
        return Change(Kind.NOT_COMPARABLE, reason=words.UNIT_DIFFERS)
    if isinstance(old, Text) and isinstance(new, Text) and _plain(old.words) == _plain(new.words):
        return _same_value(earlier, later, grammar)
    if isinstance(old, Score) and isinstance(new, Score) and (old.points, old.mark) == (new.points, new.mark):
        return _same_value(earlier, later, grammar)  # one of them without its maximum
    unit = later.unit or ("s" if isinstance(later.value, Text) and isinstance(new, Quantity) else "")
    kind = _kind_of(better_way(later, grammar) * _rise(old, new) or _way(old, new))
    return Change(kind, _difference(old, new, unit), walk_change(walk_of(earlier), walk_of(later)))


def _same_value(earlier: Finding, later: Finding, grammar: Grammar) -> Change:
    """A number stays the same whatever else is said of it; a sign that is told otherwise has changed."""
    if _details(earlier, grammar) == _details(later, grammar):
        return Change(Kind.UNCHANGED)
    if Status.MEASURED in (earlier.status, later.status):  # the other may be a normal that stands for its grade
        return Change(Kind.UNCHANGED, reason=words.TOLD_OTHERWISE)
    return Change(Kind.CHANGED)


def timed(value: Value | None) -> Value | None:
    """`10 m in 12 s` as the seconds for that distance; anything else as it is."""
    parts = TIMED.fullmatch(value.words) if isinstance(value, Text) else None
    return value if parts is None else Quantity(number=float(parts[2]), note=parts[1])


def _acuity(value: Value | None, item: str) -> Value | None:
    """What an eye sees where it reads no line, among the acuities."""
    in_words = isinstance(value, Text) and item == ACUITY and _plain(value.words) in SEEN
    return Acuity(text=_plain(value.words)) if isinstance(value, Text) and in_words else value


def _kind_of(way: float) -> Kind:
    return Kind.CHANGED if way == 0 else Kind.BETTER if way > 0 else Kind.WORSE


def _alike(old: Value, new: Value, *, named: bool) -> bool:
    """Whether more than their words can be compared. named: their scale was said, and so fixes the maximum."""
    if isinstance(old, Grade) and isinstance(new, Grade):
        return old.scale == new.scale
    if isinstance(old, Score) and isinstance(new, Score):
        return old.mark == new.mark and (old.of == new.of or (named and None in (old.of, new.of)))
    return not (isinstance(old, Quantity) and isinstance(new, Quantity)) or old.note == new.note


def _rise(old: Value, new: Value) -> float:
    """How much more the later number or grade is; 0 where there are none."""
    if isinstance(old, Grade) and isinstance(new, Grade):
        return _rank(new) - _rank(old)
    if isinstance(old, Score) and isinstance(new, Score) and old.points is not None and new.points is not None:
        return new.points - old.points
    if isinstance(old, Quantity) and isinstance(new, Quantity) and _single(old) and _single(new):
        return new.number - old.number
    return 0


def _way(old: Value, new: Value) -> float:
    """Above 0: better. 0: nothing says which is better."""
    if isinstance(old, Acuity) and isinstance(new, Acuity):
        if old.text in SEEN and new.text in SEEN:
            return SEEN.index(new.text) - SEEN.index(old.text)
        was, now = _fraction(old.text), _fraction(new.text)
        if old.text in SEEN or new.text in SEEN:
            return ((now or 0) >= CHART) - ((was or 0) >= CHART)
        return 0 if was is None or now is None else now - was
    if isinstance(old, Text) and isinstance(new, Text):
        return _severity_way(old.words, new.words)
    return 0


def _rank(grade: Grade) -> float:
    """Place of a grade on its scale: signs count a third, 4- < 4 < 4+."""
    number = re.match(r"\d+", grade.grade)
    if number is None:
        return 0.5  # a trace lies between none and one
    return int(number.group()) + (grade.grade.endswith("+") - grade.grade.endswith("-")) / 3


def _single(value: Quantity) -> bool:
    return value.then is None and value.upto is None


def _fraction(text: str) -> float | None:
    parts = re.fullmatch(r"(\d+(?:\.\d+)?)/(\d+(?:\.\d+)?)", text)
    return float(parts[1]) / float(parts[2]) if parts and float(parts[2]) else None


def _severity_way(old: str, new: str) -> float:
    """Fewer is better, where the words differ in nothing but how severe it is."""
    (was, rest), (now, other) = _severity(old), _severity(new)
    return was - now if was and now and rest == other else 0


def _severity(text: str) -> tuple[int, tuple[str, ...]]:
    said = [word.removesuffix("ly") for word in _plain(text).split()]
    found = [SEVERITY[word] for word in said if word in SEVERITY]
    return (found[0] if len(found) == 1 else 0), tuple(word for word in said if word not in SEVERITY)


def _difference(old: Value, new: Value, unit: str) -> str:
    """Later less earlier, with its unit; empty where no number can be told."""
    behind = words.UNITS.get(unit, f" {unit.strip('{}')}" if unit else "")
    if isinstance(old, Pressure) and isinstance(new, Pressure):
        text = _signed(new.systolic - old.systolic)
        if old.diastolic is not None and new.diastolic is not None:
            text += f"/{_signed(new.diastolic - old.diastolic)}"
        return text + behind
    if isinstance(old, Quantity) and isinstance(new, Quantity) and _single(old) and _single(new):
        return _signed(new.number - old.number) + behind
    if isinstance(old, Score) and isinstance(new, Score) and old.points is not None and new.points is not None:
        return _signed(new.points - old.points)
    return ""


def _signed(number: float) -> str:
    text = number_text(round(number, 6))
    return text if text.startswith("-") or text == "0" else f"+{text}"


def _details(finding: Finding, grammar: Grammar) -> frozenset[str]:
    """What else was said of it; scale and conditions are part of what it speaks of."""
    name = name_detail(finding, grammar)
    spoken = [part for part in finding.detail if part != name]
    plain = [part for part in spoken if not conditions_of(finding.model_copy(update={"detail": (part,)}), grammar)]
    return frozenset(map(_plain, plain))


def _plain(text: str) -> str:
    """Words without capitals, numbers in digits."""
    return " ".join(DIGITS.get(word, word) for word in one_line(text).lower().split())
