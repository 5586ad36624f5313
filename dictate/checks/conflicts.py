"""values-conflict, contradiction: statements of one dictation that cannot both stand."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import queries as say
from dictate.checks.coverage import (
    about_the_same,
    conditions_of,
    covers_side,
    covers_site,
    denies_only,
    is_abnormal,
    is_plural,
    is_reassuring,
    same_circumstances,
    same_part,
    sides_meet,
)
from dictate.checks.nearby import NEAR, begins, is_rest, joined_by_but, nearby
from dictate.checks.registry import Doubt, check
from dictate.checks.series import PRESSURE, RATE, without_position
from dictate.checks.wording import capital, item_of, phrase, said, topic
from dictate.grammar import Grammar, Item
from dictate.grammar.blankets import covers_item
from dictate.model import (
    Acuity,
    Choice,
    Examination,
    Finding,
    Grade,
    Pressure,
    Quantity,
    Score,
    Side,
    Status,
    Text,
)

# Items of which several different things are said side by side.
WORDS = frozenset({"sensory_level", "motor_level"})  # whose value is a word, and yet only one can be right
SEVERAL_AT_ONCE = frozenset({"speech", "tongue", "gait", "orthostatic_symptoms", "examination_conditions"})
REPEATED = re.compile(r"\b(repeat(ed)?|again|recheck(ed)?|second|third|later|after)\b", re.IGNORECASE)
ANEW = re.compile(r"(repeat(ed)?|recheck(ed)?)\W*", re.IGNORECASE)  # just before the reading
# "Not formally tested", "not assessable in detail": says how far it was tested, not that nothing was.
IN_PART = re.compile(r"\b(formal(ly)?|in detail|detailed|fully|in full|completely)\b", re.IGNORECASE)
UNSEEN = (Status.NOT_EXAMINED, Status.NOT_ASSESSABLE)

STEM = 4  # letters: "rest", "resting"
GAZE = ("gaze", "position")  # which one it was stands before


@check("values-conflict", severity="must")
def values_conflict(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """The same thing was said twice with different values, and no word of correction.

    Why: both are kept and none is chosen; only the examiner knows which was meant. The same holds for a value that is
    called unchanged, where the earlier record has another.
    Example: "left knee jerk three plus ... left knee jerk one plus" asks: 3+ or 1+?
    """
    valued = [one for one in exam.findings if one.value is not None and (one.item in WORDS or not _is_text(one))]
    open_positions = [*without_position(exam, PRESSURE), *without_position(exam, RATE)]
    before: dict[str, list[Finding]] = {}  # by item: hundreds of findings have tens of thousands of pairs
    for later in valued:
        if any(finding is later for finding in open_positions):
            continue
        item = item_of(grammar, later.item)
        rivals = before.setdefault(later.item, [])
        earlier = next(
            (one for one in rivals if item and _same_place(one, later, grammar) and _differ(one, later, item, exam)),
            None,
        )
        rivals.append(later)
        if earlier is not None:
            text = say.SAID_TWICE.format(topic=topic(later, grammar), first=said(earlier), second=said(later))
            yield Doubt(later, text, (said(later), said(earlier)), others=(earlier,))
    for finding in exam.findings:
        if finding.earlier is not None and not finding.earlier.agrees:
            text = say.NOT_UNCHANGED.format(
                topic=topic(finding, grammar), said=said(finding), before=finding.earlier.said
            )
            yield Doubt(finding, say.OF_RECORD.format(text=text, record=finding.earlier.record), (said(finding),))


def _is_text(finding: Finding) -> bool:
    """A descriptor: several may stand side by side."""
    return isinstance(finding.value, Text)


def _same_place(earlier: Finding, later: Finding, grammar: Grammar) -> bool:
    """Same side, site, position and minutes, and neither an exception to the other; a plural speaks of both sides."""
    places = [(finding.site, finding.position, finding.minutes) for finding in (earlier, later)]
    if places[0] != places[1] or earlier.excepted or later.excepted:
        return False
    sides = [Side.BOTH if one.side is None and is_plural(one, grammar) else one.side for one in (earlier, later)]
    return sides_meet(*sides)


def _differ(earlier: Finding, later: Finding, item: Item, exam: Examination) -> bool:
    """Two values that exclude each other, said of the same thing under the same conditions."""
    one, other = earlier.value, later.value
    if isinstance(one, Choice) and isinstance(other, Choice):
        return one != other and _choices_exclude(earlier, later, item, exam)
    if earlier.status is not Status.MEASURED or later.status is not Status.MEASURED or type(one) is not type(other):
        return False
    if later.item in (PRESSURE, RATE):
        if earlier.detail or later.detail or _is_repeat(later, exam):
            return False
    elif {text.lower() for text in earlier.detail} != {text.lower() for text in later.detail}:
        return False
    if isinstance(one, Quantity) and isinstance(other, Quantity) and _count_apart(one.note, other.note):
        return False
    if earlier.unit != later.unit and "%" in (earlier.unit, later.unit):
        return False  # "1.8 litres, 52 percent of predicted"
    if isinstance(one, Score) and isinstance(other, Score) and None not in (one.of, other.of) and one.of != other.of:
        return True  # 27 of 30, then of 28
    return _number_of(earlier) != _number_of(later)


def _count_apart(one: str, other: str) -> bool:
    """ "Eleven steps, one misstep": two numbers of two things."""
    return bool(one and other) and one.rstrip("s") != other.rstrip("s")


def _number_of(finding: Finding) -> object:
    """What has to agree: the value without the maximum of a score, which one statement may leave out."""
    value = finding.value
    if isinstance(value, Score):
        return value.points, value.mark
    if isinstance(value, Grade | Pressure | Acuity):
        return value
    return (value.number, value.then, value.upto, finding.unit) if isinstance(value, Quantity) else value


def _choices_exclude(earlier: Finding, later: Finding, item: Item, exam: Examination) -> bool:
    """Choices of a closed list; several abnormal ones in a row describe one finding."""
    if earlier.detail != later.detail and earlier.status is later.status:
        return False
    if earlier.status is not later.status:
        return True
    if item.kind != "choice" or later.item in SEVERAL_AT_ONCE:
        return False
    places = [at for at, finding in enumerate(exam.findings) if finding is earlier or finding is later]
    return places[1] - places[0] > 1


def _is_repeat(later: Finding, exam: Examination) -> bool:
    """A second reading said to be one, by itself or by the pressure it was given with."""
    said_at = later.evidence[-1].first
    before = exam.transcript.words[max(0, said_at - 2) : said_at]
    if REPEATED.search(later.quote) or any(ANEW.fullmatch(word.text) for word in before):
        return True
    at = next(place for place, finding in enumerate(exam.findings) if finding is later)
    return any(
        near.item == PRESSURE and near.position is later.position and (near.detail or REPEATED.search(near.quote))
        for near in exam.findings[max(0, at - 2) : at]
    )


@check("contradiction", severity="must")
def contradiction(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A finding, and a normal, absent, not examined or blanket that excludes it, without "except" or a correction.

    Why: one of the two is wrong, whichever came first.
    Example: "no tremor ... rest tremor of the right hand", "gait normal ... gait not examined" ask which stands.
    """
    known = [(finding, item) for finding in exam.findings if (item := item_of(grammar, finding.item)) is not None]
    excluding = [one for one in known if _may_exclude(*one, grammar)]
    rivals: dict[str, list[tuple[Finding, Item]]] = {}  # by item
    for finding, item in known:
        if finding.excepted or finding.status in (*UNSEEN, Status.UNCHANGED):
            continue
        if finding.item not in rivals:
            rivals[finding.item] = [one for one in excluding if one[1].blanket or one[0].item == finding.item]
        for other, other_item in rivals[finding.item]:
            if other is finding:
                continue
            if not _excludes(other, other_item, finding, item, exam, grammar):
                continue
            # "otherwise normal": what was said before it is the exception
            rest = begins(finding) < begins(other) and is_rest(other, exam)
            if not rest and not joined_by_but(other, finding, exam):
                first, second = (finding, other) if begins(finding) < begins(other) else (other, finding)
                text = say.CONTRADICTION.format(first=capital(phrase(first, grammar)), second=phrase(second, grammar))
                yield Doubt(finding, text, _answers(finding, other, other_item, grammar), others=(other,))
                break


def _may_exclude(other: Finding, item: Item, grammar: Grammar) -> bool:
    """Whether it can exclude anything at all: most findings cannot, and every pair need not be looked at."""
    unseen = other.status in (*UNSEEN, Status.ABSENT)
    return not other.excepted and (unseen or item.blanket or is_reassuring(other, item, grammar))


def _excludes(
    other: Finding, other_item: Item, finding: Finding, item: Item, exam: Examination, grammar: Grammar
) -> bool:
    """Whether `other` says that what was found cannot be."""
    if other.status in UNSEEN:
        return other.item == finding.item and _unseen(other, finding, exam)
    if other.item == finding.item:
        return _denies(other, finding, item, grammar)
    if not other_item.blanket or not covers_item(other, other_item, finding, grammar):
        return False
    if not (covers_side(other.side, finding.side) and covers_site(other.site, finding.site)):
        return False
    if isinstance(other.value, Grade) and isinstance(finding.value, Grade):
        return _grade_differs(other.value, finding.value)
    if isinstance(other.value, Grade):
        return finding.status is Status.ABNORMAL and not is_abnormal(other, other_item, grammar)
    return is_reassuring(other, other_item, grammar) and is_abnormal(finding, item, grammar)


def _unseen(other: Finding, finding: Finding, exam: Examination) -> bool:
    """Whether `other` says of the same item that what was found was not examined.

    A blanket is none: "cranial nerves not examined" leaves standing what was seen in passing, and both are in the note.
    A side that was not seen is an exception to a statement without side, but excludes one said of both.
    """
    if not (covers_side(other.side, finding.side) or sides_meet(other.side, finding.side)):
        return False
    if not covers_site(other.site, finding.site) or IN_PART.search(nearby(other, exam, behind=NEAR)):
        return False
    moments = (other.position, finding.position), (other.minutes, finding.minutes)
    return all(one is None or one == two for one, two in moments) and conditions_of(other) <= conditions_of(finding)


def _of_kind(finding: Finding, denied: tuple[str, ...]) -> bool:
    """Whether it is of a kind that was denied: "no rest tremor" leaves a postural one standing."""
    said = " ".join([str(finding.value or ""), *finding.detail])
    told = ([word for word in kind.split() if word not in GAZE] or [kind] for kind in denied)
    return any(words[-1][:STEM] in said for words in told)


def _denies(other: Finding, finding: Finding, item: Item, grammar: Grammar) -> bool:
    """One item: a normal or absent that reaches as far as the finding."""
    found_number = finding.status is Status.MEASURED and not isinstance(finding.value, Grade)
    denied = other.status is Status.ABSENT and found_number  # "no sensory level", and a level at T4
    if not denied and not (is_abnormal(finding, item, grammar) and is_reassuring(other, item, grammar)):
        return False
    if (
        other.status is Status.ABSENT
        and other.detail
        and item.kind == "presence"
        and not _of_kind(finding, other.detail)
    ):
        return False
    if isinstance(other.value, Choice) and isinstance(finding.value, Choice) and _same_place(other, finding, grammar):
        return False  # two choices of one list: values-conflict asks
    if finding.item in SEVERAL_AT_ONCE and str(other.value or "") != str(finding.value or ""):
        return False
    reach = covers_side(other.side, finding.side) and covers_site(other.site, finding.site)
    if not reach and item.kind == "presence" and not item.alone:
        # A reflex that is there: "gag present" without side, then "absent on the left".
        reach = sides_meet(other.side, finding.side) and covers_site(finding.site, other.site)
    alike = about_the_same(other, finding) and same_part(other, finding, item) and not denies_only(other, finding)
    return reach and same_circumstances(other, finding) and alike


def _grade_differs(blanket: Grade, grade: Grade) -> bool:
    """Another grade than the one said of all; 2 and 2+ of reflexes are one grade."""
    if blanket.scale != grade.scale:
        return False
    if blanket.scale == "mrc":
        return blanket.grade != grade.grade
    return blanket.grade.rstrip("+") != grade.grade.rstrip("+")


def _answers(finding: Finding, other: Finding, other_item: Item, grammar: Grammar) -> tuple[str, ...]:
    """What may have been meant: the finding as exception, the finding alone, the other alone."""
    one, two = phrase(finding, grammar), phrase(other, grammar)
    reach = [(f.side, f.site, f.position, f.minutes) for f in (finding, other)]
    wider = other_item.blanket or (other.status in UNSEEN and reach[0] != reach[1])
    return (say.EXCEPT.format(whole=two, part=one), one, two) if wider else (one, two)
