"""An eye or an ear as the title of the sentences behind it ("Left eye. Acuity 6/12. Disc pale. Right eye. ...")."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from types import MappingProxyType

from dictate.model import Side
from dictate.reading.marks import Mark
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.titles.title_style import (
    NAMING,
    ends_line,
    has_side,
    is_garbled_title,
    says_nothing,
    stands_in_front,
)
from dictate.reading.titles.walk import LimbTitle, TitleWalk
from dictate.reading.tokens import Token


def organs_in_force(
    sentences: Sequence[Sequence[Mark]],
    tokens: Sequence[Token],
    lexicon: Lexicon,
    sure: Mapping[int, LimbTitle | None] = MappingProxyType({}),
) -> list[LimbTitle | None]:
    """For each sentence the eye or ear whose title it stands under; the findings of that organ are of its side.

    It ends with a sentence that names something else, or both ("pupils"), or another side, or an organ without one
    ("Lift eye."), and with its line. Nobody says where the last one ends: there, behind the first sentence, only what
    was told of the organ before.

    sure: first tokens of sentences that are titles, and of those which no title is known to hold for (None).
    """
    titles = [organ_title_of(sentence, lexicon) for sentence in sentences]
    if not any(titles):
        return [None] * len(sentences)
    organs = _Organs(sentences, tokens, lexicon, titles, sure)
    return [organs.over(at) for at in range(len(sentences))]


class _Organs(TitleWalk):
    """The walk over the titles of eyes and ears."""

    def __post_init__(self) -> None:
        super().__post_init__()
        self.of_organ: dict[str, set[str]] = {}  # items found under the titles of each organ
        self.loose: set[str] = set()  # items found of no side, perhaps under a title that was not heard
        self.told: set[str] = set()
        self.first = False  # the sentence right behind the title
        self.held: LimbTitle | None = None  # the title of the sentence before

    def over(self, at: int) -> LimbTitle | None:
        """The title of the sentence at that place; to be asked for one after the other."""
        sentence, title = self.sentences[at], self.titles[at]
        found: LimbTitle | None = None
        sure = self.sure.get(sentence[0].start)
        if self.is_doubtful(at):
            self.current = self.current if title is None else None  # of this one finding, or from here on, nobody knows
        elif title is not None and (sure or self._opens(at, title)):
            self.told = self.of_organ.setdefault(title.organ, set())
            self.told.update(self.loose if sure is not None else ())
            self.current, self.first = title, not _says_more(sentence)
            self.told.update(name for names in _named(sentence, title, self.lexicon) for name in names)
        elif self.current is not None:
            found = self._under(at, self.current)
        elif not has_side(sentence):
            self.loose.update(role.item for mark in sentence for role in mark.roles if role.kind in NAMING)
        self.held = found
        self.end_sentence(at)
        return found

    def _opens(self, at: int, title: LimbTitle) -> bool:
        """Whether an organ is the title of what follows it, and no place of what stands before it."""
        clear = not _lacks_side(self.sentences[at - 1] if at else (), title, self.tokens, self.lexicon)
        if not self.style and not clear and stands_in_front(self.sentences, at, self.are_titles, self.tokens):
            self.style = True
            self.of_organ.setdefault(title.organ, set()).update(self.loose)
        self.style = self.style or clear
        return self.style

    def _under(self, at: int, title: LimbTitle) -> LimbTitle | None:
        """The title, where the sentence is of its organ; what it tells is taken up."""
        sentence = self.sentences[at]
        if _of_another(sentence, title, self.lexicon) or is_garbled_title(sentence):
            self.current = None
            return None
        names = _named(sentence, title, self.lexicon)
        open_end = at > self.last and not self.first and not any(one & self.told for one in names)
        if not open_end:
            self.told.update(name for one in names for name in one)
        goes_on = all(names) or (at < self.last and any(names))  # "disc swollen, one haemorrhage"
        self.current, self.first = (title if goes_on else None), False
        behind = not names and self.held is title  # "Pupil 3 mm. Brisk."
        return title if (any(names) and not open_end) or behind else None


def organ_title_of(sentence: Sequence[Mark], lexicon: Lexicon) -> LimbTitle | None:
    """ "Left eye." alone, or "Left eye:" in front of what was found in it."""
    said = list(itertools.islice((mark for mark in sentence if not mark.has("filler", "comma", "stop")), 2))
    organ = _organ(said[0], lexicon) if said else ""
    if not organ or not all(mark.has("colon") for mark in said[1:2]) or not said[0].has("side"):
        return None
    role = said[0].role("side")
    side = Side(role.key) if role is not None else None
    return LimbTitle(side, "", (said[0].start, said[0].end), organ) if side in (Side.LEFT, Side.RIGHT) else None


def _organ(mark: Mark, lexicon: Lexicon) -> str:
    words = mark.text.lower()
    return next((organ for organ, said in lexicon.grammar.common.organs.items() if words in said), "")


def _says_more(sentence: Sequence[Mark]) -> bool:
    return any(not says_nothing(mark) and not mark.has("side") for mark in sentence)


def _named(sentence: Sequence[Mark], title: LimbTitle, lexicon: Lexicon) -> list[set[str]]:
    """For each name in the sentence the items of the organ that it may be."""
    named = [{r.item for r in mark.roles if r.kind in NAMING} for mark in sentence if mark.has(*NAMING)]
    return [{name for name in names if lexicon.items[name].organ == title.organ} for names in named]


def are_of_organ(marks: Sequence[Mark], title: LimbTitle, lexicon: Lexicon) -> bool:
    """Whether every name can be of the organ."""
    return all(_named(marks, title, lexicon))


def _lacks_side(before: Sequence[Mark], title: LimbTitle, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """ "Disc pale. Left eye.": the organ may belong to what was found before it."""
    if not before or ends_line(before, tokens) or has_side(before):
        return False
    return any(_named(before, title, lexicon)) and not _plural(before, lexicon)


def _plural(sentence: Sequence[Mark], lexicon: Lexicon) -> bool:
    """ "Pupils", "discs": of both; not what is a plural in one eye already ("venous pulsations")."""
    for mark in (mark for mark in sentence if mark.has(*NAMING)):
        names = [lexicon.items[role.item].name.split() for role in mark.roles if role.kind in NAMING]
        own = {word for name in names if len(name) > 1 for word in name}
        if any(word in lexicon.grammar.common.plurals and word not in own for word in mark.text.lower().split()):
            return True
    return False


def _of_another(sentence: Sequence[Mark], title: LimbTitle, lexicon: Lexicon) -> bool:
    """Both eyes, or the other one."""
    sides = [role.key for mark in sentence if (role := mark.role("side")) is not None]
    return _plural(sentence, lexicon) or any(side != title.side for side in sides if side != "midline")
