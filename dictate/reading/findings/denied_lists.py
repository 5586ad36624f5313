"""A side or place said once behind a list of what is denied: "no tremor, rigidity or bradykinesia on the right"."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence

from dictate.grammar import Item
from dictate.model import Side
from dictate.reading.nodes import Node, limb_of
from dictate.reading.statements.drafts import Draft
from dictate.reading.statements.weights import Statement

_LEADING = ("filler", "side", "site")


def place_of_denials(statements: Sequence[Statement], drafts: Sequence[Draft], items: Mapping[str, Item]) -> None:
    """Give each denied finding of such a list the side and place behind its last name, as far as it can have them.

    None of the others has words of its own, and the list is of one sentence under one "no": what is not said to be
    absent everywhere is not written so.
    """
    for listed in _lists(statements):
        last = listed[-1]
        place = list(itertools.takewhile(lambda n: n.main in _LEADING, last.after))
        sides = [n for n in place if n.main == "side"]
        sites = [n for n in place if n.main == "site"]
        told = any(n.main not in ("filler", "comma", "conj") for one in listed[:-1] for n in one.after)
        if told or len(sides) > 1 or len(sites) > 1 or not (sides or sites):
            continue
        for draft in drafts:
            if any(_is_of(draft, one) for one in listed[:-1]) and draft.denial:
                _give(draft, sides, sites, items)


def _lists(statements: Sequence[Statement]) -> list[list[Statement]]:
    """Statements in a row that one negation denies."""
    found: list[list[Statement]] = []
    before: Node | None = None
    for statement in statements:
        denial = next((n for n in statement.before if n.main == "negation"), None)
        if denial is not None and denial is before:
            found[-1].append(statement)
        else:
            found.append([statement])
        before = denial
    return [listed for listed in found if len(listed) > 1]


def _is_of(draft: Draft, statement: Statement) -> bool:
    return any(start <= name.mark.start < end for name in statement.names for start, end in draft.spans)


def _give(draft: Draft, sides: Sequence[Node], sites: Sequence[Node], items: Mapping[str, Item]) -> None:
    item = items[draft.item]
    if draft.side is not None or draft.site:
        return
    site = sites[0].key("site") if sites else ""
    part = item.site_items.get(site) or item.site_items.get(limb_of(site))
    if sites and not (item.sited or part):
        return  # of another place than this can have: "no murmur or oedema at the ankles"
    if sides and item.sided == "never":
        return
    if part:
        draft.item = part
    elif sites:
        draft.site = site
    if sides:
        draft.side = Side(sides[0].key("side"))
    draft.spans.extend((n.mark.start, n.mark.end) for n in (*sides, *sites))
