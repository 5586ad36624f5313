"""Made-up dictations from the grammar: statements of every item, as spoken and as a recogniser should write them."""

from __future__ import annotations

import csv
import difflib
import math
import random
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from numerals import clinical, spoken, written

from dictate.grammar import Grammar
from dictate.grammar.schema import Item
from dictate.model import Component

SIDES = (("on the right", "on the left"), ("right", "left"), ("on the left", "on the right"), ("left", "right"))
BOTH = ("bilaterally", "on both sides", "both sides", "right and left", "on the right and on the left")
SEVERITY = ("mild", "moderate", "marked", "slight", "severe", "subtle")
HEDGES = ("possible", "questionable", "probable", "perhaps")
REASONS = (
    "because of pain", "because of drowsiness", "due to lack of time", "because of the plaster", "as the patient was tired",
    "because of aphasia", "because of a cannula", "as he declined", "as she could not cooperate", "because of the dressing",
)  # fmt: skip
NOT_DONE = (
    "not tested",
    "not examined",
    "not done",
    "deferred",
    "was not assessed",
    "could not be assessed",
    "could not be tested",
)
FIX = ("correction", "sorry", "no", "I mean", "make that", "scratch that", "strike that", "I correct myself")
POSTURES = (
    "lying", "supine", "lying flat", "sitting", "seated", "standing", "immediately on standing", "standing at once",
    "standing after one minute", "standing at one minute", "standing at two minutes", "standing at three minutes",
    "standing after three minutes", "standing at five minutes", "standing after ten minutes",
)  # fmt: skip
# Short words that were heard wrong or lost: each with what may follow it, or go before it.
HARD = (
    (("jaw jerk", "the jaw jerk"), ("present", "absent", "normal", "brisk", "not brisk", "depressed", "one plus", "two plus", "three plus", "just present")),
    (("no", "slight", "brisk", "absent", "normal", "increased"), ("jaw jerk",)),
    (("eyes", "the eyes", "both eyes", "the right eye", "the left eye"), ("move fully", "moves fully", "does not move fully", "do not abduct fully", "abducts fully", "closes fully", "opens fully")),
    (("fully",), ("alert", "awake", "oriented", "conscious", "intact", "mobile", "independent", "cooperative", "intelligible")),
    (("tongue", "the tongue", "palate", "the palate", "shoulder", "neck", "jaw", "elbow", "knee"), ("moves fully", "protrudes fully", "elevates fully", "opens fully", "flexes fully", "extends fully", "not fully extended")),
    (("hip", "shoulder", "thumb", "finger", "eye"), ("abduction", "adduction", "abductors", "adductors", "abduction weak", "adduction weak", "abduction full", "adduction full", "abductors full", "adductors full")),
    (("shoulder", "hip", "arm", "leg"), ("internal rotation full", "external rotation full", "internal rotators weak", "external rotators weak")),
    (("tone", "reflexes", "sensation", "muscle bulk", "the reflexes"), ("increased", "decreased", "reduced", "not increased", "not reduced", "normal", "brisk", "not brisk")),
    (("wrist", "finger", "knee", "elbow", "hip", "neck", "toe"), ("flexion", "extension", "flexors weak", "extensors weak", "flexion full", "extension full", "flexors four plus", "extensors four minus")),
    (("ankle", "foot", "the right foot", "the left foot", "toes"), ("dorsiflexion", "plantar flexion", "inversion", "eversion", "dorsiflexion four", "plantar flexion five", "inversion full", "eversion weak")),
    (("tibialis",), ("anterior", "posterior", "anterior four", "posterior four", "anterior full", "posterior full")),
    (("power", "strength", "weakness", "sensation", "weak"), ("proximally", "distally", "in the upper limbs", "in the lower limbs", "in all four limbs", "throughout", "nought", "nought of five")),
)  # fmt: skip
COUNTED = ("grade", "score", "quantity", "pressure", "acuity")  # kinds of item that are said with numbers
LINES = (15, 20, 25, 30, 40, 50, 60, 70, 80, 100, 200)
UNIT_WORDS = {
    "/min": "",
    "mm[Hg]": "",
    "Cel": "degrees",
    "%": "percent",
    "s": "seconds",
    "mm": "millimetres",
    "kg": "kilos",
}
US = {"oedema": "edema", "manoeuvre": "maneuver", "manoeuvres": "maneuvers", "colour": "color", "metre": "meter", "metres": "meters",
      "millimetre": "millimeter", "millimetres": "millimeters", "centimetres": "centimeters", "centimetre": "centimeter",
      "papilloedema": "papilledema", "behaviour": "behavior", "judgement": "judgment", "tumour": "tumor", "neighbour": "neighbor",
      "haemorrhage": "hemorrhage", "haemorrhages": "hemorrhages", "paraesthesia": "paresthesia", "grey": "gray", "programme": "program",
      "rigour": "rigor", "anaesthesia": "anesthesia", "hyperaesthesia": "hyperesthesia", "dysaesthesia": "dysesthesia"}  # fmt: skip
LETTERS = {"BP": "B P", "GCS": "G C S", "NIHSS": "N I H S S", "SARA": "SARA", "MRC": "M R C"}
LIKE = 0.8  # terms more alike than this are two spellings of one
FORBIDDEN = re.compile(
    r"[^A-Za-z ,.;'-]|[A-Z]{2,}|\b(?:[A-Z]\.|[b-hj-wyz] |bilat|nl|abs|rt|lt|neg|pos|approx|resps|sats|temp)\b"
)


@dataclass(frozen=True)
class Said:
    """One statement: the words a voice speaks, and the text that should be written."""

    speech: str
    text: str


def said(words: str) -> Said:
    """A statement from its spoken words: digits, American spelling, capital and stop in the text."""
    words = " ".join(words.split()).replace(" ,", ",").rstrip(" ,.;")
    speech = " ".join(LETTERS.get(word, word) for word in words.split(" "))
    text = " ".join(_american(word) for word in written(words).split(" "))
    return Said(speech + ".", text[0].upper() + text[1:] + ".")


def _american(word: str) -> str:
    bare = word.rstrip(",.;").lower()
    return US[bare] + word[len(bare) :] if bare in US else word


def speakable(phrase: str) -> bool:
    """Whether a phrase of the grammar can be spoken as it is written."""
    return len(phrase) > 2 and not FORBIDDEN.search(phrase.replace("BP", "")) and not phrase.isupper()


def distinct(terms: Sequence[str], most: int = 12) -> list[str]:
    """Terms that sound different from one another; of two spellings the first one stays."""
    return list(_distinct(tuple(terms), most))


@cache
def _distinct(terms: tuple[str, ...], most: int) -> tuple[str, ...]:
    kept: list[str] = []
    for term in terms:
        if len(kept) == most:
            break
        if speakable(term) and not any(difflib.SequenceMatcher(None, term, old).ratio() > LIKE for old in kept):
            kept.append(term)
    return tuple(kept)


@dataclass
class Dictator:
    """Makes statements at random; the same grammar and seed give the same ones."""

    grammar: Grammar
    chance: random.Random
    withheld: frozenset[str] = frozenset()  # statements kept for measuring, in small letters without marks
    _names: dict[str, list[str]] = field(default_factory=dict)
    _examples: dict[Component, list[str]] = field(default_factory=dict)
    _used: dict[str, float] = field(default_factory=dict)
    _counted: list[str] = field(default_factory=list)
    _denied: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        expected = {each.item for scope in self.grammar.scopes.values() for each in scope.expects}
        for component, part in self.grammar.components.items():
            says = [example.say for item in part.items.values() for example in item.examples]
            self._examples[component] = [s for s in says if speakable(s) and bare(s) not in self.withheld]
            for name, item in part.items.items():
                self._names[name] = distinct([*item.terms, item.name, *item.context_terms]) or [item.name]
                if item.kind in COUNTED:
                    self._counted.append(name)
                elif item.kind == "presence":
                    self._denied.append(name)
                self._used[name] = 3.0 if name in expected or item.kind in ("grade", "pressure") else 1.0

    def dictation(self, count: int) -> list[Said]:
        """`count` statements, mostly of one component, now and then after its heading."""
        chance = self.chance
        component = self.component()
        out: list[Said] = []
        if chance.random() < 0.3:
            out.append(said(self.heading(component)))
        while len(out) < count:
            if chance.random() < 0.2:
                component = self.component()
            words = self.example(component) if chance.random() < 0.35 else self.statement(component)
            out.append(said(words))
            if chance.random() < 0.05:
                out.append(said(f"{chance.choice(FIX)}, {self.statement(component)}"))
        return out

    def drill(self, count: int) -> list[Said]:
        """`count` statements of the kinds that are heard wrong most: numbers, denials, antonyms, corrections."""
        return [said(self._hard()) for _ in range(count)]

    def _hard(self) -> str:
        chance, way = self.chance, self.chance.random()
        if way < 0.5:
            return self.about(chance.choice(self._counted))
        if way < 0.6:
            name = chance.choice(self._counted)
            return f"{self.about(name)}, {chance.choice(FIX)}, {self.about(name)}"
        if way < 0.75:
            names = [self.name(chance.choice(self._denied)) for _ in range(chance.choice((1, 2, 3)))]
            return ", ".join(f"{chance.choice(('no', 'no', 'no', 'some', 'without'))} {each}" for each in names)
        before, after = chance.choice(HARD)
        side = chance.choice(("", "", *SIDES[0], *BOTH[:2]))
        return f"{chance.choice(before)} {chance.choice(after)} {side}"

    def component(self) -> Component:
        """A component, those with more items more often."""
        parts = self.grammar.components
        (chosen,) = self.chance.choices(list(parts), [math.sqrt(len(part.items)) for part in parts.values()])
        return chosen

    def heading(self, component: Component) -> str:
        """A spoken heading."""
        return self.chance.choice(distinct(self.grammar.components[component].headings, 5))

    def example(self, component: Component) -> str:
        """A phrase that stands in the grammar as an example, one without any finding among them."""
        return self.chance.choice(self._examples[component])

    def statement(self, component: Component) -> str:
        """A new statement about an item of the component."""
        items = self.grammar.components[component].items
        (name,) = self.chance.choices(list(items), [self._used[each] for each in items])
        return self.about(name)

    def about(self, name: str) -> str:
        """A new statement about the item of that id."""
        item = self.grammar.item(name)
        if self.chance.random() < 0.07:
            reason = f" {self.chance.choice(REASONS)}" if self.chance.random() < 0.5 else ""
            return f"{self.name(name)} {self.chance.choice(NOT_DONE)}{reason}"
        tell: dict[str, Callable[[str, Item], str]] = {
            "pressure": self._pressure, "quantity": self._quantity, "grade": self._grade, "score": self._score,
            "acuity": self._acuity, "presence": self._presence, "normality": self._normality,
        }  # fmt: skip
        return tell.get(item.kind, self._choice)(name, item)

    def name(self, name: str) -> str:
        """One of the item's names, the first ones more often."""
        names = self._names[name]
        return self.chance.choices(names, [1 / (rank + 3) for rank in range(len(names))])[0]

    def _placed(self, name: str, item: Item, value: Callable[[], str]) -> str:
        """Name, values and sides in one of the orders in use; now and then with a correction."""
        chance, term = self.chance, self.name(name)
        if item.sided == "never":
            return f"{term} {value()}"
        first, second = chance.choice(SIDES)
        way = chance.random()
        if way < 0.3:
            return f"{term} {value()} {first}, {value()} {second}"
        if way < 0.5:
            return f"{chance.choice(('right', 'left'))} {term} {value()}"
        if way < 0.7:
            return f"{term} {value()} {chance.choice(BOTH)}"
        if way < 0.78:
            return f"{term} {value()} {first}, {chance.choice(FIX)}, {value()}"
        if way < 0.84:
            return f"{term} right {value()}, left {value()}"
        return f"{term} {value()} {first}"

    def _grade(self, name: str, item: Item) -> str:
        return self._placed(name, item, lambda: self._one_grade(item))

    def _one_grade(self, item: Item) -> str:
        chance, scale = self.chance, self.grammar.scales[item.scale]
        roll = chance.random()
        if roll < 0.12 and (ways := [each for said in scale.say.values() for each in distinct(said, 6)]):
            return chance.choice(ways)
        if roll < 0.25 and (words := distinct(item.abnormal, 10)):
            return chance.choice(words)
        grade = chance.choice([*scale.grades, *scale.normal, *scale.normal])
        number = grade.rstrip("+-")
        words = self._figure(int(number)) if number.isdigit() else number
        words += {"+": " plus", "-": " minus"}.get(grade[len(number) :], "")
        of = scale.of and number.isdigit() and chance.random() < 0.25
        return f"{words} out of {spoken(int(scale.of))}" if of and scale.of else words

    def _presence(self, name: str, item: Item) -> str:
        chance, term = self.chance, self.name(name)
        place = chance.choice(("", "", *SIDES[0], *BOTH)) if item.sided != "never" else ""
        more = [*distinct(item.qualifiers, 8), *SEVERITY, *HEDGES]
        other = self.name(chance.choice([key for key, each in self.grammar.items.items() if each.kind == "presence"]))
        way = chance.random()
        if way < 0.4:
            return f"no {term} {place}"
        if way < 0.5:
            return f"no {term}, no {other}" if chance.random() < 0.5 else f"no {term} or {other}"
        if way < 0.6:
            return f"{term} {chance.choice(('absent', 'not present', 'present', 'none'))} {place}"
        if way < 0.75:
            return f"there is {chance.choice(more)} {term} {place}"
        return f"{chance.choice(more)} {term} {place}"

    def _normality(self, name: str, item: Item) -> str:
        chance, common = self.chance, self.grammar.common.words
        if item.signs and chance.random() < 0.3:
            sign = chance.choice(distinct(item.signs, 10) or [item.name])
            return f"{chance.choice(('no', 'no', *SEVERITY))} {sign} {chance.choice(('', *SIDES[0]))}"
        normal = [*distinct(common.normal, 14), *distinct(item.normal, 6)]
        abnormal = [*distinct(item.abnormal, 12), *distinct(common.abnormal, 16)]
        named = [phrase for value in item.values.values() for phrase in distinct(value.say, 3)]

        def value() -> str:
            kind = chance.random()
            words = normal if kind < 0.5 else named if named and kind < 0.7 else abnormal
            return chance.choice(words)

        if item.sided == "never" or chance.random() < 0.4:
            other = f"{self.name(name)} and {self.name(chance.choice(list(self.grammar.items)))}"
            return f"{other if chance.random() < 0.15 else self.name(name)} {value()}"
        return self._placed(name, item, value)

    def _choice(self, name: str, item: Item) -> str:
        phrases = [(each, value.alone) for value in item.values.values() for each in distinct(value.say, 4)]
        if not phrases:
            return self._normality(name, item)
        phrase, alone = self.chance.choice(phrases)
        if alone and self.chance.random() < 0.5:
            return phrase
        return self._placed(name, item, lambda: self.chance.choice(phrases)[0])

    def _score(self, name: str, item: Item) -> str:
        top = int(item.of or 10)
        number = self._figure(self.chance.randint(0, min(top, 60)))
        tail = f" out of {spoken(top)}" if item.of and self.chance.random() < 0.4 else ""
        return self._placed(name, item, lambda: number + tail)

    def _figure(self, number: int) -> str:
        """A small number; none of it is said in two ways."""
        return "nought" if number == 0 and self.chance.random() < 0.4 else spoken(number)

    def _quantity(self, name: str, item: Item) -> str:
        chance = self.chance
        if item.values and chance.random() < 0.15:
            return self._choice(name, item)
        low, high = (item.limits.low or 1, item.limits.high or 40) if item.limits else (1, 40)
        units = distinct(item.units.get(item.unit, ()), 3) or [UNIT_WORDS.get(item.unit, "")]
        middle = (low + high) / 2 if high < 500 else 100

        def value() -> str:
            number = max(int(low), min(int(high), round(chance.triangular(low, min(high, 250), middle))))
            words = clinical(number, chance.randrange(4)) if number < 1000 else "nine hundred"
            point = f" point {spoken(chance.randrange(10))}" if item.unit == "Cel" else ""
            return f"{words}{point} {chance.choice(units)}"

        place = chance.choice(POSTURES) if item.positions and chance.random() < 0.6 else ""
        return f"{self._placed(name, item, value)} {place}"

    def _acuity(self, name: str, item: Item) -> str:
        chance = self.chance
        if item.values and chance.random() < 0.15:
            return self._choice(name, item)
        return self._placed(name, item, lambda: f"twenty {clinical(chance.choice(LINES), chance.choice((2, 3)))}")

    def _pressure(self, name: str, item: Item) -> str:
        chance = self.chance
        top = chance.randint(82, 214)
        upper, lower = (
            clinical(top, chance.randrange(4)),
            clinical(chance.randint(40, min(top - 8, 122)), chance.randrange(4)),
        )
        arm = chance.choice(("", "", ", right arm", ", left arm"))
        words = f"{chance.choice((self.name(name), 'blood pressure', 'pressure', ''))} {chance.choice(('', *POSTURES))}{arm} {upper} over {lower}"
        if chance.random() < 0.6:
            pulse = chance.choice(("pulse", "pulse", "heart rate"))
            words += f", {pulse} {clinical(chance.randint(44, 148), chance.randrange(4))}"
        return words.strip()

    def wanted(self, most: int) -> list[str]:
        """A list of terms as the program might hand to a recogniser, out of all items."""
        names = self.chance.sample(list(self._names), min(most, len(self._names)))
        return [self.name(each) for each in names]


def bare(text: str) -> str:
    """Small letters and words only, to compare statements."""
    return " ".join(re.findall(r"[a-z0-9']+", text.lower()))


def withheld_from(path: Path) -> frozenset[str]:
    """Statements of a table of ways of saying, which are kept for measuring."""
    with path.open(encoding="utf-8", newline="") as file:
        return frozenset(bare(row["say"]) for row in csv.DictReader(file))
