"""Why something was not examined: which words open a reason, and how far it goes."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import INABILITY
from dictate.reading.statements.cuts import value_next
from dictate.reading.statements.drafts import Cell

_ALWAYS_REASONS = frozenset(
    {
        "because of",
        "because",
        "due to",
        "d / t",
        "d/t",
        "dt",
        "owing to",
        "on account of",
        "secondary to",
        "limited by",
        "for the same reason",
        "explained by",
        "accounted for by",
        "consistent with",
        "in keeping with",
        "compatible with",
        "attributable to",
        "related to",
        "in proportion to",
        "out of proportion to",
        "for degree of",
        "for the degree of",
        "allowing for",
        "commensurate with",
        "proportionate to",
    }
)
_THE = frozenset({"the", "that", "this", "such", "so", "much", "his", "her"})
_OPERATED = frozenset({"s / p", "s/p", "status post"})


def opens_reason(nodes: list[Node], mark: Mark) -> bool:
    """ "because of" always; "as", "since" only after something was not examined."""
    if mark.text in _ALWAYS_REASONS:
        return True
    for node in reversed(nodes):
        if node.main in ("semicolon", "stop"):
            return False
        if node.mark.has("not_examined", "not_assessable") or node.text in INABILITY:
            return True
    return False


def bare_reason(marks: Sequence[Mark], place: int, nodes: Sequence[Node]) -> bool:
    """ "Gait not tested, weakness.": one sign alone behind what could not be done says why.

    So does "no way to test it with that weakness", "not assessable from weakness".
    """
    if marks[place].text in ("with", "from"):
        after = next((mark for mark in marks[place + 1 :] if mark.text not in _THE), None)
        last = next((node for node in reversed(nodes) if node.main != "side"), None)
        undone = last is not None and last.main == "value" and last.mark.has("not_examined", "not_assessable")
        return undone and after is not None and after.has("sign")
    told = marks[place].has("sign", "abnormal") or (marks[place].has("value") and not marks[place].has("unchanged"))
    if len(nodes) < 2 or nodes[-1].main != "comma" or not told or marks[place].number is not None:
        return False
    left = next((node for node in reversed(nodes[:-1]) if node.main != "side"), nodes[-1])
    closed = place + 1 == len(marks) or marks[place + 1].has("stop", "semicolon")
    return closed and (left.mark.has("not_examined", "not_assessable") or left.text == "impossible")


def take_reason(cell: Cell, node: Node, following: list[Node]) -> None:
    """ "because of pain in the hip": the words up to the next break say why something was not examined."""
    words = [node.text]
    cell.nodes.append(node)
    if node.text.startswith("same "):  # "left can't do it, same reason": all that is said of why
        cell.detail.append(node.text)
        return
    operated = node.text in _OPERATED or cell.side is not None  # the side of the reason, not of the finding
    for place, after in enumerate(following):
        if after.main in ("comma", "semicolon", "stop", "contrast", "correction") or after.text in (
            "so",
            "therefore",
            "hence",
        ):
            break
        if after.main == "side" and not after.text.startswith("on ") and value_next(following[place + 1 :]):
            break
        words.append(after.text)
        described = bool(following[place + 1 :]) and not following[place + 1].is_break  # "pain in the left hip"
        if after.main != "side" or operated or (described and not after.text.startswith("on ")):
            after.main = "reason_word"
            cell.nodes.append(after)
    cell.detail.append(" ".join(words))


def give_reason(cell: Cell, node: Node, following: list[Node]) -> None:
    """ "The left limited by weakness", and no word for how it was: it could not be judged, and why."""
    if node.text == "limited by" and not cell.values and not cell.negated:
        mark = Mark(node.mark.start, node.mark.end, (Role("not_assessable"),), text=node.text)
        cell.values.append(Node(mark, "value"))
    take_reason(cell, node, following)
