"""What a statement speaks of, and which wider statement of another visit speaks for it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass

from dictate.catalogue import note as words
from dictate.grammar import Grammar, conditions_of, scale_named
from dictate.grammar.blankets import covers_item
from dictate.grammar.claims import SILENT
from dictate.grammar.walks import TRIALS, walk_of
from dictate.model import Examination, Finding, Grade, Position, Side, Status
from dictate.notes.field_picture import is_homonymous
from dictate.notes.phrases import (
    circumstances,
    deviates,
    hedge,
    is_blanket,
    is_midline,
    item_of,
    one_line,
    phrase,
    place,
    short_title,
    stands_out,
    statement,
    title,
)

JUDGED = (Status.NORMAL, Status.ABNORMAL, Status.PRESENT, Status.ABSENT)
SIDE_ORDER = (*words.SIDES, None)
POSITION_ORDER = (None, *words.POSITIONS)


@dataclass(frozen=True)
class Slot:
    """What a statement speaks of: an item or scale, where, in which position, when and under what."""

    item: str
    side: Side | None = None
    site: str = ""
    position: Position | None = None
    minutes: float | None = None
    scale: str = ""  # named, where the item stands for many
    condition: str = ""  # corrected, in the dark, reinforced: by the grammar's names


def slot_of(finding: Finding, side: Side | None, grammar: Grammar) -> Slot:
    """What the finding speaks of, for one of its sides."""
    return Slot(
        finding.item,
        side,
        finding.site,
        finding.position,
        finding.minutes,
        scale_named(finding, grammar),
        ", ".join(_conditions(finding, grammar)),
    )


def _conditions(finding: Finding, grammar: Grammar) -> list[str]:
    """What it was read under; the trials of a timed walk are all of one."""
    return [name for name in conditions_of(finding, grammar) if not (name in TRIALS and walk_of(finding) is not None)]


def is_direction(finding: Finding) -> bool:
    """Whether its side says where something turns, or which half of both fields: it is not that of one eye or limb."""
    return deviates(finding) or is_homonymous(finding)


def split_items(exams: Iterable[Examination]) -> set[str]:
    """Items of which one side was spoken of by itself: what was said of both is then said of each."""
    return {
        one.item
        for exam in exams
        for one in exam.findings
        if one.side in (Side.LEFT, Side.RIGHT) and not is_direction(one)
    }


def slot_name(slot: Slot, said: Sequence[Finding], grammar: Grammar) -> str:
    """The item with place, position and time; without a side that the words of all that was said hold themselves."""
    here = said[0].model_copy(update={"side": None if all(map(_tells_side, said)) else slot.side})
    name = short_title(here, grammar) if here.position else title(here, grammar)
    return " ".join(filter(None, (name, place(here), circumstances(here))))


def slot_text(finding: Finding, grammar: Grammar, *, wide: bool = False) -> str:
    """What a statement says beside that name; with its own words where it is wide: where it speaks of other items."""
    if _tells_side(finding):
        return phrase(finding.model_copy(update={"earlier": None}), grammar, with_circumstances=False)
    text = " ".join(filter(None, (hedge(finding, grammar), statement(finding, grammar))))
    if wide or is_blanket(grammar, finding):
        text += f", {words.AS_SAID.format(quote=one_line(finding.quote).strip(' ,.;:'))}"
    return text


def _tells_side(finding: Finding) -> bool:
    """Whether its words hold its side: `midline`, `deviates to the left`, `left homonymous hemianopia`."""
    return is_direction(finding) or is_midline(finding)


def cover(
    slot: Slot, said: Finding, other: Examination, grammar: Grammar, *, apart_from: Collection[int] = ()
) -> int | None:
    """Place of the other visit's statement that speaks for the slot: of the whole item, of a list, of a component.

    The last of these is the weakest: what becomes of a sign then is told apart (`beside_whole`).
    """
    best: tuple[int, int] | None = None
    for at, wide in enumerate(other.findings):
        rank = _cover_rank(slot, said, wide, grammar)
        if rank and at not in apart_from and (best is None or rank < best[0]):
            best = rank, at
    return None if best is None else best[1]


def _cover_rank(slot: Slot, said: Finding, wide: Finding, grammar: Grammar) -> int:
    """0: does not speak for it; 1: the whole item, 2: a list that names it, 3: its whole component."""
    item, same = item_of(grammar, wide.item), wide.item == slot.item
    straight = same and is_direction(said) and (wide.side, wide.status) == (Side.MIDLINE, Status.NORMAL)
    if straight:
        return 1
    if not (same or (item is not None and item.blanket)) or not covers_place(wide, slot, grammar):
        return 0
    plain = wide.status in (Status.NORMAL, Status.ABSENT) and not stands_out(wide, grammar)
    if same or item is None:
        return 1 if plain or wide.status in SILENT else 0
    if slot.item in item.covers or (item.covers and covers_item(wide, item, said, grammar)):
        graded = isinstance(wide.value, Grade) and _scale_of(grammar, slot.item) == wide.value.scale
        return 2 if plain or graded or wide.status in SILENT else 0
    if item.covers or wide.component is not said.component:
        return 0
    judged = said.status in (*JUDGED, Status.UNCHANGED) or isinstance(said.value, Grade)  # "normal" is no number
    spoken = plain and judged and covers_item(wide, item, said, grammar)
    return 3 if spoken or wide.status in SILENT else 0


def speaks_of_component(wide: Finding, grammar: Grammar) -> bool:
    """Whether it is of a component as a whole, and names none of its items."""
    item = item_of(grammar, wide.item)
    return item is not None and item.blanket and not item.covers


def covers_place(wide: Finding, slot: Slot, grammar: Grammar) -> bool:
    """Whether a statement without side or place speaks of this one; one with them speaks of the same only."""
    sides = wide.side is None or wide.side is slot.side or (wide.side is Side.BOTH and slot.side is not Side.MIDLINE)
    stance = wide.position is None or (wide.position, wide.minutes) == (slot.position, slot.minutes)
    if not (sides and stance and wide.site in ("", slot.site)):
        return False
    whole = slot_of(wide, wide.side, grammar)
    return whole.scale in ("", slot.scale) and whole.condition in ("", slot.condition)


def _scale_of(grammar: Grammar, item: str) -> str:
    known = item_of(grammar, item)
    return known.scale if known else ""


def what_differs(gone: list[Slot], come: list[Slot]) -> Iterator[str]:
    """In what the places of two visits differ: side, site, position, time."""
    for name, word in words.PLACE_PARTS.items():
        if {getattr(slot, name) for slot in gone} != {getattr(slot, name) for slot in come}:
            yield word


def place_order(slot: Slot) -> tuple[str, int, float, str, str, int]:
    """Where the rows of one item stand among each other."""
    minutes = -1.0 if slot.minutes is None else slot.minutes
    position = POSITION_ORDER.index(slot.position)
    return slot.scale, position, minutes, slot.condition, slot.site, SIDE_ORDER.index(slot.side)
