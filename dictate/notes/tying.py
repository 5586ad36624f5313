"""What is said to be unchanged, tied to an earlier record and held against it; a 25-foot walk beside the one before."""

from __future__ import annotations

from dictate.grammar import Grammar
from dictate.grammar.claims import SILENT, holds, told_beside
from dictate.grammar.walks import is_compared, mean_walk, walk_of
from dictate.model import Earlier, Examination, Finding, Status
from dictate.notes.directions import Kind, change
from dictate.notes.phrases import item_of, one_line, phrase, statement, title
from dictate.notes.slots import cover, covers_place, slot_of


def claims_unchanged(finding: Finding, grammar: Grammar) -> bool:
    """Whether its words say that nothing changed."""
    quote = one_line(finding.quote).lower()
    return finding.status is Status.UNCHANGED or holds(quote, grammar.common.words.unchanged)


def values_beside(finding: Finding, exam: Examination, grammar: Grammar) -> list[int]:
    """Places of the values that "unchanged" was said of in the same breath: "deltoid 4 on the left, unchanged".

    Empty for every other statement, and where "unchanged" is a statement of its own.
    """
    return [
        at
        for at in told_beside(finding, exam, grammar)
        if covers_place(finding, slot_of(exam.findings[at], exam.findings[at].side, grammar), grammar)
    ]


def wants_earlier(finding: Finding, grammar: Grammar) -> bool:
    """Whether an earlier record would say something of it: it is called unchanged, or a walk to compare."""
    return claims_unchanged(finding, grammar) or is_compared(finding)


def tie(later: Examination, earlier: Examination, grammar: Grammar, *, record: str) -> Examination:
    """The later examination with what the earlier record says beside every "unchanged" and every walk of 25 feet.

    Queries are not asked anew.

    record: key of the earlier record. What it says nothing of stays untied.
    """
    day = "" if earlier.examined_at is None else earlier.examined_at.date().isoformat()
    beside = [values_beside(finding, later, grammar) for finding in later.findings]
    claimed = {at for places in beside for at in places}
    findings = []
    for at, finding in enumerate(later.findings):
        claims = at in claimed or claims_unchanged(finding, grammar)
        about = [later.findings[one] for one in beside[at]] or [finding]
        found = _tied(finding, about, earlier, grammar) if claims else None
        found = found or _earlier_walk(finding, earlier, grammar)
        tied = found and Earlier(record=record, day=day, said=found[0], agrees=found[1])
        findings.append(finding.model_copy(update={"earlier": tied}))
    return later.model_copy(update={"findings": tuple(findings)})


def _tied(finding: Finding, about: list[Finding], earlier: Examination, grammar: Grammar) -> tuple[str, bool] | None:
    """What the earlier record says of the same thing, and whether that is what is said now.

    about: the finding, or the values that it stands beside.
    """
    said_of = [one for value in about for one in _spoken_of(value, earlier, grammar)]
    spoken_of = [one for one in said_of if one.status not in SILENT or one.earlier]
    if not spoken_of:
        return None
    said = "; ".join(dict.fromkeys(_text(one, finding, grammar) for one in spoken_of))
    if finding.status is Status.UNCHANGED:
        return said, True
    return said, any(change(one, finding, grammar).kind is Kind.UNCHANGED for one in spoken_of)


def _earlier_walk(finding: Finding, earlier: Examination, grammar: Grammar) -> tuple[str, bool] | None:
    """The mean of the earlier trials of a walk that is compared by its speed; nothing is claimed of it."""
    if not is_compared(finding):
        return None
    slot = slot_of(finding, finding.side, grammar)
    same = [one for one in earlier.findings if is_compared(one) and slot_of(one, one.side, grammar) == slot]
    mean = mean_walk(same)
    return None if mean is None else (str(walk_of(mean)), True)


def _spoken_of(finding: Finding, earlier: Examination, grammar: Grammar) -> list[Finding]:
    """Statements of the earlier record about the same thing, the closest alone where there is one."""
    item = item_of(grammar, finding.item)
    if item is not None and item.blanket and finding.status is Status.UNCHANGED:
        return [
            one
            for one in earlier.findings
            if (one.item in (finding.item, *item.covers) or (not item.covers and one.component is finding.component))
            and (finding.side is None or finding.side is one.side)
        ]
    slot = slot_of(finding, finding.side, grammar)
    same = [one for one in earlier.findings if one.item == finding.item]
    exact = [one for one in same if slot_of(one, one.side, grammar) == slot]
    wide = [
        one
        for one in same
        if covers_place(one, slot, grammar) or covers_place(finding, slot_of(one, one.side, grammar), grammar)
    ]
    if exact or wide:
        return exact or wide
    at = cover(slot, finding, earlier, grammar)
    return [] if at is None else [earlier.findings[at]]


def _text(one: Finding, about: Finding, grammar: Grammar) -> str:
    """The earlier statement; with its item where "unchanged" spoke of many; what it was itself tied to."""
    if one.status is Status.UNCHANGED and one.earlier is not None:
        return one.earlier.said
    if one.item != about.item:
        return f"{title(one, grammar)} {phrase(one, grammar)}"
    whole = slot_of(one, one.side, grammar) != slot_of(about, about.side, grammar)
    return phrase(one, grammar) if whole else statement(one, grammar)
