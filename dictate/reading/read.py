"""read(): the order of the steps below, nothing else."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from dictate.grammar import Grammar
from dictate.model import (
    BOUNDS,
    Certainty,
    Evidence,
    Finding,
    Grade,
    Pressure,
    Quantity,
    Remark,
    RemarkKind,
    Score,
    Transcript,
)
from dictate.reading.cells.walks import same_distance
from dictate.reading.collector import at_rest
from dictate.reading.findings.extents import add_extents
from dictate.reading.findings.eyes import tell_logmar_from_decimals, tell_near_from_light, tell_sizes_from_differences
from dictate.reading.findings.leftovers import leftovers
from dictate.reading.findings.merging import merge_repeats
from dictate.reading.findings.missed_titles import without_missed
from dictate.reading.findings.occasion import is_examination
from dictate.reading.findings.sentences import SentenceReader
from dictate.reading.layout.brackets import set_apart_earlier
from dictate.reading.layout.charts import deal_charts
from dictate.reading.layout.clock_times import set_apart_clocks
from dictate.reading.layout.coma import name_parts, name_responses
from dictate.reading.layout.coma_numbers import name_numbers
from dictate.reading.layout.dealt_lists import deal_lists
from dictate.reading.layout.dictated_marks import with_dictated_marks
from dictate.reading.layout.halves import set_apart_halves
from dictate.reading.layout.hesitations import without_hesitations
from dictate.reading.layout.limb_grades import grades_of_limbs
from dictate.reading.layout.listed_signs import open_lists
from dictate.reading.layout.numbering import without_numbering
from dictate.reading.layout.placed_clauses import part_places, part_same
from dictate.reading.layout.references import set_apart_references
from dictate.reading.layout.sections import split, titles_on_lines
from dictate.reading.layout.shorthand import read_shorthand
from dictate.reading.layout.signs import signs_of_sides
from dictate.reading.layout.strokes import number_items
from dictate.reading.layout.talk import is_reply
from dictate.reading.layout.that_side import with_that_side
from dictate.reading.layout.told_strokes import points_in_sentences
from dictate.reading.marks import Mark
from dictate.reading.misheard.margins import Weigh, with_rivals
from dictate.reading.misheard.nerve_titles import with_nerve_titles
from dictate.reading.misheard.pauses import without_pauses
from dictate.reading.misheard.repair import Known, mend
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.drafts import Draft
from dictate.reading.titles.limb_regions import regions_in_force
from dictate.reading.titles.limb_titles import limbs_in_force
from dictate.reading.titles.organ_titles import organs_in_force
from dictate.reading.titles.posture_titles import PostureTitles
from dictate.reading.titles.stray_sides import join_stray_sides
from dictate.reading.titles.title_cuts import TitleCutter
from dictate.reading.tokens import Token, evidence, tokenize

_SIGNS = {">": "more than", "<": "less than", "≥": "at least", "≤": "at most"}


@dataclass(frozen=True, slots=True)
class Reading:
    """What a transcript says: findings in the order said, and the words that became none."""

    findings: tuple[Finding, ...]
    remarks: tuple[Remark, ...]
    withheld: int = 0  # findings left out because the text as a whole is no examination


@lru_cache(maxsize=4)
def _lexicon(holder: _Holder) -> Lexicon:
    return Lexicon(holder.grammar)


class _Holder:
    """Hashable by identity of content, so that a grammar's lexicon is built once."""

    def __init__(self, grammar: Grammar) -> None:
        self.grammar = grammar

    def __hash__(self) -> int:
        return hash(self.grammar.sha256)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Holder) and other.grammar.sha256 == self.grammar.sha256


def lexicon_of(grammar: Grammar) -> Lexicon:
    """The phrases of a grammar; built once for each grammar."""
    return _lexicon(_Holder(grammar))


@dataclass(frozen=True, slots=True)
class Ears:
    """What can still be asked about the sound: how well other words fit it, and whether a word is English."""

    weigh: Weigh
    known: Known


def read(transcript: Transcript, grammar: Grammar, *, ears: Ears | None = None) -> Reading:
    """Findings and remarks of a transcript; every word is in a finding's evidence, a remark, or carries nothing.

    ears: None, as for typed text: nothing is mended and nothing doubted.
    """
    lexicon = lexicon_of(grammar)
    common = lexicon.grammar.common
    said = without_hesitations(tokenize(transcript, misheard=lexicon.misheard), common.hesitations)
    written = with_dictated_marks(said, common.dictated_marks)
    tokens = with_nerve_titles(without_pauses(written, transcript.words, lexicon))
    if not tokens:
        return Reading((), ())
    misheard: list[Remark] = []
    if ears is not None:
        mending = mend(tokens, transcript.words, lexicon, known=ears.known, weigh=ears.weigh, table=grammar.doubt)
        tokens = mending.tokens
        misheard = [_remark(transcript, RemarkKind.MISHEARD, *one) for one in mending.open]
    marks, references = set_apart_references(_marks(tokens, lexicon), tokens)
    marks, earlier = set_apart_earlier(set_apart_halves(marks, tokens), tokens)
    whose = [
        _remark(transcript, RemarkKind.REFERENCE, tokens[start].word, tokens[end - 1].word, (spoken,))
        for start, end, spoken in references
    ]
    sentences, kept = split(titles_on_lines(marks, tokens, lexicon.meanings), tokens)
    reader = _through(sentences, tokens, lexicon, earlier)
    drafts = merge_repeats(reader.drafts, lexicon.items)
    same_distance(drafts)
    tell_sizes_from_differences(drafts, tokens)
    tell_near_from_light(drafts, tokens)
    tell_logmar_from_decimals(drafts, tokens)
    add_extents(drafts, tokens)
    heard = any(word.start_s is not None for word in transcript.words)
    if not is_examination(sentences, marks, drafts, kept, heard=heard):
        rest = leftovers(transcript, tokens, marks, (), kept, reader.remarks, set())
        return Reading((), rest, withheld=len(drafts))
    findings = tuple(_finding(draft, transcript, tokens, lexicon) for draft in drafts)
    if ears is not None:
        findings = with_rivals(findings, transcript, grammar, ears.weigh)
    remarks = leftovers(transcript, tokens, marks, drafts, kept, reader.remarks, reader.covered)
    return Reading(findings, (*misheard, *whose, *remarks))


@at_rest()  # and not all of read(): weighing the sound, which is a part of it, leaves cycles behind
def _through(
    sentences: list[list[Mark]], tokens: list[Token], lexicon: Lexicon, earlier: Sequence[tuple[int, int]]
) -> SentenceReader:
    """All sentences read, each under its title; read again where a title must have been missed."""
    postures = PostureTitles(tokens, lexicon)
    sentences = part_same(postures.join(join_stray_sides(sentences, tokens)))
    cutter = TitleCutter(sentences, tokens, lexicon)
    sentences = cutter.cut()
    limbs = limbs_in_force(sentences, tokens, lexicon, cutter.sure)
    organs = organs_in_force(sentences, tokens, lexicon, cutter.sure)
    titles = [limb or organ for limb, organ in zip(limbs, organs, strict=True)]
    titles = regions_in_force(sentences, tokens, lexicon, titles)
    while True:
        reader = SentenceReader(lexicon, tokens)
        reader.remarks.extend((RemarkKind.TALK, start, end) for start, end in earlier)
        for (before, sentence), reader.context.limb in zip(itertools.pairwise([[], *sentences]), titles, strict=True):
            reader.context.posture_unknown = sentence[0].start in postures.open
            if is_reply(sentence, before):
                reader.remarks.append((RemarkKind.TALK, sentence[0].start, sentence[-1].end))
            else:
                reader.read(sentence)
        heard = without_missed(reader.drafts, sentences, titles)
        if heard == titles:
            return reader
        titles = heard


@at_rest()
def _marks(tokens: list[Token], lexicon: Lexicon) -> list[Mark]:
    """The phrases of the grammar, with what is told by lists, charts and shorthand as plainly as if it was said."""
    found = with_that_side(set_apart_clocks(lexicon.find(tokens), tokens), tokens)
    signed = open_lists(signs_of_sides(found, tokens, lexicon), tokens, lexicon)
    marks = name_parts(read_shorthand(signed, tokens, lexicon.items), lexicon.items)
    marks = name_responses(name_numbers(marks, tokens, lexicon.items), lexicon.items)
    marks = deal_lists(deal_charts(marks, tokens, lexicon.items), tokens, lexicon.items)
    marks = part_places(grades_of_limbs(marks, lexicon.items), tokens)
    return without_numbering(points_in_sentences(number_items(marks, tokens), tokens), tokens)


def _bound_of(draft: Draft, tokens: list[Token]) -> str:
    """ "more than", when the number was said as a bound; empty when it is the value itself."""
    if not isinstance(draft.value, Quantity | Score | Grade | Pressure):
        return ""
    if isinstance(draft.value, Quantity) and draft.value.note.endswith(" in"):
        return ""  # "over 10 m in 9 s": the way, no limit
    said = [token.lower for token in tokens[max(0, draft.anchor - 3) : draft.anchor]]
    if said and said[-1] in _SIGNS:
        return _SIGNS[said[-1]]
    return next((bound for bound in BOUNDS if said[-len(bound.split()) :] == bound.split()), "")


def _remark(transcript: Transcript, kind: RemarkKind, first: int, last: int, readings: tuple[str, ...]) -> Remark:
    """Words first..last with what they may have been, or say."""
    piece = Evidence(
        first=first,
        last=last,
        quote=transcript.quote(first, last),
        start_s=transcript.words[first].start_s,
        end_s=transcript.words[last].end_s,
    )
    return Remark(kind=kind, evidence=piece, readings=readings)


def _finding(draft: Draft, transcript: Transcript, tokens: list[Token], lexicon: Lexicon) -> Finding:
    """A draft with its evidence: token spans joined where only small gaps lie between."""
    bound = _bound_of(draft, tokens)
    if bound:
        written = 1 if tokens[draft.anchor - 1].lower in _SIGNS else len(bound.split())
        draft.spans.append((draft.anchor - written, draft.anchor))  # said, and so not left over either
    ranges: list[list[int]] = []
    for start, end in sorted(draft.spans):
        if ranges and start - ranges[-1][1] <= 3:
            ranges[-1][1] = max(end, ranges[-1][1])
        else:
            ranges.append([start, end])
    shown = [t.heard for start, end in ranges for t in tokens[start:end] if t.heard.lower() not in lexicon.trusted]
    heard = [f"heard as {words}" for words in shown if words]
    return Finding(
        component=lexicon.component[draft.item],
        item=draft.item,
        side=draft.side,
        site=draft.site,
        position=draft.position,
        minutes=draft.minutes,
        status=draft.status,
        certainty=Certainty.UNCERTAIN if draft.uncertain else Certainty.STATED,
        value=draft.value,
        unit=draft.unit,
        detail=tuple(dict.fromkeys([*filter(None, [bound]), *draft.detail, *heard])),
        excepted=draft.excepted,
        corrected=tuple(draft.corrected),
        readings=draft.readings,
        evidence=tuple(evidence(transcript, tokens, start, end - 1) for start, end in ranges),
    )
