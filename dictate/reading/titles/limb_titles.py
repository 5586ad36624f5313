"""A limb or a side as the title of the sentences behind it ("Right arm. Tone normal.")."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from dictate.grammar import Item
from dictate.model import Component, Side
from dictate.reading.marks import Mark
from dictate.reading.nodes import ITEM_VALUE_KINDS, LIMBS, limb_of
from dictate.reading.phrases.bare import WHOLE_SIDES
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.titles.title_style import (
    NAMING,
    bare_side,
    bare_titles,
    ends_line,
    finds,
    has_side,
    is_garbled_title,
    limb_unread,
    says_go_on,
    says_nothing,
    stands_in_front,
)
from dictate.reading.titles.walk import LimbTitle, TitleWalk
from dictate.reading.tokens import Token

_COMPONENTS = tuple(Component)
_LIST = 2  # names of a list


def limbs_in_force(
    sentences: Sequence[Sequence[Mark]],
    tokens: Sequence[Token],
    lexicon: Lexicon,
    sure: Mapping[int, LimbTitle | None] = MappingProxyType({}),
) -> list[LimbTitle | None]:
    """For each sentence the limb whose title it stands under.

    Up to the next title all is of the limb that can be. Nobody says where the last limb ends ("Left leg. All five.
    Reflexes brisk."): there only what the earlier limbs were examined for too, and what follows the title directly.
    A body part, side or item of something else ends it for good, as does the end of its line, and a limb without its
    side ("Lift leg."): nobody knows which title that was. A limb behind a finding without a side that may be of it is
    no title, unless others are or it stands in front of its list.

    sure: first tokens of sentences that are titles, and of those which no title is known to hold for (None).
    """
    known = [sure.get(sentence[0].start) for sentence in sentences]
    titles = [
        title if title and not title.organ else limb_title_of(sentence, lexicon.items)
        for title, sentence in zip(known, sentences, strict=True)
    ]
    if not any(title and title.side is Side.LEFT for title in titles):  # of a side only beside the other one
        titles = [None if says_go_on(one) else title for title, one in zip(titles, sentences, strict=True)]
    for at in bare_titles(sentences):
        side, span = Side(bare_side(sentences[at])), (sentences[at][0].start, sentences[at][-1].end)
        titles[at] = titles[at] or LimbTitle(side, "", span)
    if not any(titles):
        return _segments(sentences, tokens, lexicon)
    limbs = _Limbs(sentences, tokens, lexicon, titles, sure)
    return [limbs.over(at) for at in range(len(sentences))]


def _segments(sentences: Sequence[Sequence[Mark]], tokens: Sequence[Token], lexicon: Lexicon) -> list[LimbTitle | None]:
    """ "C8: finger flexion 5. Pinprick normal.": the segment in force for each sentence, to the end of its line."""
    current: LimbTitle | None = None
    found: list[LimbTitle | None] = []
    for sentence in sentences:
        over = current is not None and _of_whole(sentence, lexicon.items)
        current = _segment_of(sentence) or (None if over else current)
        found.append(current)
        current = None if ends_line(sentence, tokens) else current
    return found


class _Limbs(TitleWalk):
    """The walk over the titles of limbs."""

    def __post_init__(self) -> None:
        super().__post_init__()
        self.limbs = limbs_of_items(self.lexicon.items)
        self.segments = _segments(self.sentences, self.tokens, self.lexicon)
        titles = enumerate(self.titles)
        self.clear = {at for at, title in titles if at and title is not None and self._is_clear(at, title)}
        self.earlier: set[Component] = set()  # what the limbs before were examined for
        self.here: set[Component] = set()
        self.runs: dict[tuple[str, str], list[set[str]]] = {}  # what was told of each limb before
        self.run: list[set[str]] = []
        self.loose: set[Component] = set()  # what was found of no side, perhaps under a title that was not heard

    def over(self, at: int) -> LimbTitle | None:
        """The title of the sentence at that place; to be asked for one after the other."""
        sentence, title = self.sentences[at], self.titles[at]
        found: LimbTitle | None = None
        sure = self.sure.get(sentence[0].start)
        if self.is_doubtful(at):
            self.current = self.current if title is None else None  # of this one finding, or from here on, nobody knows
            self.run += [names_of(mark) for mark in sentence if mark.has(*NAMING)]
        elif title is not None and (sure or self._opens(at, title)):
            self.earlier |= self.loose if sure is not None else set()
            self._begin(title)
        elif (limb := limb_unread(sentence)) is not None and (site := limb.role("site", "")) is not None:
            self._begin(LimbTitle(None, limb_of(site.key), (limb.start, limb.end)))
        elif self.current is not None:
            self._under(at, self.current)
            found = self.current
        else:
            found = self.segments[at]
            if not has_side(sentence):
                self.loose |= {self.lexicon.component[name] for mark in sentence for name in names_of(mark)}
        self.end_sentence(at)
        return found

    def _begin(self, title: LimbTitle) -> None:
        if self.current is not None:
            self.runs[self.current.site, self.current.part] = self.run
        self.earlier |= self.here
        self.here, self.run, self.current = set(), [], title

    def _is_over(self, sentence: Sequence[Mark], title: LimbTitle) -> bool:
        """Whether all that the other side was examined for is told, and this was not: "Plantar flexor. No clonus." """
        before = self.runs.get((title.site, title.part), [])
        told = [names_of(mark) for mark in sentence if mark.has(*NAMING)]
        whole = len(before) >= _LIST and all(any(one & two for two in self.run) for one in before)
        self.run += told
        plain = not title.site or not any(mark.number is not None for mark in sentence)  # a grade goes on with a limb
        return whole and plain and bool(told) and not any(one & two for one in told for two in before)

    def _opens(self, at: int, title: LimbTitle) -> bool:
        """Whether a limb is the title of what follows it, and no place of what stands before it."""
        before = self.sentences[at - 1] if at else ()
        clear = not before or ends_line(before, self.tokens) or not self._may_be_of(before, title)
        if (
            not self.style
            and not clear
            and stands_in_front(self.sentences, at, self.are_titles, self.tokens, self.clear)
        ):
            self.style, self.earlier = True, self.earlier | self.loose
        self.style = self.style or clear
        return self.style

    def _is_clear(self, at: int, title: LimbTitle) -> bool:
        """Whether something was found right before it that cannot be of it."""
        before = self.sentences[at - 1]
        return finds(before) and not has_side(before) and not self._may_be_of(before, title)

    def _may_be_of(self, sentence: Sequence[Mark], title: LimbTitle) -> bool:
        """ "Pinprick reduced. Left leg. Light touch normal.": the limb may belong to what was found before it.

        Not to what has a side of its own, is said of all ("throughout") or cannot be of that limb.
        """
        if not finds(sentence) or has_side(sentence) or any(mark.has("throughout") for mark in sentence):
            return False
        said = _named(sentence, title, self.lexicon, self.limbs)
        return not said or any(said)

    def _under(self, at: int, title: LimbTitle) -> None:
        """Take up what the sentence tells of the limb, or end its title."""
        sentence = self.sentences[at]
        said = _named(sentence, title, self.lexicon, self.limbs)
        told = {min(one, key=_COMPONENTS.index) for one in said if one}  # "biceps": a muscle, then a jerk
        known = self.earlier | self.here
        behind = bool(known) and not self.are_titles[at - 1] and not all(one & known for one in said)
        over = self._is_over(sentence, title) or behind or any(mark.has("throughout") for mark in sentence)
        open_end = at > self.last and over
        if not all(said) or open_end or _of_another(sentence, title) or is_garbled_title(sentence):
            self.current = None
        elif at <= self.last or not self.here:
            self.here |= told


def limb_title_of(sentence: Sequence[Mark], items: Mapping[str, Item]) -> LimbTitle | None:
    """A sentence of nothing but one side and one limb, or a side as a whole ("on the left", "right side reflexes")."""
    if not has_side(sentence):
        return None
    said = [part for mark in sentence for part in (mark.inner or (mark,)) if not says_nothing(part)]
    sides = {role.key for part in said if (role := part.role("side")) is not None}
    if sides not in ({"left"}, {"right"}):
        return None
    places = {role.key for part in said if (role := part.role("site", "")) is not None}
    sites = {limb_of(place) for place in places}
    span = (said[0].start, said[-1].end) if said else (0, 0)
    if not sites:
        return LimbTitle(Side(sides.pop()), "", span) if _of_whole_side(said, items) else None
    if len(sites) != 1 or not sites <= {*LIMBS} or not all(one.has("side") or one.role("site", "") for one in said):
        return None
    return LimbTitle(Side(sides.pop()), sites.pop(), span, part=next(iter(places & {"hand", "foot"}), ""))


def _of_whole_side(said: Sequence[Mark], items: Mapping[str, Item]) -> bool:
    """ "On the right", "left side", "reflexes on the left": with nothing but the name of a whole beside it."""
    rest = [mark for mark in said if not mark.has("side")]
    wholes = all(
        mark.number is None
        and mark.has("item", "heading")
        and all(items[role.item].blanket for role in mark.roles if role.kind in ("item", "sign", "alone"))
        for mark in rest
    )
    told = any(mark.text in WHOLE_SIDES or mark.text.startswith("on ") for mark in said)
    return len(said) - len(rest) == 1 and wholes and (told or bool(rest))


def _segment_of(sentence: Sequence[Mark]) -> LimbTitle | None:
    """ "C8:" in front of what was found in it."""
    role = sentence[0].role("dermatome") if len(sentence) > 1 and sentence[1].has("colon") else None
    return None if role is None else LimbTitle(None, role.key, (sentence[0].start, sentence[0].end))


def _of_whole(sentence: Sequence[Mark], items: Mapping[str, Item]) -> bool:
    """Whether it speaks of a whole component, or of all jerks: of no segment alone."""
    return any(all(items[name].blanket for name in names_of(mark)) for mark in sentence if mark.has(*NAMING))


def limbs_of_items(items: Mapping[str, Item]) -> dict[str, str]:
    """Item → the limb that it is of: its own, or that of the whole that covers it."""
    limbs: dict[str, str] = {name: item.limb for name, item in items.items() if item.limb}
    for item in items.values():
        limbs |= {part: item.limb for part in item.covers if item.limb}
    return limbs


def _named(
    sentence: Sequence[Mark], title: LimbTitle, lexicon: Lexicon, limbs: Mapping[str, str]
) -> list[set[Component]]:
    """For each name in the sentence the components of those items that it may name and that can be of this limb."""
    marks = [mark for mark in sentence if mark.has(*NAMING)]
    named = [{name for name in names_of(mark) if can_be_of(name, title, lexicon.items, limbs)} for mark in marks]
    here = {name for names in named for name in names}
    return [
        {lexicon.component[name] for name in names}
        for mark, names in zip(marks, named, strict=True)
        if names
        or not (
            mark.role("site", "") is not None  # "reduced in the hand", and no movement of it
            or any(role.item in here and role.kind in ITEM_VALUE_KINDS for role in mark.roles)  # "plantar mute"
        )
    ]


def can_all_be_of(marks: Sequence[Mark], title: LimbTitle, lexicon: Lexicon, limbs: Mapping[str, str]) -> bool:
    """Whether every name can be of the limb. limbs: those of the items."""
    return all(_named(marks, title, lexicon, limbs))


def names_of(mark: Mark) -> set[str]:
    """Items that the mark may name, it or its parts."""
    parts = (mark, *mark.inner)  # "plantar flexor" is a muscle, too
    return {role.item for part in parts for role in part.roles if role.kind in NAMING}


def can_be_of(name: str, title: LimbTitle, items: Mapping[str, Item], limbs: Mapping[str, str]) -> bool:
    """Whether the item can be of the limb. limbs: item → the limb that it is of."""
    if not title.site:
        return items[name].sided == "paired" or items[name].sited or items[name].kind == "grade"
    if name in limbs:
        return limbs[name] == title.site
    return items[name].sited or items[name].kind == "grade"


def _of_another(sentence: Sequence[Mark], title: LimbTitle) -> bool:
    """Another side, both, or a limb without its side: what is told is not of the title."""
    for mark in sentence:
        side, site = mark.role("side"), mark.role("site", "")
        if side is not None and side.key != title.side:
            return True
        limb = limb_of(site.key) if site is not None else ""
        if title.site and limb in LIMBS and limb != title.site:
            return True
    return False
