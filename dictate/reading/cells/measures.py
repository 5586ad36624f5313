"""Numbers of a cell → value and status: units, counts, distances, grades of a sign."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.grammar import Item
from dictate.model import Quantity, Status, Text
from dictate.reading.cells.owners import Owners
from dictate.reading.cells.walks import walk_of
from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import Meaning, choice_value, distance_in, read_number
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.statements.drafts import Cell, Draft

# Kinds whose value is a number or a mark, so that the words that go with it have to stand beside it.
_HELPED = ("with ", "on ", "by ", "from ", "after ")
CONDITIONED = frozenset({"acuity", "quantity", "grade", "pressure", "score"})
_LIMITED = ("normality", "choice", "text")
LIGHTS = ("dark", "darkness", "light")  # how the words end that say in which light a pupil was measured

# What is counted was not right.
MISSES = frozenset(
    {"error", "errors", "wrong", "incorrect", "missed", "misses", "mistake", "mistakes", "misstep", "missteps"}
)
_COUNTED = ("beats", "beat")
_SIDES = {"l": "left", "r": "right"}


class Measurer:
    """Reads the numbers of a cell."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.scales = lexicon.grammar.scales
        self.owners = Owners(lexicon)

    def meaning(self, name: str, item: Item, numbers: list[Node], cell: Cell) -> Meaning | None:
        """What the numbers of a cell mean of the item; None when they cannot be of it."""
        node = numbers[0]
        unit = cell.units.get(id(node))
        said = self._unit(item, unit)
        number = node.mark.number
        if {"m", "s"} <= set(item.units) and (walk := walk_of(numbers, cell)) is not None:
            return walk
        if {"m", "s"} <= set(item.units) and unit is not None and not said:
            return None  # "ten metre walk 9.8 seconds, 14 steps"
        if item.kind == "grade" and unit is not None and (_is_measure(unit) or unit.text in _COUNTED):
            return None  # "strength 30 kilograms", "3 plus with 3 beats": a force or a count, no grade
        if said == "m/s" and len(numbers) == 2 and (far := cell.units.get(id(numbers[1]))) is not None:
            cell.detail.append(f"over {numbers[1].text} {far.text}")
        meaning = read_number(item, number, said, self.scales.get(item.scale)) if number is not None else None
        signs = [n for n in cell.values if n.mark.number is None and n.main == "item"]
        if meaning is None and item.kind == "normality" and signs and number is not None and number.a == 0:
            return Meaning(None, Status.NORMAL)  # "left leg rigidity nought": rated, and there is none
        if meaning is None or (item.kind == "presence" and item.scored and not is_named(cell)):
            return None
        words = modifier_text(name, cell)
        value = meaning.value
        status = meaning.status
        if item.kind == "presence" and meaning.status is Status.ABSENT:
            return Meaning(Text(words=words) if words else None, Status.ABSENT)
        if item.kind == "presence":
            counted = unit is not None and (not said or said.startswith("{"))  # beats, steps: a word, not a unit
            written = f"{value} {unit.text if counted else said}" if unit and (counted or said) else str(value)
            first = bool(cell.modifiers) and node.mark.start < min(n.mark.start for n in cell.modifiers)
            text = " ".join(filter(None, [written, words] if first else [words, written]))
            status = Status.ABSENT if cell.negated else Status.PRESENT
            if isinstance(value, Quantity) and not counted and (said or item.unit):
                lights = all(n.main == "qualifier" and n.text.endswith(LIGHTS) for n in modifiers(name, cell))
                if (said and not words) or (words and lights):
                    return Meaning(value, status, meaning.unit, meaning.by_side)
            return Meaning(Text(words=text), status, "", meaning.by_side)
        others = [n for n in cell.values if n.mark.number is None and not n.mark.has("equal")]
        abnormal = any(self.owners.sense(name, n) == "abnormal" for n in others) if others else False
        if isinstance(value, Quantity) and unit is not None and not said:
            return Meaning(Quantity(number=value.number, note=unit.text), status, "", meaning.by_side, meaning.readings)
        if abnormal and item.kind == "normality":
            missed = " ".join(n.text for n in others if n.text in MISSES)
            if item.scored and number is not None and number.op in ("/", "of") and not missed:
                return meaning  # "clock three of five, hands wrong": the words are a detail
            none = number is not None and number.a == 0 and missed
            return Meaning(Text(words=f"{value} {missed}"), Status.NORMAL) if none else None
        return meaning

    def beside(
        self, name: str, item: Item, cell: Cell, base: Draft, numbers: list[Node], others: list[Node]
    ) -> list[str]:
        """ "Steady, ten seconds": the word beside a number that is the value, the number beside a word that is."""
        if not numbers or not (others or cell.modifiers):
            return []
        if base.status is Status.MEASURED and item.kind == "normality":
            told = [n for n in others if n.main == "value" and self.owners.sense(name, n) in ("normal", "abnormal")]
            return [n.text for n in (*told, *(n for n in cell.modifiers if n.main == "direction"))]
        if base.status is Status.MEASURED and item.kind == "quantity":
            # "positive at forty degrees", "turns en bloc in six steps"
            return [
                n.text for n in others if n.text in ("positive", "negative") or self.owners.sense(name, n) == "abnormal"
            ]
        if base.status not in (Status.NORMAL, Status.ABSENT) or base.value is not None:
            return []
        said = [(n.text, cell.units.get(id(n))) for n in numbers if not n.mark.role("absent", "")]
        return [text if unit is None else f"{text} {unit.text}" for text, unit in said]

    def _unit(self, item: Item, unit: Node | None) -> str:
        if unit is None:
            return ""
        for role in unit.mark.roles:
            if role.kind == "unit" and role.key in item.units:
                return role.key
        return next((r.key for r in unit.mark.roles if r.kind == "unit" and r.key == item.unit), "")

    def with_distance(self, item: Item, meaning: Meaning, named: Sequence[Node]) -> Meaning:
        """A walk whose distance stands in its name: "ten metre walk nine seconds" → 10 m in 9 s."""
        if not ({"m", "s"} <= set(item.units) and isinstance(meaning.value, Quantity) and meaning.unit in ("s", "")):
            return meaning  # "four metre gait speed 0.6 metres per second" is no time
        for node in named:
            distance = distance_in(node.text)
            if distance:
                return Meaning(Text(words=f"{distance} in {meaning.value} s"), meaning.status)
        return meaning


def is_named(cell: Cell) -> bool:
    """Whether the words of a reading name the item, or a side or place of it, and are no number alone."""
    return any(n.main == "item" for n in cell.nodes) or cell.side is not None or cell.site_node is not None


def _is_measure(unit: Node) -> bool:
    """Whether it is a unit of something measured, written as a word; not of what is counted, nor a letter (a side)."""
    return len(unit.text) > 1 and any(r.kind == "unit" and r.key and not r.key.startswith("{") for r in unit.mark.roles)


def modifiers(name: str, cell: Cell) -> list[Node]:
    """Severity, directions and the item's own qualifiers; another item's say nothing of this one."""
    return [
        n for n in sorted(cell.modifiers, key=lambda n: n.mark.start) if n.main != "qualifier" or n.value_roles(name)
    ]


def conditions(name: str, item: Item, cell: Cell, meaning: Meaning, *, measured: bool) -> list[str]:
    """Under what a value was taken ("corrected", "in the dark"), where the words are no part of the value itself.

    And for what it was normal ("to whisper"), unless a word says that it was for this alone.
    """
    said = dict.fromkeys(n.text for n in modifiers(name, cell) if n.main == "qualifier")
    if meaning.status is Status.NORMAL and item.tells_denied and cell.negated:
        denied = [n.text for n in cell.values if name in n.candidates or _is_noun(n, name, cell)]
        return [f"no {text}" for text in dict.fromkeys(denied)]
    if meaning.status is Status.NORMAL and item.kind in _LIMITED and not cell.negated:
        return [text for text in said if f"{text} only" not in cell.detail]
    value = meaning.value if measured else None
    if value is None or (item.kind not in {*CONDITIONED, "text"} and not isinstance(value, Quantity)):
        return []
    return [text for text in said if text not in str(value)]


def _is_noun(node: Node, name: str, cell: Cell) -> bool:
    """ "No haemorrhages": a word that is a sign of the item."""
    no = cell.negation is not None and cell.negation.text in ("no", "without", "nor")
    return no and node.mark.role("abnormal", name) is not None


def denied_kinds(name: str, item: Item, cell: Cell) -> list[str]:
    """ "No rest tremor", "no vertical nystagmus", "none on left gaze": a tremor of another kind may be there."""
    told = [(n.mark.start, r.key) for n in cell.values for r in n.mark.roles if (r.kind, r.item) == ("alone", name)]
    named = [(at, choice_value(key, item.values[key].value, item.kind)) for at, key in told]
    kinds = [(at, str(value)) for at, value in named if value is not None]
    kinds += [(n.mark.start, in_full(n)) for n in modifiers(name, cell) if n.main in ("qualifier", "direction")]
    return [text for _, text in sorted(kinds)]


def modifier_text(name: str, cell: Cell) -> str:
    """The modifiers as one text."""
    return " ".join(dict.fromkeys(in_full(n) for n in modifiers(name, cell)))


def in_full(node: Node) -> str:
    """ "On R gaze" is written "on right gaze"."""
    if node.main != "direction" and not node.mark.has("direction"):
        return node.text
    return " ".join(_SIDES.get(word, word) for word in node.text.split())


def with_help_aside(cells: list[Cell]) -> list[Cell]:
    """ "Recall 1/3, two more with a cue": what was got with help is a detail of what was got without."""
    result = cells[:1]
    for cell in cells[1:]:
        helped = any(n.text.startswith(_HELPED) for n in cell.modifiers) and not result[-1].modifiers
        if helped and result[-1].values and all(n.mark.number is not None for n in (*cell.values, *result[-1].values)):
            words = sorted((*cell.values, *cell.modifiers), key=lambda n: n.mark.start)
            result[-1].detail.append(" ".join(n.text for n in words))
            result[-1].nodes.extend(cell.nodes)
        else:
            result.append(cell)
    return result
