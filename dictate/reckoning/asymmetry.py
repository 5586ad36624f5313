"""Reflexes whose sides differ, and weak muscles of both sides by root and nerve; no localisation."""

from __future__ import annotations

from collections.abc import Iterator

from dictate.catalogue import figures as words
from dictate.grammar import Grammar
from dictate.model import Component, Figure, Finding, Grade, Side, Status
from dictate.reckoning.rules import rule

SIDES = (Side.RIGHT, Side.LEFT)
MRC = "mrc"
SCALES = ("tendon_reflex", MRC)
SEGMENT_ORDER = "CTLS"
FEWEST = 2  # weak muscles before a table says more than their lines do; fewer only where both sides were graded

REFLEXES = rule(
    "reflexes, sides compared",
    formula="right and left grade of each reflex that differ",
    source="comparison of dictated grades; roots and nerves: Aids 2000 and teaching tables, named in the grammar",
    limits="states differences only; no verdict on which side is the abnormal one, no localisation",
    missing="one side only, a side not said, or a blanket: not compared; all equal: no figure",
)
STRENGTH = rule(
    "strength by root and nerve",
    formula="muscles below 5 on a side, or that differ, in the order of their roots with their nerve; then those of 5",
    source="grades as dictated; roots and nerves: Aids 2000 and innervation tables, named in the grammar",
    limits="a table to read from: books differ by a segment; no root, nerve or site of a lesion is claimed",
    missing="only muscles and sides that were dictated stand in it, no blanket is spread out; one muscle of one side, "
    "or nothing below 5: no figure",
)


def asymmetry_figures(findings: tuple[Finding, ...], grammar: Grammar) -> Iterator[Figure]:
    """Reflexes whose sides differ, then weak muscles of both sides by root and nerve."""
    yield from _reflexes(findings, grammar)
    yield from _strength(findings, grammar)


def _graded(
    findings: tuple[Finding, ...], grammar: Grammar, component: Component
) -> dict[str, dict[Side, tuple[str, int]]]:
    """Item → side → grade and place, in the order said; items said twice differently on a side are left out."""
    found: dict[str, dict[Side, tuple[str, int]]] = {}
    twice: set[str] = set()
    items = grammar.components[component].items
    for at, finding in enumerate(findings):
        item = items.get(finding.item)
        if finding.component is not component or item is None or item.blanket or item.scale not in SCALES:
            continue
        if finding.status is not Status.MEASURED or not isinstance(finding.value, Grade) or finding.site:
            continue
        if finding.value.grade not in grammar.scales[item.scale].grades:
            continue  # a grade that does not exist is asked about, not compared
        for side in SIDES if finding.side is Side.BOTH else (finding.side,):
            if side not in SIDES:
                continue
            by_side = found.setdefault(finding.item, {})
            if side in by_side and by_side[side][0] != finding.value.grade:
                twice.add(finding.item)
            by_side[side] = (finding.value.grade, at)
    return {name: by_side for name, by_side in found.items() if name not in twice}


def _reflexes(findings: tuple[Finding, ...], grammar: Grammar) -> Iterator[Figure]:
    parts, places = [], []
    for name, by_side in _graded(findings, grammar, Component.REFLEXES).items():
        if len(by_side) == 2 and by_side[Side.RIGHT][0] != by_side[Side.LEFT][0]:
            right, left = by_side[Side.RIGHT], by_side[Side.LEFT]
            roots = _roots(grammar, name, words.ROOTS_BEHIND)
            parts.append(
                words.REFLEX_PAIR.format(
                    reflex=_short(name, grammar),
                    right=_with_words(right, findings),
                    left=_with_words(left, findings),
                    roots=roots,
                )
            )
            places += [right[1], left[1]]
    if parts:
        yield REFLEXES.figure(words.REFLEXES_DIFFER.format(parts="; ".join(parts)), tuple(dict.fromkeys(places)))


def _with_words(graded: tuple[str, int], findings: tuple[Finding, ...]) -> str:
    """`1+ with reinforcement`: a grade with what was said of how it was had."""
    return " ".join((graded[0], *findings[graded[1]].detail))


def _strength(findings: tuple[Finding, ...], grammar: Grammar) -> Iterator[Figure]:
    """Weak muscles by root, and behind them the full ones, which say what is spared."""
    graded = _graded(findings, grammar, Component.MOTOR)
    scale = grammar.scales.get(MRC)
    normal = scale.normal if scale is not None else ()
    weak = [name for name, by_side in graded.items() if any(grade not in normal for grade, _ in by_side.values())]
    full = [name for name in graded if name not in weak]
    if len(weak) < FEWEST and not any(len(graded[name]) == 2 for name in weak):
        return
    rows = [
        f"{_roots(grammar, name, '{roots} ')}{_short(name, grammar)} {_grades(graded[name])}{_nerve(grammar, name)}"
        for name in _sorted(weak, grammar)
    ]
    names = [
        f"{_roots(grammar, one, '{roots} ')}{_short(one, grammar)} {_sides(graded[one])}"
        for one in _sorted(full, grammar)
    ]
    spared = words.STRENGTH_SPARED.format(names="; ".join(names)) if names else ""
    places = sorted({place for name in (*weak, *full) for _, place in graded[name].values()})
    yield STRENGTH.figure(words.STRENGTH_BY_ROOT.format(rows="; ".join(rows), spared=spared), tuple(places))


def _grades(by_side: dict[Side, tuple[str, int]]) -> str:
    """`right 4+ left 5`, `both 4`, `left 4-`."""
    grades = {side: by_side[side][0] for side in SIDES if side in by_side}
    if len(grades) == 2 and len(set(grades.values())) == 1:
        return words.BOTH_GRADES.format(grade=grades[Side.RIGHT])
    return " ".join(f"{words.SIDES[side]} {grade}" for side, grade in grades.items())


def _sides(by_side: dict[Side, tuple[str, int]]) -> str:
    return words.SIDES[Side.BOTH if len(by_side) == 2 else next(iter(by_side))]


def _short(name: str, grammar: Grammar) -> str:
    """The item's name without the movement in brackets."""
    return grammar.item(name).name.partition(" (")[0]


def _roots(grammar: Grammar, name: str, form: str) -> str:
    """`C5-6`, `L4-S1`, in the form given; empty when the grammar names none."""
    supply = grammar.item(name).supply
    if supply is None:
        return ""
    first, last = supply.roots[0], supply.roots[-1]
    short = last[1:] if last[0] == first[0] else last
    return form.format(roots=first if len(supply.roots) == 1 else f"{first}-{short}")


def _nerve(grammar: Grammar, name: str) -> str:
    supply = grammar.item(name).supply
    return "" if supply is None else f" ({supply.nerve})"


def _sorted(names: list[str], grammar: Grammar) -> list[str]:
    """By the chief root, else the first; muscles without roots last."""

    def order(name: str) -> tuple[int, int, str]:
        supply = grammar.item(name).supply
        if supply is None:
            return len(SEGMENT_ORDER), 0, name
        root = (supply.chief or supply.roots)[0]
        return SEGMENT_ORDER.find(root[0]), int(root[1:]), name

    return sorted(names, key=order)
