"""A limb in front of a sentence and of those behind it: "In the legs tone was increased. Power was 4/5."."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.model import Component, Side
from dictate.reading.marks import Mark
from dictate.reading.nodes import LIMBS, WHOLE_LIMBS, limb_of
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.titles.limb_titles import can_be_of, limbs_of_items, names_of
from dictate.reading.titles.title_style import ends_line, finds, has_side, says_nothing
from dictate.reading.titles.walk import LimbTitle
from dictate.reading.tokens import Token

_LAST = frozenset({Component.MOTOR, Component.REFLEXES})  # what is told of the last limb, when no other follows
_SHORT = 9  # marks of a title with the words that lead to it
_OPENINGS = frozenset({"okay", "ok", "come", "turn", "go", "and", "look"})
_TURNS = frozenset("now next then moving coming turning onto finally lastly okay ok".split())
_NO_MORE = ("throughout", "rest", "equal")


def regions_in_force(
    sentences: Sequence[Sequence[Mark]],
    tokens: Sequence[Token],
    lexicon: Lexicon,
    titles: Sequence[LimbTitle | None],
) -> list[LimbTitle | None]:
    """For each sentence the limb that opened it, or one before it, or what `titles` gives already.

    A sentence that begins with a limb and names what was examined opens the limb ("In the arms there was no wasting.");
    the sentences behind it are of it up to the next limb, or the end of the line. Nobody says where the last limb ends:
    there only tone, strength and jerks of the component that it was opened with, and none told "throughout"; where the
    limb had a sentence of its own ("Lower limbs."), all that was told of the limb before, too.
    """
    limbs = limbs_of_items(lexicon.items)
    heads = {at for at in range(len(sentences)) if titles[at] is None and _entitled(sentences, at)}
    openers = [_entitled(sentences, at) or _opened(one, lexicon, limbs) for at, one in enumerate(sentences)]
    last = max((at for at, opener in enumerate(openers) if opener is not None), default=-1)
    region = _Region(lexicon, limbs)
    found: list[LimbTitle | None] = []
    for at, (sentence, title) in enumerate(zip(sentences, titles, strict=True)):
        opener = openers[at]
        if title is not None:
            region.end()
        elif at in heads:
            if opener is not None and region.may_begin(sentences, at, opener, tokens):
                region.begin(opener, sentence, alone=True)
                found.append(None)  # it tells of nothing itself
                continue
        elif opener is not None:
            region.begin(opener, sentence, alone=False)
        elif not region.goes_on(sentence, last=at > last):
            region.end()
        found.append(title or region.current)
        if ends_line(sentence, tokens) and not region.alone:
            region.end()
    return found


class _Region:
    """The limb in force, what it was opened with and what was told of limbs before."""

    def __init__(self, lexicon: Lexicon, limbs: Mapping[str, str]) -> None:
        self.lexicon, self.limbs = lexicon, limbs
        self.current: LimbTitle | None = None
        self.alone = False  # a sentence of its own opened it
        self.fresh = False  # and nothing was told behind that yet
        self.here: set[Component] = set()
        self.known: set[Component] = set()  # what was told of a limb

    def begin(self, opener: LimbTitle, sentence: Sequence[Mark], *, alone: bool) -> None:
        """Open a limb. alone: in a sentence that tells of nothing else."""
        self.current, self.alone, self.here = opener, alone, _components(sentence, self.lexicon)
        self.fresh = alone
        self.known |= self.here

    def end(self) -> None:
        """What follows is of no limb."""
        self.current, self.alone = None, False

    def may_begin(
        self, sentences: Sequence[Sequence[Mark]], at: int, title: LimbTitle, tokens: Sequence[Token]
    ) -> bool:
        """Whether a limb alone in its sentence is the title of the next, and no place of the one before it.

        "Pinprick reduced. Legs. Power normal.": nobody knows; but "Legs now.", or behind what cannot be of the legs.
        """
        behind = sentences[at + 1] if at + 1 < len(sentences) else ()
        if not finds(behind) or not any(map(names_of, behind)):
            return False
        before = sentences[at - 1] if at else ()
        free = not finds(before) or has_side(before) or ends_line(before, tokens)
        free = free or any(mark.has("throughout", "site") for mark in before)
        other = self.current is not None and limb_of(self.current.site) != limb_of(title.site)
        return free or other or _turns_to(sentences[at]) or not self._all_of(before, title)

    def _all_of(self, sentence: Sequence[Mark], title: LimbTitle) -> bool:
        whole = replace(title, site=limb_of(title.site))
        said = [names for mark in sentence if (names := names_of(mark))]
        return all(any(can_be_of(name, whole, self.lexicon.items, self.limbs) for name in names) for names in said)

    def _some_of(self, sentence: Sequence[Mark], title: LimbTitle) -> bool:
        """Whether some of what is named can be of the limb, and no other place is."""
        whole = replace(title, site=limb_of(title.site))
        named = {name for mark in sentence for name in names_of(mark)}
        elsewhere = has_side(sentence) or any(_elsewhere(mark, title.site) for mark in sentence)
        return not elsewhere and any(can_be_of(name, whole, self.lexicon.items, self.limbs) for name in named)

    def goes_on(self, sentence: Sequence[Mark], *, last: bool) -> bool:
        """Whether the sentence is of the limb in force too. last: no limb follows."""
        if self.current is None:
            return False
        known = (self.known if self.alone else set()) | self.here
        fresh, self.fresh = self.fresh, False
        if fresh and not last and self._some_of(sentence, self.current):
            self.known |= _components(sentence, self.lexicon)
            return True  # "Upper limbs. Tone, power, coordination normal."
        if not _goes_on(sentence, self.current, self.lexicon, self.limbs, known if last else None, alone=self.alone):
            return False
        self.known |= set() if last else _components(sentence, self.lexicon)
        return True


def _entitled(sentences: Sequence[Sequence[Mark]], at: int) -> LimbTitle | None:
    """ "Lower limbs.", "Moving on to the legs now.": a whole limb without a side, and nothing else."""
    sentence = sentences[at]
    if len(sentence) > _SHORT:
        return None
    said = [mark for mark in sentence if not says_nothing(mark)]
    while len(said) > 1 and said[0].text in _OPENINGS:
        said = said[1:]
    site = said[0].role("site") if len(said) == 1 else None
    if site is None or site.key not in WHOLE_LIMBS or has_side(said) or said[0].inner:
        return None
    return LimbTitle(None, site.key, (said[0].start, said[0].end))


def _turns_to(sentence: Sequence[Mark]) -> bool:
    """ "Now the legs.", "legs next": what is said there leads on to what follows."""
    return any(not _TURNS.isdisjoint(mark.text.split()) for mark in sentence)


def _opened(sentence: Sequence[Mark], lexicon: Lexicon, limbs: Mapping[str, str]) -> LimbTitle | None:
    """The limb in front of the sentence, where what was examined is named behind it and no other place."""
    parts = (part for mark in sentence for part in (mark.inner or (mark,)))
    told = (part for part in parts if not says_nothing(part))
    first = list(itertools.islice(told, 2))  # most sentences begin with no limb
    lead = list(_lead(first))
    if not lead:
        return None
    site, side = lead[-1].role("site"), lead[0].role("side")
    behind = [*first[len(lead) :], *told]
    if site is None or any(_elsewhere(mark, site.key) or mark.has("rest", "except") for mark in behind):
        return None
    title = LimbTitle(Side(side.key) if side else None, site.key, (lead[0].start, lead[-1].end))
    own = (lead[-1],) if lead[-1].has("item") else ()  # "left leg tone was increased"
    names = [names for mark in (*own, *behind) if (names := names_of(mark))]
    whole = replace(title, site=limb_of(title.site))
    of_it = any(can_be_of(name, whole, lexicon.items, limbs) for named in names for name in named)
    return title if of_it and not _whole_named(names, lexicon.items) else None


def _lead(said: Sequence[Mark]) -> Sequence[Mark]:
    """The marks of a side and a whole limb, or of a limb, that the sentence begins with."""
    for lead in (said[:1], said[:2]) if said else ():
        site = lead[-1].role("site")
        if site is not None and site.key in WHOLE_LIMBS and (len(lead) == 1 or lead[0].has("side")):
            return lead
    return ()


def _elsewhere(mark: Mark, site: str) -> bool:
    """Another limb, or the trunk or face: the sentence is not of the one alone."""
    told = mark.role("site")
    return told is not None and limb_of(told.key) != limb_of(site) and (limb_of(told.key) in LIMBS)


def _whole_named(names: Sequence[set[str]], items: Mapping[str, Item]) -> bool:
    """Nothing but a whole examination ("legs: normal examination")."""
    return all(all(items[name].blanket and not items[name].limb for name in named) for named in names) and any(
        all(items[name].kind != "grade" for name in named) for named in names
    )


def _components(sentence: Sequence[Mark], lexicon: Lexicon) -> set[Component]:
    """What the sentence names, less the limb in front ("arms", which may be all its muscles, or all its jerks)."""
    named = [mark for mark in sentence if mark.role("site", "") is None]
    return {lexicon.component[name] for mark in named for name in names_of(mark)}


def _goes_on(
    sentence: Sequence[Mark],
    title: LimbTitle,
    lexicon: Lexicon,
    limbs: Mapping[str, str],
    here: set[Component] | None,
    *,
    alone: bool,
) -> bool:
    """Whether the sentence is of the limb too. here: what it was opened with, where no limb follows.

    alone: the limb had a sentence of its own, so that strength "throughout" is all of the limb.
    """
    whole = replace(title, site=limb_of(title.site))
    said = [names for mark in sentence if (names := names_of(mark))]
    named = [{name for name in names if can_be_of(name, whole, lexicon.items, limbs)} for names in said]
    if not all(named):
        return False
    for mark in (part for whole_name in sentence for part in (whole_name.inner or (whole_name,))):
        side = mark.role("side")
        if mark.has("heading", "section", "closed_section") and not names_of(mark):
            return False
        if _elsewhere(mark, title.site) or (title.side is not None and side is not None and side.key != title.side):
            return False
    if here is None:
        return True
    told = {min((lexicon.component[name] for name in names), key=list(Component).index) for names in named}
    if alone:
        sure = here | {Component.MOTOR}
        own = all(limbs.get(name) == whole.site for names in named for name in names)
        plain = told <= (here | _LAST) and not any(mark.has(*_NO_MORE) for mark in sentence)
        return own or plain or told <= sure
    return told <= (here & _LAST) and not any(mark.has(*_NO_MORE) for mark in sentence)
