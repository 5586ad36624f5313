"""Cranial nerves by number: ranges of them, lists of them, and a number as the title of what follows."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import LIMBS, Node, limb_of
from dictate.reading.phrases.numbers import ROMAN
from dictate.reading.tokens import Token

_HALVES = {"motor": "jaw_strength", "sensory": "facial_sensation", "sensation": "facial_sensation"}
_HALVES["sens"] = _HALVES["sensory"]
_STRENGTHS = frozenset({"strength", "power", "motor strength", "motor power"})
_FULL = frozenset({"full power", "full strength", "normal power", "normal strength"})
_MOVING = frozenset({"V", "VII", "XI", "XII"})
_MUSCLES = {"v": "jaw_strength", "vii": "facial_strength", "xi": "sternocleidomastoid", "xii": "tongue"}
_MODALITIES = frozenset({"light_touch", "pinprick", "temperature_sense"})
_NUMBERED = frozenset(word.upper() for word in ROMAN)
_NAMED = ("item", "sign", "alone")
_TO = {"-", "to", "through", "thru"}
_LINKS = {",", "/", "-", "&", "and"}


def by_nerve(marks: Sequence[Mark], tokens: Sequence[Token], items: Mapping[str, Item]) -> Sequence[Mark]:
    """ "VII: no weakness", "III/IV/VI: full", "I: not tested": numbers with a colon at the head of a sentence.

    The first becomes the heading of the cranial nerves; "I" alone names the sense of smell.
    """
    marks = _halves_of_fifth(_bare_ranges(_opened(marks, tokens), tokens, items), tokens)
    marks = _as_titles(marks, items)
    end = 0
    while end < len(marks) and (_is_roman(marks[end], tokens) or (end and marks[end].text in _LINKS)):
        end += 1
    if not end or end >= len(marks) or marks[end].text != ":" or marks[end - 1].text in _LINKS:
        return _beside_names(marks, tokens, items)
    first = marks[0]
    if end == 1 and first.text == "i":
        return [first.only("item", "smell"), *marks[1:]]
    text = " ".join(mark.text for mark in marks[:end])
    named = {role.item: role for mark in marks[:end] for role in mark.roles if role.kind == "item"}
    if len(named) > 1:
        return marks  # "V, VII: normal": two names
    roles = first.roles if end == 1 else tuple(named.values())
    title = Role("heading_part", key="cranial_nerves")
    moved = [_MUSCLES[mark.text] for mark in marks[:end] if mark.text in _MUSCLES]
    rest = _of_muscles(marks[end:], moved[0]) if len(moved) == 1 else marks[end:]
    return [Mark(first.start, marks[end - 1].end, (*roles, title), None, text), *rest]


def _opened(marks: Sequence[Mark], tokens: Sequence[Token]) -> Sequence[Mark]:
    """ "V: light touch intact": number and colon apart, where they are no part of the coma scale."""
    inner = marks[0].inner
    numbered = len(inner) > 1 and inner[-1].text == ":" and _is_roman(inner[0], tokens)
    return [*inner, *marks[1:]] if numbered and not marks[0].has("item") else marks


def _as_titles(marks: Sequence[Mark], items: Mapping[str, Item]) -> Sequence[Mark]:
    """ "CN XI: shrug 5/5", "V: light touch intact": a nerve in front of a name of its own is no more than a title.

    Touch and pain are the face's there, and not the body's.
    """
    lead = marks[0]
    plain = len(marks) > 1 and lead.text.upper() in _NUMBERED and marks[1].has("item")
    plain = plain and not any(mark.has("site") for mark in marks[1:])  # "V LT intact"
    if len(marks) < len(("V", ":", "LT")) or not (plain or marks[1].has("colon")):
        return marks
    own = {role.item for role in lead.roles if role.kind in ("item", "context") and role.item in items}
    senses = {role.item for mark in marks[1:] for role in mark.roles if role.kind in _NAMED} & _MODALITIES
    title = Role("heading_part", key="cranial_nerves")
    if senses and _HALVES["sensory"] in own:
        return [replace(lead, roles=(Role("site", key="face"),), text="face"), *marks[1:]]
    passed = ("colon", "normal", "abnormal", "filler", "side")
    first = [mark for mark in marks[1:] if not mark.has(*passed)][:1]  # "VII: N" names nothing more
    named = {role.item for mark in first for role in mark.roles if role.kind in _NAMED}
    numbered = lead.text.upper() in _NUMBERED or lead.text.upper().removeprefix("CN ") in _NUMBERED
    if numbered and named and {items[name].nerve for name in named} & {items[name].nerve for name in own}:
        return [replace(lead, roles=(title,)), *marks[1:]]
    return marks


def _of_muscles(marks: Sequence[Mark], item: str) -> list[Mark]:
    """ "V: no weakness", "XI: power 5/5": the strength of what the nerve moves, and of no limb."""
    parts = [part for mark in marks for part in (mark.inner or (mark,))]
    kinds = [next((r.kind for r in part.roles if r.item == "strength_all" and r.kind in _NAMED), "") for part in parts]
    sites = [limb_of(role.key) for part in parts if (role := part.role("site", "")) is not None]
    if not any(kinds) or any(site in LIMBS for site in sites):
        return list(marks)
    return [part.only(kind, item) if kind else part for part, kind in zip(parts, kinds, strict=True)]


def _halves_of_fifth(marks: Sequence[Mark], tokens: Sequence[Token]) -> Sequence[Mark]:
    """ "Trigeminal: motor normal, sensory reduced in V2": the parts of the nerve, and of no limb."""
    lead = [part for mark in marks[:2] for part in (mark.inner or (mark,))][:2]
    named = lead[0].role("item", _HALVES["sensory"]) or lead[0].role("context", _HALVES["sensory"])
    numbered = lead[0].text == "face" or (lead[0].text == "v" and _is_roman(lead[0], tokens))
    behind = lead[-1].has("colon", "comma") or (numbered and lead[-1].text in _HALVES)
    if not (named or numbered) or not behind:
        return marks
    told = [
        mark.only("item", _HALVES[mark.text]) if mark.text in _HALVES and not _of_sense(marks[at + 1 :]) else mark
        for at, mark in enumerate(marks)
    ]
    return told if lead[0].text == "face" else _of_muscles(told, _HALVES["motor"])


def _of_sense(after: Sequence[Mark]) -> bool:
    """ "Sensation to light touch": the sense has its own name behind the word."""
    named = [role.item for mark in after[1:2] for role in mark.roles if role.kind in _NAMED]
    return after[:1] != [] and after[0].text in ("to", "of", "for") and not _MODALITIES.isdisjoint(named)


def _bare_ranges(marks: Sequence[Mark], tokens: Sequence[Token], items: Collection[str]) -> Sequence[Mark]:
    """ "IX to XII normal", "CN: II-XII NAD": a range of nerves in Roman numbers, where a phrase begins."""
    result: list[Mark] = []
    place = 0
    while place < len(marks):
        opens = not place or marks[place - 1].has("colon", "comma", "semicolon", "stop")
        ends = [place + 1] if place + 1 < len(marks) and marks[place + 1].hyphened else [place + 2]
        ends = [end for end in ends if end < len(marks) and (end == place + 1 or marks[place + 1].text in _TO)]
        if opens and ends and _is_roman(marks[place], tokens) and _is_roman(marks[ends[0]], tokens):
            name = f"cranial_nerves_{ROMAN[marks[place].text]}_{ROMAN[marks[ends[0]].text]}"
            if name in items:
                text = " ".join(mark.text for mark in marks[place : ends[0] + 1])
                result.append(Mark(marks[place].start, marks[ends[0]].end, (Role("item", name),), None, text))
                place = ends[0] + 1
                continue
        result.append(marks[place])
        place += 1
    return result


def _beside_names(marks: Sequence[Mark], tokens: Sequence[Token], items: Mapping[str, Item]) -> Sequence[Mark]:
    """ "II VA 6/6", "IX/X palate up": numbers in front of a name of theirs say no more than it does: part of it."""
    result: list[Mark] = []
    place = 0
    while place < len(marks):
        end = place
        while end < len(marks) and (_is_number(marks[end], tokens) or (end > place and marks[end].text in _LINKS)):
            end += 1
        if end == place:
            result.append(marks[place])
            place += 1
            continue
        opens = not result or result[-1].has("comma", "semicolon", "stop", "colon")
        named = [items[r.item].nerve for r in marks[end].roles if r.item in items] if end < len(marks) else []
        nerves = {word.upper() for mark in marks[place:end] for word in mark.text.split()} - {"I"}
        if opens and any(nerves & {*nerve.replace("/", " ").split()} for nerve in named):
            result.append(replace(marks[end], start=marks[place].start))
            place = end + 1
            continue
        result.extend(marks[place:end])
        place = end
    return result


def _is_number(mark: Mark, tokens: Sequence[Token]) -> bool:
    """A Roman number, or "IX/X", that is not the name of what is examined already."""
    pair = mark.number is not None and all(is_roman(token) for token in tokens[mark.start : mark.end : 2])
    return (_is_roman(mark, tokens) or pair) and not mark.has("item")


def is_roman(token: Token) -> bool:
    """Whether it is a Roman number in capitals, up to twelve."""
    return token.lower in ROMAN and token.text.isupper()


def _is_roman(mark: Mark, tokens: Sequence[Token]) -> bool:
    return mark.text in ROMAN and tokens[mark.start].text.isupper()


def nerve_range(
    marks: list[Mark], place: int, tokens: Sequence[Token], items: Collection[str]
) -> tuple[Mark, int] | None:
    """ "cranial nerves two to twelve", "CN II-XII" as the blanket of that range."""
    mark = marks[place]
    if not any(r.kind == "heading" and r.key == "cranial_nerves" for r in mark.roles):
        return None
    after = place + 1
    after += after < len(marks) - 1 and marks[after].text == ","  # "cranial nerves, two to twelve, all fine"
    pair: tuple[int, int] | None = None
    if (
        after < len(marks)
        and (number := marks[after].number)
        and number.b is not None
        and number.op in {"to", "-", "->"}
    ):
        pair, end = (int(number.a), int(number.b)), after + 1
    else:
        found: list[int] = []
        end = after
        while end < len(marks) and len(found) < 2:
            text, own = marks[end].text, marks[end].number
            if own is not None and not own.op:
                found.append(int(own.a))
            elif _is_roman(marks[end], tokens):
                found.append(ROMAN[text])
            elif not (text in {"-", "through", "thru", "to"} and len(found) == 1):
                break
            end += 1
        pair = (found[0], found[1]) if len(found) == 2 else None
    if pair is None:
        return _nerve_list(marks, place, tokens)
    if not 1 <= pair[0] < pair[1] <= 12:
        return None
    name = f"cranial_nerves_{pair[0]}_{pair[1]}"
    role = Role("item", name) if name in items else Role("heading_part", key="cranial_nerves")
    text = " ".join(token.lower for token in tokens[mark.start : marks[end - 1].end])
    if role.kind == "heading_part":
        return Mark(mark.start, marks[end - 1].end, (role,), text=text), end
    return Mark(mark.start, marks[end - 1].end, (role, *(r for r in mark.roles if r.kind == "heading")), text=text), end


def _nerve_list(marks: list[Mark], place: int, tokens: Sequence[Token]) -> tuple[Mark, int] | None:
    """ "cranial nerves V and VII": some nerves are not the whole component."""
    end, last = place + 1, place
    while end < len(marks):
        mark = marks[end]
        if _is_roman(mark, tokens) or (mark.number is not None and not mark.number.op and 1 <= mark.number.a <= 12):
            last = end
        elif mark.text not in {",", "and", "/", "&"}:
            break
        end += 1
    if last == place:
        return None
    text = " ".join(token.lower for token in tokens[marks[place].start : marks[last].end])
    return Mark(marks[place].start, marks[last].end, (Role("heading_part", key="cranial_nerves"),), text=text), last + 1


def strength_of_nerve(nodes: Sequence[Node], items: Mapping[str, Item]) -> None:
    """ "Tongue midline; strength normal to both sides": in place, of the tongue and of no limb."""
    last: Node | None = None
    for place, node in enumerate(nodes):
        if node.main != "item":
            continue
        placed = any(n.main in ("site", "throughout", "number") for n in nodes[place + 1 :])
        if last is not None and node.text in _FULL and not placed and _moves(last, items):
            node.main, node.candidates = "value", ()
            node.mark = replace(node.mark, roles=(Role("normal"),))
        elif last is not None and node.text in _STRENGTHS and not placed and _moves(last, items):
            node.main, node.candidates = "filler", ()
        else:
            last = node


def _moves(node: Node, items: Mapping[str, Item]) -> bool:
    """Whether it is a part that a cranial nerve moves."""
    return any(items[name].nerve in _MOVING for name in node.candidates)
