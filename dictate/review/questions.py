"""Questions: one query or one finding as it is put to the examiner, with every answer and what it would change."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from dictate.checks.wording import capital, name_of
from dictate.grammar import Grammar, Item
from dictate.model import Action, Decision, Examination, Query, Severity, Side
from dictate.review.decisions import WHOSE, apply, in_order
from dictate.review.effects import Difference, Lines, lines_with
from dictate.review.passages import Passage, passages_of, passages_of_finding
from dictate.review.typed import Refused, expected

TITLES = {
    "blanket-unbounded": "How far it reaches",
    "contradiction": "Two statements that exclude each other",
    "not-placed": "Words that became nothing",
    "odd-sound": "A recording hard to hear",
    "patient-mismatch": "Which patient",
    "position-missing": "Position",
    "repaired-hearing": "Mended word",
    "scope-item-missing": "Not mentioned",
    "several-patients": "Which patient",
    "side-missing": "Side",
    "speech-not-transcribed": "Speech that is not in the words",
    "time-missing": "Time",
    "total-mismatch": "Sum",
    "unit-missing": "Unit",
    "unsure-hearing": "Heard two ways",
    "value-implausible": "Value",
    "values-conflict": "Two values",
    "whose-words": "Whose words they are",
}
PLAIN = {  # of a kind: what one word can say
    "presence": ("present", "absent"),
    "normality": ("normal", "abnormal"),
    "text": ("normal", "abnormal"),
}
KEYS = {Action.NOT_EXAMINED: "x", Action.REMOVE: "r", Action.AS_SAID: "l", Action.SEEN: "p"}
LABELS = {
    Action.NOT_EXAMINED: "was not examined",
    Action.REMOVE: "not said: remove",
    Action.AS_SAID: "leave as said",
    Action.SEEN: "seen: pass over",
}
TAKES_NO_VALUE = ("several-patients",)


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer, the key that gives it, and what the note would then say."""

    key: str  # empty: no key of its own
    label: str
    decision: Decision
    change: Difference
    raises: tuple[str, ...] = ()  # doubts that the answer itself would bring


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked, the words it is about, and the answers."""

    title: str
    message: str
    passages: tuple[Passage, ...]
    now: tuple[str, ...]  # lines of the note as they stand
    choices: tuple[Choice, ...]
    others: tuple[Choice, ...]
    hint: str  # what may be typed; empty: nothing can be
    query: int | None = None
    finding: int | None = None
    must: bool = False
    number: int = 0  # which of the open questions, from 1
    count: int = 0


def question_of(exam: Examination, at: int, grammar: Grammar) -> Question:
    """The open query at that place. Raises Refused when it is settled."""
    order = in_order(exam)
    if at not in order:
        raise Refused("this question was settled before: go on to the next one")
    query = exam.queries[at]
    answers = tuple(_tried(exam, _suggested(at, query), grammar, numbered=True))
    others = tuple(_tried(exam, _general(at, query), grammar))
    return Question(
        title=TITLES.get(query.code, query.code),
        message=query.message,
        passages=passages_of(exam, query),
        now=lines_with(exam, query.findings, grammar),
        choices=answers,
        others=others,
        hint=_hint(exam, query, grammar),
        query=at,
        must=query.severity is Severity.MUST,
        number=order.index(at) + 1,
        count=len(order),
    )


def card_of(exam: Examination, at: int, grammar: Grammar) -> Question:
    """One finding of the whole note, with everything that may be said of it. Raises Refused when there is none."""
    if not 0 <= at < len(exam.findings):
        raise Refused("no finding stands here: it was taken out")
    finding = exam.findings[at]
    item = grammar.items.get(finding.item)
    words = _sayable(item, grammar) if item else ()
    answers = [Decision(finding=at, answer=word) for word in words]
    general = [
        Decision(finding=at, action=action, answer=LABELS[action]) for action in (Action.NOT_EXAMINED, Action.REMOVE)
    ]
    return Question(
        title="One finding",
        message=capital(name_of(grammar, finding.item)),
        passages=passages_of_finding(exam, finding),
        now=lines_with(exam, (at,), grammar),
        choices=tuple(_tried(exam, answers, grammar, numbered=True)),
        others=tuple(_tried(exam, general, grammar)),
        hint=expected(item, grammar) if item else "",
        finding=at,
    )


def raised(before: Examination, after: Examination) -> tuple[str, ...]:
    """Doubts to settle that are open after a decision and were not before, whatever the place is called now."""
    known = {_about(before, query) for query in before.queries}
    fresh = [after.queries[at] for at in in_order(after)]
    return tuple(
        query.message for query in fresh if query.severity is Severity.MUST and _about(after, query) not in known
    )


def _about(exam: Examination, query: Query) -> tuple[object, ...]:
    """The code, and the words and values of its findings."""
    findings = [exam.findings[at] for at in query.findings]
    about = tuple((one.item, one.evidence[0].first, one.status, one.value, one.unit) for one in findings)
    return (query.code, about or (query.quote, query.start_s, query.component))


def _tried(
    exam: Examination, decisions: list[Decision], grammar: Grammar, *, numbered: bool = False
) -> Iterator[Choice]:
    """Each answer as it would turn out; one that changes nothing and accepts nothing is left out."""
    number = 0
    old = Lines(exam, grammar)
    for decision in decisions:
        try:
            after = apply(exam, decision, grammar)
        except Refused:
            continue
        change = old.until(Lines(after, grammar))
        if decision.query is None and after.findings == exam.findings:
            continue
        number += 1
        key = KEYS.get(decision.action, str(number) if numbered and number <= 9 else "")
        label = LABELS.get(decision.action, decision.answer)
        yield Choice(key, label, decision, change, raised(exam, after))


def _suggested(at: int, query: Query) -> list[Decision]:
    return [Decision(query=at, answer=answer) for answer in query.suggestions]


def _general(at: int, query: Query) -> list[Decision]:
    """Not examined, not said, as said or passed over, as far as they mean something here."""
    actions: list[Action] = []
    if query.findings:
        actions += [Action.NOT_EXAMINED, Action.REMOVE]
    elif query.code == "blanket-unbounded":
        actions.append(Action.REMOVE)
    if query.code not in WHOSE:
        actions.append(Action.AS_SAID if query.severity is Severity.MUST else Action.SEEN)
    return [Decision(query=at, action=action, answer=LABELS[action]) for action in actions]


def _hint(exam: Examination, query: Query, grammar: Grammar) -> str:
    """What may be typed instead."""
    if query.code in TAKES_NO_VALUE:
        return ""
    if query.code == "patient-mismatch":
        return "the reference of the patient whose examination it is"
    if query.findings:
        item = grammar.items.get(exam.findings[query.findings[0]].item)
        return expected(item, grammar) if item else ""
    if query.code == "time-missing":
        return "when it was, as 2026-03-04 14:30"
    if query.code == "blanket-unbounded":
        return "the parts that were examined, with commas between, or a phrase"
    return 'a phrase, as you would dictate it: "knee jerk two plus on the right"'


def _sayable(item: Item, grammar: Grammar) -> tuple[str, ...]:
    """Sides, positions and values that one button can say of the item."""
    words: list[str] = []
    if item.sided != "never":
        words += [Side.LEFT.value, Side.RIGHT.value, Side.BOTH.value]
    words += PLAIN.get(item.kind, ())
    if item.kind == "choice":
        words += [phrases.say[0] for phrases in item.values.values()]
    if item.kind == "grade" and item.scale in grammar.scales:
        words += grammar.scales[item.scale].grades
    if item.positions:
        words += ["supine", "sitting", "standing"]
    return tuple(words)
