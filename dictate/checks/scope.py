"""scope-item-missing, not-placed, blanket-unbounded, several-patients, patient-mismatch: the note as a whole."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.catalogue import queries as say
from dictate.checks.coverage import covers_side, covers_site
from dictate.checks.registry import Doubt, check
from dictate.checks.wording import capital, item_of, name_of, phrase
from dictate.grammar import Grammar
from dictate.grammar.claims import told_beside
from dictate.model import Component, Examination, Finding, Remark, RemarkKind, Side, Status

# A history gives the vital signs of an arrival, five at most; an examination under a heading that is not known, more.
# So many items with what was found, in words that were set aside, may be the examination itself (measured on our own
# texts: a history with its vital signs measures up to five, talk tells of up to two).
SET_ASIDE = {
    RemarkKind.HISTORY: (6, (say.KEPT_AS_HISTORY, say.LEAVE_AS_HISTORY)),
    RemarkKind.TALK: (3, (say.KEPT_AS_TALK, say.LEAVE_AS_TALK)),
    RemarkKind.IMPRESSION: (6, (say.KEPT_AS_IMPRESSION, say.LEAVE_AS_IMPRESSION)),
    RemarkKind.PLAN: (6, (say.KEPT_AS_PLAN, say.LEAVE_AS_PLAN)),
}
_LONGEST_STRIKE = 4  # words
_DENYING = frozenset("no not without cannot never neither nor unable hardly".split())
POSTURAL_MISSING = "postural readings missing"  # the figure that lists them


@check("scope-item-missing", severity="look")
def scope_item_missing(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """Something that the complaint calls for was not mentioned. Only with a scope; one question per component.

    Why: what was not dictated reads "nothing dictated", and may have been forgotten.
    Example: scope dizziness without a word of positional testing asks whether it was done.
    """
    for component, names in missing_of_scope(exam, grammar).items():
        part = capital(grammar.components[component].headings[0])
        message = say.NOT_MENTIONED.format(component=part, names=", ".join(names))
        yield Doubt(None, message, (say.NOT_EXAMINED,), component=component)


def missing_of_scope(exam: Examination, grammar: Grammar) -> dict[Component, tuple[str, ...]]:
    """Names of what the scope calls for and nobody mentioned, by component; empty without a scope."""
    scope = grammar.scopes.get(exam.scope)
    missing: dict[Component, list[str]] = {}
    if scope is None:
        return {}
    for wanted in scope.expects:
        if not is_mentioned(wanted.item, exam, grammar):
            names = missing.setdefault(grammar.component_of(wanted.item), [])
            names.append(name_of(grammar, wanted.item))
    for figure in exam.figures:
        if figure.name == POSTURAL_MISSING:  # which positions and minutes, where a pressure was dictated at all
            readings = figure.text.rpartition(": ")[2].split("; ")
            missing.setdefault(Component.GENERAL, []).extend(say.READING.format(reading=one) for one in readings)
    return {component: tuple(dict.fromkeys(missing[component])) for component in filter(missing.get, Component)}


def is_mentioned(name: str, exam: Examination, grammar: Grammar) -> bool:
    """Whether the item itself, or a blanket that covers it, was dictated."""
    component = grammar.component_of(name)
    for finding in exam.findings:
        if finding.item == name:
            return True
        item = item_of(grammar, finding.item)
        if item is None or not item.blanket:
            continue
        if name in item.covers or (not item.covers and finding.component is component):
            return True
    return False


@check("not-placed", severity="look")
def not_placed(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """Words inside the examination that became nothing.

    Why: they may hold a finding said in a way the grammar does not know; no word of the dictation is lost.
    Example: words of the trade that fit no item ask: what was meant? A history, impression or plan that gives six
    measured items, and talk that tells of three findings, asks whether it is the examination, for then its findings
    were left out. So do words excepted from what was found: "cranial nerves intact apart from a left
    sixth" would say too much; words that deny, in front of a finding that they may be of; and words in front of
    "strike that", which may have been meant to go instead of the finding before them; and, in a recording, words that
    begin as it does ("strike hat": so recognisers write it).
    """
    for remark in exam.remarks:
        if remark.kind is RemarkKind.NOT_PLACED:
            about = f"{name_of(grammar, remark.item)}: " if remark.item else ""
            quote = " ".join(remark.evidence.quote.split())
            names = ", ".join(name_of(grammar, item) for item in remark.readings)
            lost = say.LOST_EXCEPTION.format(quote=quote, names=names) if names else ""
            denied = _perhaps_denied(remark, exam)
            if denied is not None:
                lost = say.LOST_NEGATION.format(quote=quote, finding=phrase(denied, grammar))
            elif _is_struck(remark, exam, grammar):
                lost = say.STRUCK_WHAT.format(quote=quote)
            elif _may_strike(remark, exam, grammar):
                lost = say.MISHEARD_STRIKE.format(quote=quote)
            yield Doubt(
                None,
                lost or say.NO_FINDING.format(about=capital(about), quote=quote),
                (say.LEAVE_OUT, say.KEEP_WORDS),
                severity="must" if lost else None,
                others=() if denied is None else (denied,),
                component=remark.component,
                item=remark.item,
                evidence=remark.evidence,
            )
        elif remark.kind in SET_ASIDE and len(remark.readings) >= SET_ASIDE[remark.kind][0]:
            names = ", ".join(name_of(grammar, item) for item in remark.readings)
            message, leave = SET_ASIDE[remark.kind][1]
            yield Doubt(None, message.format(names=names), (leave,), severity="must", evidence=remark.evidence)


def _perhaps_denied(remark: Remark, exam: Examination) -> Finding | None:
    """The finding that words right in front of it may deny: a pause behind "no", "I couldn't make out any clonus"."""
    quote = remark.evidence.quote.lower().strip(" .,;:-")
    clause = re.split(r"[.,;:]\s", quote)[-1].split()
    if not any(word in _DENYING or word.endswith(("n't", "n\u2019t")) for word in clause):
        return None
    behind = remark.evidence.last + 1
    for finding in exam.findings:
        first = min(one.first for one in finding.evidence)
        if first == behind and finding.status in (Status.PRESENT, Status.ABNORMAL):
            return finding
    return None


def _is_struck(remark: Remark, exam: Examination, grammar: Grammar) -> bool:
    """Whether "strike that" follows at once, or behind a name without a value."""
    behind = remark.evidence.last + 1
    corrected = (one.evidence for one in exam.remarks if one.kind is RemarkKind.CORRECTED)
    end = max((one.last for one in corrected if one.first == behind), default=behind + _LONGEST_STRIKE)
    said = " ".join(word.text.lower().strip(".,;:") for word in exam.transcript.words[behind : end + 1])
    strikes = grammar.common.words.strikes
    return any(said.startswith(phrase) or (end != behind + _LONGEST_STRIKE and phrase in said) for phrase in strikes)


def _may_strike(remark: Remark, exam: Examination, grammar: Grammar) -> bool:
    """Whether a few words of a recording begin as an order to strike does, and end differently."""
    words = [word.strip(".,;:!?") for word in remark.evidence.quote.lower().split()]
    opens = {
        verb for verb, _, rest in (order.partition(" ") for order in grammar.common.words.strikes) if rest == "that"
    }
    return remark.evidence.start_s is not None and words[0] in opens and len(words) <= _LONGEST_STRIKE


@check("blanket-unbounded", severity="must")
def blanket_unbounded(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A sweeping statement whose reach is open.

    Why: "the rest is normal" claims parts that may not have been examined; "unchanged" needs an earlier record.
    What was found may stand beside it ("knee jerk two plus, unchanged"): then nothing is left to ask.
    Example: "rest of the examination is normal" asks: which parts?
    """
    seen = {finding.component for finding in exam.findings}
    silent = tuple(component.value.replace("_", " ") for component in Component if component not in seen)
    for remark in exam.remarks:
        if remark.kind is RemarkKind.BLANKET_UNBOUNDED:
            message = say.WHICH_PARTS.format(quote=" ".join(remark.evidence.quote.split()))
            yield Doubt(
                None, message, (*silent, say.NONE_FURTHER), component=remark.component, evidence=remark.evidence
            )
    for finding in exam.findings:
        if finding.status is Status.UNCHANGED and finding.earlier is None and not _value_beside(finding, exam, grammar):
            yield Doubt(finding, say.NO_EARLIER_RECORD.format(finding=phrase(finding, grammar)))


def _value_beside(finding: Finding, exam: Examination, grammar: Grammar) -> bool:
    """Whether all that is called unchanged was told in the same breath."""
    told = [exam.findings[at] for at in told_beside(finding, exam, grammar)]
    sides = {
        one.side
        for one in told
        if covers_side(finding.side, one.side)
        and covers_site(finding.site, one.site)
        and finding.position in (None, one.position)
    }
    return bool(sides) and (finding.side is not Side.BOTH or len(sides & {Side.LEFT, Side.RIGHT}) != 1)


@check("several-patients", severity="must")
def several_patients(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """Another patient seems to begin here.

    Why: two people's findings must never stand in one note.
    Example: "next patient" asks whether the rest belongs to somebody else.
    """
    for remark in exam.remarks:
        if remark.kind is RemarkKind.NEXT_PATIENT:
            message = say.ANOTHER_BEGINS.format(quote=" ".join(remark.evidence.quote.split()))
            yield Doubt(None, message, (say.SAME_PATIENT, say.ANOTHER_FROM_HERE), evidence=remark.evidence)


@check("patient-mismatch", severity="must")
def patient_mismatch(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """The reference spoken in the dictation is another than the one given.

    Why: the note would be filed under the wrong patient.
    Example: "patient number four seven one" with `--patient 472` asks: which one?
    """
    given = _folded(exam.patient)
    if not given:
        return
    for remark in exam.remarks:
        if remark.kind is RemarkKind.REFERENCE and _folded(remark.readings[0]) != given:
            answers = (say.NOTES_PATIENT, say.ANOTHER_PATIENT)
            yield Doubt(None, say.WHOSE_EXAMINATION, answers, evidence=remark.evidence)


def _folded(reference: str) -> str:
    """Letters and digits only, small."""
    return re.sub(r"[^a-z0-9]", "", reference.lower())
