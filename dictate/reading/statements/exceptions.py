"""Exceptions from what was said: which statements they reach, and what an exception without words of its own says."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from dictate.reading.nodes import Node
from dictate.reading.statements.weights import Statement, Weigher

_SOFTENED = ("except", "filler", "hedge", "severity")


class Exceptions:
    """Marks the statements of a sentence that are exceptions."""

    def __init__(self, weights: Weigher) -> None:
        self.weights = weights

    def mark(self, statements: Sequence[Statement]) -> None:
        """Mark, in place, every statement behind an "except"."""
        excepted = False
        for one, two in itertools.pairwise(statements):
            _pass_on(one, two)
            self._not_so(one, two)
        for statement in statements:
            excepted = excepted or any(n.main == "except" for n in statement.before)
            statement.excepted = excepted
            excepted = excepted or any(n.main == "except" for n in statement.after)

    def _not_so(self, one: Statement, two: Statement) -> None:
        """ "Cranial nerves unremarkable except for the hearing": it was not so, as behind "everything was normal"."""
        link = [n for n in (*one.after, *two.before) if n.main != "filler"]
        told = [n for n in link if n.main == "value"]
        at = next((i for i, n in enumerate(link) if n.main == "except"), 0)
        own = any(self.weights.is_value(n) or n.main == "negation" for n in (*link[at:], *two.after))
        plain = bool(told) and told[-1] is link[at - 1] and told[-1].mark.role("normal", "") is not None
        if not at or own or not plain or not one.names or self.weights.satisfied_alone(two):
            return
        if all(n.main in ("except", "side", "site") for n in link[at:]):
            two.before[:0] = [told[-1], *(n for n in one.after if n.main == "except")]


def _pass_on(one: Statement, two: Statement) -> None:
    """ "Apart from maybe a bit of | weakness": how sure and how much it was is told of the exception."""
    place = next((i for i, n in enumerate(one.after) if n.main == "except"), len(one.after))
    tail: list[Node] = one.after[place:]
    if any(n.main in ("hedge", "severity") for n in tail) and all(n.main in _SOFTENED for n in tail):
        two.before[:0] = tail
        del one.after[place:]
