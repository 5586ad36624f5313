"""unsure-hearing, repaired-hearing, speech-not-transcribed: what the sound leaves open."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import queries as say
from dictate.catalogue.note import SIDES
from dictate.checks.expected import lean, with_rival
from dictate.checks.registry import Doubt, check
from dictate.checks.wording import capital, clock, phrase, said
from dictate.grammar import Grammar
from dictate.model import Examination, Finding, RemarkKind, Rival, Stretch

REPAIRED = "heard as "  # begins the detail of a finding whose words were mended towards a term


@check("unsure-hearing", severity="must")
def unsure_hearing(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """The sound fits another value, side, negation or term about as well.

    Why: fourteen and forty, four plus and four minus are told apart by very little sound.
    Example: "four minus" that may have been "four plus" asks: which one?
    """
    for finding in exam.findings:
        taken = said(finding)
        others = [reading for reading in finding.readings if reading != taken]
        others += [as_said(finding, rival) for rival in finding.rivals if _is_close(finding, rival, exam, grammar)]
        if others:
            rivals = say.OR.join(dict.fromkeys(others))
            message = say.MAY_BE.format(finding=capital(phrase(finding, grammar)), rivals=rivals)
            yield Doubt(finding, message, (taken, *others))
    for remark in exam.remarks:
        if remark.kind is RemarkKind.MISHEARD:
            message = say.MISHEARD.format(quote=remark.evidence.quote, terms=say.OR.join(remark.readings))
            yield Doubt(None, message, (*remark.readings, say.NEITHER), evidence=remark.evidence)


def _is_close(finding: Finding, rival: Rival, exam: Examination, grammar: Grammar) -> bool:
    """Whether the sound fits the rival about as well, given what the trade expects of the two."""
    limits = grammar.doubt.limits
    if rival.kind not in limits:
        return False
    margin = limits[rival.kind].at
    if "lean" in limits:
        margin += limits["lean"].at * lean(finding, rival, exam, grammar)
    return rival.margin < margin


def as_said(finding: Finding, rival: Rival) -> str:
    """The rival's finding in the trade's words, or the words heard with the rival's in their place."""
    other = with_rival(finding, rival)
    if other is None:
        return say.RIVAL.format(other=rival.other, heard=rival.heard)
    return f"{said(other)} {SIDES[other.side]}" if rival.kind == "side" and other.side else said(other)


@check("repaired-hearing", severity="look")
def repaired_hearing(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """Words were mended towards a term of the trade.

    Why: what was heard is kept, so that the examiner can see what became of it.
    Example: "Hoffman sign" heard as "half man sign" asks: is it right?
    """
    for finding in exam.findings:
        heard = next((detail for detail in finding.detail if detail.startswith(REPAIRED)), "")
        if heard:
            message = say.MENDED.format(finding=capital(phrase(finding, grammar)), heard=heard)
            yield Doubt(finding, message, (said(finding),))


@check("speech-not-transcribed", severity="must")
def speech_not_transcribed(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """Someone spoke, and no words were made of it.

    Why: what was said there is missing from the note.
    Example: two seconds of voice without words ask: what was said at 1:42?
    """
    several = sum(source.kind == "recording" for source in exam.transcript.sources) > 1
    for stretch in exam.transcript.untranscribed:
        which = say.OF_RECORDING.format(number=stretch.source + 1) if several else ""
        message = say.SPEECH_WITHOUT_WORDS.format(time=clock(stretch.start_s), recording=which)
        yield Doubt(
            None,
            message,
            (say.NOTHING_BELONGS,),
            start_s=stretch.start_s,
            end_s=stretch.end_s,
            at=_word_after(exam, stretch),
        )


def _word_after(exam: Examination, stretch: Stretch) -> int:
    """Place of the first word behind the stretch."""
    for at, word in enumerate(exam.transcript.words):
        if word.source > stretch.source:
            return at
        if word.source == stretch.source and word.start_s is not None and word.start_s >= stretch.start_s:
            return at
    return len(exam.transcript.words)
