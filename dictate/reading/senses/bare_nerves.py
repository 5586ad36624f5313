"""Cranial nerves named by their number alone: "seven normal", "V and VII intact", "except a right sixth"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.in_force.context import Context
from dictate.reading.marks import Mark, Role
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.phrases.numbers import ROMAN, find_numbers
from dictate.reading.tokens import Token

_ORDINALS = {
    word: n
    for n, word in enumerate("third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth".split(), start=3)
}
_WORDS = {n: word for word, n in _ORDINALS.items()}
_LEAD = 4  # marks: a heading, a colon and an article
_BETWEEN = frozenset({",", "/", "-", "&", "and", "+"})
_SILENT = frozenset({"is", "are", "was", "were", "both", "all", "nerve", "nerves", "the"})
_STATUS = ("normal", "abnormal", "absent", "not_examined", "not_assessable", "unchanged")
_WORDED = frozenset({"normality", "choice", "presence", "text"})
_OWN = ("normal", "abnormal", "value")
_PHRASE_ENDS = ("comma", "semicolon", "stop", "contrast", "conj")
_HEADINGS = ("heading", "heading_part")


class NerveNumbers:
    """Finds them in one sentence: only under the cranial nerves, or where Roman numbers leave no doubt."""

    def __init__(self, lexicon: Lexicon, tokens: Sequence[Token]) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items
        self.nerves = {number: name for name, item in self.items.items() for number in item.nerve_numbers}
        self.tokens = tokens

    def named(self, marks: Sequence[Mark], context: Context) -> list[Mark]:
        """The sentence with numbers of nerves turned into names of what is examined.

        Behind an item that is measured a number is a value, so that plain numbers name nothing.
        """
        of_nerves = "cranial_nerves" in {context.component, *map(self._component, context.active)}
        counting = any(self.items[name].kind not in _WORDED for name in context.active)
        whole = marks
        marks = _with_ranges([part for mark in marks for part in self._listed(mark)])
        result: list[Mark] = []
        place = 0
        told = len(marks) > 1 and marks[1].has("item") and bool(self._number(marks, 0, plain=False))  # "V LT normal"
        while place < len(marks):
            head = result[-1] if result else None
            of_nerves = of_nerves or (head is not None and head.has(*_HEADINGS) and _of_nerves(head))
            lead = [mark for mark in result[-_LEAD:] if mark.text != "the"]
            opens = not lead or self._behind_heading(lead) or (told and _is_break(lead[-1]))
            run = self._run(marks, place, plain=of_nerves and not counting) if opens else []
            if run and self._says(marks, run[-1][1], run[-1][2], titled=of_nerves):
                result.extend(self._names(marks, place, run))
                place, told = run[-1][1], True
                continue
            if of_nerves and (palsy := self._excepted(marks, place)) is not None:
                result.append(palsy)
                place += 1
                continue
            result.append(marks[place])
            place += 1
        return _with_titles(result, whole)

    def _component(self, name: str) -> str:
        return self.lexicon.component[name].value

    def _listed(self, mark: Mark) -> list[Mark]:
        """ "Cranial nerves V and VII", taken together as a title: the heading and its numbers, each by itself."""
        if not mark.has("heading_part"):
            return [mark]
        tokens = self.tokens[mark.start : mark.end]
        numbers = {one.start: one for one in find_numbers(tokens)}
        first = next((i for i, one in enumerate(tokens) if i in numbers or one.lower in ROMAN), 0)
        if not first:
            return [mark]
        head = Mark(mark.start, mark.start + first, mark.roles, None, " ".join(one.lower for one in tokens[:first]))
        rest = [
            Mark(mark.start + i, mark.start + i + 1, _part(one), numbers[i].number if i in numbers else None, one.lower)
            for i, one in enumerate(tokens)
            if i >= first
        ]
        return [head, *rest]

    def _behind_heading(self, before: list[Mark]) -> bool:
        """ "CN: seven normal", "Cranial nerves V and VII": the heading stands before, and at most a colon between."""
        behind = before[:-1] if before[-1].has("colon") or before[-1].text in (":", "-", ",") else before
        return bool(behind) and behind[-1].has(*_HEADINGS) and _of_nerves(behind[-1])

    def _number(self, marks: Sequence[Mark], place: int, *, plain: bool) -> int:
        """The number of the nerve said at that place, or 0."""
        mark = marks[place]
        if mark.text in ROMAN and self.tokens[mark.start].text.isupper():
            return ROMAN[mark.text]
        if not plain:
            return 0
        if mark.text in _ORDINALS:
            return _ORDINALS[mark.text]
        number = mark.number
        alone = number is not None and not (number.op or number.a_sign or number.mark)
        return int(number.a) if alone and number is not None and number.a in self.nerves else 0

    def _range(self, marks: Sequence[Mark], place: int, *, plain: bool) -> str:
        """ "two to twelve": the name of that range of nerves, or empty."""
        number = marks[place].number
        if not plain or number is None or number.op not in ("to", "-", "->") or number.b is None:
            return ""
        name = f"cranial_nerves_{int(number.a)}_{int(number.b)}"
        return name if name in self.items else ""

    def _run(self, marks: Sequence[Mark], place: int, *, plain: bool) -> list[tuple[int, int, str]]:
        """Nerves listed from here on: (place, end behind it, item)."""
        run: list[tuple[int, int, str]] = []
        while place < len(marks):
            spanned = self._range(marks, place, plain=plain)
            number = self._number(marks, place, plain=plain)
            if not spanned and not number:
                break
            joined = place + 1 < len(marks) and marks[place + 1].hyphened
            after = self._number(marks, place + 1, plain=plain) if joined else 0
            if after > number + 1 and f"cranial_nerves_{number}_{after}" in self.items:
                run.append((place, place + 2, f"cranial_nerves_{number}_{after}"))  # "III-VI"
            elif spanned or number in self.nerves:
                run.append((place, place + 1, spanned or self.nerves[number]))
            else:
                break
            place = run[-1][1]
            while place < len(marks) and marks[place].text in _BETWEEN and place + 1 < len(marks):
                after = place + 1
                if not (self._number(marks, after, plain=plain) or marks[after].text in _BETWEEN):
                    break
                place = after
        return run

    def _says(self, marks: Sequence[Mark], place: int, item: str, *, titled: bool) -> bool:
        """A word for how it was follows, or a side with one; behind a colon too where the nerves are being told."""
        colon = False
        if marks[place - 1].text == "i" and not _is_no_person(marks[place:]):
            return False
        for mark in marks[place : place + 5]:
            if mark.text in _SILENT or mark.has("side", "severity"):
                continue
            if mark.text in (":", "-") and titled and not colon:
                colon = True
                continue
            if any(role.kind in _OWN and role.item == item for role in mark.roles):
                return True
            general = any(role.kind in _STATUS and not role.item for role in mark.roles)
            return general and not mark.has("item", "sign", "context")
        return False

    def _names(self, marks: Sequence[Mark], place: int, run: list[tuple[int, int, str]]) -> list[Mark]:
        """The listed numbers as names, each item once, with what stands between them."""
        names: list[Mark] = []
        at = {start: (end, item) for start, end, item in run}
        seen: set[str] = set()
        i = place
        while i < run[-1][1]:
            end, item = at.get(i, (i + 1, ""))
            if not item:
                names.append(marks[i])
            elif item in seen:
                names[-1] = marks[i].only("filler") if names[-1].text in _BETWEEN else names[-1]
                names.append(marks[i].only("filler"))
            else:
                seen.add(item)
                text = "".join(mark.text for mark in marks[i:end])
                name = Mark(marks[i].start, marks[end - 1].end, (Role("item", item),), None, text)
                names.append(replace(name, hyphened=bool(names)))  # "V VII normal": one list
            i = end
        return names

    def _excepted(self, marks: Sequence[Mark], place: int) -> Mark | None:
        """ "except a right six", "apart from a partial left sixth": the palsy of that nerve."""
        before = place - 1
        while before >= 0 and (marks[before].has("side", "severity", "filler") or marks[before].text in ("a", "the")):
            before -= 1
        sided = any(mark.has("side") for mark in marks[before + 1 : place])
        if before < 0 or not sided or not marks[before].has("except"):
            return None
        number = self._number(marks, place, plain=True)
        after = marks[place + 1] if place + 1 < len(marks) else None
        if number not in _WORDS or (after is not None and not after.has(*_PHRASE_ENDS)):
            return None
        roles = tuple(self.lexicon.meanings(f"{_WORDS[number]} nerve palsy"))
        return replace(marks[place], roles=roles, number=None) if roles else None


def _with_titles(marks: list[Mark], whole: Sequence[Mark]) -> list[Mark]:
    """ "CN IX/X: palate up": numbers that name nothing by themselves are part of their heading again."""
    for title in (mark for mark in whole if mark.has("heading_part")):
        at = [i for i, mark in enumerate(marks) if title.start <= mark.start and mark.end <= title.end]
        if len(at) > 1 and not any(role.kind in ("item", "alone") for i in at for role in marks[i].roles):
            marks[at[0] : at[-1] + 1] = [title]
    return marks


def _part(token: Token) -> tuple[Role, ...]:
    return (Role("conj"),) if token.lower == "and" else (Role("comma"),) if token.lower == "," else ()


def _with_ranges(marks: Sequence[Mark]) -> list[Mark]:
    """ "two through twelve" as one number, like "two to twelve"."""
    result: list[Mark] = []
    for mark in marks:
        before = [one.number for one in result[-2:]]
        first = before[0] if len(before) == 2 and result[-1].text in ("through", "thru") else None
        if first is not None and mark.number is not None and not first.op and not mark.number.op:
            text = " ".join(one.text for one in (*result[-2:], mark))
            spanned = replace(first, op="to", b=mark.number.a)
            result[-2:] = [replace(result[-2], end=mark.end, number=spanned, text=text)]
        else:
            result.append(mark)
    return result


def _of_nerves(mark: Mark) -> bool:
    return any(role.key == "cranial_nerves" for role in mark.roles if role.kind in _HEADINGS)


def _is_no_person(after: Sequence[Mark]) -> bool:
    """ "I: normal", "I not tested", and not "I skipped the gait", "I couldn't make out any clonus"."""
    said = next((mark for mark in after if mark.text not in ("is", "was", "-")), None)
    return said is not None and (said.text == ":" or said.text.startswith("not ") or said.has("normal"))


def _is_break(mark: Mark) -> bool:
    return mark.has(*_PHRASE_ENDS) or mark.text in _BETWEEN
