"""Of what "otherwise", "elsewhere" and "the rest" speak: a component, the strength, the item just told by its site."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.cells.whole_sides import wholes_of_scales
from dictate.reading.layout.sections import EXAMINATIONS
from dictate.reading.marks import Mark
from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.cuts import is_unknown


class Remainder:
    """Finds the items that a word for the rest stands for."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items
        self.wholes = wholes_of_scales(self.items)

    def items_of(self, marks: Sequence[Mark], place: int, here: tuple[str, str], nodes: list[Node]) -> tuple[str, ...]:
        """ "otherwise normal", "5/5 elsewhere": the rest of the component spoken of."""
        if (marks[place].text == "everything else" and not _is_graded(marks[place + 1 : place + 3])) or (
            marks[place].text == "elsewhere" and _of_word(nodes)
        ):
            return ()  # of what, nobody said
        if marks[place].text == "otherwise" and (
            _goes_between(marks, place) or self._of_name(nodes) or _of_word(nodes)
        ):
            return ()
        if (titled := self._titled(marks, place, nodes)) is not None:
            return titled
        if _before_name(marks[place + 1 : place + 4]):
            return ()
        rest = marks[place]
        behind = marks[place].text in ("elsewhere", "otherwise") and all(m.has("stop") for m in marks[place + 1 :])
        if not behind and (led := _graded_before(marks, place)) is not None:
            behind, place = True, place - led  # "4 in the deltoid and 5 in the rest"
        for mark in marks[place - 1 : place] if behind and place else marks[place + 1 : place + 5]:
            if mark.number is not None and mark.is_grade and mark.number.op in ("", "/", "of"):
                own = [n for n, i in self.items.items() if i.bare_value and i.kind == "grade"]
                if (rated := self._rated(nodes, {self.items[n].scale for n in own})) is not None:
                    return rated
                return tuple(n for n in own if self.lexicon.component[n].value == here[0])
            if mark.text.endswith((*EXAMINATIONS, "everything")):
                return ()
            own_word = mark.text.endswith("full") and mark.has("normal")  # "otherwise symmetric and full"
            if (
                mark.text in ("full", "full power", "full strength") or own_word
            ):  # said of strength, never of a whole component
                graded = [n for n, i in self.items.items() if i.bare_value and i.kind == "grade"]
                own = [n for n in graded if self.lexicon.component[n].value in here]
                return tuple(own[:1])
            if mark.has("item", "context", "sign", "alone", "heading", "number"):
                return ()
            if mark.role("absent", "") and self._of_sign(nodes):
                return ()  # "left ankle clonus, otherwise none": of the sign, and of no component
            if mark.role("absent", ""):
                return self._else_of(rest, nodes)  # a whole component is never absent
            if mark.role("normal", "") or mark.role("not_examined", "") or mark.role("not_assessable", ""):
                name = f"{self._by_site(nodes) or here[0] or here[1]}_all"
                told = name in self.items and not _under_part(nodes)
                return self._else_of(rest, nodes) or ((name,) if told else ())
            if not mark.has("filler"):
                return ()
        return ()

    def _by_site(self, nodes: list[Node]) -> str:
        """ "Sensation reduced left V2, otherwise fine": the component of what the place makes it, or empty."""
        at, last = next(((i, n) for i, n in reversed([*enumerate(nodes)]) if n.main == "item"), (0, None))
        moved = self.items[last.candidates[0]].site_items if last is not None else {}
        target = next((moved[n.key("site")] for n in nodes[at:] if n.main == "site" and n.key("site") in moved), "")
        return self.lexicon.component[target].value if target else ""

    def _of_name(self, nodes: list[Node]) -> bool:
        """ "Lumbar tenderness, spine otherwise normal": the rest of what is named directly in front."""
        if not nodes or nodes[-1].main != "item" or nodes[-1].sign:
            return False
        named = [self.items[name] for name in nodes[-1].candidates]
        return all(item.kind != "presence" for item in named) and not all(item.blanket for item in named)

    def _rated(self, nodes: list[Node], scales: set[str]) -> tuple[str, ...] | None:
        """ "Ashworth 1+ in the right elbow flexors, 0 elsewhere": of the rating; None where strengths are graded."""
        last = next((node.candidates for node in reversed(nodes) if node.main == "item"), ())
        rated = [name for name in last if self.items[name].kind == "grade" and self.items[name].scale not in scales]
        if last and len(rated) == len(last) and not any(self.items[name].sited for name in rated):
            return self._whole_of({self.items[name].scale for name in rated})  # "ankles absent, the rest are two plus"
        return tuple(name for name in rated if self.items[name].sited) if last and len(rated) == len(last) else None

    def _whole_of(self, scales: set[str]) -> tuple[str, ...]:
        """All that is graded by the scale: "reflexes"."""
        return tuple(self.wholes[scale] for scale in scales if len(scales) == 1 and scale in self.wholes)

    def _of_sign(self, nodes: list[Node]) -> bool:
        last = next((node for node in reversed(nodes) if node.main == "item"), None)
        return last is not None and (last.sign or self.items[last.candidates[0]].kind == "presence")

    def _titled(self, marks: Sequence[Mark], place: int, nodes: list[Node]) -> tuple[str, ...] | None:
        """ "Fields: left hemianopia, otherwise full": the rest of what the title names; None without such a title."""
        if len(nodes) < 3 or nodes[0].main != "item" or nodes[1].main != "colon":
            return None
        title = nodes[0].candidates
        said = next((mark for mark in marks[place + 1 :] if not mark.has("filler", "comma")), None)
        if said is None or any(self.items[name].blanket for name in title):
            return None
        plain = said.role("normal", "") or said.text == "full"
        return title if plain and not any(mark.has("item") for mark in marks[place + 1 :]) else None

    def _else_of(self, rest: Mark, nodes: list[Node]) -> tuple[str, ...]:
        """ "left deltoid 4/5, otherwise normal": the strength; "tone increased in the left leg, normal elsewhere"."""
        said = {name for node in nodes if node.main == "item" for name in node.candidates[:1]}
        scales = {self.items[name].scale for name in said if self.items[name].kind == "grade"}
        if len(scales) == 1:
            whole = [n for n, i in self.items.items() if i.bare_value and i.kind == "grade" and {i.scale} == scales]
            if whole:
                return tuple(whole[:1])
        said = {name for name in said if not self.items[name].blanket} or said  # "Motor: tone ..."
        sited = [name for name in said if self.items[name].sited]
        rest_of_it = rest.text == "elsewhere" or (rest.text == "otherwise" and [n.main for n in nodes[-1:]] == ["conj"])
        return tuple(sited) if rest_of_it and len(said) == len(sited) == 1 else ()


def _is_graded(after: Sequence[Mark]) -> bool:
    """ "Everything else 4", "everything else is full": a grade says of what it speaks."""
    said = [mark for mark in after if not mark.has("filler")][:1]
    return any(mark.is_grade or mark.text in ("full", "full power", "full strength") for mark in said)


def _graded_before(marks: Sequence[Mark], place: int) -> int | None:
    """ "5 in the rest", "5 elsewhere, ...": how many words stand between it and the grade in front; None: no grade is.

    Nothing but a stop or a comma stands behind it.
    """
    ends = all(mark.has("stop", "comma", "semicolon", "conj", "contrast") for mark in marks[place + 1 : place + 2])
    led = place > 1 and marks[place - 1].text in ("in", "at", "for")
    if ends and place and marks[place].text == "elsewhere" and marks[place - 1].is_grade:
        return 0
    return 1 if ends and led and marks[place - 2].is_grade else None


def _before_name(after: Sequence[Mark]) -> bool:
    """ "Otherwise normal power": what the rest of is normal has its name behind the word."""
    told = [mark for mark in after if not mark.has("filler") or mark.text.endswith(EXAMINATIONS)]
    if len(told) < 2 or not (told[0].role("normal", "") or told[0].text == "full"):
        return False
    return told[1].has("item", "context", "heading") or told[1].text.endswith(EXAMINATIONS)


def _of_word(nodes: Sequence[Node]) -> bool:
    """ "Gaze holding otherwise normal", "Xyz: C6 reduced, normal elsewhere": the rest of what has no name here."""
    titled = [node.main for node in nodes[:2]] == ["word", "colon"] and not any(n.main == "item" for n in nodes)
    return bool(nodes) and (titled or is_unknown(nodes[-1]))


def _under_part(nodes: Sequence[Node]) -> bool:
    """ "Face: left droop, otherwise fine", "Left eye: ...": of the part in front, and of no whole component."""
    return len(nodes) > 1 and nodes[1].main == "colon" and (nodes[0].main in ("site", "side") or _is_part(nodes[0]))


def _is_part(node: Node) -> bool:
    """ "Eyes:", "Face:": a word that names a part of the body, or its muscles, in other company."""
    return node.main in ("word", "filler") and node.mark.has("site", "context")


def _goes_between(marks: Sequence[Mark], place: int) -> bool:
    """ "The face was otherwise symmetrical": between a name and what is said of it."""
    before = next((mark for mark in reversed(marks[:place]) if not mark.has("filler")), None)
    verb = marks[place - 1].text if place else ""
    named = before is not None and before.has("item", "context", "heading") and before.number is None
    return named and (verb in ("was", "were", "is", "are") or (marks[place - 1] is before and not before.has("site")))
