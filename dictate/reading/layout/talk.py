"""Talk about another time or another person inside a sentence: set aside, never read as findings."""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence

from dictate.reading.layout.sections import found_in
from dictate.reading.layout.who_comes import is_complaint, who_comes
from dictate.reading.marks import Mark

_PRAISE = frozenset({"good", "okay", "ok", "fine", "perfect", "all right", "alright", "well done"})
_CLAUSE_ENDS = frozenset({"comma", "semicolon", "contrast", "stop"})
_TAKES = ("takes", "taking", "took")
_RUN_ON = 24  # marks without a comma: speech that runs on, where a clause has no end of its own
_FOUND = 2  # items with what was found: talk that comes behind them does not make them talk
_UNMARKED = 12  # the same where the sentence has no mark at all
# How a question to the patient begins; "tremor?" alone may be the examiner's own doubt.
_ASKS = frozenset("any are can could did do does has have how is was were what when where which who would will".split())
_THINGS = frozenset({"it", "that", "this"})  # behind the first word of a question: in somebody's hand or eyes
_AS = frozenset({"like", "such as", "e g", "for example", "for instance"})
_TELLS = ("complain", "report")
_NAMELY = re.compile(r"(in particular|including|such as|especially|mainly|particularly)\b")
_TITLE = 14  # marks in which a title of another time ends
_LAST = frozenset({"last", "previous", "prior", "earlier"})
_VISITS = frozenset("visit exam examination review clinic consultation week wk month year time appointment".split())
_COMPARED = frozenset({"since", "than", "compared", "as", "from", "unlike", "like", "versus", "vs"})
_EARLIER = frozenset({"it", "they", "was", "were", "it was", "they were", "up", "down", "from", "up from", "down from"})
_MORE = frozenset({"less", "fewer", "more", "better", "worse", "higher", "lower", "up", "down"})
_KIN = frozenset(
    "father mother brother sister son daughter wife husband grandmother grandfather uncle aunt cousin".split()
)
_BACK, _AHEAD = 3, 14  # in such speech: how far talk is taken to reach from the word that gives it away


def silence_talk(marks: Sequence[Mark]) -> tuple[list[Mark], list[tuple[int, int]]]:
    """The sentence with talk turned into plain words, and the token spans of the talk that named something."""
    spans: list[tuple[int, int]] = []
    if _of_another(marks) or _supposes(marks) or is_complaint(marks):
        return [mark.only("talk") for mark in marks], [(marks[0].start, marks[-1].end)]
    result = list(marks)
    marked = any(role.kind in _CLAUSE_ENDS for mark in marks for role in mark.roles)
    question = is_question(marks)
    if question and _is_put_to_the_patient(marks):
        return [mark.only("talk") for mark in marks], [(marks[0].start, marks[-1].end)]
    who = who_comes(marks)
    if who:
        kept = [mark.has("comma") or "handed" in mark.text for mark in marks[:who]]
        result[:who] = [m if keep else m.only("talk") for m, keep in zip(marks, kept, strict=False)]
        spans.append((marks[0].start, marks[who - 1].end))
    talked = -1  # where talk ended
    for start, end in _clauses(marks):
        if start < who:
            continue
        talk = [i for i in range(start, end) if question or (marks[i].role("talk") and not _in_reason(marks[start:i]))]
        goes_on = talked == start - 1 and _NAMELY.match(" ".join(mark.text for mark in marks[start : start + 2]))
        if not talk and (goes_on or _of_earlier(marks, start, end)):
            talk = [start]
        for i in [i for i in talk if _counts_steps(marks[i:end]) or _is_told_of(marks, i, start, end)]:
            result[i] = marks[i].only("filler")
            talk.remove(i)
        if talk and end - start <= (_RUN_ON if marked else _UNMARKED):
            told = len(found_in(marks[start : talk[0]])) >= _FOUND
            stretches = [(_reach(marks, talk[0], start, end)[0] if told else _aside(marks, start, talk[0]), end)]
        else:
            stretches = [_reach(marks, i, start, end) for i in talk]
        talked = end if talk else talked
        for first, last in stretches:
            names = any(marks[i].has("item", "sign", "alone", "context", "number") for i in range(first, last))
            for i in range(first, last):
                result[i] = marks[i].only("comma" if marks[i].has("comma") else "talk")
            # what was asked may have been meant as a finding: it is left over, and shown so
            if names and not question and not (spans and marks[first].start < spans[-1][1]):
                spans.append((marks[first].start, marks[last - 1].end))
    return result, spans


def _of_earlier(marks: Sequence[Mark], start: int, end: int) -> bool:
    """ "Turning takes six steps, it was four", "grip 14 kg, up from 12": a number behind a number, of the same name."""
    clause, said = marks[start:end], [mark.text for mark in marks[start:end]]
    if clause[0].number is not None and said[1:2] and said[1].split()[0] in _MORE and start:
        return True  # "MoCA 24, two less than last time"
    opens = next((at for at, text in enumerate(said) if text not in _EARLIER), 0)
    if not opens or said[:opens] in (["it"], ["they"], ["from"]) or clause[opens].number is None:
        return False
    own = any(mark.has("item", "sign", "alone", "context", "side", "site", "position", "minutes") for mark in clause)
    return not own and any(mark.number is not None for mark in marks[:start])


def _supposes(marks: Sequence[Mark]) -> bool:
    """ "If the reflexes are brisk we should image": a sentence that begins so tells of no finding."""
    return len(marks) > 2 and marks[0].text == "if" and marks[1].text not in ("anything", "any", "so", "not")


def _of_another(marks: Sequence[Mark]) -> bool:
    """ "Last visit (Feb): ...", "Yesterday for comparison: ...", "Brother: ...": a title of another time or person."""
    end = next((i for i, mark in enumerate(marks[:_TITLE]) if mark.text == ":"), 0)
    title = marks[:end]
    words = " ".join(mark.text for mark in title).split()
    if not words or any(mark.has("item", "section") and not mark.has("talk") for mark in title):
        return False
    visits = any(one in _LAST and two in _VISITS for one, two in itertools.pairwise(words))
    if _COMPARED & {*words} or any(mark.has("same", "unchanged") for mark in title):
        visits = False  # "unchanged from last visit: deltoid 4" tells of today
    return visits or words[0] in ("yesterday", *_KIN)


def is_question(marks: Sequence[Mark]) -> bool:
    """Whether the sentence asks somebody something; "any weakness" does, whatever mark stands behind it."""
    words = [mark.text.lower().split() for mark in marks if mark.text.strip()]
    return bool(words) and ((words[-1] == ["?"] and words[0][0] in _ASKS) or words[0][0] == "any")


def _is_put_to_the_patient(question: Sequence[Mark]) -> bool:
    """ "Do you feel this?", "is it the same on both sides?": not one that may have been meant as a finding."""
    words = " ".join(mark.text.lower() for mark in question).split()
    return not {"you", "your"}.isdisjoint(words) or (words[1:2] != [] and words[1] in _THINGS)


def is_reply(marks: Sequence[Mark], before: Sequence[Mark]) -> bool:
    """ "Can you look up? Good.", "Reflexes two plus. Good.": a word of praise alone behind what was told whole."""
    asked = bool(before) and (before[-1].text == "?" or any(mark.role("talk") for mark in before))
    told = [mark for mark in before if not mark.has("stop", "filler", "comma")][-1:]
    asked = asked or any(mark.number is not None or mark.role("normal", "") for mark in told)
    said = [mark.text for mark in marks if not mark.has("stop", "comma")]
    return asked and len(said) == 1 and said[0] in _PRAISE


def _in_reason(before: Sequence[Mark]) -> bool:
    """ "Acuity was not tested because she had left her glasses at home": why not, whatever time it tells of."""
    undone = next((i for i, mark in enumerate(before) if mark.has("not_examined", "not_assessable")), None)
    return undone is not None and any(mark.has("reason") for mark in before[undone:])


def _counts_steps(clause: Sequence[Mark]) -> bool:
    """ "Takes three steps to recover on the pull test": what is taken are steps, no tablets."""
    return clause[0].text in _TAKES and any({"step", "steps"} & {*mark.text.split()} for mark in clause)


def _is_told_of(marks: Sequence[Mark], place: int, start: int, end: int) -> bool:
    """ "No hallucinations reported", at the end of a clause that tells of nothing else: what the patient was asked."""
    if marks[place].text == "sudden" and marks[place - 1].text in ("with", "with a"):
        return bool(found_in(marks[start:place]))  # "gait bizarre with sudden buckling": how it is, and not since when
    if _felt_then(marks, place, end):
        return True
    if marks[place].text == "come back" and place + 2 < end and marks[place + 1].text == "to":
        return marks[place + 2].number is not None  # "at three minutes it had come back to 126/78"
    if place > start and marks[place - 1].text in _AS and any(mark.has("item", "alone") for mark in marks[start:place]):
        return True  # "follows simple commands like squeeze my hand"
    if marks[place].text == "woke" and place > start + 1 and marks[place - 2].text == "since":
        return bool(found_in(marks[start : place - 2]))  # "voice hoarse since he woke": how it is, and since when
    if marks[place].text == "reported" and place + 1 < end and marks[place + 1].text == "as":
        return bool(found_in([*marks[start:place], *marks[place + 2 : end]]))  # "touch was reported as duller"
    named = place > start and marks[place - 1].has("item", "sign", "alone")
    return marks[place].text == "reported" and place + 1 == end and named


def _felt_then(marks: Sequence[Mark], place: int, end: int) -> bool:
    """ "Standing 110/60, complains of dizziness": what is felt in a position, behind what was measured in it."""
    stood = any(mark.has("position") for mark in marks[:place])
    measured = any(mark.number is not None and mark.number.op == "/" for mark in marks[:place])
    passed = ("filler", "conj", "severity", "position", "minutes")
    felt = [mark for mark in marks[place + 1 : end] if not mark.has(*passed)]
    named = all(any(role.item == "orthostatic_symptoms" for role in mark.roles) for mark in felt)
    return stood and measured and bool(felt) and named and marks[place].text.startswith(_TELLS)


def _reach(marks: Sequence[Mark], place: int, start: int, end: int) -> tuple[int, int]:
    """How far talk reaches in speech that runs on: back to the name before it, on to the next name."""
    first = place
    if marks[place].text.split()[0] == "i":
        start = place  # "affect appropriate I explained the diagnosis"
    while first > max(start, place - _BACK) and not marks[first - 1].has("item", "sign", "alone"):
        first -= 1
    if first > start and first == place and marks[first - 1].has("item"):
        first -= 1  # "his tremor used to be on the right": the tremor is of another time
    last = place + 1
    while last < min(end, place + _AHEAD) and not marks[last].has("item", "sign", "alone", "heading"):
        last += 1
    return first, last


def _aside(marks: Sequence[Mark], start: int, talk: int) -> int:
    """ "A postural tremor of both hands which he says his father had": talk from the "which" on, where a sign stands
    in front of it; else the whole clause.
    """
    which = next((i for i in range(start, talk) if marks[i].text == "which"), start)
    return which if any(mark.has("item", "sign", "alone") for mark in marks[start:which]) else start


def _clauses(marks: Sequence[Mark]) -> list[tuple[int, int]]:
    clauses: list[tuple[int, int]] = []
    start = 0
    for place, mark in enumerate(marks):
        if any(role.kind in _CLAUSE_ENDS for role in mark.roles):
            if place > start:
                clauses.append((start, place))
            start = place + 1
    if start < len(marks):
        clauses.append((start, len(marks)))
    return clauses
