"""Whether limbs or organs in sentences of their own stand in front of their findings, or behind them."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Sequence

from dictate.reading.marks import Mark
from dictate.reading.nodes import LIMBS, VALUE_KINDS, limb_of
from dictate.reading.tokens import Token

NAMING = ("item", "sign", "alone", "context")
_SAYS_NOTHING = ("filler", "comma", "stop", "colon")
_ORGANS = frozenset({"eye", "ear"})
_OPPOSITE = {"left": "right", "right": "left"}
_FRAGMENT = 3  # words of a title that was misheard ("the rite arm")
_LIST = 2  # findings that make a list
_JERKS = 3  # "4 plus" is of a muscle as well
_REACH = 60  # sentences of a list, on either side of a title
Told = tuple[str, bool]


def ends_line(sentence: Sequence[Mark], tokens: Sequence[Token]) -> bool:
    """Whether the line ends behind the sentence."""
    return bool(sentence) and tokens[sentence[-1].end - 1].ends_line


def says_nothing(mark: Mark) -> bool:
    """Whether it is punctuation, or a word that carries nothing."""
    return mark.has(*_SAYS_NOTHING)


def has_side(sentence: Sequence[Mark]) -> bool:
    """Whether a side is said in it, if only inside a name ("right arm")."""
    return any(mark.has("side") or (mark.inner and any(p.has("side") for p in mark.inner)) for mark in sentence)


def finds(sentence: Sequence[Mark]) -> bool:
    """Whether something was found in it."""
    return any(mark.number is not None or (mark.has(*VALUE_KINDS) and not mark.has("side")) for mark in sentence)


def is_unread_title(sentence: Sequence[Mark]) -> bool:
    """ "Bride arm.", "Lift eye.": a body part without its side, behind a word or two that say nothing here."""
    said = [mark for mark in sentence if not mark.has("comma", "stop", "colon")]
    if not said or len(said) > _FRAGMENT or has_side(said) or finds(said):
        return False
    site = said[-1].role("site", "")
    of_limb = site is not None and limb_of(site.key) in LIMBS
    return (of_limb or said[-1].text.lower() in _ORGANS) and all(
        mark.has("word", "filler") and mark.number is None for mark in said[:-1]
    )


def is_garbled_title(sentence: Sequence[Mark]) -> bool:
    """That, or a side with words that say nothing here ("Right handi."): nobody knows what it was the title of."""
    said = [mark for mark in sentence if not says_nothing(mark)]
    short = len(said) <= _FRAGMENT and not finds(said) and not any(mark.has(*NAMING) for mark in said)
    return is_unread_title(sentence) or (short and has_side(said) and any(mark.has("word") for mark in said))


def says_go_on(sentence: Sequence[Mark]) -> bool:
    """ "Right, motor.": behind such a "right" and its comma stands what is examined next, on both sides."""
    said = [mark for mark in sentence if not mark.has("stop")]
    comma = len(said) > 1 and said[0].text == "right" and said[1].has("comma")
    return comma and all(mark.has("heading", "filler", "comma") and not has_side((mark,)) for mark in said[1:])


def limb_unread(sentence: Sequence[Mark]) -> Mark | None:
    """The limb of a title whose side was misheard ("Bride arm."): what follows is of that limb, of whichever side."""
    heard = is_unread_title(sentence) and sentence[0].has("word")
    return next((mark for mark in sentence if heard and mark.role("site", "") is not None), None)


def stands_in_front(
    sentences: Sequence[Sequence[Mark]],
    at: int,
    titles: Sequence[bool],
    tokens: Sequence[Token],
    clear: Collection[int] = (),
) -> bool:
    """Whether the title at that place and its like stand in front of what was found.

    So they do where the list behind the last of them was told in front of it already ("Deltoid 5. Biceps 5. Left arm.
    Deltoid 4. Biceps 4."): a title behind its findings would leave that last list without one. A single finding makes
    no list ("Pinprick reduced. Left leg. Pinprick normal."), unless it has company, or a title that was misheard.

    clear: titles that what stands before them cannot be of; any list told again will do before one of these.
    """
    first, last = at, at
    while first > at - _REACH and first and not _parts(sentences[first - 1], titles[first - 1], tokens, line=True):
        first -= 1
    end = min(len(sentences), at + _REACH) - 1
    while last < end and not _parts(sentences[last + 1], titles[last + 1], tokens, line=False):
        last += 1
    runs: list[set[Told]] = [set()]
    unread = False
    for place in range(first, last + 1):
        if titles[place]:
            runs.append(set())
        else:
            unread = unread or (is_unread_title(sentences[place]) and place < at)
            runs[-1] |= told_in(sentences[place])
    front = any(place in clear for place in range(at + 1, last + 1))
    pairs = itertools.combinations(runs, 2) if front else ((run, runs[-1]) for run in runs[:-1])
    again = max((len(one & two) for one, two in pairs), default=0)
    return again >= _LIST or (again > 0 and (len(runs) > _LIST or unread))


def _parts(sentence: Sequence[Mark], title: bool, tokens: Sequence[Token], *, line: bool) -> bool:
    """Whether the list cannot reach over that sentence: it has a side of its own, or ends its line."""
    return (line and ends_line(sentence, tokens)) or (has_side(sentence) and not title)


def told_in(sentence: Sequence[Mark]) -> set[Told]:
    """Names with something found of them; the biceps of "biceps 5" and the jerk of "biceps 2+" are two."""
    if not finds(sentence):
        return set()
    told: set[Told] = set()
    signed = False  # whether the number behind the name is one of a jerk
    for mark in reversed(sentence):
        if mark.number is not None:
            signed = mark.number.a_sign == "+" and mark.number.a <= _JERKS
        if mark.has(*NAMING):
            told.add((mark.text.lower(), signed))
            signed = False
    return told


def tells_nothing(sentence: Sequence[Mark]) -> bool:
    """A short sentence of words that mean nothing here: it may have been a title ("Lefthanded.")."""
    said = [mark for mark in sentence if not says_nothing(mark)]
    return 0 < len(said) <= _FRAGMENT and not has_side(said) and all(mark.has("word", "site") for mark in said)


def bare_side(sentence: Sequence[Mark]) -> str:
    """Left or right, where the sentence says nothing else."""
    said = [mark for mark in sentence if not mark.has("stop", "filler", "colon")]
    role = said[0].role("side") if len(said) == 1 else None
    return role.key if role is not None and role.key in _OPPOSITE and said[0].role("site") is None else ""


def bare_titles(sentences: Sequence[Sequence[Mark]]) -> set[int]:
    """ "Left. Biceps 2, triceps 2. Right. Biceps 3, triceps 3.": sides alone, behind which the same list is told."""
    sides = [(at, side) for at, sentence in enumerate(sentences) if (side := bare_side(sentence))]
    found: set[int] = set()
    for (at, side), (other, opposite) in itertools.pairwise(sides):
        end = next((place for place, _ in sides if place > other), len(sentences))
        first, second = (
            {name for sentence in part for name, _ in told_in(sentence)}
            for part in (sentences[at + 1 : other], sentences[other + 1 : end][: other - at])
        )
        if _OPPOSITE[side] == opposite and len(first & second) >= _LIST and finds(sentences[at + 1]):
            found |= {at, other}
    return found
