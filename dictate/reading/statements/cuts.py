"""Where one reading ends and the next begins inside a statement."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Sequence

from dictate.reading.nodes import Node, limb_of, wants_object
from dictate.reading.phrases.kinds import says_unable
from dictate.reading.phrases.lexicon import leads_on
from dictate.reading.statements.drafts import Cell

_PLACING = frozenset({"below", "above", "beyond", "distribution", "territory", "aspect", "border", "patch", "along"})
_CONCLUDING = frozenset({"so", "therefore", "hence", "thus", "ie", "i e"})
_ALL_OF_IT = frozenset(
    {"it is all normal", "all normal", "it was all normal", "that was all normal", "all of it normal"}
)
_VERDICTS = frozenset({"not positive", "negative", "positive"})
_LEADS = frozenset({"only", "is", "was", "are", "were", "seems", "looks", "feels", "remains"})
_DEGREES = frozenset({"milder", "worse", "less", "lesser", "albeit", "though", "possibly"})


def foreign(before: bool, node: Node, following: list[Node], cell: Cell, *, blanket: bool, named: bool) -> bool:
    """Whether what follows a word of unknown meaning is of something else than the statement's items.

    named: an item was named before ("a tremor of the right hand, and it stops when she taps with the left").
    """
    placing = node.text in _PLACING or not node.text.isalpha()
    if blanket and node.main in ("word", "talk") and len(node.text) > 1 and not placing:
        return True  # a word of unknown meaning: what follows may be of it, never of the whole component
    counted = node.main == "number" and cell.split and len(following) > 1 and leads_on(following[0].mark)
    if counted and any(is_unknown(n) for n in [n for n in following[1:] if n.main != "filler"][:1]):
        return True  # "three on recall and three on orienting", "one for the date"
    if node.text == "with" and cell.values and cell.side is not None and _of_another_side(following):
        return True  # "left ptosis with compensatory tilt to the right"
    if before and node.text in _ALL_OF_IT and not any(n.main != "stop" for n in following[:1]):
        return False  # "Sensation, I went through everything and it's all normal"
    if before:
        return blanket or not (node.main in ("comma", "semicolon") and bool(following) and following[0].main == "side")
    if _is_letter(node, following) and any(value.mark.number is not None for value in cell.values):
        return True  # "WE 4+ G 4", "IP 4+ Q 5": a letter that is short for another muscle
    told = cell.values or cell.negated or (cell.side is not None and named and node.text not in _DEGREES)
    if not (cell.split and told):
        return False
    if node.main == "number" and following and _is_code(node, following[0]):
        return True  # "TUG 12 s; 9HPT 24 s": a test that has no name here
    short = node.main == "word" and len(node.text) == len("he") and node.text.isalpha()
    if short and following and following[0].mark.number is not None:
        return True  # "KF 4/5 R, XY 5/5 R": a short name that is none here
    if node.main == "value" and says_unable(node.text):
        return any(is_unknown(n) for n in [n for n in following if n.main != "filler"][:1])  # "could not really relax"
    if node.main == "value" and node.mark.number is None and following:
        return is_unknown(following[0])  # "2/6 at five minutes and could not recite a list of six"
    apart = cell.negated and node.main == "site" and bool(following) and following[0].main in ("qualifier", "word")
    return apart or is_unknown(node)  # "no oedema, calves soft"


def _is_letter(node: Node, following: Sequence[Node]) -> bool:
    alone = node.main in ("word", "unit") and len(node.text) == 1 and node.text.isalpha() and node.text != "x"
    number = following[0].mark.number if following else None
    return alone and number is not None and not number.op and node.mark.end == following[0].mark.start


def _is_code(node: Node, after: Node) -> bool:
    return is_unknown(after) and after.mark.start == node.mark.end and after.main == "word"


def _of_another_side(following: list[Node]) -> bool:
    """A word of unknown meaning, and then a side, before the next break."""
    clause = list(itertools.takewhile(lambda node: not node.is_break, following))
    lead = list(itertools.takewhile(lambda node: node.main != "side", clause))
    return len(lead) < len(clause) and any(is_unknown(node) for node in lead)


def is_unknown(node: Node) -> bool:
    """A word that means nothing here."""
    return node.main in ("word", "talk") and len(node.text) > 2


def is_unknown_next(following: list[Node]) -> bool:
    """ "Left wall", "left is sparkling": a word of unknown meaning says how it was there."""
    told = following[1:] if following and following[0].text in _LEADS else following
    return bool(told) and is_unknown(told[0])


def leads_away(before: list[Node], node: Node, following: list[Node]) -> bool:
    """ "Droopy lid on that side, both react": behind a comma a side with an unknown word is of something else."""
    last = next((n for n in reversed(before) if n.main != "filler"), None)
    passed = ("site", "severity", "filler")  # "but the left arm tends to sink", "the left a little reluctant"
    behind = [n for n in following[:4] if n.main not in passed and n.text != "side"]
    return node.main == "side" and last is not None and last.is_break and bool(behind) and is_unknown(behind[0])


def site_next(following: list[Node]) -> bool:
    """A body site follows directly ("R arm and R face")."""
    after = next((n for n in following if n.main != "filler"), None)
    return after is not None and after.main == "site"


def side_next(following: list[Node]) -> bool:
    """A side follows directly ("mild left")."""
    after = next((n for n in following if n.main != "filler"), None)
    return after is not None and after.main == "side"


def value_next(following: list[Node]) -> bool:
    """A value comes before the next break."""
    for node in following:
        if node.main in ("value", "number", "negation"):
            return True
        if node.is_break or node.main == "side":
            return False
    return False


def of_the_rest(node: Node, following: list[Node]) -> bool:
    """ "Fails to abduct, otherwise full", "clonus, none elsewhere": a word for what is not the sign just named."""
    behind = node.main == "value" and bool(following) and following[0].main == "rest"
    if node.main != "rest" and not behind:
        return False
    value = node if behind else next((n for n in following if n.main in ("value", "number", "word")), None)
    return value is not None and value.mark.number is None


def counted_before_rest(cell: Cell, node: Node, following: list[Node]) -> bool:
    """ "Acuity 6/60, otherwise normal": what was measured is not what is normal."""
    counted = node.main == "rest" and any(n.mark.number is not None for n in cell.values)
    return counted and any(n.mark.role("normal", "") for n in following[:2])


def object_follows(node: Node, following: list[Node]) -> bool:
    """ "could not test the right shoulder": what was not tested is named after it, and is no item."""
    if not wants_object(node):
        return False
    after = next((n for n in following if n.main not in ("filler", "side")), None)
    return after is not None and after.main == "site"


def value_side_order(cells: list[Cell]) -> bool:
    """Whether earlier readings gave the value first and the side after it."""
    return any(c.values and c.side is not None and not c.side_first for c in cells[:-1])


def limbs_together(cell: Cell, node: Node) -> bool:
    """ "right arm and leg": one statement about a whole side."""
    if cell.site_node is None or not cell.links or cell.links[-1].mark.start < cell.site_node.mark.start:
        return False
    return {limb_of(cell.site_node.key("site")), limb_of(node.key("site"))} == {
        "upper_limb",
        "lower_limb",
    } and cell.side is not None


def concluded(sequence: list[tuple[Node, bool]]) -> tuple[list[tuple[Node, bool]], list[Node]]:
    """ "Romberg, sways a little but no step, so negative": the verdict stands; returns what it rests on apart.

    Only where the verdict ends what is said of one name.
    """
    said = [i for i, (node, _) in enumerate(sequence) if node.main != "stop"]
    names = [i for i, (_, is_name) in enumerate(sequence) if is_name]
    if len(said) < 4 or len(names) != 1 or names[0] != said[0]:
        return sequence, []
    link, verdict = sequence[said[-2]][0], sequence[said[-1]][0]
    settled = link.main in ("comma", "contrast") and verdict.text in _VERDICTS  # "a bit of sway, not positive"
    if not settled and not (link.text in _CONCLUDING and verdict.mark.has("absent", "present", "normal")):
        return sequence, []
    grounds = [node for node, _ in sequence[said[0] + 1 : said[-2]]]
    while grounds and grounds[0].main in ("comma", "colon"):
        grounds = grounds[1:]
    while grounds and grounds[-1].main in ("comma", "filler"):
        grounds = grounds[:-1]
    if any(node.main in ("side", "number") for node in grounds):
        return sequence, []  # of two sides, or measured: each keeps what was said of it
    return [*sequence[: said[0] + 1], *sequence[said[-1] :]], grounds


def starts_anew(cell: Cell, node: Node, following: list[Node]) -> bool:
    """ "rest tremor of the right hand, and none on the left": a further reading of what naming alone said."""
    over = (
        node.mark.number is not None and node.mark.number.op == "/"
    )  # "without glasses right 20/100, with them right"
    modified = not cell.values and cell.modifiers and cell.side is not None and (cell.split or not over)
    near = list(itertools.takewhile(lambda n: not n.is_break, following[:3]))
    rated = node.mark.number is not None and not cell.split and bool(near) and near[0].main == "side"
    if modified and any(n.main == "side" for n in near) and not rated:  # "postural tremor right 1 left 0"
        return True  # "sustained clonus right ankle, three beats left"
    told = bool(cell.modifiers) and not cell.values and cell.split and cell.site_node is not None
    if told and node.mark.number is None and place_follows(following, sides=True):
        return True  # "coarse in the right hand and fine in the left hand"
    counted = any(n.mark.number is not None for n in cell.values)
    if counted and node.mark.number is None and node.mark.has("absent"):
        return bool(following) and following[0].main == "side"  # "two beats none on the right"
    if counted and cell.split and cell.side is None and node.mark.role("normal", ""):
        clause = itertools.takewhile(lambda n: not n.is_break, following)
        return any(n.main == "side" for n in clause)  # "Ashworth 2, and normal in the left leg"
    if not cell.values and cell.side is not None and node.mark.has("absent", "present"):
        if cell.split and cell.site_node is not None and site_next(following):
            return True  # "fasciculations in the left quadriceps, none in the tongue"
        clause = itertools.takewhile(lambda n: not n.is_break, following)
        if cell.split and node.text in ("none", "nil") and any(n.main == "side" for n in clause):
            return True  # "on the right, none sustained on the left"
        # "drift on the right none on the left", and not "biceps right absent left brisk"
        return side_next(following) and not value_next(following[1:])
    if cell.values and cell.site_node is not None and node.mark.number is None and place_follows(following):
        return True  # "absent at the toes reduced at the ankles"
    if not cell.split or (cell.side is None and cell.site_node is None):
        return False
    for after in following:
        if after.main in ("side", "site", "dermatome"):
            return True
        if after.is_break or after.main in ("value", "number"):
            return False
    return False


def decides_name(said: list[Node], node: Node, cell: Cell) -> bool:
    """ "facial droop absent": the word decides the sign just named."""
    if cell.side is not None and cell.split:
        return False
    return (
        all(n.mark.number is None and (n.main == "item" or _is_sign(n)) for n in said)
        and node.mark.number is None
        and node.mark.has("absent", "present", "not_examined", "not_assessable", "unchanged")
    )


def _is_sign(value: Node) -> bool:
    """ "Heel shin ataxia is present": a word of certain items only, for what was found."""
    roles = value.mark.roles
    return value.main == "value" and all(r.item for r in roles) and value.mark.has("abnormal", "sign")


def place_follows(following: list[Node], *, sides: bool = False) -> bool:
    """A further site comes before the next break or value."""
    for after in following:
        if after.main in ("site", "dermatome") or (sides and after.main == "side"):
            return True
        if after.is_break or after.main in ("value", "number", "negation"):
            return False
    return False


def speaks_of_another(after: list[Node]) -> bool:
    """ "positive Patrick's", "trouble with this": the word before says it of something that has no name here."""
    if after and is_unknown(after[0]):
        return True
    return [n.text for n in after[:2]] in (["with", "this"], ["with", "that"])


def own_nodes(after: list[Node], accepts: Callable[[Node], bool]) -> list[Node]:
    """Nodes up to a semicolon behind which a number stands that the statement cannot have.

    "Knee right four plus with ten beats of clonus; left two plus": the left is of the knee again.
    """
    for place, node in enumerate(after):
        if node.main == "number" and not accepts(node):
            breaks = [i for i, n in enumerate(after[:place]) if n.main == "semicolon"]
            told = breaks and any(n.main == "value" and accepts(n) for n in after[breaks[-1] : place])
            return after[: breaks[-1]] if breaks and not told else after
    return after


def behind_exception(cells: list[Cell], names: Sequence[Node]) -> list[Cell]:
    """ "Everything was normal except the gait": the normal before it is of nobody knows what, and not of the gait."""
    named = (
        i for i, cell in enumerate(cells) if cell.excepted and any(n is name for n in cell.nodes for name in names)
    )
    return cells[next(named, 0) :]


def told_behind_side(cell: Cell) -> bool:
    """ "R moderate, L mild": how it was on this side stands behind the side."""
    side = next((n for n in reversed(cell.nodes) if n.main == "side"), None)
    return side is not None and any(n.main == "severity" and n.mark.start > side.mark.start for n in cell.modifiers)
