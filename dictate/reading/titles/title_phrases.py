"""Sides with a limb, an organ or a whole that may be a title inside a sentence, and limbs inside names ("leg tone")."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

from dictate.model import Side
from dictate.reading.marks import Mark
from dictate.reading.nodes import LIMBS, VALUE_KINDS, limb_of
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.titles.limb_titles import limb_title_of
from dictate.reading.titles.organ_titles import organ_title_of
from dictate.reading.titles.title_style import NAMING, finds, has_side, limb_unread, says_nothing
from dictate.reading.titles.walk import LimbTitle

BREAKS = ("comma", "semicolon", "conj", "colon")
_LONGEST = 3  # marks of a title ("reflexes", "on the", "left")
_BARE = {"left": Side.LEFT, "right": Side.RIGHT}


@dataclass(frozen=True, slots=True)
class Phrase:
    """A title as it stands in its sentence: marks start..end-1."""

    title: LimbTitle
    start: int
    end: int
    opens: bool
    ends: bool
    parted: bool  # a comma stands before it
    comma: bool  # a comma follows it
    name: bool  # what was examined follows it at once, or behind its comma
    unread: bool = False  # the side of a limb was misheard ("lift leg")
    bare: bool = False  # a side and nothing else ("Right, tone normal.")

    @property
    def stands_alone(self) -> bool:
        """Set off from what surrounds it, and so sure to be seen as a title where it is one."""
        before = self.opens or self.parted
        return before and (self.ends or (self.comma and self.name))


def phrases_of(sentence: Sequence[Mark], lexicon: Lexicon) -> list[Phrase]:
    """The sides with a limb, organ or whole in a sentence, where something could be told under them."""
    found: list[Phrase] = []
    sided = [has_side([mark]) for mark in sentence]
    placed = any(mark.role("site", "") is not None for mark in sentence)
    if not placed and not any(sided):
        return found  # most sentences are of neither
    place = 0
    while place < len(sentence):
        length = 0
        if placed and (unread := _unread(sentence, place)) is not None:
            found.append(unread)
            place = unread.end
            continue
        if any(sided[place : place + _LONGEST]) and not says_nothing(sentence[place]):
            longest = min(_LONGEST, len(sentence) - place)
            length = next((n for n in range(longest, 0, -1) if _title(sentence[place : place + n], lexicon)), 0)
        if length and (phrase := _stands(sentence, place, place + length, lexicon)) is not None:
            found.append(phrase)
        place += length or 1
    return found


def _unread(sentence: Sequence[Mark], start: int) -> Phrase | None:
    """ "..., lift leg, hip flexion 4": a limb behind a word that says nothing here, set off by commas."""
    if start and not sentence[start - 1].has(*BREAKS):
        return None
    end = next((at for at in range(start, len(sentence)) if sentence[at].has("stop", *BREAKS)), len(sentence))
    limb = limb_unread(sentence[start:end])
    site = limb.role("site", "") if limb is not None else None
    if limb is None or site is None or (not start and end + 1 >= len(sentence)):
        return None
    title = LimbTitle(None, limb_of(site.key), (limb.start, limb.end))
    behind = sentence[end:]
    ends = all(mark.has("stop", "comma") for mark in behind)
    comma = bool(behind) and behind[0].has("comma")
    return Phrase(title, start, end, not start, ends, bool(start), comma, begins_with_name(behind), unread=True)


def _title(marks: Sequence[Mark], lexicon: Lexicon) -> LimbTitle | None:
    if says_nothing(marks[-1]) or not has_side(marks):
        return None
    if len(marks) == 1 and marks[0].text.lower() in _BARE:
        return LimbTitle(_BARE[marks[0].text.lower()], "", (marks[0].start, marks[0].end))
    return limb_title_of(marks, lexicon.items) or organ_title_of(marks, lexicon)


def _stands(sentence: Sequence[Mark], start: int, end: int, lexicon: Lexicon) -> Phrase | None:
    """The phrase, unless words before or behind it make it a part of what they say."""
    title = _title(sentence[start:end], lexicon)
    before = sentence[start - 1] if start else None
    parted = before is not None and before.has(*BREAKS)
    told = before is not None and (before.number is not None or finds([before]))
    if title is None or not (before is None or parted or told):
        return None
    behind = list(sentence[end:])
    comma = bool(behind) and behind[0].has("comma")
    ends = all(mark.has("stop", "comma") for mark in behind)
    name = begins_with_name(behind)
    bare = end - start == 1 and sentence[start].text.lower() in _BARE
    if not (ends or name) or (bare and (ends or before is not None)):
        return None
    return Phrase(title, start, end, before is None, ends, parted, comma, name, bare=bare)


def begins_with_name(part: Sequence[Mark]) -> bool:
    """Whether it tells of an item at once: "tone normal", "no drift"; behind a comma also "normal tone"."""
    comma = bool(part) and part[0].has("comma")
    said = part[1:] if comma else part
    led = len(said) > 1 and (said[0].has("negation") or (comma and said[0].has(*VALUE_KINDS)))
    name = said[1:] if led and not said[0].has(*NAMING) else said
    return bool(name) and name[0].has(*NAMING) and not has_side(said[:2] if led else said[:1])


def alike(one: LimbTitle, two: LimbTitle) -> bool:
    """Whether both are of the same part and side."""
    return (one.side, one.site, one.organ) == (two.side, two.site, two.organ)


def limbs_freed(sentence: Sequence[Mark], lexicon: Lexicon) -> list[Mark]:
    """ "Left leg tone increased, power 4": the limb by itself where it opens a name that may be said of any place."""
    result = list(sentence[:1])
    for side, mark in itertools.pairwise(sentence):
        if not (side.has("side") and mark.has("item") and _opens_with_limb(mark, lexicon)):
            result.append(mark)
            continue
        result += [mark.part(0, 1, lexicon.meanings), mark.part(1, mark.end - mark.start, lexicon.meanings)]
    return result


def _opens_with_limb(mark: Mark, lexicon: Lexicon) -> bool:
    limb, _, name = mark.text.partition(" ")
    known = bool(name) and len(mark.text.split()) == mark.end - mark.start
    return known and _is_limb(limb, lexicon) and _is_of_places(mark, lexicon)


def _is_limb(word: str, lexicon: Lexicon) -> bool:
    return any(role.kind == "site" and not role.item and limb_of(role.key) in LIMBS for role in lexicon.meanings(word))


def _is_of_places(mark: Mark, lexicon: Lexicon) -> bool:
    """Said of a place in the body, or of all muscles or jerks there."""
    items = [lexicon.items[role.item] for role in mark.roles if role.kind == "item"]
    return all(item.sited or item.blanket for item in items)
