"""Limbs, sides and eyes that are titles inside a sentence ("... biceps 5, left arm, deltoid 4"): set apart from it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum, auto

from dictate.reading.lexicon import Lexicon
from dictate.reading.limb_titles import LimbTitle, can_all_be_of, limb_title_of, limbs_of_items
from dictate.reading.marks import Mark
from dictate.reading.organ_titles import are_of_organ, organ_title_of
from dictate.reading.title_style import NAMING, finds, has_side, says_nothing, told_in
from dictate.reading.tokens import Token

_LONGEST = 3  # marks of a title ("reflexes", "on the", "left")
_COMPANY = 40  # sentences within which another title shows how titles are said
_AHEAD = 20  # sentences in which what was told before is looked for again
_BREAKS = ("comma", "semicolon", "conj", "colon")


@dataclass(frozen=True, slots=True)
class _Phrase:
    """A title as it stands in its sentence: marks start..end-1."""

    title: LimbTitle
    start: int
    end: int
    opens: bool
    ends: bool
    parted: bool  # a comma stands before it
    comma: bool  # a comma follows it
    name: bool  # what was examined follows it at once, or behind its comma

    @property
    def stands_alone(self) -> bool:
        """Set off from what surrounds it, and so sure to be seen as a title where it is one."""
        before = self.opens or self.parted
        return before and (self.ends or (self.comma and self.name))


class _Verdict(Enum):
    """What a side with a limb, organ or whole is where it stands."""

    TITLE = auto()
    JOINED = auto()  # a title; but what was told right before it may be of that side, too
    OPEN = auto()  # a title or the place of what was told right before it
    PLACE = auto()  # no title


class TitleCutter:
    """Sets titles apart. `sure` tells of first tokens of sentences: True a title, False of which title nobody knows."""

    def __init__(self, sentences: Sequence[Sequence[Mark]], tokens: Sequence[Token], lexicon: Lexicon) -> None:
        self.sentences, self.tokens, self.lexicon = sentences, tokens, lexicon
        self.phrases = [_phrases_of(sentence, lexicon) for sentence in sentences]
        self.limbs = limbs_of_items(lexicon.items) if any(self.phrases) else {}
        self.sure: dict[int, bool] = {}
        self.current: LimbTitle | None = None
        self.told: set[tuple[str, bool]] = set()  # under the title in force

    def cut(self) -> list[list[Mark]]:
        """The sentences, those with titles inside them in pieces."""
        result: list[list[Mark]] = []
        for at, sentence in enumerate(self.sentences):
            result += self._pieces(at, list(sentence))
            if sentence and self.tokens[sentence[-1].end - 1].ends_line:
                self.current = None
        return result

    def _pieces(self, at: int, sentence: list[Mark]) -> list[list[Mark]]:
        phrases = self.phrases[at]
        if not phrases:
            self._tell(sentence)
            return [sentence]
        pieces: list[list[Mark]] = []
        begin = 0  # of what is not in a piece yet
        for place, phrase in enumerate(phrases):
            after = phrases[place + 1].start if place + 1 < len(phrases) else len(sentence)
            before = sentence[begin : phrase.start]
            self._tell(before)
            verdict = self._is_title(at, phrase, before, sentence[phrase.end : after], last=after == len(sentence))
            if verdict is _Verdict.PLACE:
                self.current = None
                continue
            if verdict is not _Verdict.TITLE and before:
                split = begin + _last_finding(before)
                pieces.append(sentence[begin:split])
                before = sentence[split : phrase.start]
                self.sure[before[0].start] = False
            begin = len(sentence) if phrase.ends else phrase.end + phrase.comma
            pieces += [before, sentence[phrase.start : begin]]
            if not (phrase.opens and phrase.ends):
                self.sure[sentence[phrase.start].start] = verdict is not _Verdict.OPEN
            self.current, self.told = (None if verdict is _Verdict.OPEN else phrase.title), set()
        rest = sentence[begin:]
        self._tell(rest)
        return [piece for piece in [*pieces, rest] if piece]

    def _tell(self, part: Sequence[Mark]) -> None:
        """Take up what is told under the title in force; a side that is no title ends it."""
        if has_side(part):
            self.current = None
        self.told |= told_in(part)

    def _is_title(
        self, at: int, phrase: _Phrase, before: Sequence[Mark], after: Sequence[Mark], *, last: bool
    ) -> _Verdict:
        """What the phrase is. before, after: what is told on either side of it. last: it is the last of its sentence.

        It is a title where one holds already, of another side or limb, and what stands before the phrase cannot be of
        it, or what follows was told under the title before.
        """
        if phrase.opens and phrase.ends:
            return _Verdict.TITLE
        ahead = self._ahead(at) if last else []
        if phrase.ends and not (ahead and _begins_with_name(ahead[0])):
            return _Verdict.PLACE
        follows = [after, *ahead]
        opened = ahead[0] if phrase.ends else after
        if not self._of(phrase.title, opened) or not finds(opened):
            return _Verdict.PLACE
        if phrase.opens:
            return _Verdict.TITLE if self._has_company(at, phrase) or _goes_on(after, ahead) else _Verdict.PLACE
        if self.current is None or not finds(before) or _alike(self.current, phrase.title):
            return _Verdict.PLACE
        apart = bool(phrase.title.site) and self._has_own_limb(before)
        if not self._may_be_of(phrase.title, before):
            return _Verdict.TITLE
        if self.told & {one for part in follows for one in told_in(part)}:
            return _Verdict.TITLE if phrase.parted or apart else _Verdict.JOINED
        if not phrase.parted:
            return _Verdict.PLACE
        return _Verdict.TITLE if apart else _Verdict.OPEN

    def _ahead(self, at: int) -> list[Sequence[Mark]]:
        """The sentences behind it up to the next with a side, on its line."""
        found: list[Sequence[Mark]] = []
        for place in range(at + 1, min(len(self.sentences), at + _AHEAD)):
            before = self.sentences[place - 1]
            if not before or self.tokens[before[-1].end - 1].ends_line or has_side(self.sentences[place]):
                break
            found.append(self.sentences[place])
        return found

    def _has_company(self, at: int, phrase: _Phrase) -> bool:
        """Whether another title of the kind stands by itself near it: "Right arm, tone normal. Left arm, ..." """
        near = range(max(0, at - _COMPANY), min(len(self.sentences), at + _COMPANY))
        others = (other for place in near for other in self.phrases[place] if other is not phrase)
        alike = (other for other in others if other.title.organ == phrase.title.organ)
        return any(o.stands_alone and not _alike(o.title, phrase.title) for o in alike)

    def _of(self, title: LimbTitle, part: Sequence[Mark]) -> bool:
        """Whether all that is named can be of the title, and something is."""
        if has_side(part) or not any(mark.has(*NAMING) for mark in part):
            return False
        return self._may_be_of(title, part)

    def _may_be_of(self, title: LimbTitle, part: Sequence[Mark]) -> bool:
        """Whether what is named last can be of the title."""
        name = [mark for mark in part if mark.has(*NAMING)][-1:]
        if title.organ:
            return are_of_organ(name, title, self.lexicon)
        return can_all_be_of(name, title, self.lexicon, self.limbs)

    def _has_own_limb(self, part: Sequence[Mark]) -> bool:
        """A muscle or a jerk: told of no place in the limb, as sensation is."""
        name = [mark for mark in part if mark.has(*NAMING)][-1:]
        items = [self.lexicon.items[role.item] for mark in name for role in mark.roles if role.kind in NAMING]
        return bool(items) and all(not item.sited and not item.blanket for item in items)


def _phrases_of(sentence: Sequence[Mark], lexicon: Lexicon) -> list[_Phrase]:
    """The sides with a limb, organ or whole in a sentence, where something could be told under them."""
    found: list[_Phrase] = []
    place = 0
    while place < len(sentence):
        length = 0
        if not says_nothing(sentence[place]):
            longest = min(_LONGEST, len(sentence) - place)
            length = next((n for n in range(longest, 0, -1) if _title(sentence[place : place + n], lexicon)), 0)
        if length and (phrase := _stands(sentence, place, place + length, lexicon)) is not None:
            found.append(phrase)
        place += length or 1
    return found


def _title(marks: Sequence[Mark], lexicon: Lexicon) -> LimbTitle | None:
    if says_nothing(marks[-1]) or not has_side(marks):
        return None
    return limb_title_of(marks, lexicon.items) or organ_title_of(marks, lexicon)


def _stands(sentence: Sequence[Mark], start: int, end: int, lexicon: Lexicon) -> _Phrase | None:
    """The phrase, unless words before or behind it make it a part of what they say."""
    title = _title(sentence[start:end], lexicon)
    before = sentence[start - 1] if start else None
    parted = before is not None and before.has(*_BREAKS)
    told = before is not None and (before.number is not None or finds([before]))
    if title is None or not (before is None or parted or told):
        return None
    behind = list(sentence[end:])
    comma = bool(behind) and behind[0].has("comma")
    ends = all(mark.has("stop", "comma") for mark in behind)
    name = _begins_with_name(behind[comma:])
    if not (ends or name):
        return None
    return _Phrase(title, start, end, before is None, ends, parted, comma, name)


def _begins_with_name(part: Sequence[Mark]) -> bool:
    return bool(part) and part[0].has(*NAMING) and not part[0].has("side") and not has_side(part[:1])


def _last_finding(part: Sequence[Mark]) -> int:
    """Where the last finding begins: at its name, or behind the last comma in front of it."""
    name = max((at for at, mark in enumerate(part) if mark.has(*NAMING)), default=0)
    comma = max((at for at, mark in enumerate(part[:name]) if mark.has(*_BREAKS)), default=-1)
    numbered = any(mark.number is not None for mark in part[comma + 1 : name])
    return name if numbered else comma + 1


def _alike(one: LimbTitle, two: LimbTitle) -> bool:
    return (one.side, one.site, one.organ) == (two.side, two.site, two.organ)


def _goes_on(part: Sequence[Mark], ahead: Sequence[Sequence[Mark]]) -> bool:
    """ "Right leg hip flexion 4. Knee extension 5.": one graded muscle or jerk behind the other."""
    return bool(ahead) and all(_begins_with_name(one) and _grades(one) for one in (part, ahead[0]))


def _grades(part: Sequence[Mark]) -> bool:
    """Names and their grades, and nothing else."""
    said = [mark for mark in part if not says_nothing(mark)]
    return any(m.number is not None for m in said) and all(m.number is not None or m.has(*NAMING) for m in said)
