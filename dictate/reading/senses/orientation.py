"""Orientation with a word for each sphere ("Orientation: person intact, time impaired"), or counted ("A&O x2")."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dictate.reading.marks import Mark, Role
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.senses.spheres import DENIALS, Run, Spheres, exception_at
from dictate.reading.tokens import Token

_HEAD = "orientation"
_LINKS = frozenset({"/", "&", "and", "or", "as", "well", "also", "+"})
_PARTS = frozenset({",", ";", ":", "(", ")", "-", "but"})
_FILLERS = frozenset("to in for the his her their own current only a is was are were be with on of at".split())
_QUIET = _PARTS | _LINKS | _FILLERS
_LEADS = frozenset({"to", "in", "for"})
_WELL = frozenset("yes correct correctly right full fully good".split())
_BADLY = frozenset("wrong incorrect incorrectly missed poor ✗ ✘".split())
_LONGEST = 6  # words that say how well one sphere is known: "off by three days"
_COUNTS = {"1": 1, "one": 1, "2": 2, "two": 2}
_TIMES = frozenset({"x", "times", "×"})
_SPHERES = 3


@dataclass(slots=True)
class _Sphere:
    """One sphere that was named, and whether it is known: None where nothing has said so yet."""

    item: str
    known: bool | None
    part: int
    start: int
    end: int


class _Walk:
    """The words behind "orientation", each sphere with the word in front of it or behind it."""

    def __init__(self, spheres: Spheres, tokens: Sequence[Token], end: int) -> None:
        self.spheres = spheres
        self.lower = [token.lower for token in tokens[:end]]
        self.told: list[_Sphere] = []
        self.stance: bool | None = None
        self.denied = self.excepted = self.behind_sphere = False
        self.part, self.opened, self.end = 0, -1, 0

    def go(self, place: int, head: int) -> None:
        """Take one word or phrase after the other, up to the first that says nothing of orientation."""
        while place < len(self.lower):
            step = self._sphere(place, head) or self._exception(place) or self._word(place) or self._link(place)
            if not step:
                break
            place += step

    def _sphere(self, place: int, head: int) -> int:
        length = self.spheres.sphere_at(self.lower, place)
        if not length:
            return 0
        known = self.stance
        if self.denied:
            known = self.stance = not self.stance if self.stance is not None else False
            self.stance = self.stance if self.told and self.told[-1].known is not None else None
        start = head if not self.told else self.opened if self.opened >= 0 else place
        item = self.spheres.words[tuple(self.lower[place : place + length])]
        self.told.append(_Sphere(item, known, self.part, start, place + length))
        self.denied, self.opened, self.behind_sphere = False, -1, True
        return length

    def _exception(self, place: int) -> int:
        length = exception_at(self.lower, place)
        if not length or self.stance is None:
            return 0
        self.excepted = not self.told
        self.stance, self.opened, self.behind_sphere = not self.stance, place, False
        return length

    def _word(self, place: int) -> int:
        """A word for how well: of the spheres in front of it that have none yet, or of those behind it."""
        known, length = self._says(place)
        if known is None:
            return 0
        known = known is not self.denied
        self.denied = False
        after = self.lower[place + length : place + length + 2]
        leads = bool(after) and after[0] in _LEADS and len(after) > 1 and after[1] not in _FILLERS
        open_ones = [one for one in self.told if one.known is None]
        if not open_ones and self.behind_sphere and not leads:
            open_ones = [one for one in self.told if one.part == self.part]  # "intact to place, time impaired"
        for one in open_ones:
            one.known, one.end = known, place + length
        if not open_ones:
            self.stance, self.opened = known, place
        self.behind_sphere = False
        return length

    def _says(self, place: int) -> tuple[bool | None, int]:
        word, after = self.lower[place], self.lower[place + 1 : place + 2]
        if word in DENIALS or word in _PARTS or word in _LINKS:
            return None, 0
        if word in _WELL or word in _BADLY:
            return word in _WELL, 1
        if word == "no" and self.told and (not after or after[0] in _PARTS or after[0] == "."):
            return False, 1  # "place yes, date no"
        for length in range(min(_LONGEST, len(self.lower) - place), 0, -1):
            known = self.spheres.known_by(" ".join(self.lower[place : place + length]))
            if known is not None:
                return known, length
        return None, 0

    def _link(self, place: int) -> int:
        word = self.lower[place]
        if word in DENIALS:
            self.denied, self.opened = True, place if self.opened < 0 else self.opened
        elif word in _PARTS:
            self.part, self.behind_sphere = self.part + 1, False
            self.opened = place if word == "but" and self.opened < 0 else self.opened
        elif word not in _LINKS and word not in _FILLERS and not self.spheres.is_degree(word):
            return 0
        return 1


class Orientation:
    """Reads them; what names a sphere, and what says how well it is known, is the grammar's."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.spheres = Spheres(lexicon)
        self.meanings = lexicon.meanings

    def told(self, marks: Sequence[Mark], tokens: Sequence[Token]) -> Sequence[Mark]:
        """The marks of a sentence with each run of spheres as one mark; unchanged where orientation is not told so."""
        marks = self.spheres.told(marks, tokens)
        for mark in marks:
            if _HEAD in mark.text:
                head = next((i for i in range(mark.start, mark.end) if tokens[i].lower == _HEAD), None)
                new = self._titled(tokens, head, marks[-1].end) if head is not None else []
            elif mark.text[:1] in ("a", "o") and mark.has("item", "alone") and self._of_all(mark):
                new = self._counted(mark, tokens, marks[-1].end)
            else:
                continue
            if new:
                return _in_place(marks, new, tokens)
        return marks

    def _of_all(self, mark: Mark) -> bool:
        """ "A&O", "oriented x2": of every sphere at once."""
        named = {role.item for role in mark.roles if role.kind in ("item", "alone")}
        alert = mark.text.startswith("a ") and mark.text.endswith(" to")  # "A&O to self"
        return bool(self.spheres.items) and ({*self.spheres.items} <= named or alert)

    def _titled(self, tokens: Sequence[Token], head: int, end: int) -> list[Mark]:
        walk = _Walk(self.spheres, tokens, end)
        walk.go(head + 1, head)
        told = walk.told
        if told and all(one.known is None for one in told) and walk.lower[head + 1] in _PARTS:
            scored = tokens[told[0].end].lower[:1].isdigit() if told[0].end < end else False
            for one in told if not scored else ():
                one.known = True  # "Orientation: person, place, time"
        runs: list[Run] = []
        for one in told:
            if one.known is None:
                break
            if not runs or runs[-1].known is not one.known:
                runs.append(Run(one.known, one.start))
            runs[-1].items.append(one.item)
            runs[-1].end = one.end
        if runs and walk.excepted:
            rest = [name for name in self.spheres.items if name not in runs[0].items]
            first = min(one.start for one in told)
            cut = next(i for i in range(first, end) if exception_at(walk.lower, i))
            runs = [Run(not runs[0].known, first, cut, rest), replace(runs[0], start=cut), *runs[1:]]
        badly = {name for run in runs if not run.known for name in run.items}
        for run in runs:
            if run.known:
                run.items = [name for name in run.items if name not in badly]
        return [self.spheres.mark(run, walk.lower) for run in runs if run.items]

    def _counted(self, mark: Mark, tokens: Sequence[Token], end: int) -> list[Mark]:
        """ "A&O x2, not to time", "AO x1, self only": alert, and oriented to what is named or to the others."""
        lower = [token.lower for token in tokens[:end]]
        place, count = mark.end, 0
        if mark.has("item") and mark.end > mark.start + 1:
            count = _COUNTS.get(lower[mark.end - 1], 0)
        elif place + 1 < end and lower[place] in _TIMES and lower[place + 1] in _COUNTS:
            count, place = _COUNTS[lower[place + 1]], place + 2
        if not count and not (place < end and {*lower[place - 1 : place + 1]} & _LEADS):
            return []
        while place < end and (lower[place] in _PARTS or lower[place] in _LEADS):
            place += 1
        runs = self.spheres.runs(lower, place, Run(True, place - _SPHERES, place)) or []
        for run in runs[:1]:
            run.start = place
        named = [name for run in runs for name in run.items]
        rest = [name for name in self.spheres.items if name not in named]
        roles = [role for role in mark.roles if role.item not in self.spheres.items]
        if lower[mark.start] != "oriented" and lower[mark.start] != "orientated" and not roles:
            alone = sorted(self.meanings("a & o"), key=lambda role: (role.kind, role.item))
            roles = [role for role in alone if role.item not in self.spheres.items]
        if count and count == _SPHERES - len(named) and not any(run.known for run in runs):
            roles.extend(Role(kind, name, "oriented") for name in rest if named for kind in ("value", "alone"))
        if not runs and not count:
            return []
        first = replace(mark, end=max(mark.end, place - 1) if count and not mark.has("item") else mark.end)
        said = [self.spheres.mark(run, lower) for run in runs]
        if runs and (runs[0].known or not roles):  # one statement: alert and oriented to what is named
            said[0] = replace(said[0], start=mark.start, roles=(*roles, *said[0].roles))
            return said
        return [*([replace(first, roles=tuple(roles))] if roles else []), *said]


def _in_place(marks: Sequence[Mark], new: Sequence[Mark], tokens: Sequence[Token]) -> Sequence[Mark]:
    """The marks with the new ones instead of those that they cover; unchanged where one reaches over an edge."""
    covered = {place for mark in new for place in range(mark.start, mark.end)}
    for mark in marks:
        outside = [place for place in range(mark.start, mark.end) if place not in covered]
        if len(outside) < mark.end - mark.start and any(tokens[i].lower not in _QUIET for i in outside):
            return marks
    kept = [mark for mark in marks if covered.isdisjoint(range(mark.start, mark.end))]
    return sorted([*kept, *new], key=lambda mark: mark.start)
