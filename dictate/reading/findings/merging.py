"""Drafts that say the same twice become one."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

from dictate.grammar import Grammar, Item, Scale
from dictate.model import Grade, Quantity, Side, Status, Text, number_text
from dictate.reading.findings.denied_lists import place_of_denials
from dictate.reading.findings.list_sides import side_of_company, side_of_list, whole_sides
from dictate.reading.findings.reassigning import (
    but_for_copies,
    limbs_apart,
    plain_regions,
    rated_not_rating,
    recalled_later,
)
from dictate.reading.statements.drafts import Draft
from dictate.reading.statements.weights import Statement

_PAIR = 3  # words from a number to its like: "five minus, five minus"


def merge_readings(drafts: list[Draft], items: dict[str, Item]) -> list[Draft]:
    """Readings of one statement that say the same twice, or one of which only adds the side to the other."""
    result: list[Draft] = []
    for draft in drafts:
        for earlier in result:
            if items[draft.item].positions or earlier.item != draft.item or earlier.site != draft.site:
                continue  # the same pulse lying and standing is two readings
            if earlier is result[-1] and _says_how(earlier, draft):
                earlier.spans.extend(draft.spans)
                earlier.detail.append(str(draft.value))
                break
            if earlier.status is not draft.status:
                continue
            same_side = earlier.side is draft.side or (draft.side is None and draft.status is Status.NORMAL)
            if same_side and (str(earlier.value) == str(draft.value) or draft.value is None):
                if _one_for_each_side(earlier, draft, items[draft.item]):
                    earlier.side = Side.BOTH
                earlier.spans.extend(draft.spans)
                if earlier.detail and draft.status is Status.ABSENT:  # "none straight ahead, ... none on left gaze"
                    earlier.detail = list(dict.fromkeys([*earlier.detail, *draft.detail]))
                break
            added = (
                earlier.side is None and not earlier.site and draft.side is not None and draft.status is Status.PRESENT
            )
            if added and items[draft.item].kind == "presence" and not _two_numbers(earlier, draft):
                _take_over(earlier, draft)
                break
        else:
            result.append(draft)
    return result


def _says_how(graded: Draft, told: Draft) -> bool:
    """ "Left deltoid 3+ (fatigable)": a word without a side of its own, behind the grade of one side."""
    plain = told.side is None and isinstance(told.value, Text) and told.status is Status.ABNORMAL
    return plain and graded.status is Status.MEASURED and isinstance(graded.value, Grade) and graded.side is not None


def _one_for_each_side(one: Draft, other: Draft, item: Item) -> bool:
    """ "Biceps 5 and 5", "quads five, five": the same number twice, of what everybody has two of."""
    measured = one.status is Status.MEASURED and other.value is not None and not (one.detail or other.detail)
    beside = 0 < other.anchor - one.anchor <= _PAIR
    return measured and beside and item.sided == "paired" and one.side is other.side is None


def _take_over(earlier: Draft, later: Draft) -> None:
    """The later words give the finding its side, and its value where it has none; a number said is not lost to a word.

    "Anisocoria of 1 mm, right larger": 1 mm, right.
    """
    earlier.side = later.side
    earlier.spans.extend(later.spans)
    earlier.detail = list(dict.fromkeys([*earlier.detail, *later.detail]))
    if isinstance(earlier.value, Quantity) and isinstance(later.value, Text):
        if later.value.words != "larger":
            earlier.detail.append(later.value.words)
    elif later.value is not None:
        earlier.value, earlier.unit = later.value, later.unit


def _two_numbers(one: Draft, other: Draft) -> bool:
    """ "1 mm in the light, 2 mm in the dark": two values, neither of which only names the other."""
    return isinstance(one.value, Quantity) and isinstance(other.value, Quantity)


def merge_denials(drafts: list[Draft], items: dict[str, Item]) -> list[Draft]:
    """ "no hemianopia or scotoma": denials of one item in one sentence are one finding."""
    kept: list[Draft] = []
    of_item: dict[str, list[Draft]] = defaultdict(list)
    for draft in drafts:
        earlier = of_item[draft.item]
        plain = (
            draft.status in (Status.NORMAL, Status.ABSENT) and draft.value is None and not items[draft.item].positions
        )
        same = next(
            (k for k in earlier if plain and (k.side, k.site, k.status) == (draft.side, draft.site, draft.status)),
            None,
        )
        repeated = next((k for k in earlier if _names_again(k, draft, items) or _denies_more(k, draft, items)), None)
        if repeated is not None:
            repeated.spans.extend(draft.spans)
            repeated.detail = list(dict.fromkeys([*repeated.detail, *draft.detail]))  # "no neurofibromas" besides
            continue
        bare = next((k for k in earlier if _only_named(k, draft, items)), None)
        if bare is not None:
            _take_over(bare, draft)
        elif same is not None and same.value is None:
            same.spans.extend(draft.spans)
            kinds = [*same.detail, *draft.detail] if same.detail and draft.detail else []
            same.detail = list(dict.fromkeys(kinds))  # denied without a kind is denied of all
        else:
            kept.append(draft)
            earlier.append(draft)
    return kept


def pair_like_neighbours(drafts: list[Draft], items: dict[str, Item], scales: dict[str, Scale]) -> None:
    """ "5/5 proximally, 5/4 at the wrist": where one pair is right/left, the others of the sentence are or may be."""
    paired = {items[draft.item].scale for draft in drafts if draft.paired}
    for draft in drafts:
        scale = scales.get(items[draft.item].scale)
        if scale is None or not draft.whole or draft.side is not None or items[draft.item].scale not in paired:
            continue
        grade, top = str(draft.value), number_text(scale.of or 0)
        if grade == top:
            draft.side = Side.BOTH
        else:
            draft.readings = (f"{grade} of {top}", f"right {grade}, left {top}")


def but_for(drafts: list[Draft], earlier: Sequence[Draft]) -> list[Draft]:
    """ "disoriented to time, otherwise oriented": of several items, not those just found to be otherwise."""
    told = {one.item for one in earlier if one.status is Status.ABNORMAL}
    kept = [one for one in drafts if one.status is not Status.NORMAL or one.item not in told]
    return kept or drafts


def in_order(drafts: list[Draft], order: tuple[Side, Side] | None, items: dict[str, Item]) -> list[Draft]:
    """Two numbers said as a pair, by the sides that the dictation declared for pairs ("Power L/R")."""
    if order is None:
        return drafts
    result: list[Draft] = []
    for draft in drafts:
        if draft.paired and draft.side is Side.BOTH:
            result += [replace(draft, side=side, spans=list(draft.spans), detail=list(draft.detail)) for side in order]
            continue
        whole = draft.whole and not draft.paired and draft.side is None and items[draft.item].sided != "never"
        if whole and (pair := _pair_of(draft, order)):
            result += pair  # "(R/L): biceps 4/5"
            continue
        if draft.paired and draft.side in order:
            draft.side = order[0] if draft.side is Side.RIGHT else order[1]
        result.append(draft)
    return result


def _pair_of(draft: Draft, order: tuple[Side, Side]) -> list[Draft]:
    grade = draft.value
    if not isinstance(grade, Grade) or not draft.maximum:
        return []
    jerk = grade.scale == "tendon_reflex" and draft.maximum.isdigit()
    signed = "+" if jerk and str(grade).endswith("+") else ""  # a jerk of 3 is written 3+
    values = (grade, Grade(scale=grade.scale, grade=draft.maximum + signed))
    spans, detail = draft.spans, draft.detail
    return [
        replace(draft, side=side, value=value, paired=True, whole=False, spans=list(spans), detail=list(detail))
        for side, value in zip(order, values, strict=True)
    ]


def merge_sentence(
    statements: Sequence[Statement], drafts: list[Draft], items: dict[str, Item], grammar: Grammar
) -> list[Draft]:
    """What a sentence gives as a whole: denials, pairs and sides that its statements share."""
    drafts = plain_regions(merge_denials(but_for_copies(limbs_apart(drafts, items)), items), items)
    rated_not_rating(drafts, items)
    recalled_later(drafts)
    pair_like_neighbours(drafts, items, grammar.scales)
    side_of_list(statements, drafts, items, grammar.scales, grammar.common.plurals)
    side_of_company(statements, drafts, items)
    place_of_denials(statements, drafts, items)
    whole_sides([node for statement in statements for node in statement.nodes], drafts, items)
    return drafts


def merge_repeats(drafts: list[Draft], items: dict[str, Item]) -> list[Draft]:
    """What was normal, absent or left out, said again without more, is the same finding, with both its words."""
    kept: list[Draft] = []
    said: dict[tuple[object, ...], Draft] = {}
    for draft in drafts:
        undone = draft.status is Status.NOT_EXAMINED
        plain = (undone or draft.status in (Status.NORMAL, Status.ABSENT)) and not (draft.value or draft.corrected)
        side = None if draft.side is Side.BOTH else draft.side  # "strong shoulder shrugs", and "symmetrical" besides
        key = (draft.item, side, draft.site, draft.status, tuple(draft.detail), draft.uncertain, draft.excepted)
        single = undone or not items[draft.item].blanket
        earlier = said.get(key) if plain and single and not items[draft.item].positions else None
        if earlier is not None:
            earlier.spans.extend(draft.spans)
            earlier.side = earlier.side or draft.side
            continue
        said[key] = draft
        kept.append(draft)
    return kept


def _names_again(earlier: Draft, later: Draft, items: dict[str, Item]) -> bool:
    """ "extinction on the left to double simultaneous stimulation": the second name adds nothing to the first."""
    return (
        earlier.item == later.item
        and items[later.item].kind == "presence"
        and not items[later.item].positions
        and earlier.status is later.status is Status.PRESENT
        and (later.side, later.site, later.value) == (None, "", None)
        and {*later.detail} <= {part.lower() for part in items[later.item].parts}
    )


def _denies_more(earlier: Draft, later: Draft, items: dict[str, Item]) -> bool:
    """ "slow but not dysarthric", "steppage right, no Trendelenburg": a denial besides does not make it normal."""
    return (
        earlier.item == later.item
        and later.site in ("", earlier.site)
        and later.side in (None, earlier.side)
        and items[later.item].kind in ("normality", "choice")
        and earlier.status is Status.ABNORMAL
        and later.status is Status.NORMAL
        and later.denial
    )


def _only_named(earlier: Draft, later: Draft, items: dict[str, Item]) -> bool:
    """ "anisocoria, left larger by a millimetre": the first only named what the second says."""
    return (
        earlier.item == later.item
        and items[later.item].kind == "presence"
        and not items[later.item].positions
        and earlier.status is later.status is Status.PRESENT
        and earlier.side is None
        and later.side is not None
        and not earlier.site
        and not later.site
        and not _two_numbers(earlier, later)
    )


def as_said_before(
    said: Sequence[Draft], name: str, items: dict[str, Item], spans: list[tuple[int, int]]
) -> list[Draft]:
    """ "Pinprick was the same": as the last findings, where they are of the same kind: each side's of a graded one."""
    last = said[-1] if said else None
    if last is None or items[name].kind != items[last.item].kind or items[last.item].blanket:
        return []
    worded = items[name].kind == "quantity" and last.status in (Status.NORMAL, Status.ABNORMAL)  # "slow", no count
    if not worded and (items[name].kind not in ("normality", "grade") or items[name].scale != items[last.item].scale):
        return []
    detail = [f"as {items[last.item].name}"]
    alike = [one for one in said if one.item == last.item]
    told = alike if len({(one.side, one.site) for one in alike}) == len(alike) else [last]
    return [replace(one, item=name, spans=[*one.spans, *spans], detail=detail, corrected=[]) for one in told]
