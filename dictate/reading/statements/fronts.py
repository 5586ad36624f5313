"""What the words in front of a name say of it: a count, a grade, a list that is denied, a title."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.reading.nodes import Node, wants_object
from dictate.reading.phrases.kinds import INABILITY
from dictate.reading.phrases.lexicon import leads_on

PARTINGS = ("comparison", "comma", "semicolon", "contrast", "conj")
_BARE_SIDES = ("left", "right", "l", "r", "lt", "rt")


def leads_into(front: Sequence[Node], before: Sequence[Node]) -> bool:
    """ "The right arm and | leg feel different to", "left face | sixty percent to": cut off what tells of them."""
    said = [n for n in front if n.main != "filler"]
    places = bool(said) and all(n.main in ("side", "site", "conj") for n in said)
    after = next((n.main for n in before if n.main != "filler"), "")
    wanted = ("site", "side") if places and said[-1].main == "conj" else ("value",)
    return places and any(n.main == "site" for n in said) and after in wanted


def opens_clause(after: Sequence[Node]) -> bool:
    """ "Ankle is two, the left | toe is up": a bare side right behind a comma, and right in front of a name."""
    link = next((n for n in reversed(after[:-1]) if n.text != "the"), None)
    return link is not None and link.main == "comma" and after[-1].text in (*_BARE_SIDES, "both")


def in_company(before: Sequence[Node]) -> bool:
    """ "Three plus on the left with three beats of", in front of a name: what stands before the "with" is not of it."""
    place = next((i for i in range(len(before) - 1, 0, -1) if before[i].text == "with"), 0)
    return any(n.main in ("number", "value") for n in before[:place])


def belong_together(one: Node, two: Node) -> bool:
    """ "The right arm"; "could not really", "could not see the", in front of what could not be done."""
    return (one.main, two.main) == ("side", "site") or (
        two.main == "filler" and (one.text in INABILITY or (one.main == "value" and wants_object(one)))
    )


def parts_sides(gap: Sequence[Node], cut: int) -> bool:
    """ "Right or left": no other statement begins within."""
    for start in (cut - 2, cut - 1):
        three = gap[start : start + 3] if start >= 0 else ()
        if [n.main for n in three] == ["side", "conj", "side"] and three[1].text == "or":
            return True
    return False


def wants_task(after: Sequence[Node], *, tight: bool) -> bool:
    """ "In the legs I couldn't really do | heel shin", "I couldn't see the | fundi": it is named behind the words."""
    said = [n for n in after if n.main != "filler"]
    if len(said) < 2 or said[-1].main != "value":
        return False
    led = said[-1] is not after[-1]
    return (led and said[-1].text in INABILITY) or ((led or tight) and wants_object(said[-1]))


def joins(nodes: Sequence[Node], place: int) -> bool:
    """ "slow and irregular", "right and left": the link joins what it stands between."""
    if place == 0 or place + 1 >= len(nodes):
        return False
    one = nodes[place - 1]
    two = next((n for n in nodes[place + 1 :] if n.main not in ("filler", "severity")), None)
    if two is None:
        return False
    if two.mark.has("equal") and is_value(one):
        return True  # "2 and equal at the biceps"
    return one.main == two.main == "side" or (one.main == two.main == "value" and one.mark.number is None)


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


def led_by_but(gap: Sequence[Node]) -> int:
    """Where the words behind a "but" begin that only say of what kind the name behind them is; else where they end.

    "No rest tremor, but jerky postural | tremor of the fingers".
    """
    but = next((i for i in range(len(gap) - 1, -1, -1) if gap[i].main == "contrast"), len(gap))
    kinds = gap[but + 1 :]
    plain = all(n.main in ("qualifier", "severity", "filler", "value") for n in kinds)
    return but + 1 if plain and any(n.main == "qualifier" for n in kinds) else len(gap)


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
    """A word behind a title and its colon or comma that stands right in front of the next name."""
    told = [n.main for n in after if n.main != "filler"]
    return len(after) > 1 and after[-1].main == "value" and (told[0] == "colon" or told == ["comma", "value"])


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


def of_each_side(before: Sequence[Node], after: Sequence[Node]) -> bool:
    """ "3/5 left | hip flexors |, 4/5 right": one side in front of the name, the other behind it."""
    front = [n for n in before if n.main not in ("filler", "comma")]
    behind = [n for n in after if n.main != "filler"][:4]
    if [n.main for n in front] != ["number", "side"] or [n.main for n in behind[1:3]] != ["number", "side"]:
        return False
    ends = all(n.is_break for n in behind[3:])
    return behind[0].is_break and ends and {front[1].key("side"), behind[2].key("side")} == {"left", "right"}


def both_in_front(before: Sequence[Node], after: Sequence[Node]) -> bool:
    """ "Right 4/5 and left 3/5 | hip flexion": a grade for each side in front of a name without one of its own."""
    said = [n for n in before if n.main != "filler"]
    front = list(itertools.dropwhile(lambda n: n.is_break, said))
    kinds = [n.main for n in front]
    sides = [n.key("side") for n in front if n.main == "side"]
    pairs = kinds in (["side", "number", "conj", "side", "number"], ["number", "side", "conj", "number", "side"])
    return pairs and {*sides} == {"left", "right"} and all(n.is_break for n in after[:1])


def of_limb(before: Sequence[Node], place: int, names: Sequence[Node]) -> bool:
    """ "Everything else in the right | arm": the side of the limb that is named right behind it."""
    lead = [n.text for n in before[:place] if n.text != "the"][-1:]
    return place + 1 == len(before) and lead in (["in"], ["of"]) and names[0].mark.role("site", "") is not None


def other_side_behind(
    before: Sequence[Node], names: Sequence[Node], after: Sequence[Node], behind: Sequence[Node]
) -> bool:
    """ "Right knee jerk 3+ with | a crossed adductor |, left 2+": the other side of what it was found with."""
    lead = [n for n in after if n.main != "filler" or n.text.startswith("with")]
    sides = {n.key("side") for n in (*before, *lead) if n.main == "side"}
    number = next((n for n in lead if n.main == "number"), None)
    said = [n for n in behind if n.main not in ("filler", "stop")]
    told = said and said[0].is_break and sorted(n.main for n in said[1:]) == ["number", "side"]
    if not told or not names or number is None or not lead[-1].text.startswith("with") or len(sides) != 1:
        return False
    side = next(n.key("side") for n in said if n.main == "side")
    return {side, *sides} == {"left", "right"}


def told_in_front(names: Sequence[Node], before: Sequence[Node], after: Sequence[Node]) -> float:
    """How clearly a count, a grade or a description in front of a name is of it."""
    if not before:
        return 0.0
    bare, at = not any(map(is_value, after[:2])), number_at(before)
    score = 3.2 if graded_at(before) or counted_of(before) or (bare and at) else 0.0
    score += (2.0 if bare and described(before) else 0.0) - (4.0 if in_company(before) else 0.0)
    score += 7.0 if of_each_side(before, after) else 0.0
    score += 14.0 if both_in_front(before, after) else 0.0
    if at and after and after[0].main in PARTINGS and any(n.main == "side" for n in after):
        score += 5.0  # "right arm 3+ at the biceps, 2+ on the left"
    told = [n for n in before[-2:] if n.text not in ("in", "at", "for")]
    if not (told and is_value(told[-1])):
        return score
    rest = any(n.mark.has("rest") for n in names) or (bool(after) and after[0].main == "except")
    # "left deltoid 4/5, 5/5 elsewhere", "5 in the rest", "normal bulk except in the feet"
    return score + (3.0 if rest else 0.0)


def is_value(node: Node) -> bool:
    """Whether the node says what was found."""
    return node.main in ("value", "number", "dermatome", "comparison")
