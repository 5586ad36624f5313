"""A limb or a side as a title: of its sentence ("LL R: ..."), or of those behind it ("Right arm. Tone normal.")."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from dictate.grammar import Item
from dictate.model import Component, Side
from dictate.reading.bare import WHOLE_SIDES
from dictate.reading.lexicon import Lexicon
from dictate.reading.marks import Mark
from dictate.reading.nodes import ITEM_VALUE_KINDS, LIMBS, VALUE_KINDS, Node, limb_of
from dictate.reading.tokens import Token

NAMING = ("item", "sign", "alone", "context")
_SAYS_NOTHING = ("filler", "comma", "stop", "colon")
_COMPONENTS = tuple(Component)
_TITLE = 7  # nodes of a limb, its side and a word on the order
_LEAD = 3  # a limb, a comma and what follows


@dataclass(frozen=True)
class LimbTitle:
    """The side and limb of a title, or the segment, and the tokens that said it; of an eye or ear, the organ.

    A side without a limb is of all that has sides: "On the right. Biceps jerk 3+. Knee jerk 4+."
    """

    side: Side | None
    site: str
    span: tuple[int, int]
    organ: str = ""
    part: str = ""  # the hand or foot, where only that was named


def limbs_in_force(
    sentences: Sequence[Sequence[Mark]], tokens: Sequence[Token], lexicon: Lexicon
) -> list[LimbTitle | None]:
    """For each sentence the limb whose title it stands under.

    Up to the next title all is of the limb that can be. Nobody says where the last limb ends ("Left leg. All five.
    Reflexes brisk."): there only what the earlier limbs were examined for too, and what follows the title directly.
    A body part, side or item of something else ends it for good, as does the end of its line. A limb behind a finding
    without a side is no title.
    """
    titles = [_title_of(sentence, lexicon.items) for sentence in sentences]
    last = max((at for at, title in enumerate(titles) if title is not None), default=-1)
    covered = limbs_of_items(lexicon.items) if last >= 0 else {}
    current: LimbTitle | None = None
    segment: LimbTitle | None = None  # "C8: finger flexion 5. Pinprick normal." to the end of its line
    alone = False
    earlier: set[Component] = set()  # what the limbs before were examined for
    here: set[Component] = set()
    found: list[LimbTitle | None] = []
    for at, sentence in enumerate(sentences):
        before = sentences[at - 1] if at else ()
        ended = not before or tokens[before[-1].end - 1].ends_line
        if titles[at] is not None and (current is not None or ended or not _lacks_side(before)):
            earlier |= here
            here, current = set(), titles[at]
            found.append(None)
        elif current is not None:
            said = _named(sentence, current, lexicon, covered)
            told = {min(one, key=_COMPONENTS.index) for one in said if one}  # "biceps": a muscle, then a jerk
            open_end = at > last and (
                any(mark.has("throughout") for mark in sentence)
                or (bool(here or earlier) and not all(one & (here | earlier) for one in said))
            )
            if not all(said) or open_end or _of_another(sentence, current):
                current = None
            elif at <= last or not here:
                here |= told
            found.append(current)
        else:
            segment = _segment_of(sentence) or (None if _of_whole(sentence, lexicon.items) else segment)
            found.append(segment)
        if sentence and tokens[sentence[-1].end - 1].ends_line:
            alone = titles[at] is not None or alone  # the title stood alone on its line, and holds for those below it
            current, segment = (current if alone else None), None
        alone = alone and current is not None
    return found


def says_nothing(mark: Mark) -> bool:
    """Whether it is punctuation, or a word that carries nothing."""
    return mark.has(*_SAYS_NOTHING)


def _title_of(sentence: Sequence[Mark], items: Mapping[str, Item]) -> LimbTitle | None:
    """A sentence of nothing but one side and one limb, or a side as a whole ("on the left", "right side reflexes")."""
    said = [part for mark in sentence for part in (mark.inner or (mark,)) if not says_nothing(part)]
    sides = {role.key for part in said if (role := part.role("side")) is not None}
    places = {role.key for part in said if (role := part.role("site", "")) is not None}
    sites = {limb_of(place) for place in places}
    span = (said[0].start, said[-1].end) if said else (0, 0)
    if sides in ({"left"}, {"right"}) and not sites and _of_whole_side(said, items):
        return LimbTitle(Side(sides.pop()), "", span)
    plain = all(part.has("side") or part.role("site", "") is not None for part in said)
    if not plain or len(sides) != 1 or len(sites) != 1 or not sides <= {"left", "right"} or not sites <= {*LIMBS}:
        return None
    return LimbTitle(Side(sides.pop()), sites.pop(), span, part=next(iter(places & {"hand", "foot"}), ""))


def _of_whole_side(said: Sequence[Mark], items: Mapping[str, Item]) -> bool:
    """ "On the right", "left side", "reflexes on the left": with nothing but the name of a whole beside it."""
    rest = [mark for mark in said if not mark.has("side")]
    wholes = all(
        mark.number is None and mark.has("item", "heading") and all(items[name].blanket for name in names_of(mark))
        for mark in rest
    )
    told = any(mark.text in WHOLE_SIDES or mark.text.startswith("on ") for mark in said)
    return len(said) - len(rest) == 1 and wholes and (told or bool(rest))


def _segment_of(sentence: Sequence[Mark]) -> LimbTitle | None:
    """ "C8:" in front of what was found in it."""
    role = sentence[0].role("dermatome") if len(sentence) > 1 and sentence[1].has("colon") else None
    return None if role is None else LimbTitle(None, role.key, (sentence[0].start, sentence[0].end))


def _of_whole(sentence: Sequence[Mark], items: Mapping[str, Item]) -> bool:
    """Whether it speaks of a whole component, or of all jerks: of no segment alone."""
    return any(all(items[name].blanket for name in names_of(mark)) for mark in sentence if mark.has(*NAMING))


def _lacks_side(sentence: Sequence[Mark]) -> bool:
    """ "Pinprick reduced. Left leg. Light touch normal.": the limb may belong to what was found before it."""
    found = any(mark.number is not None or mark.has(*VALUE_KINDS) for mark in sentence)
    return found and not any(mark.has("side") for mark in sentence)


def limbs_of_items(items: Mapping[str, Item]) -> dict[str, str]:
    """Item → the limb that it is of: its own, or that of the whole that covers it."""
    limbs: dict[str, str] = {name: item.limb for name, item in items.items() if item.limb}
    for item in items.values():
        limbs |= {part: item.limb for part in item.covers if item.limb}
    return limbs


def _named(
    sentence: Sequence[Mark], title: LimbTitle, lexicon: Lexicon, limbs: Mapping[str, str]
) -> list[set[Component]]:
    """For each name in the sentence the components of those items that it may name and that can be of this limb."""
    marks = [mark for mark in sentence if mark.has(*NAMING)]
    named = [{name for name in names_of(mark) if can_be_of(name, title, lexicon.items, limbs)} for mark in marks]
    here = {name for names in named for name in names}
    return [
        {lexicon.component[name] for name in names}
        for mark, names in zip(marks, named, strict=True)
        if names
        or not any(role.item in here and role.kind in ITEM_VALUE_KINDS for role in mark.roles)  # "plantar mute"
    ]


def names_of(mark: Mark) -> set[str]:
    """Items that the mark may name, it or its parts."""
    parts = (mark, *mark.inner)  # "plantar flexor" is a muscle, too
    return {role.item for part in parts for role in part.roles if role.kind in NAMING}


def can_be_of(name: str, title: LimbTitle, items: Mapping[str, Item], limbs: Mapping[str, str]) -> bool:
    """Whether the item can be of the limb. limbs: item → the limb that it is of."""
    if not title.site:
        return items[name].sided == "paired" or items[name].sited or items[name].kind == "grade"
    if name in limbs:
        return limbs[name] == title.site
    return items[name].sited or items[name].kind == "grade"


def _of_another(sentence: Sequence[Mark], title: LimbTitle) -> bool:
    """Another side, both, or a limb without its side: what is told is not of the title."""
    for mark in sentence:
        side, site = mark.role("side"), mark.role("site", "")
        if side is not None and side.key != title.side:
            return True
        limb = limb_of(site.key) if site is not None else ""
        if title.site and limb in LIMBS and limb != title.site:
            return True
    return False


def limb_then_side(nodes: list[Node]) -> tuple[Node, Node, int] | None:
    """ "LL R: ...", "Legs, left, same order: ..." at the head of a sentence: limb, side and where its colon stands."""
    colon = next((at for at, node in enumerate(nodes[:_TITLE]) if node.main == "colon"), 0)
    said = [node for node in nodes[:colon] if node.main not in ("comma", "filler")]
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
