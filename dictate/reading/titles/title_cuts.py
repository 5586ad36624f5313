"""Limbs, sides and eyes that are titles inside a sentence ("... biceps 5, left arm, deltoid 4"): set apart from it."""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum, auto

from dictate.reading.marks import Mark
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.titles.limb_titles import can_all_be_of, limbs_of_items
from dictate.reading.titles.organ_titles import are_of_organ
from dictate.reading.titles.title_phrases import BREAKS, Phrase, alike, begins_with_name, limbs_freed, phrases_of
from dictate.reading.titles.title_style import NAMING, ends_line, finds, has_side, says_nothing, told_in
from dictate.reading.titles.walk import LimbTitle
from dictate.reading.tokens import Token

_LIST = 2  # findings
_COMPANY = 40  # sentences within which another title shows how titles are said
_AHEAD = 20  # sentences in which what was told before is looked for again


class _Verdict(Enum):
    """What a side with a limb, organ or whole is where it stands."""

    TITLE = auto()
    JOINED = auto()  # a title; but what was told right before it may be of that side, too
    OPEN = auto()  # a title or the place of what was told right before it
    PLACE = auto()  # no title


class TitleCutter:
    """Sets titles apart. `sure`: first tokens of sentences and the titles they are; None: of which nobody knows."""

    def __init__(self, sentences: Sequence[Sequence[Mark]], tokens: Sequence[Token], lexicon: Lexicon) -> None:
        self.as_said, self.tokens, self.lexicon = sentences, tokens, lexicon
        self.sentences = [limbs_freed(sentence, lexicon) for sentence in sentences]
        self.phrases = [phrases_of(sentence, lexicon) for sentence in self.sentences]
        self.limbs = limbs_of_items(lexicon.items) if any(self.phrases) else {}
        self.sure: dict[int, LimbTitle | None] = {}
        self.current: LimbTitle | None = None
        self.behind: dict[tuple[int, int], set[tuple[str, bool]]] = {}  # what is told behind each phrase
        self.loose: set[tuple[str, bool]] = set()  # of no side, since the last that was said
        self.told: set[tuple[str, bool]] = set()  # under the title in force

    def cut(self) -> list[list[Mark]]:
        """The sentences, those with titles inside them in pieces."""
        result: list[list[Mark]] = []
        if not any(self.phrases):
            return [list(sentence) for sentence in self.as_said]
        for at, sentence in enumerate(self.sentences):
            result += self._pieces(at, list(sentence))
            if ends_line(sentence, self.tokens):
                self.current, self.loose = None, set()
        return result

    def _pieces(self, at: int, sentence: list[Mark]) -> list[list[Mark]]:
        phrases = self.phrases[at]
        if not phrases:
            self._tell(sentence)
            return [list(self.as_said[at])]
        pieces: list[list[Mark]] = []
        begin = 0  # of what is not in a piece yet
        for phrase in phrases:
            before = sentence[begin : phrase.start]
            self._tell(before)
            verdict = self._verdict(at, phrase, before)
            if verdict is _Verdict.PLACE:
                self.current, self.loose = None, set()
                continue
            if verdict is not _Verdict.TITLE and before:
                split = begin + _last_finding(before)
                pieces.append(sentence[begin:split])
                before = sentence[split : phrase.start]
                self.sure[before[0].start] = None
            begin = len(sentence) if phrase.ends else phrase.end + phrase.comma
            pieces += [before, sentence[phrase.start : begin]]
            if not (phrase.opens and phrase.ends):
                self.sure[sentence[phrase.start].start] = None if verdict is _Verdict.OPEN else phrase.title
            self.current, self.told = (None if verdict is _Verdict.OPEN else phrase.title), set()
            self.loose = set()
        rest = sentence[begin:]
        self._tell(rest)
        if not pieces:
            return [list(self.as_said[at])]
        return [piece for piece in [*pieces, rest] if piece]

    def _tell(self, part: Sequence[Mark]) -> None:
        """Take up what is told under the title in force; a side that is no title ends it."""
        if has_side(part):
            self.current, self.loose = None, set()
            return
        told = told_in(part)
        if self.current is None:
            self.loose |= told
        self.told |= told

    def _verdict(self, at: int, phrase: Phrase, before: Sequence[Mark]) -> _Verdict:
        """What the phrase is. before: what is told in front of it, from the last title on.

        It is a title where one holds already, of another side or limb, and what stands before the phrase cannot be of
        it, or what follows was told under the title before.
        """
        if phrase.opens and phrase.ends:
            return _Verdict.TITLE
        if phrase.unread:
            return _Verdict.PLACE if self.current is None else _Verdict.TITLE
        behind = self._behind(at, phrase)
        if not behind or not begins_with_name(behind[0]):
            return _Verdict.PLACE
        if not self._of(phrase.title, behind[0]) or not finds(behind[0]):
            return _Verdict.PLACE
        if phrase.bare:
            return _Verdict.TITLE if self._is_answered(at, phrase) else _Verdict.PLACE
        if not phrase.comma and not phrase.ends and len(self._told_behind(at, phrase)) < _LIST:
            return _Verdict.PLACE  # "Right leg rigidity one, left leg rigidity nought": as it says already
        if phrase.opens:
            return _Verdict.TITLE if self._has_company(at, phrase) or _goes_on(behind) else _Verdict.PLACE
        if self.current is None:
            return _Verdict.TITLE if self._in_front(at, phrase, before) else _Verdict.PLACE
        if not finds(before) or alike(self.current, phrase.title):
            return _Verdict.PLACE
        apart = bool(phrase.title.site) and self._has_own_limb(before)
        if not self._may_be_of(phrase.title, before):
            return _Verdict.TITLE
        if self.told & self._told_behind(at, phrase):
            return _Verdict.TITLE if phrase.parted or phrase.title.site else _Verdict.JOINED
        if not phrase.parted:
            return _Verdict.PLACE
        return _Verdict.TITLE if apart else _Verdict.OPEN

    def _behind(self, at: int, phrase: Phrase) -> list[Sequence[Mark]]:
        """What is told between a title and the next side, sentence by sentence; none of it past the end of its line."""
        later = [other.start for other in self.phrases[at] if other.start >= phrase.end]
        found: list[Sequence[Mark]] = [self.sentences[at][phrase.end : later[0] if later else None]]
        for place in range(at + 1, min(len(self.sentences), at + _AHEAD)):
            before, sentence = self.sentences[place - 1], self.sentences[place]
            if later or not before or ends_line(before, self.tokens):
                break
            later = [other.start for other in self.phrases[place]]
            part = sentence[: later[0] if later else None]
            if has_side(part):
                break
            found.append(part)
        return found[1:] if phrase.ends else found

    def _told_behind(self, at: int, phrase: Phrase) -> set[tuple[str, bool]]:
        key = (at, phrase.start)
        if key not in self.behind:
            self.behind[key] = {one for part in self._behind(at, phrase) for one in told_in(part)}
        return self.behind[key]

    def _has_company(self, at: int, phrase: Phrase) -> bool:
        """Whether another title of the kind stands near it, by itself or in front of the same things.

        "Right arm, tone normal. Left arm, ...", "Right foot, pinprick reduced, ... vibration absent left foot, pin".
        """
        told = self._told_behind(at, phrase)
        for place in range(max(0, at - _COMPANY), min(len(self.sentences), at + _COMPANY)):
            for other in self.phrases[place]:
                if (
                    other.bare
                    or other.unread
                    or other.title.organ != phrase.title.organ
                    or alike(other.title, phrase.title)
                ):
                    continue
                if other.stands_alone or told & self._told_behind(place, other):
                    return True
        return False

    def _is_answered(self, at: int, phrase: Phrase) -> bool:
        """ "Right, tone normal. Deltoid 4. Left, tone up. Deltoid 3.": the other side opens the same list near it.

        Without a comma the side is of the name behind it; so more of the list must be told.
        """
        least = _LIST if phrase.comma else _LIST + 1
        for place in range(max(0, at - _COMPANY), min(len(self.sentences), at + _COMPANY)):
            for other in self.phrases[place]:
                answers = other.bare and other.title.side is not phrase.title.side
                if answers and len(self._told_behind(at, phrase) & self._told_behind(place, other)) >= least:
                    return True
        return False

    def _in_front(self, at: int, phrase: Phrase, before: Sequence[Mark]) -> bool:
        """Whether a title is the first in force, though something is told before it in its sentence.

        Not of what cannot be its own or is said of all; else the last of its like must stand in front of something,
        and what it is the title of was told before it of no side ("Bride eye, acuity 6/9, pupil 3, left eye. Acuity
        6/12, pupil 4"), or under another title.
        """
        apart = phrase.stands_alone and self._has_company(at, phrase)
        if apart and (any(mark.has("throughout") for mark in before) or not self._may_be_of(phrase.title, before)):
            return True
        told, last = self._told_behind(at, phrase), self._told_behind(*self._last(at, phrase))
        again = len(told & self.loose) >= _LIST
        return bool(last & (told | self.loose)) and (again or (apart and last is not told and bool(last & told)))

    def _last(self, at: int, phrase: Phrase) -> tuple[int, Phrase]:
        """The last phrase of its line, with the place of its sentence."""
        place, last = at, (at, phrase)
        while place < min(len(self.sentences), at + _AHEAD):
            last = (place, self.phrases[place][-1]) if self.phrases[place] else last
            if ends_line(self.sentences[place], self.tokens):
                break
            place += 1
        return last

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


def _last_finding(part: Sequence[Mark]) -> int:
    """Where the last finding begins: at its name, or behind the last comma in front of it."""
    name = max((at for at, mark in enumerate(part) if mark.has(*NAMING)), default=0)
    comma = max((at for at, mark in enumerate(part[:name]) if mark.has(*BREAKS)), default=-1)
    numbered = any(mark.number is not None for mark in part[comma + 1 : name])
    return name if numbered else comma + 1


def _unparted(part: Sequence[Mark]) -> Sequence[Mark]:
    return part[1:] if part and part[0].has("comma") else part


def _goes_on(behind: Sequence[Sequence[Mark]]) -> bool:
    """ "Right leg hip flexion 4. Knee extension 5.": one graded muscle or jerk behind the other."""
    return len(behind) > 1 and all(begins_with_name(part) and _grades(_unparted(part)) for part in behind[:2])


def _grades(part: Sequence[Mark]) -> bool:
    """A name and its grade, and nothing else up to the first comma."""
    comma = next((at for at, mark in enumerate(part) if mark.has(*BREAKS)), len(part))
    said = [mark for mark in part[:comma] if not says_nothing(mark)]
    return any(m.number is not None for m in said) and all(m.number is not None or m.has(*NAMING) for m in said)
