"""apply(), undo(): decisions change an examination, keep what was said before, and can all be taken back.

A decision is carried out in two steps. What it changes is worked out once and stored in it (`Decision.changes`), so
that it can be carried out again without reading anything: taking back means starting from what the words gave
(`Examination.as_read`) and carrying out all decisions but the last. Figures and queries are computed anew each time.
`Examination.queries` holds the settled ones first, in the order they were settled, then those that are open; a doubt
that a decision leaves in place (`Decision.key`) is not asked again, any other doubt is, a new one of the same finding
included.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import TypeVar

from dictate.catalogue.queries import NOT_EXAMINED
from dictate.checks.wording import said
from dictate.grammar import Grammar
from dictate.model import (
    Action,
    AsRead,
    Change,
    Decision,
    Examination,
    Finding,
    Query,
    Remark,
    RemarkKind,
    Severity,
    Source,
    Status,
    Transcript,
)
from dictate.pipeline import BREAK, compute
from dictate.reading import transcript_of_text
from dictate.review.answers import effect_of
from dictate.review.changes import WORDS, Effect, added, as_kind, remark_of, taken_out
from dictate.review.typed import Refused, reworded, without_value

TYPED_SOURCE = "typed at review"
WHOSE = ("patient-mismatch", "several-patients")  # cannot be left open: the note may be somebody else's
One = TypeVar("One", Finding, Remark)
# Whose note it is; values, sides and negations; what may be missing; where and when.
_DANGER = (
    (*WHOSE,),
    ("unsure-hearing", "value-implausible", "values-conflict", "contradiction", "total-mismatch", "side-missing"),
    ("speech-not-transcribed", "blanket-unbounded"),
)


def apply(exam: Examination, decision: Decision, grammar: Grammar) -> Examination:
    """The examination after the decision. Raises Refused when the decision cannot be carried out."""
    query = _asked(exam, decision)
    effect = _effect(exam, decision, query, grammar)
    worked_out = decision.model_copy(
        update={
            "asked": query,
            "key": "" if query is None else _keys(exam)[exam.queries.index(query)],
            "changes": effect.changes,
            "typed": effect.typed,
            "patient": effect.patient,
            "examined_at": effect.examined_at,
        }
    )
    return _carry_out(exam, worked_out, grammar)


def undo(exam: Examination, grammar: Grammar, *, count: int = 1) -> Examination:
    """The examination without its last decisions, back to a further dictation at most.

    Raises Refused when there is none.
    """
    if not exam.decisions:
        raise Refused("nothing was decided yet: there is nothing to take back")
    before = exam.as_read
    if before is None or len(exam.decisions) <= before.decisions:
        raise Refused("nothing was decided since the further dictation: correct what was decided before at its value")
    kept = exam.decisions[before.decisions : max(before.decisions, len(exam.decisions) - count)]
    return carried_out_again(exam, before, kept, grammar)


def carried_out_again(
    exam: Examination, before: AsRead, decisions: Sequence[Decision], grammar: Grammar
) -> Examination:
    """What stood before, with these decisions carried out on it."""
    exam = compute(_as_read(exam, before), grammar)
    exam = _only_open(exam, before.queries, _keys(exam), grammar)
    for decision in decisions:
        exam = _carry_out(exam, decision, grammar)
    return exam


def in_order(exam: Examination) -> tuple[int, ...]:
    """Places of the open queries, the most dangerous first."""
    settled = {decision.query for decision in exam.decisions}
    places = [at for at in range(len(exam.queries)) if at not in settled]
    return tuple(sorted(places, key=lambda at: (exam.queries[at].severity is not Severity.MUST, _danger(exam, at), at)))


def _danger(exam: Examination, at: int) -> int:
    code = exam.queries[at].code
    return next((rank for rank, codes in enumerate(_DANGER) if code in codes), len(_DANGER))


def _asked(exam: Examination, decision: Decision) -> Query | None:
    if decision.query is None:
        return None
    if not 0 <= decision.query < len(exam.queries) or decision.query not in in_order(exam):
        raise Refused("this question was settled before: go on to the next one")
    return exam.queries[decision.query]


def _effect(exam: Examination, decision: Decision, query: Query | None, grammar: Grammar) -> Effect:
    match decision.action:
        case Action.ADD:
            return added(exam, decision.answer, grammar, under=decision.component)
        case Action.AS_SAID | Action.SEEN:
            return _passed(decision, query)
        case Action.REMOVE if query is not None and not query.findings and decision.finding is None:
            return _words_left_out(exam, query, grammar)
        case Action.REMOVE:
            return Effect(taken_out(exam, _place(exam, decision, query)))
        case Action.NOT_EXAMINED if query is not None and query.code == "scope-item-missing":
            return effect_of(exam, query, NOT_EXAMINED, grammar)
        case Action.NOT_EXAMINED:
            at = _place(exam, decision, query)
            twice = query.findings if query is not None and query.code == "values-conflict" else ()
            gone = [change for other in twice if other != at for change in taken_out(exam, other)]  # neither stands
            return Effect((Change(at=at, finding=_not_examined(exam.findings[at])), *gone))
        case Action.ANSWER if query is not None and decision.finding is None:
            return effect_of(exam, query, decision.answer, grammar)
    at = _place(exam, decision, query)
    return Effect((Change(at=at, finding=reworded(exam.findings[at], decision.answer, grammar)),))


def _passed(decision: Decision, query: Query | None) -> Effect:
    if query is None:
        raise Refused("no question is open here: choose one")
    if query.code in WHOSE:
        raise Refused("say whose examination it is: this cannot be left open")
    if decision.action is Action.SEEN and query.severity is Severity.MUST:
        raise Refused("this has to be settled before signing: answer it, or leave it as said")
    return Effect()


def _words_left_out(exam: Examination, query: Query, grammar: Grammar) -> Effect:
    """ "Not said" of words that are no finding."""
    if query.code in WHOSE:
        raise Refused("say whose examination it is: this cannot be left open")
    kinds = {"not-placed": WORDS, "blanket-unbounded": (RemarkKind.BLANKET_UNBOUNDED,)}.get(query.code)
    return Effect((as_kind(exam, remark_of(exam, query, *kinds), RemarkKind.LEFT_OUT),)) if kinds else Effect()


def _place(exam: Examination, decision: Decision, query: Query | None) -> int:
    at = decision.finding if decision.finding is not None else next(iter(query.findings if query else ()), None)
    if at is None or not 0 <= at < len(exam.findings):
        raise Refused("no finding stands here: add one by typing a phrase")
    return at


def _not_examined(finding: Finding) -> Finding:
    after = without_value(finding, Status.NOT_EXAMINED)
    return after.model_copy(update={"corrected": (*finding.corrected, said(finding))})


def _carry_out(exam: Examination, decision: Decision, grammar: Grammar) -> Examination:
    """Put the changes in place, compute figures and queries anew, and keep the settled queries in theirs."""
    settled = exam.queries[: sum(one.query is not None for one in exam.decisions)]
    as_read = exam.as_read or AsRead(
        findings=exam.findings,
        remarks=exam.remarks,
        words=len(exam.transcript.words),
        sources=len(exam.transcript.sources),
        patient=exam.patient,
        examined_at=exam.examined_at,
        examined_at_from=exam.examined_at_from,
        decisions=len(exam.decisions),
        queries=settled,
    )
    places, findings = _put(exam.findings, [(c.at, c.finding) for c in decision.changes if not c.remarks])
    _, remarks = _put(exam.remarks, [(c.at, c.remark) for c in decision.changes if c.remarks])
    update: dict[str, object] = {"as_read": as_read, "findings": findings, "remarks": _by_words(remarks)}
    if decision.typed:
        update["transcript"] = _with_typed(exam.transcript, decision.typed)
    if decision.patient is not None:
        update["patient"] = decision.patient
    if decision.examined_at is not None:
        update |= {"examined_at": decision.examined_at, "examined_at_from": "option"}
    settled = tuple(_moved(query, places) for query in settled)
    after = compute(exam.model_copy(update=update), grammar)
    keys = _keys(after)
    if decision.key not in keys:
        decision = decision.model_copy(update={"key": ""})  # the doubt is gone: should it come back, it is asked
    asked = decision.asked
    if asked is not None:
        decision = decision.model_copy(update={"query": len(settled)})
        settled = (*settled, _moved(asked, places))
    return _only_open(after.model_copy(update={"decisions": (*exam.decisions, decision)}), settled, keys, grammar)


def _only_open(exam: Examination, settled: tuple[Query, ...], keys: Sequence[str], grammar: Grammar) -> Examination:
    """The settled queries first, then those computed anew, by their keys, whose doubt no decision left in place."""
    from dictate.reckoning import with_doubts

    accepted = {one.key for one in exam.decisions}
    still_open = [query for query, key in zip(exam.queries, keys, strict=True) if key not in accepted]
    return with_doubts(exam.model_copy(update={"queries": (*settled, *still_open)}), grammar)


def _put(
    old: Sequence[One], changes: Sequence[tuple[int | None, One | None]]
) -> tuple[dict[int, int], tuple[One, ...]]:
    """Old place → new place, and what stands there now; a place without content is taken out."""
    replaced = {at: one for at, one in changes if at is not None}
    kept = [at for at in range(len(old)) if replaced.get(at, old[at]) is not None]
    now: list[One] = []
    for at in kept:
        content = replaced.get(at, old[at])
        if content is not None:
            now.append(content)
    for place, content in changes:
        if place is None and content is not None:
            now.append(content)
    return {at: place for place, at in enumerate(kept)}, tuple(now)


def _by_words(remarks: Sequence[Remark]) -> tuple[Remark, ...]:
    """Remarks in the order of their words."""
    return tuple(sorted(remarks, key=lambda remark: remark.evidence.first))


def _moved(query: Query, places: dict[int, int]) -> Query:
    """The query with the new places of its findings; those taken out are left out."""
    return query.model_copy(update={"findings": tuple(places[at] for at in query.findings if at in places)})


def _with_typed(transcript: Transcript, typed: str) -> Transcript:
    """The transcript with words typed at review behind it, told apart by their source."""
    more = transcript_of_text(typed, name=TYPED_SOURCE, source=len(transcript.sources))
    first, *others = more.words
    words = (*transcript.words, first.model_copy(update={"lead": BREAK}), *others)
    sources: tuple[Source, ...] = (*transcript.sources, *more.sources)
    return transcript.model_copy(update={"words": words, "sources": sources})


def _as_read(exam: Examination, before: AsRead) -> Examination:
    """The examination before the first decision that can be taken back."""
    transcript = exam.transcript.model_copy(
        update={
            "words": exam.transcript.words[: before.words],
            "sources": exam.transcript.sources[: before.sources],
        }
    )
    return exam.model_copy(
        update={
            "transcript": transcript,
            "findings": before.findings,
            "remarks": before.remarks,
            "patient": before.patient,
            "examined_at": before.examined_at,
            "examined_at_from": before.examined_at_from,
            "queries": (),
            "decisions": exam.decisions[: before.decisions],
            "as_read": before if before.decisions else None,
        }
    )


def _keys(exam: Examination) -> list[str]:
    """What names each query's doubt, whatever its place: its code, the words it is about, and what they gave."""
    keys: list[str] = []
    times: Counter[str] = Counter()  # the same doubt about the same words
    for query in exam.queries:
        if query.code == "scope-item-missing":
            about = [str(query.component)]
        elif query.findings:
            about = [_named(exam.findings[at], query.code) for at in query.findings]
        else:
            whose = exam.patient if query.code in WHOSE else ""
            about = [query.quote, str(query.start_s), str(query.end_s), whose]
        key = " | ".join((query.code, *about))
        times[key] += 1
        keys.append(f"{key} #{times[key]}")
    return keys


def _named(finding: Finding, code: str) -> str:
    where = f"{finding.item}@{finding.evidence[0].first}"
    if code == "repaired-hearing":
        return where  # asked about the words, not about what is made of them
    return f"{where} {finding.side or '-'} {said(finding)} {' '.join(finding.readings)}".rstrip()
