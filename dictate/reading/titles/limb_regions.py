"""A limb in front of a sentence and of those behind it: "In the legs tone was increased. Power was 4/5."."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.model import Component, Side
from dictate.reading.marks import Mark
from dictate.reading.nodes import LIMBS, WHOLE_LIMBS, limb_of
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.titles.limb_titles import (
    LimbTitle,
    can_be_of,
    limbs_of_items,
    names_of,
)
from dictate.reading.titles.title_style import ends_line, says_nothing
from dictate.reading.tokens import Token

_LAST = frozenset({Component.MOTOR, Component.REFLEXES})  # what is told of the last limb, when no other follows
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
    there only tone, strength and jerks of the component that it was opened with, and none told "throughout".
    """
    limbs = limbs_of_items(lexicon.items)
    openers = [_opened(sentence, lexicon, limbs) for sentence in sentences]
    last = max((at for at, opener in enumerate(openers) if opener is not None), default=-1)
    current: LimbTitle | None = None
    here: set[Component] = set()
    found: list[LimbTitle | None] = []
    for at, (sentence, title) in enumerate(zip(sentences, titles, strict=True)):
        if title is not None:
            current = None
        elif openers[at] is not None:
            current, here = openers[at], _components(sentence, lexicon)
        elif current is not None and not _goes_on(sentence, current, lexicon, limbs, here if at > last else None):
            current = None
        found.append(title or current)
        if ends_line(sentence, tokens):
            current = None
    return found


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
    of_it = any(can_be_of(name, title, lexicon.items, limbs) for named in names for name in named)
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
) -> bool:
    """Whether the sentence is of the limb too. here: what it was opened with, where no limb follows."""
    said = [names for mark in sentence if (names := names_of(mark))]
    named = [{name for name in names if can_be_of(name, title, lexicon.items, limbs)} for names in said]
    if not all(named):
        return False
    for mark in sentence:
        side = mark.role("side")
        if mark.has("heading", "section", "closed_section") and not names_of(mark):
            return False
        if _elsewhere(mark, title.site) or (title.side is not None and side is not None and side.key != title.side):
            return False
    if here is None:
        return True
    told = {min((lexicon.component[name] for name in names), key=list(Component).index) for names in named}
    return told <= (here & _LAST) and not any(mark.has(*_NO_MORE) for mark in sentence)
