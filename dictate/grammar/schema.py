"""What a grammar file may say, as models."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from dictate.grammar.wordings import spelled_out
from dictate.model import Component, Frozen

Kind = Literal["pressure", "quantity", "grade", "score", "acuity", "choice", "presence", "normality", "text"]
StatusWord = Literal["measured", "normal", "abnormal", "present", "absent", "not_examined", "not_assessable"]
Phrases = Annotated[tuple[str, ...], BeforeValidator(spelled_out)]  # "(has|had) no (tone|power)": four of them
Way = Literal["higher", "lower", ""]  # which numbers or grades are better; empty: nothing says so


class Expected(Frozen):
    """One finding an example must yield. Side, site, position and minutes not given must be empty."""

    item: str = ""  # empty: the item the example stands at
    side: str = ""
    site: str = ""
    position: str = ""
    minutes: float | None = None
    status: StatusWord | Literal["unchanged", ""] = ""  # empty: not compared; so are value, unit and certainty
    value: str | None = None
    unit: str | None = None
    certainty: Literal["stated", "uncertain", ""] = ""


class Example(Frozen):
    """A phrase, the findings it must yield (all of them), and the check codes it must raise."""

    say: str
    under: Component | None = None  # component heading in force when it is said
    find: tuple[Expected, ...] = ()
    ask: Phrases = ()


class NamedValue(Frozen):
    """A value with a name: a choice of the item, or a descriptor that deserves its own status."""

    say: Phrases = Field(min_length=1)
    status: StatusWord
    alone: bool = False  # the phrase names the item by itself ("toes downgoing", "afebrile")
    value: str | None = None  # written instead of the value's name; "" writes nothing
    side: Literal["left", "right", "both", "midline", ""] = ""  # a side the phrase itself says (PERRL: both pupils)


class Limits(Frozen):
    """Bounds outside which a number cannot be right; both ends allowed."""

    low: float | None = None
    high: float | None = None
    source: str


class Noteworthy(Frozen):
    """Which statuses and values of the item stand out, and who says so."""

    statuses: tuple[StatusWord, ...] = ()
    values: Phrases = ()
    below: float | None = None
    above: float | None = None
    unless: Phrases = ()  # conditions by their names, under which the limits say nothing
    source: str


class NamedScale(Frozen):
    """One of the many scales of an item that keeps their names."""

    terms: Phrases = Field(min_length=1)  # of the item's own terms
    better: Way = ""
    source: str


class Supply(Frozen):
    """Which nerve and roots serve a muscle or a reflex; books differ by a segment."""

    nerve: str
    roots: Phrases = Field(min_length=1)  # from above down
    chief: Phrases = ()  # the one or two usually called the main ones
    source: str


class Item(Frozen):
    """One thing that can be examined: how it is named, what its value looks like, what it varies by."""

    name: str
    kind: Kind
    better: Way = ""
    terms: Phrases = ()  # name the item anywhere (for presence: name the sign)
    context_terms: Phrases = ()  # name it under its component's heading, or beside a value only it can take
    signs: Phrases = ()  # normality items: name the abnormal sign itself ("facial droop"); denied = normal
    parts: Phrases = ()  # names of a part of it only: kept ("eye closure" of facial strength)
    faculties: Phrases = ()  # presence: terms that name what fails ("abduction of the eye"); denied = present
    sided: Literal["never", "may", "paired"] = "never"  # paired: ask for the side when it matters
    limb: Literal["upper_limb", "lower_limb", ""] = ""  # that it, or what it covers, is of ("Right arm. Grip 4.")
    organ: Literal["eye", "ear", ""] = ""  # that it is of ("Left eye. Acuity 6/12.")
    midline: bool = False
    of_side: Literal["left", "right", ""] = ""  # the side the item itself names (left arm of a stroke scale)
    opposite: str = ""  # the item of the other side
    positions: bool = False
    sited: bool = False  # body sites of common.yaml may follow
    sites: dict[str, Phrases] = Field(default_factory=dict)  # sites of this item only
    scale: str = ""  # of scales.yaml; grade items
    listed_with: str = ""  # the scale in whose lists it is told: takes the side carried there
    of: float | None = None  # maximum that speech leaves unsaid but the item fixes
    task: bool = False  # something the patient does: "able to" says it was normal
    keeps_name: bool = False  # one item for many scales: which one was said stands in the detail
    named: dict[str, NamedScale] = Field(default_factory=dict)  # those scales, as the note writes their names
    scored: bool = False  # normality items that may also be given as n of m, signs as a rating of nought to four
    unit: str = ""  # UCUM, the usual one
    units: dict[str, Phrases] = Field(default_factory=dict)  # UCUM → ways to say it
    rate: str = ""  # the item that a number behind "at" is of ("sinus rhythm at 72")
    bare_units: Phrases = ()  # units that name the item by themselves ("80 bpm")
    unit_required: bool = False  # a number without a unit is open (weight, temperature)
    values: dict[str, NamedValue] = Field(default_factory=dict)
    normal: Phrases = ()  # further words that say normal of this item
    abnormal: Phrases = ()  # further descriptors that say abnormal of this item
    qualifiers: Phrases = ()  # words kept in the value ("rest" tremor, "soft" bruit)
    spheres: Phrases = ()  # what one may be oriented to that is this item ("place"); values `oriented`, `disoriented`
    negated: Literal["absent", "normal", "abnormal", "unclear", ""] = ""  # what "no <item>" means; default by kind
    tells_denied: bool = False  # "no rash" says less than that the skin is normal: what was denied is kept
    alone: bool = True  # presence items: the term alone means present
    bare_value: bool = False  # a value of this kind without any item name belongs here
    group: str = ""  # items dictated in one breath (coma_scale)
    nerve: str = ""
    nerve_numbers: tuple[int, ...] = ()  # nerves whose bare number names it ("seven normal")
    blanket: bool = False
    covers: Phrases = ()  # blanket: item ids it covers; empty: its whole component
    site_items: dict[str, str] = Field(default_factory=dict)  # site → the item meant ("strength in the arms")
    limits: Limits | None = None
    noteworthy: Noteworthy | None = None
    supply: Supply | None = None
    examples: tuple[Example, ...] = ()


class ComponentFile(Frozen):
    """One of the seven components' files."""

    component: Component
    headings: Phrases = Field(min_length=1)  # spoken headings, main one first
    items: dict[str, Item] = Field(min_length=1)


class Scale(Frozen):
    """An ordinal scale."""

    name: str
    better: Way = ""
    grades: Phrases = Field(min_length=2)  # in rising order, as written
    say: dict[str, Phrases] = Field(default_factory=dict)  # grade → ways to say it besides the plain ones
    of: float | None = None  # what "n out of m" has as m
    normal: Phrases = ()  # grades that are not noteworthy
    source: str


class ScalesFile(Frozen):
    """scales.yaml"""

    scales: dict[str, Scale]


class ScopeItem(Frozen):
    """An item a scope expects and why."""

    item: str
    why: str
    source: str = "common practice, no source"


class Scope(Frozen):
    """What an examination for one complaint is expected to hold."""

    name: str
    expects: tuple[ScopeItem, ...] = Field(min_length=1)
    standing_minutes: tuple[Annotated[float, Field(gt=0)], ...] = ()  # the standing clock rings then; none: as ever


class ScopesFile(Frozen):
    """scopes.yaml"""

    scopes: dict[str, Scope]


class Limit(Frozen):
    """A threshold and the measurement that set it."""

    at: float
    why: str


class DoubtFile(Frozen):
    """doubt.yaml: what is mistaken for what in sound, and when to ask."""

    limits: dict[str, Limit] = Field(default_factory=dict)
    rivals: dict[str, dict[str, Phrases]] = Field(default_factory=dict)  # kind → written → mistaken for


class CommonWords(Frozen):
    """Words that mean the same with every item."""

    normal: Phrases
    abnormal: Phrases
    present: Phrases
    absent: Phrases
    not_examined: Phrases
    not_assessable: Phrases
    unchanged: Phrases
    negation: Phrases
    severity: Phrases
    hedges: Phrases
    exceptions: Phrases  # "except", "apart from"
    corrections: Phrases  # "correction", "I mean"
    strikes: Phrases  # "strike that"
    swaps: Phrases  # "the other way round"
    same: Phrases
    reasons: Phrases  # "because of"
    rest: Phrases  # "the rest of", "otherwise"
    throughout: Phrases
    equal: Phrases
    fillers: Phrases  # words that carry nothing by themselves
    ability: Phrases  # "able to", in front of a task
    losses: Phrases  # "missed", "lost": the number behind is of what was not achieved
    talk: Phrases  # mark a clause as about another time, another person, or no examination
    next_patient: Phrases
    reference: Phrases  # what a patient's reference follows
    comparisons: Phrases  # "worse", "greater than": with a side they are detail, not the side
    other_side: Phrases
    same_side: Phrases
    right_then_left: Phrases
    left_then_right: Phrases


class CommonFile(Frozen):
    """common.yaml"""

    sides: dict[Literal["left", "right", "both", "midline"], Phrases]
    positions: dict[Literal["supine", "sitting", "standing", "tilted"], Phrases]
    beside_pressures: dict[Literal["supine", "sitting", "standing"], Phrases]  # positions only there: "120/80 sit"
    at_once: Phrases  # "immediately": minutes 0
    sites: dict[str, Phrases]
    limbs: dict[str, Phrases]  # "left upper_limb" → LUE
    organs: dict[Literal["eye", "ear"], Phrases] = Field(default_factory=dict)  # titles of one of two: "left eye"
    plurals: Phrases  # names and places that mean both sides: "knees two plus", "five seconds at the toes"
    directions: Phrases  # "on left gaze", "to the left" of a fall: descriptors, not sides
    manoeuvres: dict[str, Phrases]  # site of a reading: stairs, hyperventilation
    conditions: dict[str, Phrases] = Field(default_factory=dict)  # what readings must share to be compared
    hesitations: Phrases  # "um": said while looking for the next word
    dictated_marks: dict[Literal[".", ",", ":", ";", "line"], Phrases] = Field(default_factory=dict)  # "full stop"
    dialogue: dict[Literal["asks", "answers"], Phrases] = Field(default_factory=dict)  # how talk with a patient begins
    shortened: dict[str, Phrases] = Field(default_factory=dict)  # "flexion" → flex: in names of joint and movement
    words: CommonWords
    misheard: dict[str, Phrases]  # what was meant → what recognisers write for it; recordings only, always shown
    trusted: dict[str, Phrases] = Field(default_factory=dict)  # mishearings the user has told to read so: not shown
    sections: dict[Literal["examination", "history", "complaint", "impression", "plan", "investigations"], Phrases]


Control = Literal["pause", "resume", "end", "read_back", "still_open", "start_clock"]


class ControlsFile(Frozen):
    """controls.yaml"""

    controls: dict[Control, Phrases]  # what is said to the program itself, as a sentence of its own


class Grammar(Frozen):
    """Everything the reader knows of the trade."""

    components: dict[Component, ComponentFile]
    common: CommonFile
    scales: dict[str, Scale]
    scopes: dict[str, Scope]
    controls: dict[Control, Phrases] = Field(default_factory=dict)
    sha256: str
    doubt: DoubtFile = DoubtFile()

    @property
    def items(self) -> dict[str, Item]:
        """All items by id."""
        return {name: item for part in self.components.values() for name, item in part.items.items()}

    def item(self, name: str) -> Item:
        """The item of that id. Raises KeyError."""
        for part in self.components.values():
            if name in part.items:
                return part.items[name]
        raise KeyError(name)

    def component_of(self, name: str) -> Component:
        """The component an item belongs to. Raises KeyError."""
        for component, part in self.components.items():
            if name in part.items:
                return component
        raise KeyError(name)
