"""What a negation denies: what follows it, a word for how it was, a direction, or nothing that has a name here."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from dataclasses import replace

from dictate.grammar import Item
from dictate.model import Side
from dictate.reading.marks import Role
from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import is_preposition, leads_on
from dictate.reading.statements.cuts import is_unknown
from dictate.reading.statements.drafts import Cell

_VERBS = frozenset("deviates pulls protrudes points droops hangs drifts veers sways falls lags moves reacts".split())
_BUTS = ("only", "just", "although", "though")
_NOUNS = frozenset({"loss", "deficit", "deficits", "difficulty", "trouble"})
_WAYS = ("to ", "on ", "at ", "in ")
_UNDER = ("with ", "in the ", "under ", "on ")
_HOW = ("qualifier", "severity", "comparison")
_ANSWERS = {"yes": "present", "no": "absent"}
_NONE = frozenset({"none", "nil"})
_WHERE = frozenset({"side", "site", "dermatome", "rest", "throughout", "item", "other_side", "stop"})
_UNDONE = ("not_examined", "not_assessable")
_AUXILIARIES = frozenset({"does", "did", "do", "can", "could", "there is", "there are", "there was"})
_DENYING = frozenset({"not", "no", "cannot", "fails", "unable", "failed"})


def denies(node: Node, following: list[Node]) -> bool:
    """A negation after a name denies something that follows it: a word for how it was, a side; or stands alone."""
    for place, after in enumerate(following):
        if after.is_break or sum(n.main == "word" for n in following[:place]) > 1:
            break  # "does not look at me unless I stand on his right"
        if after.main in ("value", "number", "qualifier", "severity", "side", "site"):
            return True
    return node.text in ("no", "not") and (not following or following[0].is_break)


def denies_another(node: Node, following: list[Node]) -> bool:
    """ "no pain on eye movement", "no hesitancy on reading": what is denied has no name here.

    But "no evidence of disc swelling", "no hint of ptosis": an "of" in front of the name says of what, and that is
    denied.
    """
    if node.main != "negation" or len(following) < 2:
        return False
    if following[1].text == "of" and (len(following) == 2 or following[2].main == "item"):
        return False
    return is_unknown(following[0]) and leads_on(following[1].mark)


def elsewhere(cell: Cell, node: Node, following: list[Node], *, sign: bool) -> Node | None:
    """ "on right gaze but not on left gaze", "none on left gaze": the direction in which a sign was not found.

    sign: of what is there or not; of anything else a side begins another reading ("absent on the left").
    """
    denied = node.main in ("except", "negation") or (node.main == "value" and node.mark.role("absent", "") is not None)
    after = next((n for n in following if n.main != "filler"), None)
    under = cell.side is not None or any(n.main == "qualifier" and n.text.startswith(_UNDER) for n in cell.modifiers)
    found = sign and under and not cell.values and not cell.negated  # "left tremor, none at rest"
    if found and cell.split and node.text in _NONE and after in _in_clause(following):
        return after  # "drift on the left, none with eyes open", "clonus on the left, none sustained"
    if denied and cell.split and after is not None and _is_direction(after):
        if found or any(n.main == "qualifier" for n in cell.modifiers):
            return after  # "postural, none at rest"
        if after.main == "qualifier":
            return None
    normal = any(n.mark.role("normal", "") for n in cell.values)  # "normal to imitation but not to command": two
    if denied and sign and cell.split and _at_an_unknown_place(following):
        return after  # "on left gaze, none in Frenzel's": not a word of what was named
    if not denied or normal or not any(map(_is_direction, cell.modifiers)):
        return None
    return after if after is not None and ((after.main == "side" and sign) or _is_direction(after)) else None


def _in_clause(following: list[Node]) -> list[Node]:
    """What follows up to the next break, where no place is named there."""
    clause = list(itertools.takewhile(lambda n: not n.is_break, following))
    return [] if any(n.main in _WHERE for n in clause) else clause


def _is_direction(node: Node) -> bool:
    """ "On left gaze", "to the left", "on line bisection": where the eyes look, in which test it was."""
    return node.main == "direction" or (node.main == "qualifier" and node.text.startswith(_WAYS))


def _at_an_unknown_place(following: list[Node]) -> bool:
    """A preposition with a word behind it that has no meaning here."""
    ahead = [n for n in following[:3] if n.text not in ("any", "the")]
    return len(ahead) > 1 and is_preposition(ahead[0].mark) and is_unknown(ahead[1])


def found_there(cell: Cell, node: Node, following: list[Node]) -> bool:
    """ "No nystagmus in primary gaze, a few beats on lateral gaze": behind a direction of its own it was there."""
    none = bool(cell.values) and all(v.mark.role("absent", "") for v in cell.values)
    denied = (cell.negated and not cell.values) or (none and not cell.negated)
    kind = node.mark.has("qualifier") and not node.text.startswith(_WAYS)  # "left beating" says of what kind it is
    ahead = list(itertools.takewhile(lambda n: not n.is_break or n.main == "conj", following))
    told = any(n.main in _HOW and not n.text.startswith(_WAYS) for n in ahead)
    if cell.affirmed and cell.split and told and node.main == "direction":
        return any(n.main == "direction" for n in cell.modifiers)  # "..., on left gaze a few beats to the left"
    behind = denied and cell.split and (kind or (told and node.main == "direction"))
    if any(n.text in ("or", "nor", "either") for n in ahead):
        return False  # the denial goes on: "no tremor at rest, postural or intention"
    placed = any(_is_direction(n) or n.main in ("side", "site") for n in (node, *ahead))
    return behind and placed and any(map(_is_direction, cell.modifiers))


def none_there(cell: Cell, node: Node, following: list[Node], *, sign: bool) -> bool:
    """ "On right gaze a few beats, on left gaze none": a direction behind a comma, and that nothing was found there."""
    after = next((n for n in following if n.main != "filler"), None)
    none = after is not None and after.main == "value" and after.mark.role("absent", "") is not None
    told = any(n.main == "direction" for n in cell.modifiers) and not (cell.negated or cell.values)
    return sign and node.main == "direction" and cell.split and none and told


def not_so(cell: Cell, node: Node, following: list[Node]) -> Node | None:
    """ "Brisk but not pathological", "bulky but not wasted": the word that was denied of what was found."""
    if node.main != "except" or not node.text.endswith(" not") or not following:
        return None
    word = following[0]
    found = word.main == "value" and word.mark.number is None and not word.mark.has("normal", "present", "absent")
    return word if found and not word.mark.has(*_UNDONE) else None


def end_denial(cell: Cell, node: Node, following: list[Node]) -> None:
    """ "No wasting, deviates to the right": a "no" takes nouns, and reaches no verb or adjective behind a comma.

    But "no wasting, weak or slow movements" goes on to its "or". What was denied before it is set aside as a detail.
    """
    if not (cell.negated and cell.split and cell.values) or cell.negation is None or cell.negation.text != "no":
        return
    if any(after.text in ("or", "nor") for after in following):
        return
    word = node.text.split()[0]
    plain = node.mark.number is None and node.mark.role("abnormal", "") is not None and node.text not in _NOUNS
    if word in _VERBS or plain:
        cell.detail.append(" ".join(["no", *(n.text for n in cell.values)]))
        cell.negated, cell.negation, cell.values = False, None, []


def keep_denied(cell: Cell, node: Node, denied: Node) -> None:
    """ "Bulky but not wasted": a detail of what was found, and left over where nothing was."""
    cell.detail.append(f"not {denied.text}")
    cell.nodes.extend((node, denied) if cell.values else ())


def only_this(nodes: list[Node]) -> None:
    """ "No wasting, only fasciculations": an "only" behind a denial and a comma is a "but"."""
    denied = False
    for comma, only in itertools.pairwise(nodes):
        denied = (denied or comma.main == "negation") and comma.main not in ("semicolon", "stop", "contrast")
        if denied and comma.main == "comma" and only.text in _BUTS and only.main == "filler":
            comma.main, only.main = "filler", "contrast"


def answer_no(nodes: list[Node]) -> None:
    """ "Neck stiff? No, supple.": a "no" with a comma behind it is an answer where what follows says how it was."""
    if len(nodes) < 3 or nodes[0].text != "no" or nodes[1].main != "comma" or nodes[0].main != "negation":
        return
    told = nodes[2]
    if told.mark.has("alone", "normal") or (told.main == "value" and told.mark.number is None):
        nodes[0].main = "filler"


def answered_behind(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Heliotrope rash no, skin normal", "rigidity: no", "tremor yes": an answer behind a sign between breaks."""
    for place in range(len(nodes) - 1, 0, -1):
        answer, end = nodes[place], nodes[place + 1 : place + 2]
        at = place - 2 if nodes[place - 1].main == "colon" and place > 1 else place - 1
        sign = nodes[at]
        presence = bool(sign.candidates) and all(items[name].kind == "presence" for name in sign.candidates)
        named = sign.main == "item" and (sign.sign or presence)
        named = named or (sign.main == "value" and sign.mark.has("sign"))
        between = (at == 0 or nodes[at - 1].is_break) and all(node.is_break for node in end)
        if answer.text not in _ANSWERS or not named or not between:
            continue
        if answer.text == "yes":
            answer.main, answer.mark = "value", answer.mark.only("present")
        elif answer.main == "negation":
            answer.mark = replace(answer.mark, start=sign.mark.end)  # a colon between them says nothing more
            nodes[at : place + 1] = [answer, sign]
            for comma in end:
                comma.main = "semicolon" if comma.main == "comma" else comma.main  # what follows is not denied


def answers_by_place(nodes: list[Node], items: Mapping[str, Item]) -> None:
    """ "Fasciculations: tongue no, arms yes", "Hoffmann neither side": there or not, each place with its answer."""
    named: tuple[str, ...] = ()
    if all(node.text not in _ANSWERS and node.text != "neither" for node in nodes):
        return
    for place in range(len(nodes)):
        node, before = nodes[place], nodes[place - 1] if place else None
        named = node.candidates if node.main == "item" else named
        sign = bool(named) and all(items[name].kind == "presence" for name in named)
        ends = all(after.is_break for after in nodes[place + 1 : place + 2])
        if not sign or before is None:
            continue
        if node.text == "yes" and before.text == "," and place > 1:
            before = nodes[place - 2]  # "in the arms, yes"
        if node.text in _ANSWERS and before.main in ("side", "site") and ends:
            node.main, node.mark = "value", node.mark.only(_ANSWERS[node.text])
        elif node.text == "neither" and [one.text for one in nodes[place + 1 : place + 2]] == ["side"]:
            side = nodes[place + 1]
            side.main, side.mark = "side", replace(side.mark, roles=(Role("side", key=Side.BOTH.value),))
            node.main, node.mark = "value", node.mark.only("absent")


def does_there(nodes: list[Node]) -> None:
    """ "Does not blink on the left, does on the right", "no tremor on the left, there is on the right": there it is.

    A clause of nothing but a side and such a verb takes back what the clause before it denies.
    """
    if all(node.text not in _AUXILIARIES for node in nodes):
        return
    breaks = [-1, *(at for at, node in enumerate(nodes) if node.is_break), len(nodes)]
    for (one, two), (_, end) in itertools.pairwise(itertools.pairwise(breaks)):
        before, clause = nodes[one + 1 : two], nodes[two + 1 : end]
        if not before and one > 0:  # ", but she does on the left"
            before = list(itertools.takewhile(lambda n: not n.is_break, reversed(nodes[:one])))[::-1]
        verbs = [node for node in clause if node.text in _AUXILIARIES]
        plain = all(node.main in ("side", "site", "filler", "severity") or node in verbs for node in clause)
        placed = sum(node.main == "side" for node in clause) or sum(node.main == "site" for node in clause)
        if len(verbs) != 1 or not plain or placed != 1:
            continue
        told = [node for node in before if node.main in ("value", "item")]
        if any(not _DENYING.isdisjoint(node.text.split()) for node in told):
            _turn(verbs[0], "negation", "not")  # of what one phrase denies: "does not react"
        elif told and any(node.main == "negation" or node.mark.role("absent", "") for node in before):
            _turn(verbs[0], "value", "present")


def gone_or_there(nodes: list[Node]) -> None:
    """ "The corneal is gone on the right and there on the left": present, in a clause of nothing else but a side."""
    for place, node in enumerate(nodes):
        if node.text != "there" or node.main != "filler":
            continue
        before = list(itertools.takewhile(lambda n: not n.is_break, reversed(nodes[:place])))
        after = list(itertools.takewhile(lambda n: not n.is_break, nodes[place + 1 :]))
        told = nodes[: place - len(before)]
        sides = sum(n.main == "side" for n in (*before, *after))
        plain = all(n.main in ("side", "filler") for n in (*before, *after)) and (not after or after[0].main == "side")
        if sides == 1 and plain and any(n.mark.role("absent", "") or n.mark.role("present", "") for n in told):
            _turn(node, "value", "present")


def _turn(node: Node, kind: str, text: str) -> None:
    node.main = kind
    node.mark = replace(node.mark, roles=(Role("present" if kind == "value" else kind),), text=text)
