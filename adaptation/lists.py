"""Runs of findings under one side, posture or heading: joined by commas in the text, however they are spoken.

A voice pauses inside such a run, or runs on without a mark; a full stop belongs where the side or the topic changes.
"""

from __future__ import annotations

import random
import re
from collections.abc import Sequence

from dictations import BOTH, FIX, HEDGES, POSTURES, SEVERITY, SIDES, Dictator, Said, distinct, said
from numerals import SMALL, TENS, clinical, spoken

from dictate.grammar.schema import Item
from dictate.model import Component

PAUSE = "|"  # in speech: what follows is spoken apart, after a pause
LEADS = ("{side}", "{side}", "{side} side", "on the {side}", "on the {side} side", "over on the {side}")
REACH = (
    "to the mid calf", "to mid calf", "to the knees", "to the ankles", "below the knee", "below the ankles", "at the toes",
    "in the feet", "in the hands", "in both feet", "up to the wrists", "in the fingertips", "over the foot", "at the ankles",
    "in a stocking distribution", "in a glove distribution", "over the outer thigh", "in all fingers", "at the great toes",
)  # fmt: skip
LESS = ("reduced", "absent", "impaired", "decreased", "diminished", "lost", "normal", "intact", "preserved")
GRADES = ("five", "five", "five", "four", "four plus", "four minus", "three", "two", "one", "nought", "full")
JERKS = (
    "one plus",
    "two plus",
    "two plus",
    "three plus",
    "four plus",
    "absent",
    "trace",
    "brisk",
    "present",
    "nought",
    "two",
    "one",
)
FELT = ("light headed", "no symptoms", "still light headed", "dizzy", "no dizziness", "blurred vision", "asymptomatic")
LATERAL = (
    "right {a} left {b}", "{a} right {b} left", "{a} on the right {b} on the left", "{a} both sides", "{a} bilaterally",
    "{a} on the left", "{a} on the right", "{a} on both sides", "{a} left {b} right",
)  # fmt: skip
MENDED = 0.12  # share of runs with a correction inside them
RESTS = (
    "in",
    "on",
    "at",
    "to",
    "with",
    "and",
    "because",
    "but",
    "due",
    "right",
    "left",
    "both",
    "over",
    "for",
    "after",
    "except",
)
NUMBERS = {*SMALL, *TENS, "hundred", "plus", "minus", "point", "oh"}


def joined(parts: Sequence[str], chance: random.Random, *, lead: str = "") -> Said:
    """A run of short findings as one sentence, spoken with commas, without marks, or one by one with pauses."""
    alone = [said(part).speech[:-1] for part in parts]
    opening = f"{lead}," if lead and chance.random() < 0.4 else lead
    text = said(f"{opening} {', '.join(parts)}").text
    way = chance.random()
    if way < 0.3:
        speech = f"{opening} {', '.join(alone)}"
    elif way < 0.6:
        speech = f"{lead} {' '.join(alone)}"
    else:
        fall = chance.choice((",", ",", ".", ""))
        speech = f"{lead} {f'{fall} {PAUSE} '.join(alone)}"
    return Said(" ".join(speech.split()) + ".", text)


def cut_off(run: Said) -> Said:
    """A run that goes on behind the end of the clip, as where a recording is cut at a pause."""
    return Said(run.speech[:-1] + ",", run.text[:-1] + ",")


def rested(statement: Said, chance: random.Random) -> Said:
    """The statement with a pause before one of its small words, where no number is parted; its text stays."""
    words = statement.speech.split(" ")
    usable = [
        i
        for i in range(2, len(words) - 1)
        if words[i].strip(",.") in RESTS and not {words[i - 1].strip(",."), words[i + 1].strip(",.")} & NUMBERS
    ]
    if not usable or PAUSE in words:
        return statement
    words.insert(chance.choice(usable), PAUSE)
    return Said(" ".join(words), statement.text)


def together(statements: Sequence[Said], chance: random.Random) -> str:
    """Statements as they are spoken one behind the other: at one go, with pauses, or without a fall between them."""
    way = chance.random()
    speech = [each.speech for each in statements]
    if way < 0.45:
        return " ".join(speech)
    if way < 0.85:
        return f" {PAUSE} ".join(speech)
    return " ".join([*(each.rstrip(".,") for each in speech[:-1]), speech[-1]])


class Lister:
    """Makes runs of findings with a dictator's names; the same seed gives the same ones."""

    def __init__(self, maker: Dictator) -> None:
        self._maker, self._chance = maker, maker.chance
        self._graded: dict[Component, list[str]] = {}
        self._plain: dict[Component, list[str]] = {}
        self._scored: dict[Component, list[str]] = {}
        self._denied: dict[Component, list[str]] = {}
        kept = {"grade": self._graded, "normality": self._plain, "score": self._scored, "presence": self._denied}
        for component, part in maker.grammar.components.items():
            for name, item in part.items.items():
                if item.kind in kept and (item.kind != "grade" or item.sided == "paired"):
                    kept[item.kind].setdefault(component, []).append(name)

    def run(self) -> list[Said]:
        """One or two runs of one kind, now and then behind their heading."""
        ways = (
            self._side,
            self._side,
            self._lateral,
            self._shared,
            self._plainly,
            self._denials,
            self._felt,
            self._postures,
            self._scores,
        )
        return self._chance.choice(ways)()

    def _some(self, pool: dict[Component, list[str]], low: int, high: int) -> tuple[Component, list[str]]:
        chance = self._chance
        component = chance.choices(list(pool), [len(pool[each]) for each in pool])[0]
        names = pool[component]
        return component, chance.sample(names, min(len(names), chance.randint(low, high)))

    def _short(self, name: str) -> str:
        """A name of one or two words where the item has one, as in a run under a heading."""
        if (usual := distinct(self._maker.grammar.items[name].context_terms, 6)) and self._chance.random() < 0.45:
            return self._chance.choice(usual)
        names = sorted((self._maker.name(name) for _ in range(3)), key=lambda each: len(each.split()))
        return names[0] if self._chance.random() < 0.8 else names[-1]

    def _headed(self, component: Component, said_so: list[Said]) -> list[Said]:
        if self._chance.random() < 0.25:
            return [said(self._maker.heading(component)), *said_so]
        return said_so

    def _grades(self, component: Component) -> Sequence[str]:
        return JERKS if component is Component.REFLEXES else GRADES

    def _side(self) -> list[Said]:
        """Muscles or jerks of one side, then perhaps of the other: the stop stands where the side changes."""
        chance = self._chance
        component, names = self._some(self._graded, 2, 6)
        terms, values = [self._short(name) for name in names], self._grades(component)
        sides = chance.choice((("right",), ("left",), ("right", "left"), ("left", "right")))
        if len(sides) > 1:
            terms = terms[:4]
        way, lead = chance.random(), chance.choice(LEADS)
        out = []
        for side in sides:
            parts = [f"{term} {chance.choice(values)}" for term in terms]
            if chance.random() < MENDED:
                parts[chance.randrange(len(parts))] += f", {chance.choice(FIX)}, {chance.choice(values)}"
            if way < 0.2:
                out.append(joined([f"{side} {part}" for part in parts], chance))
            elif way < 0.3:
                out.append(joined([*parts[:-1], f"{parts[-1]} on the {side}"], chance))
            else:
                out.append(joined(parts, chance, lead=lead.format(side=side)))
        return self._headed(component, out)

    def _lateral(self) -> list[Said]:
        """Each with its own sides."""
        chance = self._chance
        component, names = self._some(self._graded, 2, 4)
        values = self._grades(component)
        parts = [
            f"{self._short(name)} {chance.choice(LATERAL).format(a=chance.choice(values), b=chance.choice(values))}"
            for name in names
        ]
        return self._headed(component, [joined(parts, chance)])

    def _shared(self) -> list[Said]:
        """Several of the same value."""
        chance = self._chance
        component, names = self._some(self._graded, 2, 4)
        terms = [self._short(name) for name in names]
        value, place = chance.choice(self._grades(component)), chance.choice((*BOTH, *SIDES[0], ""))
        words = f"{', '.join(terms[:-1])} and {terms[-1]} {chance.choice(('', 'all'))} {value} {place}"
        return self._headed(component, [said(words)])

    def _value(self, item: Item) -> str:
        common, chance = self._maker.grammar.common.words, self._chance
        if chance.random() < 0.65:
            return chance.choice([*distinct(common.normal, 14), *distinct(item.normal, 6)])
        return chance.choice([*distinct(item.abnormal, 12), *distinct(common.abnormal, 16)])

    def _plainly(self) -> list[Said]:
        """Normal and abnormal ones of one component under no side."""
        component, names = self._some(self._plain, 2, 5)
        items = self._maker.grammar.items
        parts = [f"{self._short(name)} {self._value(items[name])}" for name in names]
        return self._headed(component, [joined(parts, self._chance)])

    def _denials(self) -> list[Said]:
        """What is absent, now and then with what is there behind it."""
        chance = self._chance
        component, names = self._some(self._denied, 2, 5)
        terms = [self._short(name) for name in names]
        way = chance.random()
        if way < 0.3:
            out = [said(f"no {', '.join(terms[:-1])} or {terms[-1]} {chance.choice(('', '', *BOTH))}")]
        else:
            parts = [f"no {term}" for term in terms]
            if way < 0.5:
                parts[-1] = f"{chance.choice((*SEVERITY, *HEDGES))} {terms[-1]} {chance.choice(SIDES[0])}"
            out = [joined(parts, chance)]
        return self._headed(component, out)

    def _felt(self) -> list[Said]:
        """Kinds of feeling, how far each reaches."""
        chance, items = self._chance, self._maker.grammar.items
        component = Component.SENSORY
        names = [name for name in self._plain[component] if items[name].sided == "paired"]
        parts = [
            f"{self._short(name)} {chance.choice(LESS)} {chance.choice((*REACH, '', ''))}"
            for name in chance.sample(names, min(len(names), chance.randint(2, 4)))
        ]
        lead = chance.choice(("", "", "", *(each.format(side=chance.choice(("right", "left"))) for each in LEADS)))
        return self._headed(component, [joined(parts, chance, lead=lead)])

    def _postures(self) -> list[Said]:
        """Pressure, pulse and what is felt in one posture after the other; the stop stands where the posture changes."""
        chance, out = self._chance, []
        for posture in chance.sample(POSTURES, chance.choice((1, 2, 2, 3))):
            top = chance.randint(84, 200)
            low = chance.randint(44, min(top - 8, 118))
            pressure = f"{clinical(top, chance.randrange(4))} over {clinical(low, chance.randrange(4))}"
            name = chance.choice(("", "", "blood pressure", "pressure"))
            first = f"{name} {posture} {pressure}" if chance.random() < 0.4 else f"{posture} {name} {pressure}"
            rate = f"{chance.choice(('pulse', 'heart rate'))} {clinical(chance.randint(44, 140), chance.randrange(4))}"
            felt = [chance.choice(FELT)] if chance.random() < 0.3 else []
            out.append(joined([first, rate, *felt], chance))
        return out

    def _scores(self) -> list[Said]:
        """Numbers of a scale in its order."""
        chance, items = self._chance, self._maker.grammar.items
        component = chance.choices(list(self._scored), [len(each) for each in self._scored.values()])[0]
        names = self._scored[component]
        begin = chance.randrange(max(1, len(names) - 2))
        parts = []
        for name in names[begin : begin + chance.randint(2, 4)]:
            top = int(items[name].of or 10)
            tail = f" out of {spoken(top)}" if items[name].of and chance.random() < 0.3 else ""
            parts.append(f"{self._short(name)} {spoken(chance.randint(0, min(top, 60)))}{tail}")
        return [joined(parts, chance)]


def pauses_in(speech: str, chance: random.Random) -> list[float]:
    """Seconds of each pause; the program shortens those inside a stretch to 0.4 s."""
    return [round(chance.triangular(0.05, 0.8, 0.3), 2) for _ in re.findall(re.escape(PAUSE), speech)]
