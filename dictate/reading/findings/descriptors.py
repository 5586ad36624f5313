"""The value written for words: a named one, a grade, or the descriptor as said."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from dictate.grammar import Item
from dictate.model import Grade, Side, Status, Text, Value
from dictate.reading.cells.measures import MISSES, in_full, modifiers
from dictate.reading.marks import Role
from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import INABILITY, Meaning, choice_value, says_unable
from dictate.reading.statements.drafts import Cell

EXTREMES = ("absent", "lost", "abolished", "gone")  # what is not so may still be less than normal
_LINKS = re.compile(r" (?:of|at|in)$")  # "wasting of the right half", "down at the feet"
_SPINAL = re.compile(r"[ctls]\d{1,2}")
_PAIRS = ((Status.NORMAL, Status.ABNORMAL), (Status.PRESENT, Status.ABSENT))
OPPOSITES = {one: two for pair in _PAIRS for one, two in (pair, pair[::-1])}
_VIEWED = frozenset({"seen", "visible", "visualised", "visualized", "viewed"})
_OUT_OF_VIEW = frozenset({"not seen", "not visible"})
_DENIED = ("absent", "negative")  # at the end of a name
Said = tuple[Status, Value | None, str]  # what one word gives: status, fixed value, descriptor


def descriptor(
    name: str,
    item: Item,
    said: list[tuple[tuple[Status, Value | None, str], Node]],
    status: Status,
    cell: Cell,
    numbers: list[Node],
) -> Value | None:
    """The value written: a named one, a grade, or the descriptor as said."""
    fixed = [k[1] for k, _ in said if k[1] is not None and k[0] is status]
    if status in (Status.NORMAL, Status.ABSENT, Status.UNCHANGED):
        return fixed[0] if fixed else None
    if fixed and len(said) == 1 and not cell.modifiers and not numbers:
        return fixed[0]
    if fixed and (item.kind == "grade" or status is Status.MEASURED):
        return fixed[0]
    pieces: list[tuple[int, str]] = []
    for (_, value, words), node in said:
        text = str(value) if value is not None else _LINKS.sub("", words)
        text = "positive" if text in ("+", "+ ve", "pos") else text
        if text and not (text == "positive" and len(said) > 1):
            pieces.append((node.mark.start, text))
    pieces += [(n.mark.start, in_full(n)) for n in modifiers(name, cell)]
    for node in numbers:
        unit = cell.units.get(id(node))
        count = node.mark.number
        digits = (
            node.text if count is None else f"{count.first}/{count.second}" if count.op in ("of", "/") else count.first
        )
        pieces.append((node.mark.start, f"{digits} {unit.text}" if unit is not None else digits))
    pieces = with_links(sorted(pieces), cell)
    text = _count_first(" ".join(dict.fromkeys(words for _, words in pieces)))
    if not text:
        return None
    return fixed[0] if fixed and text == str(fixed[0]) else Text(words=text)


def _count_first(text: str) -> str:
    """ "2 errors 5" (two errors out of five) and "errors 1/5" as "2/5 errors", "1/5 errors"."""
    missed = "|".join(sorted(MISSES))
    text = re.sub(rf"^(\d+) ({missed}) (\d+)$", r"\1/\3 \2", text)
    return re.sub(rf"^({missed}) (\d+(?:/\d+)?)$", r"\2 \1", text)


def contrary(meaning: Meaning, words: str, named: Sequence[Node], item: Item, cell: Cell) -> Meaning | None:
    """What "except" says of the place behind it, where nothing else is said: that what was found is not so there.

    "No tremor except in the left hand": present; "power five except the left hand": not 5. None: what is so cannot be
    told from what is not ("absent except at the knees"), unless it is flatly denied ("reduced in V1 but not V3").
    """
    flat, task = cell.denying, item.task and cell.denying and not cell.values
    if meaning.status is Status.PRESENT and meaning.value is None and not words:
        return Meaning(None, Status.ABSENT)  # "drift of the arms except the left"
    if flat and isinstance(meaning.value, Grade) and meaning.value.grade == "0":
        return Meaning(None, Status.PRESENT)
    if flat and meaning.status in (Status.ABNORMAL, Status.PRESENT) and str(meaning.value) not in EXTREMES:
        return Meaning(None, Status.NORMAL if meaning.status is Status.ABNORMAL else Status.ABSENT)
    if meaning.status is Status.ABSENT:
        return Meaning(Text(words=words) if words else None, Status.PRESENT)
    if meaning.status is Status.NORMAL:
        signs = [node.text for node in named if node.sign]
        if item.blanket and not signs and cell.side is None and cell.site_node is None:
            return None  # "normal other than a healed scar": of which item, nobody knows
        return Meaning(
            Text(words=" ".join(filter(None, [words, *(signs or ["unable" if task else "not normal"])]))),
            Status.ABNORMAL,
        )
    if isinstance(meaning.value, Grade):
        return Meaning(Text(words=f"not {meaning.value}"), Status.ABNORMAL)
    return None


def of_faculty(item: Item, meaning: Meaning | None, named: Sequence[Node], plain: Sequence[Node]) -> Meaning | None:
    """ "No abduction of the left eye": what fails is named and not the sign, so that its absence is the sign.

    None: it was named, and nothing said of it.
    """
    if meaning is None or not item.faculties or not all(node.text in item.faculties for node in named):
        return meaning
    denied = any(node.mark.role("absent", "") for node in plain)
    if meaning.status is Status.ABSENT and (denied or not plain):
        return Meaning(Text(words="absent"), Status.PRESENT)
    if meaning.status is Status.PRESENT and meaning.value is None and all(n.mark.has("present") for n in plain):
        return Meaning(None, Status.ABSENT) if plain else None
    return meaning


def denies_behind(cell: Cell) -> bool:
    """ "..., not very consistent": a "not" behind what was named, or without a name."""
    denial = cell.negation
    if denial is None or denial.text != "not":
        return False
    return not any(n.main == "item" and n.mark.start > denial.mark.start for n in cell.nodes)


def with_links(pieces: list[tuple[int, str]], cell: Cell) -> list[tuple[int, str]]:
    """Descriptors with the "and" that joins two of them."""
    links = [n.mark.start for n in cell.links]
    joined: list[tuple[int, str]] = []
    for one, two in zip(pieces, [*pieces[1:], (10**9, "")][: len(pieces)], strict=True):
        joined.append(one)
        if two[1] and any(one[0] < at < two[0] for at in links):
            joined.append((one[0], "and"))
    return joined


def overall(statuses: list[Status]) -> Status:
    """The status that several words of one reading give together: the most telling one."""
    for status in (
        Status.MEASURED,
        Status.ABNORMAL,
        Status.ABSENT,
        Status.PRESENT,
        Status.NORMAL,
        Status.UNCHANGED,
    ):
        if status in statuses:
            return status
    return statuses[0]


def of_the_body(item: Item, cell: Cell) -> bool:
    """ "V1 to V3 normal, C5 reduced": what was found at a segment of the spine is no nerve's of the head."""
    return bool(item.nerve) and cell.site_node is not None and bool(_SPINAL.fullmatch(cell.site_node.key("dermatome")))


def named_between(cell: Cell, value: Node) -> bool:
    """ "No truncal ataxia, sits unsupported": the "no" is of the name, and the words behind it say the same."""
    start = cell.negation.mark.start if cell.negation is not None else value.mark.start
    return any(n.main == "item" and start < n.mark.start < value.mark.start for n in cell.nodes)


def denied_sign(name: str, item: Item, others: Sequence[Node]) -> bool:
    """ "Gowers sign negative", "facial droop none": the sign is denied by a word after it."""
    if item.kind == "presence":
        return False
    signs = [
        n
        for n in others
        if (n.main == "item" and any(r.kind in ("sign", "alone") and r.item == name for r in n.mark.roles))
        or (n.main == "value" and all(r.item for r in n.mark.roles) and n.mark.role("abnormal", name))
    ]
    rest = [n for n in others if not any(n is sign for sign in signs)]
    return bool(signs) and any(n.mark.role("absent", "") or n.mark.role("normal", "") for n in rest)


def denied_there(item: Item, cell: Cell) -> bool:
    """ "No bruit on the right, I didn't listen elsewhere": denied of a place, and what was left out is another."""
    placed = cell.side is not None or cell.site_node is not None
    led = cell.negation is not None and cell.negation.text == "no" and cell.negation is cell.nodes[0]
    return item.kind == "presence" and placed and led


def unseen(name: str, item: Item, words: Sequence[Node], *, negated: bool = False) -> bool:
    """ "Palate not seen": what everybody has was not in view; a sign that was not seen is not there."""
    told = item.negated not in ("", "unclear") or any(n.main == "item" for n in words)
    if item.kind != "normality" or item.blanket or told:
        return False
    if negated and any(n.text in _VIEWED for n in words):
        return True  # "neither fundus could be seen"
    return any(n.text in _OUT_OF_VIEW and n.mark.role("absent", "") and not n.value_roles(name) for n in words)


def of_signs(
    meaning: Meaning, cell: Cell, named: Sequence[Node], signs: Sequence[Node], plain: Sequence[Node]
) -> Meaning:
    """ "Past pointing on the right, none on the left": normal there. "Wasting, obvious in the hand": abnormal.

    signs: the names but those that say normal by themselves. plain: the words that are no names.
    """
    gone = meaning.status is Status.ABNORMAL and str(meaning.value) == "absent"
    if gone and cell.spared:
        return Meaning(None, Status.NORMAL)
    if not named or len(signs) != len(named):
        return meaning
    told = all(n.sign for n in signs)
    if gone and told and plain:
        return Meaning(None, Status.NORMAL)
    shown = told and bool(plain) and all(n.mark.role("present", "") for n in plain)
    if meaning.status is Status.NORMAL and shown and not cell.negated:
        return Meaning(Text(words=named[0].text), Status.ABNORMAL)
    return meaning


def found_here(
    name: str, item: Item, named: Sequence[Node], plain: Sequence[Node], meanings: Callable[[str], set[Role]]
) -> Meaning | None:
    """ "Babinski sign: present left", "Babinski absent on the right and present on the left": as "Babinski present".

    meanings: everything that a phrase can be. None: no such sign, or it is not found here.
    """
    if len(named) != 1 or not plain or not all(n.mark.role("present", "") for n in plain):
        return None
    words = named[0].text.split()
    words = words[:-1] if words[-1] in _DENIED else words
    short = words[:-1] if words[-1:] == ["sign"] else words
    roles = {role for said in (words, short) for role in meanings(" ".join([*said, "present"]))}
    key = next((role.key for role in sorted(roles, key=str) if (role.kind, role.item) == ("value", name)), "")
    if not key:
        return None
    return Meaning(choice_value(key, item.values[key].value, item.kind), Status(item.values[key].status))


def equal_ahead(words: Sequence[Node], cell: Cell) -> bool:
    """ "Symmetric ptosis", and not "ptosis: equal": the word describes what was found. True where no such word is."""
    named = next((n.mark.start for n in cell.nodes if n.main == "item"), 0)
    return all(n.mark.start < named for n in words if n.mark.has("equal"))


def missed(item: Item, cell: Cell, numbers: Sequence[Node]) -> bool:
    """ "Could not recall two of the three words": what was not done is no score."""
    if item.kind not in ("score", "normality") or not numbers:
        return False
    if item.task:  # "cannot tandem more than two steps"
        return any(n.main == "item" and n.sign and says_unable(n.text) for n in cell.nodes)
    before = [n for n in cell.nodes if n.mark.start < numbers[0].mark.start]
    return any(n.text in INABILITY for n in before)


def one_of_two(item: Item, words: Sequence[Node], side: Side | None) -> bool:
    """ "Right pupil larger; left normal": a normal one says nothing of how two compare."""
    compared = item.kind == "presence" and not item.alone and "equal" in item.values
    return compared and side in (Side.LEFT, Side.RIGHT) and all(n.mark.role("normal", "") for n in words)


def tells_no_other(item: Item, value: Value | None) -> bool:
    """ "Not absent", "withdraws on the right and not on the left": what was denied says nothing of how it was."""
    return str(value) in EXTREMES or (item.kind == "choice" and item.negated == "unclear")


def denied_status(item: Item, status: Status, value: Value | None, *, itself: bool) -> tuple[Status, Value | None]:
    """What is left of a status that is denied. itself: the name of the sign was the word for it."""
    if status is Status.MEASURED:
        return Status.PRESENT, None  # "the knee jerk is not absent"
    flipped = OPPOSITES.get(status, status)
    if item.kind == "presence" and status is Status.PRESENT:
        return Status.ABSENT, None
    if flipped is Status.ABNORMAL:
        gone = itself or str(value) == "present"  # "blinks to threat on the left and not on the right"
        return flipped, Text(words="absent" if gone else "not normal")
    return flipped, None
