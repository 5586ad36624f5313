"""Positions as titles of readings ("Lying. 142 over 84. Pulse 70. Standing one minute. 130 over 80. No symptoms.").

Where each position stands right in front of its pressure, every reading up to the next position is of it, wherever
stops and commas are written.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from dictate.grammar import Item
from dictate.reading.marks import Mark, Role
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.tokens import Token

_TIMES = ("minutes", "at_once")
_POSTURES = ("position", "manoeuvre", *_TIMES)
_BREAKS = ("comma", "stop", "semicolon")
_LINKS = ("filler", "conj")
_BESIDE = (*_BREAKS, *_LINKS, "negation", "unit", "hedge", "qualifier", "normal", "severity", "value", "colon")
_NAMES = ("item", "context", "sign", "alone", "value", "unit")


@dataclass(slots=True)
class _Group:
    """Marks from one position up to the next, and what they are: posture, pressure, rate, feeling or between."""

    marks: list[Mark] = field(default_factory=list)
    kinds: list[str] = field(default_factory=list)

    def has(self, kind: str) -> bool:
        return kind in self.kinds

    def reads_at_once(self) -> bool:
        """Whether a pressure is told, nothing between it and the position, and a second only in a later sentence."""
        told = [kind for kind in self.kinds if kind not in ("posture", "between", "name")]
        pressures = [at for at, kind in enumerate(self.kinds) if kind == "pressure"][:2]
        apart = len(pressures) < 2 or any(mark.has("stop") for mark in self.marks[pressures[0] : pressures[1]])
        opening = [at for at, kind in enumerate(self.kinds[: pressures[0]]) if kind == "posture"] if pressures else []
        linked = bool(opening) and any(mark.has("conj") for mark in self.marks[opening[-1] : pressures[0]])
        return told[:1] == ["pressure"] and apart and not linked  # "110/70 at one minute and 105/65 at three"


class PostureTitles:
    """Joins what is told under a position. `open`: first tokens of sentences of which no position is known."""

    def __init__(self, tokens: Sequence[Token], lexicon: Lexicon) -> None:
        self.tokens, self.lexicon = tokens, lexicon
        items: Mapping[str, Item] = lexicon.items
        self.kinds = {name: item.kind for name, item in items.items() if item.positions}
        self.open: set[int] = set()

    def join(self, sentences: Sequence[Sequence[Mark]]) -> list[list[Mark]]:
        """The sentences, those of one series of readings joined and cut by position."""
        result: list[list[Mark]] = []
        run: list[list[Mark]] = []
        for sentence in [*map(list, sentences), []]:
            if sentence and all(self._kind(mark) for mark in sentence):
                run.append(sentence)
                if not self.tokens[sentence[-1].end - 1].ends_line:
                    continue
                sentence = []
            result += self._series(run)
            run = []
            result += [sentence] if sentence else []
        return result

    def _series(self, run: list[list[Mark]]) -> list[list[Mark]]:
        """The sentences of a run of readings, anew where every position in it stands in front of its pressure."""
        first = next((at for at, s in enumerate(run) if any(self._kind(mark) == "posture" for mark in s)), len(run))
        if first == len(run):
            return run
        groups = list(self._groups(self._freed([mark for sentence in run[first:] for mark in sentence])))
        if groups[0].marks[0] is not run[first][0] or not all(group.reads_at_once() for group in groups):
            return run
        result = run[:first]
        for at, group in enumerate(groups):
            apart = self._apart(group, groups[at + 1]) if at + 1 < len(groups) else len(group.marks)
            apart = min(apart, _told_again(group))
            result.append(_in_one(group.marks[:apart]))
            if apart < len(group.marks):
                result.append(_in_one(group.marks[apart:]))
                self.open.add(group.marks[apart].start)
        return result

    def _freed(self, marks: Sequence[Mark]) -> list[Mark]:
        """ "No symptoms standing one minute. 130 over 80.": the position in a name that leads to minutes, by itself."""
        result: list[Mark] = []
        for mark, after in itertools.zip_longest(marks, marks[1:]):
            words = mark.text.split()
            tails = (n for n in (2, 1) if n < len(words) == mark.end - mark.start)
            held = next((n for n in tails if self._is_position(" ".join(words[-n:]))), 0)
            if held and after is not None and after.has("minutes") and self._kind(mark) == "feeling":
                cut, meanings = len(words) - held, self.lexicon.meanings
                result += [mark.part(0, cut, meanings), mark.part(cut, len(words), meanings)]
            else:
                result.append(mark)
        return result

    def _is_position(self, text: str) -> bool:
        return any(role.kind == "position" for role in self.lexicon.meanings(text))

    def _groups(self, marks: Sequence[Mark]) -> Iterator[_Group]:
        """The marks cut in front of each position with its minutes."""
        group = _Group()
        begin = 0  # of the next group: behind the last thing that was told
        for place, mark in enumerate(marks):
            kind = self._kind(mark)
            told = any(one not in ("between", "name") for one in group.kinds)
            if kind == "posture" and told and not self._goes_on(group, mark):
                keep = len(group.marks) - (place - begin)
                yield _Group(group.marks[:keep], group.kinds[:keep])
                group = _Group(group.marks[keep:], group.kinds[keep:])
            group.marks.append(mark)
            group.kinds.append(kind)
            if not mark.has(*_LINKS) or kind != "between":
                begin = place + 1
        yield group

    def _goes_on(self, group: _Group, mark: Mark) -> bool:
        """ "Standing. One minute.", "after one minute standing": minutes and their position."""
        told = [(one, kind) for one, kind in zip(group.marks, group.kinds, strict=True) if kind != "between"]
        if not told or told[-1][1] != "posture":
            return False
        return _is_time(mark) or _is_time(told[-1][0])

    def _apart(self, group: _Group, after: _Group) -> int:
        """Where what may be of the next position begins: nothing parts the two, and nothing of the kind is told there.

        "Pulse 84. No symptoms standing three minutes. 120 over 78."
        """
        whole = len(group.marks)
        last = group.kinds[-1] if group.kinds else ""
        if last == "between" or after.marks[0].has(*_LINKS) or last == "pressure" or after.has(last):
            return whole
        begin = whole - 1
        while (
            begin and not group.marks[begin - 1].has(*_BREAKS) and group.kinds[begin - 1] in ("between", "name", last)
        ):
            begin -= 1
        return begin

    def _kind(self, mark: Mark) -> str:
        """What the mark is in a series of readings; empty where it is no part of one."""
        if mark.number is not None and mark.number.op == "/":
            return "pressure"
        parts = mark.inner or (mark,)
        if any(part.has(*_POSTURES) for part in parts):
            return "posture"
        kinds = {self.kinds[role.item] for role in mark.roles if role.kind in _NAMES and role.item in self.kinds}
        if "presence" in kinds:
            return "feeling"
        if mark.number is not None:
            return "rate"
        if kinds & {"pressure", "quantity"}:
            return "name"
        return "between" if mark.has(*_BESIDE) and not mark.has("word") else ""


def _told_again(group: _Group) -> int:
    """Where a second pressure or rate begins: nobody knows whether it is of the position, too."""
    found = len(group.marks)
    for one, breaks in (("rate", _BREAKS), ("pressure", ("stop",))):
        told = [at for at, kind in enumerate(group.kinds) if kind == one]
        if told[1:]:
            ends = (at + 1 for at in range(told[1], told[0], -1) if group.marks[at].has(*breaks))
            found = min(found, next(ends, told[0] + 1))
    return found


def _is_time(mark: Mark) -> bool:
    return any(part.has(*_TIMES) for part in (mark.inner or (mark,)))


def _in_one(marks: Sequence[Mark]) -> list[Mark]:
    """One sentence: a stop inside it is a comma."""
    kept: list[Mark] = []
    for mark, after in itertools.zip_longest(marks, marks[1:]):
        if not mark.has("stop") or after is None:
            kept.append(mark)
        elif not after.has(*_BREAKS):
            kept.append(Mark(mark.start, mark.end, (Role("comma"),), None, ","))
    return kept
