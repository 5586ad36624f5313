"""A limb at the head of its sentence: what is told there is of it ("LL R: ...", "Right leg, hip flexion 5")."""

from __future__ import annotations

from dictate.reading.nodes import LIMBS, Node, limb_of

_TITLE = 7  # nodes of a limb, its side and a word on the order
_LEAD = 3  # a limb, a comma and what follows


def limb_then_side(nodes: list[Node]) -> tuple[Node, Node, int] | None:
    """ "LL R: ...", "Legs, left, same order: ..." at the head of a sentence: limb, side and where its colon stands."""
    colon = next((at for at, node in enumerate(nodes[:_TITLE]) if node.main == "colon"), 0)
    said = [node for node in nodes[:colon] if node.main not in ("comma", "filler") and node.text != "-"]
    if [node.main for node in said[:2]] not in (["site", "side"], ["item", "side"]) or not said[0].mark.has("site"):
        return None
    plain = all(node.main == "word" or node.mark.has("same") for node in said[2:])
    return (said[0], said[1], colon) if plain else None


def limb_alone(nodes: list[Node]) -> bool:
    """ "Arms, tone flaccid in both.", "Right leg, hip flexion 5": a limb alone in front of what was found in it."""
    nodes = nodes[2:] if [n.main for n in nodes[:2]] == ["position", "comma"] else nodes  # "Supine, right arm, ..."
    said = nodes[1:] if nodes and nodes[0].main == "side" and not nodes[0].mark.has("site") else nodes
    if len(said) < _LEAD or not said[0].mark.has("site") or said[0].main not in ("site", "side", "item"):
        return False
    named = said[2].main in ("item", "negation") or [n.main for n in said[2:4]] == ["value", "item"]
    if said[1].main != "comma" or not named:
        return False
    if said[2].main == "negation" and said is not nodes:
        return True  # "Right ankle, no clonus."
    return limb_of(said[0].key("site")) in LIMBS
