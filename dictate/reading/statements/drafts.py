"""Draft: a finding while it is being put together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from dictate.model import Position, Side, Status, Value
from dictate.reading.nodes import Node
from dictate.reading.statements.weights import Statement
from dictate.reading.titles.walk import LimbTitle

AS_OTHER = "as on the other side"  # detail of a finding copied from it


@dataclass(slots=True)
class Cell:
    """Words of one statement that make one reading: at most one value an item, one side, one site."""

    side: Side | None = None
    side_first: bool = False  # the side came before the value
    site_node: Node | None = None
    site: str = ""  # a site that stands inside the name ("ankle clonus")
    values: list[Node] = field(default_factory=list)
    negated: bool = False
    negation: Node | None = None
    hedged: bool = False
    modifiers: list[Node] = field(default_factory=list)  # severity and qualifiers
    units: dict[int, Node] = field(default_factory=dict)  # id of a value node → its unit
    detail: list[str] = field(default_factory=list)
    nodes: list[Node] = field(default_factory=list)
    links: list[Node] = field(default_factory=list)  # "and" between descriptors
    split: bool = False  # a comma or link came after its last value
    broken: bool = False  # nothing led to it from the cell before, and a word of unknown meaning follows its side
    closed: bool = False  # a semicolon came after it
    contrasted: bool = False  # a "but" came after it: what follows without a value of its own was not so
    excepted: bool = False  # "except" came before it
    affirmed: bool = False  # behind a denial it says of what kind it was there: "no tremor at rest, mild on posture"
    denying: bool = False  # "but not" came before it, and not "except"
    contrary: bool = False  # it says only that what the cell before says does not hold here
    corrected: list[str] = field(default_factory=list)
    led: bool = False  # a condition of its own leads it: "right 20/40 ph 20/25, left 20/30"
    spared: bool = False  # "past pointing on the left, none on the right": what was found before was not found here

    @property
    def told(self) -> bool:
        """Something was said of how it was."""
        return bool(self.values) or self.negated

    @property
    def empty(self) -> bool:
        """Nothing was found in it yet."""
        return not (self.values or self.negated or self.modifiers)

    def part(self, node: Node) -> None:
        """A comma, a semicolon, an "and" or a "but" comes after what was said so far."""
        if not self.nodes:
            return  # in front of it
        self.split = True
        self.closed = self.closed or node.main == "semicolon"
        self.contrasted = node.main == "contrast"
        if node.text in ("and", "+", "&", "/"):
            self.links.append(node)


@dataclass(slots=True)
class Draft:
    """A finding in the making; `spans` are token ranges."""

    item: str
    status: Status
    spans: list[tuple[int, int]]
    side: Side | None = None
    site: str = ""
    position: Position | None = None
    minutes: float | None = None
    value: Value | None = None
    unit: str = ""
    detail: list[str] = field(default_factory=list)
    uncertain: bool = False
    excepted: bool = False
    corrected: list[str] = field(default_factory=list)
    readings: tuple[str, ...] = ()
    denial: bool = False  # a "no" in front of a sign said it
    paired: bool = False  # one of two grades said as right/left ("5/4")
    whole: bool = False  # said with its maximum ("4/5")
    maximum: str = ""  # that maximum
    anchor: int = 0  # token at which it was said, for the position in force

    def stand_for(self, old: Draft) -> None:
        """Correct another: found under the same circumstances, and of its side where none is said anew."""
        self.side = self.side or old.side
        self.position, self.minutes, self.excepted = old.position, old.minutes, old.excepted


@dataclass(slots=True)
class Said:
    """The last statement, kept so that later words can correct it or go on about it."""

    statement: Statement
    cells: list[Cell]
    candidates: tuple[str, ...]
    drafts: list[Draft] = field(default_factory=list)
    limb: LimbTitle | None = None  # under whose title it was said

    @property
    def places(self) -> set[str]:
        """Where it was found, as far as that was said."""
        return {draft.site for draft in self.drafts if draft.site}

    def is_left(self, limb: LimbTitle | None) -> bool:
        """ "Left leg. Normal." behind the right leg's hip flexion: of the whole limb, or of what, nobody said."""
        return bool(self.drafts) and self.limb is not None and limb is not None and limb is not self.limb


def entitle(drafts: Sequence[Draft], names: Sequence[Node]) -> None:
    """Give findings the words in front of them that say of what they are."""
    for draft in drafts:
        draft.spans.extend((n.mark.start, n.mark.end) for n in names)
