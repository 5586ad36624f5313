"""Dictations made from a grammar: what is said, and by construction what must be read from it.

Items × their names × kinds of value × sides × sites × positions × numbers in words or digits × statuses × forms of
phrase × order × headings. Only names and words that mean one thing in the whole grammar are used, for what means
several things is the reader's business to tell apart, and other tests'.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache

from hypothesis import assume
from hypothesis import strategies as st

from dictate.grammar import Grammar, Item
from dictate.model import Finding, number_text

Draw = st.DrawFn
SIDES = {
    "left": ("left {0} {1}", "{0} {1} on the left", "{0} on the left {1}", "{0} left {1}", "on the left {0} {1}"),
    "right": ("right {0} {1}", "{0} {1} on the right", "{0} on the right {1}", "{0} right {1}"),
    "both": ("{0} {1} on both sides", "{0} {1} bilaterally", "bilateral {0} {1}", "{0} on both sides {1}"),
}
PAIRS = (  # right, then left
    "{0} right {1}, left {2}",
    "{0} {1} on the right, {2} on the left",
    "{0} right {1} left {2}",
    "{0} {1} on the right and {2} on the left",
    "{0} on the right {1}, on the left {2}",
)
POSITIONS = ("{1} {2}, {0}", "{0}, {1} {2}", "{1} {0} {2}", "{0}: {1} {2}")
PLAIN = ("{0} {1}", "{0} is {1}", "{0}: {1}", "The {0} was {1}", "{0}, {1}")
UNITS = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen".split()
TEENS = [*UNITS, "sixteen", "seventeen", "eighteen", "nineteen"]
TENS = "- - twenty thirty forty fifty sixty seventy eighty ninety".split()
NUMBER_WORDS = {*TEENS, *TENS, "hundred", "half", "metre", "metres", "meter", "meters"}
SKIPPED_NEGATIONS = {"neither", "nor", "never", "not", "not any", "lack of", "absence of", "nowhere"}  # want a sentence
THOUGHTS = ("i do not think", "i do not believe", "i doubt")  # what is not there for certain


@dataclass(frozen=True)
class Row:
    """One finding as it must be read."""

    item: str
    status: str
    value: str = ""
    unit: str = ""
    side: str = ""
    site: str = ""
    position: str = ""
    minutes: str = ""
    certainty: str = "stated"


@dataclass(frozen=True)
class Statement:
    """A sentence and what it says; `form` names how it was made."""

    text: str
    rows: tuple[Row, ...]
    form: str


Form = Callable[[Draw, "Sayings", str, Item], Statement]


def row_of(finding: Finding) -> Row:
    """A finding as the generator writes it."""
    return Row(
        item=finding.item,
        status=finding.status.value,
        value="" if finding.value is None else str(finding.value),
        unit=finding.unit,
        side=finding.side.value if finding.side else "",
        site=finding.site,
        position=finding.position.value if finding.position else "",
        minutes="" if finding.minutes is None else number_text(finding.minutes),
        certainty=finding.certainty.value,
    )


def spoken(number: float) -> str:
    """A number up to 999 in words."""
    whole = int(number)
    if number != whole:
        digits = number_text(number).split(".")[1]
        return f"{spoken(whole)} point {' '.join(UNITS[int(d)] for d in digits)}"
    if whole >= 100:
        rest = whole % 100
        return f"{UNITS[whole // 100]} hundred" + (f" and {spoken(rest)}" if rest else "")
    if whole < 20:
        return TEENS[whole]
    return TENS[whole // 10] + (f" {UNITS[whole % 10]}" if whole % 10 else "")


def spoken_grade(grade: str) -> str:
    """ "four minus", "two plus"; a grade in words stays."""
    if not grade[0].isdigit():
        return grade
    return spoken(int(grade[0])) + {"": "", "+": " plus", "-": " minus"}[grade[1:]]


def words_in(*lists: Sequence[str]) -> set[str]:
    """Every word of every phrase."""
    return {word for phrases in lists for phrase in phrases for word in phrase.lower().split()}


class Sayings:
    """What can be said of a grammar's items without a second meaning."""

    def __init__(self, grammar: Grammar) -> None:
        self.grammar = grammar
        self.items = grammar.items
        self.common = grammar.common
        self.meant: dict[str, set[str]] = defaultdict(set)  # phrase → item ids, and kinds of common words
        for name, item in self.items.items():
            alone = [phrase for value in item.values.values() if value.alone for phrase in value.say]
            for phrase in (*item.terms, *item.context_terms, *item.signs, *alone):
                self.meant[phrase.lower()].add(name)
        for phrases in (*self.common.sites.values(), *self.common.sides.values(), *self.common.positions.values()):
            for phrase in phrases:
                self.meant[phrase.lower()].add("common")
        for kind in type(self.common.words).model_fields:
            for phrase in getattr(self.common.words, kind):
                self.meant[phrase.lower()].add("common")
        self.places = words_in(*self.common.sites.values(), *self.common.limbs.values())
        self.turns = words_in(*self.common.sides.values()) - {"on", "the", "in", "side"}
        self.names = {name: self._names(item, name) for name, item in self.items.items()}
        self.known = [name for name, terms in self.names.items() if terms]

    def _names(self, item: Item, name: str) -> tuple[str, ...]:
        """Terms that name this item only, and say no side and no site."""
        sites = words_in(*item.sites.values(), [key.replace("_", " ") for key in item.sites])
        own = [t for t in item.terms if self.meant[t.lower()] == {name} and self.is_plain(t)]
        return tuple(t for t in own if not sites & set(t.lower().split()))

    def is_plain(self, phrase: str) -> bool:
        """It says no side, no site and no number by itself."""
        if set(phrase.lower().split()) & NUMBER_WORDS:
            return False
        words = {form for w in phrase.lower().split() for form in (w, w.removesuffix("s"))}
        if words & {"equal", "equally", "symmetric", "symmetrical", "symmetrically", "axial"}:
            return False  # said of both sides, or of the trunk
        if phrase.split()[-1] in {"in", "on", "at", "with", "of", "affecting", "involving"}:
            return False  # a site must follow
        return not words & (self.turns | self.places) and not any(c.isdigit() for c in phrase)

    @cache  # noqa: B019 - lives as long as the tests
    def words(self, name: str) -> tuple[tuple[str, Row], ...]:
        """Words for what was found of an item, each with its finding."""
        item, own = self.items[name], self.own(name)
        said: list[tuple[str, Row]] = []
        for key, value in item.values.items():
            written = key.replace("_", " ") if value.value is None else value.value
            said += [(p, Row(name, value.status, written, side=value.side)) for p in value.say if not value.alone]
        if item.kind in ("normality", "grade"):
            common = (w for w in self.common.words.normal if w not in own)
            said += [(p, Row(name, "normal")) for p in (*item.normal, *common)]
        if item.kind == "normality":
            said += [(p, Row(name, "abnormal", p.lower())) for p in item.abnormal]
            said += [(p, Row(name, "abnormal", p)) for p in DESCRIPTORS if p not in own]
        count = Counter(phrase for phrase, _ in said)
        once = tuple(pair for pair in said if count[pair[0]] == 1 and _is_word(pair[0], self))
        return once or (("not tested", Row(name, "not_examined")),)

    @cache  # noqa: B019
    def signs(self, name: str) -> tuple[str, ...]:
        """Signs that name the item."""
        return tuple(
            s for s in self.items[name].signs if self.meant[s.lower()] == {name} and self.is_plain(s) and "," not in s
        )

    @cache  # noqa: B019
    def lone(self, name: str) -> tuple[tuple[str, Row], ...]:
        """Values that name their item, each with its finding."""
        item = self.items[name]
        found = []
        for key, value in item.values.items():
            written = key.replace("_", " ") if value.value is None else value.value
            for phrase in value.say if value.alone else ():
                sited = item.sited and any(phrase.lower() in said for said in item.sites.values())
                if self.meant[phrase.lower()] == {name} and self.is_plain(phrase) and not sited:
                    found.append((phrase, Row(name, value.status, written, side=value.side)))
        return tuple(found)

    @cache  # noqa: B019
    def forms(self, name: str) -> tuple[Form, ...]:
        """The forms of phrase that the item takes."""
        item = self.items[name]
        alone = item.kind == "presence" and item.alone
        fits = {
            plain: item.kind not in ("presence",),
            pair: item.sided == "paired" and not item.positions and item.kind not in ("presence", "text"),
            postured: item.positions and item.kind != "presence",
            denied: item.kind == "presence",
            shown: item.kind == "presence",
            unexamined: True,
            hedged: item.kind == "normality" or alone,
            signed: item.kind == "normality" and bool(self.signs(name)),
            lone: bool(self.lone(name)),
        }
        return tuple(form for form, fit in fits.items() if fit)

    def joined(self, name: str, term: str, words: str) -> bool:
        """Name and word together are a phrase of their own ("deltoid weakness")."""
        return f"{term} {words}".lower() in self.meant or f"{words} {term}".lower() in self.meant

    @cache  # noqa: B019
    def own(self, name: str) -> frozenset[str]:
        """Words that mean something particular of the item."""
        item = self.items[name]
        named = [phrase for value in item.values.values() for phrase in value.say]
        scale = self.grammar.scales.get(item.scale)
        graded = [phrase for phrases in (scale.say.values() if scale else ()) for phrase in phrases]
        every = (*named, *graded, *item.normal, *item.abnormal, *item.qualifiers, *item.signs)
        return frozenset(phrase.lower() for phrase in every)


@st.composite
def examinations(draw: Draw, sayings: Sayings, most: int = 8) -> list[Statement]:
    """Statements of one examination, of different items, in any order; headings stand where they would be said."""
    names = draw(st.lists(st.sampled_from(sayings.known), min_size=1, max_size=most, unique=True))
    headed = draw(st.booleans())
    said: list[Statement] = []
    if headed:
        names.sort(key=lambda name: list(sayings.grammar.components).index(sayings.grammar.component_of(name)))
    before = None
    for name in names:
        component = sayings.grammar.component_of(name)
        if headed and component is not before:
            heading = draw(st.sampled_from(sayings.grammar.components[component].headings[:3]))
            said.append(Statement(heading.capitalize(), (), "heading"))
            before = component
        said.append(draw(statements(sayings, name)))
    return said


def text_of(said: Sequence[Statement], between: str = ". ") -> str:
    """The dictation; a heading stands on its own line."""
    text = ""
    for one in said:
        text += f"\n{one.text}.\n" if one.form == "heading" else one.text[:1].upper() + one.text[1:] + between
    return text.strip()


@st.composite
def statements(draw: Draw, sayings: Sayings, name: str) -> Statement:
    """One sentence about one item."""
    return draw(st.sampled_from(sayings.forms(name)))(draw, sayings, name, sayings.items[name])


# --- values ----------------------------------------------------------------------------------------------------------


def measured(draw: Draw, sayings: Sayings, name: str, item: Item) -> tuple[str, Row]:
    """A number as it may be said of the item, and its finding."""
    row = Row(name, "measured")
    in_words = draw(st.booleans())

    def say(number: float) -> str:
        return spoken(number) if in_words else number_text(number)

    if item.kind == "pressure":
        high = draw(st.integers(90, 210))
        low = draw(st.integers(40, high - 20))
        joint = draw(st.sampled_from(["over", "on"])) if in_words else draw(st.sampled_from(["/", " over "]))
        words = f"{say(high)} {joint} {say(low)}" if in_words else f"{high}{joint}{low}"
        return words, replace(row, value=f"{high}/{low}", unit="mm[Hg]")
    if item.kind == "acuity":
        top, under = draw(st.sampled_from([(20, 20), (20, 30), (20, 40), (20, 200), (6, 6), (6, 9), (6, 12), (6, 60)]))
        return (f"{say(top)} over {say(under)}" if in_words else f"{top}/{under}"), replace(row, value=f"{top}/{under}")
    if item.kind == "grade":
        scale = sayings.grammar.scales[item.scale]
        grade = draw(st.sampled_from(scale.grades))
        words = spoken_grade(grade) if in_words else grade
        if scale.of is not None and item.scale == "mrc" and draw(st.booleans()):
            words += f" out of {say(scale.of)}" if in_words else f"/{number_text(scale.of)}"
        return words, replace(row, value=grade)
    if item.kind == "score":
        most = int(item.of or draw(st.sampled_from([3, 5, 10, 30])))
        points = draw(st.integers(0, most))
        short = item.of is not None and draw(st.booleans())
        words = say(points) if short else f"{say(points)} out of {say(most)}" if in_words else f"{points}/{most}"
        return words, replace(row, value=str(points) if item.of else f"{points}/{most}")
    return quantity(draw, item, row, say(0) == "zero")


def quantity(draw: Draw, item: Item, row: Row, in_words: bool) -> tuple[str, Row]:
    """A number with its unit."""
    low, high = (item.limits.low, item.limits.high) if item.limits else (None, None)
    first = int(low if low is not None else 2) + 1
    number = draw(st.integers(first, max(first, min(int(high if high is not None else 40) - 1, 250))))
    words = spoken(number) if in_words else str(number)
    units = {unit: ways for unit, ways in item.units.items() if not unit.startswith("{") and unit == item.unit}
    unit = item.unit
    if units and (item.unit_required or draw(st.booleans())):
        words += " " + draw(st.sampled_from([way for way in units[unit] if not way[0].isdigit()]))
    elif item.unit_required:
        unit = ""
    if draw(st.integers(0, 9)) == 0:
        words = draw(st.sampled_from(["about ", "around "])) + words
    return words, replace(row, value=str(number), unit=unit)


def worded(draw: Draw, sayings: Sayings, name: str, item: Item) -> tuple[str, Row]:
    """A word for what was found, and its finding."""
    return draw(st.sampled_from(sayings.words(name)))


def _is_word(phrase: str, sayings: Sayings) -> bool:
    """A word that can stand behind a name."""
    return sayings.is_plain(phrase) and "," not in phrase and phrase.split()[0] not in {"to", "able", "can", "cannot"}


DESCRIPTORS = ("reduced", "decreased", "impaired", "poor", "asymmetric", "slow", "abnormal", "diminished")


def value_of(draw: Draw, sayings: Sayings, name: str, item: Item) -> tuple[str, Row]:
    """A number or a word, whichever the item takes."""
    if item.kind in ("pressure", "acuity", "score", "quantity"):
        return measured(draw, sayings, name, item)
    if item.kind == "grade" and draw(st.booleans()):
        return measured(draw, sayings, name, item)
    return worded(draw, sayings, name, item)


def placed(draw: Draw, sayings: Sayings, item: Item, words: str, row: Row, name: str) -> tuple[str, tuple[Row, ...]]:
    """Name and value, with a side, a site or neither."""
    way = draw(st.sampled_from(["plain", "side", "site", "both"] if item.sited else ["plain", "side"]))
    if item.sided == "never" or row.side:
        way = {"side": "plain", "both": "site"}.get(way, way)
    if way in ("plain", "site") and not (way == "site" and item.sited):
        return draw(st.sampled_from(PLAIN)).format(name, words), (row,)
    if way == "side":
        side = draw(st.sampled_from(sorted(SIDES)))
        return draw(st.sampled_from(SIDES[side])).format(name, words), (replace(row, side=side),)
    site = draw(st.sampled_from(sorted(set(LIMB_SITES) - set(item.site_items))))
    said = draw(st.sampled_from([p for p in sayings.common.sites[site] if p.islower() or " " in p]))
    side = draw(st.sampled_from(["left", "right"])) if way == "both" else ""
    where = f"at the {side + ' ' if side else ''}{said}"
    form = draw(st.sampled_from(("{0} {1} {2}", "{0} {2} {1}", "{2} {0} {1}")))
    return form.format(name, words, where), (replace(row, side=side, site=site),)


LIMB_SITES = "wrist hand foot ankle knee great_toe elbow finger calf mid_calf thigh shoulder".split()


# --- forms -----------------------------------------------------------------------------------------------------------


def plain(draw: Draw, sayings: Sayings, name: str, item: Item) -> Statement:
    """ "biceps reflex two plus on the left" """
    words, row = value_of(draw, sayings, name, item)
    term = draw(st.sampled_from(sayings.names[name]))
    assume(not sayings.joined(name, term, words))
    text, rows = placed(draw, sayings, item, words, row, term)
    return Statement(text, rows, "plain")


def pair(draw: Draw, sayings: Sayings, name: str, item: Item) -> Statement:
    """ "biceps reflex two plus on the right, three plus on the left" """
    one, right = value_of(draw, sayings, name, item)
    two, left = value_of(draw, sayings, name, item)
    term = draw(st.sampled_from(sayings.names[name]))
    rows = (replace(right, side="right"), replace(left, side="left"))
    return Statement(draw(st.sampled_from(PAIRS)).format(term, one, two), rows, "pair")


def postured(draw: Draw, sayings: Sayings, name: str, item: Item) -> Statement:
    """ "standing at three minutes, blood pressure 96/58" """
    words, row = value_of(draw, sayings, name, item)
    position = draw(st.sampled_from(["supine", "sitting", "standing"]))
    phrases = [p for p in sayings.common.positions[position] if p.split()[0] not in ("after", "in", "flat", "sat")]
    said = draw(st.sampled_from(phrases))
    minutes = ""
    if position == "standing" and draw(st.booleans()):
        number = draw(st.integers(1, 10))
        said = f"standing at {draw(st.sampled_from([spoken(number), str(number)]))} minute{'s' * (number > 1)}"
        minutes = str(number)
    term = draw(st.sampled_from(sayings.names[name]))
    text = draw(st.sampled_from(POSITIONS)).format(said, term, words)
    return Statement(text, (replace(row, position=position, minutes=minutes),), "postured")


def denied(draw: Draw, sayings: Sayings, name: str, item: Item) -> Statement:
    """ "there is no tremor", "tremor absent" """
    term = draw(st.sampled_from(sayings.names[name]))
    row = Row(name, "normal" if item.negated == "normal" else "absent")
    if item.alone and draw(st.booleans()):
        plain = (p for p in sayings.common.words.negation if p not in SKIPPED_NEGATIONS and not p.startswith(THOUGHTS))
        negation = draw(st.sampled_from(list(plain)))
        side = draw(st.sampled_from(["left", "right", ""])) if item.sided != "never" else ""
        return Statement(f"{negation} {term}{f' on the {side}' if side else ''}", (replace(row, side=side),), "no X")
    own = sayings.own(name)
    words = draw(st.sampled_from([p for p in sayings.common.words.absent if p not in own]))
    text, rows = placed(draw, sayings, item, words, Row(name, "absent"), term)
    return Statement(text, rows, "X absent")


def shown(draw: Draw, sayings: Sayings, name: str, item: Item) -> Statement:
    """ "tremor present", "mild tremor on the left", "tremor" """
    term = draw(st.sampled_from(sayings.names[name]))
    own = sayings.own(name)
    side = draw(st.sampled_from(["left", "right", ""])) if item.sided != "never" else ""
    where = f" on the {side}" if side else ""
    row = Row(name, "present", side=side)
    way = draw(st.sampled_from(["word", "bare", "severity"] if item.alone else ["word"]))
    if way == "bare":
        lead = draw(st.sampled_from(["", "there is ", "I saw "]))
        return Statement(f"{lead}{term}{where}", (row,), "X")
    if way == "severity":
        how = draw(st.sampled_from([p for p in SEVERITIES if p not in own]))
        return Statement(f"{how} {term}{where}", (replace(row, value=how),), "mild X")
    words = draw(st.sampled_from([p for p in sayings.common.words.present if p not in own and p.isalpha()]))
    return Statement(f"{term} {words}{where}", (row,), "X present")


def unexamined(draw: Draw, sayings: Sayings, name: str, item: Item) -> Statement:
    """ "grip strength not tested", "did not test grip strength" """
    term = draw(st.sampled_from(sayings.names[name]))
    kind = draw(st.sampled_from(["not_examined", "not_assessable"]))
    own = sayings.own(name)
    known = getattr(sayings.common.words, kind)
    phrases = [p for p in known if p not in own and (p.split()[0] == "not" or p in PASSIVE)]
    reason = draw(st.sampled_from(["", "", " because of pain", " because of the plaster cast"]))
    return Statement(f"{term} {draw(st.sampled_from(phrases))}{reason}", (Row(name, kind),), kind)


SEVERITIES = ("mild", "slight", "moderate", "severe", "marked", "subtle")
PASSIVE = {
    "omitted", "deferred", "skipped", "declined", "refused", "was not tested", "untestable", "could not be assessed",
    "cannot be tested", "was omitted", "untested", "left out",
}  # fmt: skip


def hedged(draw: Draw, sayings: Sayings, name: str, item: Item) -> Statement:
    """ "light touch probably reduced", "possible tremor" """
    term = draw(st.sampled_from(sayings.names[name]))
    doubt = draw(st.sampled_from(["probably", "possibly", "perhaps", "maybe", "questionably"]))
    if item.kind == "presence" and item.alone:
        return Statement(f"possible {term}", (Row(name, "present", certainty="uncertain"),), "hedged")
    words, row = worded(draw, sayings, name, item)
    return Statement(f"{term} {doubt} {words}", (replace(row, certainty="uncertain"),), "hedged")


def signed(draw: Draw, sayings: Sayings, name: str, item: Item) -> Statement:
    """ "facial droop on the left", "no facial droop": a sign that names its item"""
    sign = draw(st.sampled_from(sayings.signs(name)))
    side = draw(st.sampled_from(["left", "right", ""])) if item.sided != "never" else ""
    where = f" on the {side}" if side else ""
    if draw(st.booleans()):
        return Statement(f"no {sign}{where}", (Row(name, "normal", side=side),), "no sign")
    return Statement(f"{sign}{where}", (Row(name, "abnormal", sign.lower(), side=side),), "sign")


def lone(draw: Draw, sayings: Sayings, name: str, item: Item) -> Statement:
    """ "afebrile", "toes downgoing": a value that names its item"""
    phrase, row = draw(st.sampled_from(sayings.lone(name)))
    return Statement(phrase, (row,), "value alone")


def rows_of(said: Sequence[Statement]) -> list[Row]:
    """All findings that must be read."""
    return [row for one in said for row in one.rows]


def differences(wanted: Sequence[Row], got: Sequence[Row]) -> Iterator[str]:
    """What is missing and what is too much."""
    left = list(got)
    for row in wanted:
        if row in left:
            left.remove(row)
        else:
            yield f"missing {short(row)}"
    yield from (f"unexpected {short(row)}" for row in left)


def short(row: Row) -> str:
    """A row in one line, without what is empty."""
    return " ".join(f"{key}={value}" for key, value in vars(row).items() if value and value != "stated")
