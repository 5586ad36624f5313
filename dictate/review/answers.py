"""What an answer changes: one row per check code, what its suggestions mean and which finding they change.

| code | a suggestion means | what it changes |
|---|---|---|
| `side-missing` | the side | the finding's side |
| `position-missing` | the position | the finding's position |
| `time-missing` | minutes since standing up | the finding's minutes; without one, the time of examination |
| `unit-missing` | the unit | the finding's unit |
| `value-implausible` | the value that was meant | the finding's value |
| `unsure-hearing` | what was heard: value, side, presence, term | the finding; words that are none are read anew |
| `odd-sound` | the note was read with it in mind | nothing |
| `repaired-hearing` | it is right as mended | nothing |
| `values-conflict` | the value that is right | the other finding goes (of a pair only that side); its words stay |
| `contradiction` | "A except B", or the one that stands | marks B an exception, or the other goes |
| `total-mismatch` | the dictated total, or the sum of the parts | nothing, or the total's value |
| `speech-not-transcribed` | nothing belonging in the note was said | nothing; a typed phrase adds findings |
| `not-placed` | leave out, keep the words, leave as history or talk | the remark's kind; typed phrases add findings |
| `blanket-unbounded` | a component examined, or none further | adds the component's blanket, or leaves the words out |
| `scope-item-missing` | none of them was examined | adds each as not examined; a typed phrase adds findings |
| `several-patients` | same patient, or another from here on | the remark's kind; or all from those words on goes |
| `whose-words` | they are the examiner's | nothing |
| `patient-mismatch` | the note's patient | nothing; a typed reference becomes the note's |

Anything else that is typed is read as a value of the finding asked about (`typed.reworded`), or as a phrase.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from dictate.catalogue.queries import (
    ANOTHER_FROM_HERE,
    ANOTHER_PATIENT,
    EXAMINERS_WORDS,
    KEEP_WORDS,
    LEAVE_AS_HISTORY,
    LEAVE_AS_IMPRESSION,
    LEAVE_AS_PLAN,
    LEAVE_AS_TALK,
    LEAVE_OUT,
    NONE_FURTHER,
    NOT_EXAMINED,
    NOTES_PATIENT,
    NOTHING_BELONGS,
    SAME_PATIENT,
)
from dictate.checks.scope import is_mentioned
from dictate.checks.wording import name_of, phrase, said
from dictate.grammar import Grammar
from dictate.model import (
    Change,
    Component,
    Evidence,
    Examination,
    Finding,
    Query,
    RemarkKind,
    Score,
    Side,
    Status,
    number_text,
)
from dictate.review.changes import WORDS, Effect, added, as_kind, remark_of, taken_out
from dictate.review.heard import of_finding, read_with_care, unsure
from dictate.review.typed import Refused, clean, reworded

OTHER = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT}


def effect_of(exam: Examination, query: Query, answer: str, grammar: Grammar) -> Effect:
    """What the answer to the query changes. Raises Refused when it cannot be understood."""
    line = clean(answer)
    by_code = _CODES.get(query.code)
    if by_code is not None:
        return by_code(exam, query, line, grammar)
    return of_finding(exam, query, line, grammar)


def _values_conflict(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    at, *others = query.findings
    chosen = next((place for place in query.findings if said(exam.findings[place]) == line), None)
    kept = exam.findings[at] if chosen is None else exam.findings[chosen]
    if chosen is None:
        kept = reworded(kept, line, grammar)
    else:
        at, others = chosen, [place for place in query.findings if place != chosen]
    gone = [said(exam.findings[place]) for place in others]
    kept = kept.model_copy(update={"corrected": (*kept.corrected, *gone), "readings": (), "earlier": None})
    changes: list[Change] = [Change(at=at, finding=kept)]
    for place in others:
        other = exam.findings[place]
        rest = OTHER.get(kept.side) if kept.side is not None and other.side in (Side.BOTH, None) else None
        if rest is not None:  # said of both sides: it still stands for the other one
            changes.append(Change(at=place, finding=other.model_copy(update={"side": rest})))
        else:
            changes += taken_out(exam, place)
    return Effect(tuple(changes))


def _contradiction(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    at, other = query.findings[:2]
    one, two = phrase(exam.findings[at], grammar), phrase(exam.findings[other], grammar)
    if line == f"{two} except {one}":
        return Effect((Change(at=at, finding=exam.findings[at].model_copy(update={"excepted": True})),))
    if line == one:
        return Effect(taken_out(exam, other))
    if line == two:
        return Effect(taken_out(exam, at))
    return of_finding(exam, query, line, grammar)


def _total_mismatch(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    total = exam.findings[query.findings[0]].value
    if isinstance(total, Score) and total.points is not None and line in (str(total), number_text(total.points)):
        return Effect()  # the total stands as dictated: a part may be corrected, or all is left as said
    return of_finding(exam, query, line, grammar)


def _speech(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    return Effect() if line == NOTHING_BELONGS else added(exam, line, grammar)


def _not_placed(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    at = remark_of(exam, query, *WORDS)
    if line in (LEAVE_AS_HISTORY, LEAVE_AS_IMPRESSION, LEAVE_AS_PLAN, LEAVE_AS_TALK):
        return Effect()
    if line in (LEAVE_OUT, KEEP_WORDS):
        kind = RemarkKind.LEFT_OUT if line == LEAVE_OUT else RemarkKind.KEPT
        return Effect((as_kind(exam, at, kind),))
    effect = added(exam, line, grammar, under=query.component or _component_before(exam, at))
    if exam.remarks[at].kind is not RemarkKind.NOT_PLACED:
        return effect  # one of its findings; the history stays as it was told
    heard = exam.remarks[at].evidence
    return Effect((Change(remarks=True, at=at), *(_heard_too(change, heard) for change in effect.changes)), line)


def _heard_too(change: Change, heard: Evidence) -> Change:
    """A finding made of words heard and words typed has both as evidence."""
    if change.finding is None:
        return change
    evidence = (heard, *change.finding.evidence)
    return change.model_copy(update={"finding": change.finding.model_copy(update={"evidence": evidence})})


def _component_before(exam: Examination, at: int) -> Component | None:
    """The component spoken of just before the remark."""
    first = exam.remarks[at].evidence.first
    before = [finding for finding in exam.findings if finding.evidence[0].first < first]
    return max(before, key=lambda finding: finding.evidence[0].first).component if before else None


def _blanket(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    if query.findings:
        return of_finding(exam, query, line, grammar)
    at = remark_of(exam, query, RemarkKind.BLANKET_UNBOUNDED)
    if line == NONE_FURTHER:
        return Effect((as_kind(exam, at, RemarkKind.LEFT_OUT),))
    wanted = [part.strip().lower() for part in line.split(",")]
    names = {component.value.replace("_", " "): component for component in Component}
    if not set(wanted) <= set(names):
        return added(exam, line, grammar)
    words = exam.remarks[at].evidence
    status = Status.UNCHANGED if "unchanged" in words.quote.lower() else Status.NORMAL
    found = [
        Change(
            finding=Finding(component=names[name], item=_whole(names[name], grammar), status=status, evidence=(words,))
        )
        for name in wanted
    ]
    return Effect((as_kind(exam, at, RemarkKind.LEFT_OUT), *found))


def _whole(component: Component, grammar: Grammar) -> str:
    """The item that speaks of the whole component. Raises Refused when the grammar has none."""
    for name, item in grammar.components[component].items.items():
        if item.blanket and not item.covers and item.kind == "normality":
            return name
    raise Refused(f"{component.value}: no word for the whole of it: type what was found")


def _scope(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    if line != NOT_EXAMINED:
        return added(exam, line, grammar, under=query.component)
    expects = grammar.scopes[exam.scope].expects if exam.scope in grammar.scopes else ()
    names = [
        one.item
        for one in expects
        if grammar.component_of(one.item) is query.component and not is_mentioned(one.item, exam, grammar)
    ]
    place = len(exam.transcript.words)
    changes: list[Change] = []
    typed: list[str] = []
    for name in names:
        words = f"{name_of(grammar, name)} not examined."
        last = place + len(words.split()) - 1
        evidence = (Evidence(first=place, last=last, quote=words),)
        component = grammar.component_of(name)
        finding = Finding(component=component, item=name, status=Status.NOT_EXAMINED, evidence=evidence)
        changes.append(Change(finding=finding))
        typed.append(words)
        place = last + 1
    return Effect(tuple(changes), " ".join(typed))


def _several(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    at = remark_of(exam, query, RemarkKind.NEXT_PATIENT)
    if line == SAME_PATIENT:
        return Effect((as_kind(exam, at, RemarkKind.TALK),))
    if line != ANOTHER_FROM_HERE:
        raise Refused(f"say {SAME_PATIENT}, or {ANOTHER_FROM_HERE}")
    first = exam.remarks[at].evidence.first
    later = range(first, exam.as_read.words if exam.as_read else len(exam.transcript.words))
    gone = [
        change
        for place, one in enumerate(exam.findings)
        if one.evidence[0].first in later
        for change in taken_out(exam, place, RemarkKind.LEFT_OUT)
    ]
    left = [
        as_kind(exam, place, RemarkKind.LEFT_OUT)
        for place, one in enumerate(exam.remarks)
        if one.evidence.first in later
    ]
    return Effect((*gone, *left))


def _mismatch(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    if line == NOTES_PATIENT:
        return Effect()
    if line == ANOTHER_PATIENT:
        raise Refused("type the reference of the patient whose examination it is")
    return Effect(patient=line)


def _whose_words(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    return Effect() if line == EXAMINERS_WORDS else of_finding(exam, query, line, grammar)


def _time(exam: Examination, query: Query, line: str, grammar: Grammar) -> Effect:
    if query.findings:
        return of_finding(exam, query, line, grammar)
    try:
        return Effect(examined_at=datetime.fromisoformat(line))
    except ValueError as fault:
        raise Refused(f'"{line}" is no time: type it as 2026-03-04 14:30') from fault


_CODES: dict[str, Callable[[Examination, Query, str, Grammar], Effect]] = {
    "unsure-hearing": unsure,
    "odd-sound": read_with_care,
    "values-conflict": _values_conflict,
    "contradiction": _contradiction,
    "total-mismatch": _total_mismatch,
    "speech-not-transcribed": _speech,
    "not-placed": _not_placed,
    "blanket-unbounded": _blanket,
    "scope-item-missing": _scope,
    "several-patients": _several,
    "patient-mismatch": _mismatch,
    "whose-words": _whose_words,
    "time-missing": _time,
}
