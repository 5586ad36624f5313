"""Numbers that count nothing in the patient: doses, helpers, trials, days, and "one" that stands for a name."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.marks import Mark, Number, Role

_DOSES = frozenset(
    {"mg", "mcg", "ug", "µg", "ng", "microgram", "micrograms", "milligram", "milligrams", "iu", "mmol", "meq"}
)
_CAUSES = frozenset(
    "weakness pain paresis hemiparesis plegia hemiplegia effort fatigue arthritis injury fracture spasticity stroke "
    "sedation drowsiness aphasia".split()
)
_TO_CAUSES = _CAUSES | {"to"}  # "2° pain", "2° to weakness"
_GRADE = 30  # what is counted in grades or points is less
_COUNTS = frozenset({"count", "counts", "counted", "counting"})
_TRIALS = frozenset({"repetitions", "contractions", "trials", "attempts"})
_THAN = frozenset("weaker stronger brisker less more better worse down up lower higher slower".split())
_EVERY = frozenset({"hourly", "weekly", "monthly", "yearly", "daily"})  # "four-hourly"
_HELPERS = frozenset("people persons helpers carers nurses assistants crutches sticks canes poles push pushes".split())
_COUNTED = frozenset("side hand arm leg foot eye person stick crutch occasion point".split())
_RATES = ("unit", "minutes", "time_span")
_SAID = ("value", "normal", "abnormal", "absent", "present")
_MEANT = frozenset({"actually", "it is", "it was", "is", "was"})
_DAYS = frozenset({"day", "week", "night"})
_VERBS = frozenset({"is", "was", "s"})  # "the left one is up"


def counts_nothing(marks: Sequence[Mark], place: int) -> Mark | None:
    """The mark as a plain word, or as what stands for a name; None where it may be a number of the examination."""
    mark = marks[place]
    if mark.number is None and mark.text != "one" and not mark.has(*_RATES):
        return None  # most marks: asked of every one
    after = marks[place + 1].text if place + 1 < len(marks) else ""
    if _of_a_dose(marks, place) or _counted_to(marks, place) or _unnamed_vital(marks, place):
        return mark.only("word")
    second = mark.text == "2" and after == "°" and marks[place + 2 : place + 3] and marks[place + 2].text in _TO_CAUSES
    if (mark.text in ("2/2", "2 / 2") and after in _CAUSES) or second:
        return replace(mark, roles=(Role("reason"),), number=None, text="secondary to")
    if mark.number is not None and (after in _TRIALS or _is_difference(marks, place)):
        return mark.only("word")  # "after twenty repetitions", "improved by three millimetres"
    if mark.number is not None and after in _HELPERS | _EVERY:
        return mark.only("word")  # "stands with two people"
    if mark.number is not None and place and marks[place - 1].text in _DAYS:
        return mark.only("word")  # "day four of the weakness"
    if mark.number is not None and (_out_of(marks, place) or _grades_apart(marks, place)):
        return mark.only("word")
    return _stands_for_nothing(marks, place, after) if mark.text == "one" else None


def _stands_for_nothing(marks: Sequence[Mark], place: int, after: str) -> Mark | None:
    mark = marks[place]
    if after in _COUNTED:
        return mark.only("word")
    led = [one.text.split()[-1] for one in marks[max(0, place - 2) : place] if one.text]
    if len(led) > 1 and led[0] in ("a", "an") and marks[place - 1].number is None:
        return mark.only("filler")  # "a fine one in the left hand"
    if len(led) > 1 and led[0] == "the" and marks[place - 1].has("comparison", *_SAID):
        return mark.only("filler")  # "is the brisker one", "the weak one"
    if led[-1:] == ["the"] and after in ("that", "which", "who"):
        return mark.only("filler")  # "was the one that was weak"
    if marks[max(0, place - 1)].text.endswith("there is") and marks[place + 1 : place + 2]:
        return mark.only("present") if marks[place + 1].has("side") else None  # "but there is one on the right"
    if place > 1 and marks[place - 1].text == "and" and after in ("", ",", ".", ";"):
        return mark if marks[place - 2].number is not None else mark.only("word")  # "with a frame and one"
    if marks[max(0, place - 1)].text in ("has", "had") and after in ("", ",", ".", ";"):
        return mark.only("present")  # "no tremor on the right, but the left has one"
    return mark.only("filler") if _stands_for_name(marks, place) else None


def _of_a_dose(marks: Sequence[Mark], place: int) -> bool:
    """ "Propofol 2 mg/kg/h": neither the number nor the weight behind it was found in the patient."""
    if marks[place].number is not None:
        return place + 1 < len(marks) and marks[place + 1].text in _DOSES
    rate = place > 0 and marks[place - 1].text in ("/", "per") and marks[place].has(*_RATES)
    return rate and any(mark.text in _DOSES for mark in marks[max(0, place - 4) : place])


def _grades_apart(marks: Sequence[Mark], place: int) -> bool:
    """ "One grade weaker than the left": how far apart two are, and the grade of neither."""
    behind = [mark.text.split(" ")[0] for mark in marks[place + 1 : place + 3]]
    return len(behind) > 1 and behind[0] in ("grade", "grades", "point", "points") and behind[1] in _THAN


def _out_of(marks: Sequence[Mark], place: int) -> bool:
    """ "Of three words he recalled two": from how many, at the head of what was found of them."""
    out = place > 1 and [mark.text for mark in marks[place - 2 : place]] == ["out", "of"]
    at = place - 2 if out else place - 1
    if at > 1 and (out or marks[at].text in ("of", "out of")) and marks[at - 1].text in ("words", "items", "objects"):
        return marks[at - 2].number is not None  # "two words out of three"
    led = place > 0 and marks[place - 1].text in ("of", "out of", "from")
    opens = place == 1 or (place > 1 and marks[place - 2].has("comma", "semicolon", "conj", "stop"))
    behind = marks[place + 1 : place + 2]
    return led and opens and any(mark.text in ("words", "items", "objects", "things") for mark in behind)


def _counted_to(marks: Sequence[Mark], place: int) -> bool:
    """ "Nasal by the time she has counted to fifty": how far the patient was to count."""
    told = [mark.text for mark in marks[max(0, place - 2) : place]]
    return marks[place].number is not None and len(told) > 1 and told[1] == "to" and told[0] in _COUNTS


def _unnamed_vital(marks: Sequence[Mark], place: int) -> bool:
    """ "134/82 | 76 | 16 | 98%": behind a pressure, a number between bars has neither name nor unit."""
    bars = [mark.text for mark in (*marks[max(0, place - 1) : place], *marks[place + 1 : place + 2])] == ["|", "|"]
    told = [number for mark in marks[:place] if (number := mark.number) is not None]
    number = marks[place].number
    plain = number is not None and number.op == ""
    return bars and plain and any(one.op == "/" and one.a > _GRADE for one in told)


def _is_difference(marks: Sequence[Mark], place: int) -> bool:
    said = [mark.text for mark in marks[max(0, place - 2) : place]]
    return said[-1:] == ["improved by"] or said in (["improved", "by"], ["improves", "by"], ["worsened", "by"])


def _stands_for_name(marks: Sequence[Mark], place: int) -> bool:
    """ "the left one is up", "the right one fatigues", and not "on the right one, on the left two"."""
    than = any(mark.text.endswith("than") for mark in marks[max(0, place - 4) : place])  # "than the right one"
    ends = place + 1 >= len(marks) or marks[place + 1].has("stop", "comma", "semicolon")
    meant = place > 1 and any(
        mark.text in _MEANT or mark.has("correction") for mark in marks[max(0, place - 4) : place]
    )
    whose = meant and marks[place - 2].text == "the"  # "actually it is the right one"
    if ends and place and (than or whose) and marks[place - 1].has("side"):
        return True
    if not place or not marks[place - 1].has("side") or place + 1 >= len(marks):
        return False
    after = marks[place + 1]
    article = marks[place - 1].text.startswith("the ") or (place > 1 and marks[place - 2].text == "the")
    closed = after.number is not None or after.has("comma", "stop", "semicolon", "side", "conj", "item", "unit")
    told = after.number is None and any(role.kind in _SAID for role in after.roles)
    # "left one absent": a grade has no second word
    measured = after.number is not None and (bool(after.number.a_sign) or (article and _is_value(after.number)))
    return after.text.split(" ")[0] in _VERBS or measured or (not closed and (article or told))


def _is_value(number: Number) -> bool:
    return bool(number.op or number.a != 1)
