"""Grades in front of their names, one to a comma: "5/5 hip flexion, 4+/5 knee flexion and 3/5 ankle dorsiflexion"."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Mapping, Sequence

from dictate.grammar import Item
from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import is_preposition
from dictate.reading.statements.fronts import in_company

Accepts = Callable[[Sequence[str], Node], bool]
_SKIPPED = ("filler", "side", "severity")


def led_cuts(
    groups: Sequence[Sequence[Node]], gaps: Sequence[Sequence[Node]], items: Mapping[str, Item], accepts: Accepts
) -> dict[int, int]:
    """Gaps that can be cut at one place only, and that place: in front of the value that leads the next name.

    Only in a row that began so: a value that opens the sentence or stands behind the name of a whole ("strength 5/5
    deltoid, ..."). "Deltoid, 5 biceps, 4 triceps, 5", with its commas in the wrong places, is no such row.
    """
    forced: dict[int, int] = {}
    sided: dict[int, int] = {}
    led = False  # whether the name before has its value in front of it
    for place, group in enumerate(groups):
        head, tail = _parted(gaps[place])
        names = [name for node in group for name in node.candidates]
        leading = any(_is_value(node) and accepts(names, node) for node in tail) and not in_company(tail)
        whole = place > 0 and all(items[c].blanket for node in groups[place - 1] for c in node.candidates)
        if place == 0 or (whole and all(node.main in ("colon", "comma") for node in head)):
            led = leading or (whole and led and not any(map(_is_value, tail)))
            if (
                whole
                and leading
                and (tail[0].main, tail[-1].main) == ("number", "side")
                and not any(node.text == "with" for node in tail)  # "4 in both legs with bilateral foot drop"
                and all(node.is_break for node in gaps[place + 1][:1])
            ):
                sided[place] = len(head)  # "reflexes, one plus on the right biceps, two plus on the left biceps"
        elif whole and leading and tail[0].main == "number" and any(map(_is_value, head)):
            led, forced[place] = True, len(head)
        elif led and head and not any(map(_is_value, head)) and leading:
            forced[place] = len(head)
        elif led and not leading and any(map(_is_value, (*head, *tail))):
            led = False
    behind = next((node for node in gaps[-1] if not node.is_break and node.main != "filler"), None)
    own = behind is not None and behind.main == "number" and gaps[-1][0].is_break
    return sided | ({} if own else forced)


def untitle(nodes: Sequence[Node], items: Mapping[str, Item]) -> None:
    """ "4/5 strength in the hip flexors": the whole between a grade and its muscle only says what was graded."""
    for at, (before, node) in enumerate(itertools.pairwise(nodes), start=1):
        if before.main != "number" or node.main != "item" or not all(items[c].blanket for c in node.candidates):
            continue
        link = nodes[at + 1 : at + 2]
        if not link or not is_preposition(link[0].mark):
            continue
        named = next((n for n in nodes[at + 2 :] if n.main not in _SKIPPED), None)
        scales = {items[c].scale for c in node.candidates}
        if named is not None and named.main == "item" and scales & {items[c].scale for c in named.candidates}:
            node.main, node.candidates = "filler", ()


def _parted(gap: Sequence[Node]) -> tuple[Sequence[Node], Sequence[Node]]:
    """What stands up to the last comma or link, it included, and what stands behind."""
    last = next((i for i in range(len(gap) - 1, -1, -1) if gap[i].is_break), -1)
    return gap[: last + 1], gap[last + 1 :]


def _is_value(node: Node) -> bool:
    return node.main in ("number", "value")
