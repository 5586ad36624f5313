"""What is typed at review: a value, side, position, time or unit of one finding, or a phrase that gives findings."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from dictate.checks.wording import said
from dictate.errors import InputError
from dictate.grammar import Grammar, Item
from dictate.model import (
    Component,
    Evidence,
    Examination,
    Finding,
    Position,
    Remark,
    RemarkKind,
    Score,
    Side,
    Status,
    Text,
    Transcript,
)
from dictate.reading import read, transcript_of_text
from dictate.reading.phrases.kinds import read_number
from dictate.reading.phrases.numbers import find_numbers
from dictate.reading.tokens import tokenize
from dictate.review.worded import BELOW_ZERO, in_words

LONGEST = 400  # characters of one answer: a phrase, not a dictation
MINUTES = {"min", "mins", "minute", "minutes"}
OWN_WORDS = re.compile(r"(normal|abnormal|present|absent)\s*:\s*(\S.*)", re.IGNORECASE)
STATUSES = {
    "not examined": Status.NOT_EXAMINED,
    "not assessable": Status.NOT_ASSESSABLE,
    "present": Status.PRESENT,
    "absent": Status.ABSENT,
    "normal": Status.NORMAL,
    "abnormal": Status.ABNORMAL,
}
_PLAIN = {  # kinds that one bare word of status can say all of
    "presence": (Status.PRESENT, Status.ABSENT),
    "normality": (Status.NORMAL, Status.ABNORMAL),
    "choice": (Status.NORMAL, Status.ABNORMAL),
    "text": (Status.NORMAL, Status.ABNORMAL),
}
_EXPECTED = {
    "pressure": "a pressure, 142/84",
    "quantity": "a number, with its unit where it needs one",
    "score": "points, 12 or 12/15",
    "acuity": "a line, 20/30 or 6/9",
    "presence": "present or absent",
    "normality": 'normal, abnormal, or "abnormal: your words"',
    "text": 'words of the trade, or "abnormal: your words"',
}


class Refused(InputError):
    """An answer that cannot be carried out; the message says what would be understood."""


def clean(text: str) -> str:
    """What was typed, on one line of letters. Raises Refused when it is empty or too long."""
    line = " ".join("".join(letter if letter.isprintable() else " " for letter in text).split())
    if not line:
        raise Refused("nothing was typed: type a value, or choose another answer")
    if len(line) > LONGEST:
        raise Refused(f"more than {LONGEST} characters: type one phrase at a time")
    return line


def reworded(finding: Finding, text: str, grammar: Grammar) -> Finding:
    """The finding with what was typed in the place of what was said, which stays as `corrected`. Raises Refused."""
    item = grammar.items.get(finding.item)
    line = clean(text)
    if item is None:
        raise Refused(f"{finding.item}: the grammar knows no such item: remove it, or leave it as said")
    for read_as in _READERS:
        changed = read_as(finding, line, item, grammar)
        if changed is not None:
            return _kept(finding, changed)
    raise Refused(f'"{line}" is not understood of {item.name}: type {expected(item, grammar)}')


def expected(item: Item, grammar: Grammar) -> str:
    """What may be typed of the item, in words."""
    if item.kind == "grade" and item.scale in grammar.scales:
        wanted = "a grade, " + " ".join(grammar.scales[item.scale].grades)
    elif item.kind == "choice":
        wanted = ", ".join(key.replace("_", " ") for key in item.values)
    else:
        wanted = _EXPECTED.get(item.kind, "a value")
    more = [wanted]
    if item.sided != "never":
        more.append("left, right or both")
    if item.positions:
        more.append("supine, sitting or standing; 3 min")
    return "; ".join(more)


def phrase_findings(
    text: str, exam: Examination, grammar: Grammar, *, under: Component | None = None
) -> tuple[tuple[Finding, ...], tuple[Remark, ...]]:
    """Findings and unplaced words of a typed phrase, their evidence counted from behind the transcript's words.

    under: the component whose heading is in force; None: none, else each is tried in turn, as where a name is
    looked for, never as the name itself: nobody said it. Raises Refused when no finding comes of it.
    """
    line = clean(text)
    headings = () if BELOW_ZERO.match(line) else (under, None, *Component)  # no phrase begins below zero
    for component in headings:
        heading = f"{grammar.components[component].headings[0]}.\n" if component else ""
        transcript = transcript_of_text(heading + line)
        first = len(heading.split())
        reading = read(transcript, grammar)
        named = any(piece.first < first for finding in reading.findings for piece in finding.evidence)
        if named and component is not under:
            continue
        shift = len(exam.transcript.words) - first
        findings = tuple(
            _moved(finding, _typed(finding.evidence, transcript, first), shift) for finding in reading.findings
        )
        if findings and all(finding.evidence for finding in findings):
            loose = tuple(
                remark.model_copy(update={"evidence": _shifted(piece, shift)})
                for remark in reading.remarks
                if remark.kind is RemarkKind.NOT_PLACED
                for piece in _typed((remark.evidence,), transcript, first)
            )
            return findings, loose
    raise Refused(f'"{line}" gives no finding: name what was examined and what was found')


def _typed(evidence: Sequence[Evidence], transcript: Transcript, first: int) -> tuple[Evidence, ...]:
    """Evidence less the heading, which nobody typed; `first` is the first word that was."""
    return tuple(
        piece
        if piece.first >= first
        else piece.model_copy(update={"first": first, "quote": transcript.quote(first, piece.last)})
        for piece in evidence
        if piece.last >= first
    )


def _moved(finding: Finding, evidence: Sequence[Evidence], shift: int) -> Finding:
    return finding.model_copy(update={"evidence": tuple(_shifted(piece, shift) for piece in evidence)})


def _shifted(piece: Evidence, shift: int) -> Evidence:
    return piece.model_copy(update={"first": piece.first + shift, "last": piece.last + shift})


def _kept(before: Finding, after: Finding) -> Finding:
    """What was said before stays in view; the examiner's word leaves no other reading open."""
    gone: list[str] = []
    if (before.value, before.status, before.unit) != (after.value, after.status, after.unit):
        gone.append(said(before))
    for one, other in (
        (before.side, after.side),
        (before.position, after.position),
        (before.site, after.site),
    ):
        if one and one != other:
            gone.append(str(one).replace("_", " "))
    if before.minutes is not None and before.minutes != after.minutes:
        gone.append(f"{before.minutes:g} min")
    return after.model_copy(update={"corrected": (*before.corrected, *gone), "readings": ()})


def _side(finding: Finding, line: str, item: Item, grammar: Grammar) -> Finding | None:
    word = line.lower()
    side = next((key for key, phrases in grammar.common.sides.items() if word in (key, *phrases)), None)
    if side is None:
        return None
    if item.sided == "never" or (side == "midline" and not item.midline):
        raise Refused(f"{item.name} has no side {word}: type {expected(item, grammar)}")
    return finding.model_copy(update={"side": Side(side)})


def _position(finding: Finding, line: str, item: Item, grammar: Grammar) -> Finding | None:
    word = line.lower()
    position = next((key for key, phrases in grammar.common.positions.items() if word in (key, *phrases)), None)
    if position is None or not item.positions:
        return None
    return finding.model_copy(update={"position": Position(position)})


def _minutes(finding: Finding, line: str, item: Item, grammar: Grammar) -> Finding | None:
    """ "3 min" of an item that is read in positions; "at once" is minute 0."""
    if not item.positions:
        return None
    if line.lower() in grammar.common.at_once:
        return finding.model_copy(update={"minutes": 0.0})
    tokens = tokenize(transcript_of_text(line))
    marks = find_numbers(tokens)
    if len(marks) != 1 or marks[0].start or marks[0].number is None:
        return None
    mark, number = marks[0], marks[0].number
    if number.op or number.a_sign:
        return None
    if (
        [token.lower for token in tokens[mark.end :]]
        and tokens[mark.end].lower in MINUTES
        and mark.end + 1 == len(tokens)
    ):
        return finding.model_copy(update={"minutes": float(number.a)})
    return None


def _unit(finding: Finding, line: str, item: Item, grammar: Grammar) -> Finding | None:
    unit = _unit_of(line, item)
    if not unit or finding.value is None:
        return None
    return finding.model_copy(update={"unit": unit})


def _unit_of(words: str, item: Item) -> str:
    """The UCUM unit that the words are; empty when they are none."""
    for unit, phrases in ((item.unit, ()), *item.units.items()):
        if not unit:
            continue
        if words == unit or words.lower() in (unit.lower(), *phrases, *(f"{phrase}s" for phrase in phrases)):
            return unit
    return ""


def _status(finding: Finding, line: str, item: Item, grammar: Grammar) -> Finding | None:
    own = OWN_WORDS.fullmatch(line)
    if own is not None and item.kind in _PLAIN:
        status = STATUSES[own.group(1).lower()]
        if status in _PLAIN[item.kind]:
            return finding.model_copy(update={"status": status, "value": Text(words=own.group(2)), "unit": ""})
    status_said = STATUSES.get(line.lower())
    if status_said in (Status.NOT_EXAMINED, Status.NOT_ASSESSABLE):
        return without_value(finding, status_said)
    if status_said is None or status_said not in _PLAIN.get(item.kind, ()):
        return None
    keeps = status_said is finding.status
    return finding if keeps else without_value(finding, status_said)


def without_value(finding: Finding, status: Status) -> Finding:
    """The finding as a plain statement of that status."""
    return finding.model_copy(update={"status": status, "value": None, "unit": "", "readings": ()})


def _number(finding: Finding, line: str, item: Item, grammar: Grammar) -> Finding | None:
    """A number as the item's kind takes it, with nothing but its unit behind it."""
    tokens = tokenize(transcript_of_text(line))
    marks = find_numbers(tokens)
    if len(marks) != 1 or marks[0].start or marks[0].number is None or BELOW_ZERO.match(line):
        return None
    behind = " ".join(token.text for token in tokens[marks[0].end :])
    unit = _unit_of("".join(behind.split()), item) or _unit_of(behind, item)
    if behind and not unit:
        return None
    meaning = read_number(item, marks[0].number, unit, grammar.scales.get(item.scale))
    if meaning is None or meaning.by_side or marks[0].number.a_sign not in str(meaning.value or marks[0].number.a_sign):
        return None
    if meaning.readings:
        raise Refused(f'"{line}" may be {" or ".join(meaning.readings)}: type one of them')
    value = meaning.value
    if isinstance(value, Score) and isinstance(finding.value, Score) and value.of is None:
        value = value.model_copy(update={"of": finding.value.of})
    unit = meaning.unit or (finding.unit if type(value) is type(finding.value) else "")
    return finding.model_copy(update={"status": meaning.status, "value": value, "unit": unit})


_READERS: tuple[Callable[[Finding, str, Item, Grammar], Finding | None], ...] = (
    _side,
    _position,
    _minutes,
    _unit,
    _status,
    _number,
    in_words,
)
