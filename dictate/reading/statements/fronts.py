"""What the words in front of a name say of it: a count, a grade, a list that is denied, a title."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import leads_on

_BARE_SIDES = ("left", "right", "l", "r", "lt", "rt")


def leads_into(front: Sequence[Node], before: Sequence[Node]) -> bool:
    """ "The right arm and | leg feel different to", "left face | sixty percent to": cut off what tells of them."""
    said = [n for n in front if n.main != "filler"]
    places = bool(said) and all(n.main in ("side", "site", "conj") for n in said)
    after = next((n.main for n in before if n.main != "filler"), "")
    wanted = ("site", "side") if places and said[-1].main == "conj" else ("value",)
    return places and any(n.main == "site" for n in said) and after in wanted


def graded_at(before: Sequence[Node]) -> bool:
    """ "2 and equal at the", in front of a name: the number is of what is named after it."""
    said = [n for n in before if n.text not in ("the", "both")]
    if len(said) > 2 and said[-1].main == "side" and said[-2].text in ("at", "in"):
        return said[-3].main == "number"  # "three plus at the right"
    if len(said) < 2 or said[-1].text not in ("at", "in") or not any(n.mark.has("equal") for n in said):
        return False
    return any(n.main == "number" for n in said) and all(
        n.main in ("number", "conj", "filler") or n.mark.has("equal") for n in said
    )


def of_name(later: Sequence[Node]) -> bool:
    """ "trouble with", behind a negation and in front of a name: what is denied is of what is named."""
    return len(later) == 2 and later[0].main == "value" and leads_on(later[1].mark)


def counted_of(before: Sequence[Node]) -> bool:
    """ "Four beats of", "two for", in front of a name: the count is of what is named after it."""
    if len(before) > 1 and before[-1].text == "for" and before[-2].main == "number":
        return True
    return len(before) > 2 and before[-1].text == "of" and before[-2].main == "unit" and before[-3].main == "number"


def number_at(before: Sequence[Node]) -> bool:
    """ "3+ at the", in front of a name without a number of its own: the grade of what is named after it."""
    said = [n for n in before if n.text not in ("the", "both")]
    return len(said) > 1 and said[-1].text == "at" and said[-2].main == "number"


def described(before: Sequence[Node]) -> bool:
    """ "With a positive", in front of a name: the word between the article and the name is of the name."""
    return len(before) > 1 and before[-1].main == "value" and before[-2].text in ("a", "an", "with a")


def denied(before: Sequence[Node], place: int) -> bool:
    """A link or comma inside a list that a negation opened."""
    return before[place].main in ("comma", "conj") and any(n.main == "negation" for n in before[:place])


def place_alone(before: Sequence[Node], place: int) -> bool:
    """A body part with its side and nothing else up to that place ("left arm")."""
    return [n.main for n in before[:place] if n.main != "filler"] == ["side", "site"]


def entitles(names: Sequence[Node], after: Sequence[Node]) -> bool:
    """ "Gait: reduced arm swing": a heading's own word, or any name in front of a colon and nothing else."""
    return all(name.mark.has("heading") for name in names) or [n.main for n in after] == ["colon"]


def leads_next(after: Sequence[Node]) -> bool:
    """A word behind a title and its colon that stands right in front of the next name."""
    return len(after) > 1 and after[0].main == "colon" and after[-1].main == "value"


def denied_here(nodes: list[Node], place: int) -> bool:
    """ "Left ptosis but not right": a side with the negation in front of it."""
    before = next((n for n in reversed(nodes[:place]) if n.main != "filler"), None)
    return before is not None and before.main == "negation"


def leads_to_value(node: Node) -> bool:
    """What may stand between two values of one name."""
    return node.is_break or node.main in ("value", "side", "qualifier", "filler", "severity")


def is_adjective(gap: Sequence[Node]) -> bool:
    """A bare side and nothing else in front of the first name: "right pupil"."""
    said = [node for node in gap if node.main != "filler"]
    return len(said) == 1 and said[0] is gap[-1] and said[0].main == "side" and said[0].text in _BARE_SIDES


def severed(gap: Sequence[Node], cut: int) -> float:
    """ "no mistakes in", "no trouble with" in front of a name: what was found is of that name."""
    places = [node.main for node in gap if node.main != "filler"]
    parted = cut > 0 and "conj" in (gap[cut - 1].main, *(node.main for node in gap[cut : cut + 1]))
    parted = parted or cut == len(gap)
    if parted and places.count("site") > 1 and {*places} <= {"side", "site", "conj"}:
        return 3.0  # "left arm and | left leg full strength"
    of_name = len(gap) > 1 and gap[-2].main == "value" and leads_on(gap[-1].mark)
    return 3.0 if of_name and cut > len(gap) - 3 and cut > 0 else 0.0


def side_of_value(gaps: Sequence[Sequence[Node]], cut: int) -> int:
    """ "... 3+ on the right ankles 2+": how many nodes at the cut are the side of the value in front of it.

    gaps: what stands around the names of the sentence; the first one goes on about what was said before.
    """
    before, after = gaps[0][max(0, cut - 1) : cut], gaps[0][cut:]
    own = [n.main for n in gaps[1] if n.main != "filler"][:1]
    told = [n.main for n in before] == ["number"] == own and [n.main for n in after] == ["side"]
    return int(told and after[0].text.startswith("on "))


def of_two_sides(gap: Sequence[Node]) -> bool:
    """ "On the left | right plantar", "5 on the right | , on the left deltoid 4"."""
    said = [node for node in gap if node.main != "filler"]
    last = said[-1].key("side") if said and said[-1].main == "side" else ""
    before = said[-3:-1] if [node.main for node in said[-2:-1]] == ["comma"] else said[-2:-1]
    return bool(before) and before[0].main == "side" and {last, before[0].key("side")} == {"left", "right"}


def leads_place(names: Sequence[Node], gap: Sequence[Node], items: Mapping[str, Item]) -> bool:
    """ "Motor: UL flexes to pain": a place right behind a title is of the name behind it."""
    title = all(items[name].blanket for node in names for name in node.candidates)
    if not title or not gap or gap[0].main != "colon":
        return False
    return len(gap) > 1 and all(node.main in ("side", "site") for node in gap[1:])
