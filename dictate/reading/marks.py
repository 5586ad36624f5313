"""Marks: what the words of a statement may mean, before it is decided."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from dictate.model.values import number_text


@dataclass(frozen=True, slots=True)
class Role:
    """One thing a phrase can be: a name of an item, a side, a word for normal ..."""

    kind: str
    item: str = ""  # the item it belongs to; empty: any
    key: str = ""  # side, site, position, unit, value name, component


@dataclass(frozen=True, slots=True)
class Number:
    """A number phrase as said: one number with its sign, or two joined by `op`."""

    a: float
    a_sign: str = ""  # "+", "-" or ""
    # "/" over, "of" out of, "->" going to, "to" a range or a change, "ft" feet and inches, "st" stones and pounds,
    # "m" metres and centimetres, "logmar" an acuity
    op: str = ""
    b: float | None = None
    b_sign: str = ""
    then: tuple[float, float] | None = None  # "4/4 decreasing to 2/2"
    mark: str = ""  # the T of an untestable part
    palpable: bool = False
    tens: float = 0.0  # what a mishearing may have added ("160 to over" = 162)

    @property
    def first(self) -> str:
        """The first number with its sign."""
        return number_text(self.a) + self.a_sign + self.mark

    @property
    def second(self) -> str:
        """The second number with its sign."""
        return "" if self.b is None else number_text(self.b) + self.b_sign


@dataclass(frozen=True, slots=True)
class Mark:
    """Tokens start..end-1 and what they may mean."""

    start: int
    end: int
    roles: tuple[Role, ...]
    number: Number | None = None
    text: str = ""
    hyphened: bool = False  # a hyphen joins it to the mark before
    inner: tuple[Mark, ...] = ()  # what it falls into when it is not a name here ("left arm" of a stroke scale)

    def only(self, kind: str, item: str = "") -> Mark:
        """The same words, which can be this alone."""
        return Mark(self.start, self.end, (Role(kind, item),), None, self.text)

    def part(self, begin: int, end: int, meanings: Callable[[str], set[Role]]) -> Mark:
        """Its words begin..end-1 by themselves; of a mark whose tokens are its words."""
        text = " ".join(self.text.split()[begin:end])
        roles = sorted(meanings(text), key=lambda role: (role.kind, role.item, role.key))
        return Mark(self.start + begin, self.start + end, tuple(roles), None, text)

    @property
    def is_grade(self) -> bool:
        """A number that can be a grade: one digit, alone or out of five."""
        number = self.number
        return number is not None and number.a < 10 and (number.b is None or number.b < 10)

    def role(self, kind: str, item: str | None = None) -> Role | None:
        """The first role of that kind (of that item, when one is given)."""
        for role in self.roles:
            if role.kind == kind and (item is None or role.item == item):
                return role
        return None

    def has(self, *kinds: str) -> bool:
        """Whether it can be any of these."""
        for role in self.roles:  # noqa: SIM110 - asked for every mark by every pass: any() takes twice as long
            if role.kind in kinds:
                return True
        return False
