"""Finding, Evidence, Rival, Earlier, Remark; Component, Side, Position, Status, Certainty."""

from __future__ import annotations

import re
from enum import StrEnum

from pydantic import Field

from dictate.model.base import Frozen
from dictate.model.values import Value


class Component(StrEnum):
    """The seven components, in the order in which every note is written."""

    GENERAL = "general"
    MENTAL_STATUS = "mental_status"
    CRANIAL_NERVES = "cranial_nerves"
    MOTOR = "motor"
    SENSORY = "sensory"
    COORDINATION_GAIT = "coordination_gait"
    REFLEXES = "reflexes"


class Side(StrEnum):
    """Side of a finding; both only when it was said."""

    LEFT = "left"
    RIGHT = "right"
    BOTH = "both"
    MIDLINE = "midline"


class Position(StrEnum):
    """Body position of a reading."""

    SUPINE = "supine"
    SITTING = "sitting"
    STANDING = "standing"
    TILTED = "tilted"


class Status(StrEnum):
    """What kind of statement the finding is."""

    MEASURED = "measured"
    NORMAL = "normal"
    ABNORMAL = "abnormal"
    PRESENT = "present"
    ABSENT = "absent"
    UNCHANGED = "unchanged"
    NOT_EXAMINED = "not_examined"
    NOT_ASSESSABLE = "not_assessable"


class Certainty(StrEnum):
    """Whether the examiner hedged."""

    STATED = "stated"
    UNCERTAIN = "uncertain"


# Words in front of a number that make it a bound: no value that anything can be computed from.
SEGMENT = re.compile(r"[a-z]\d{1,2}")  # a site that is a segment or a branch of a nerve: v1, c7, t10
BOUNDS = (
    "more than",
    "less than",
    "fewer than",
    "greater than",
    "longer than",
    "at least",
    "at most",
    "no more than",
    "up to",
    "above",
    "over",
    "below",
    "under",
)


class Evidence(Frozen):
    """Words a finding was taken from: first..last (both included) of the transcript."""

    first: int
    last: int
    quote: str
    start_s: float | None = None
    end_s: float | None = None


class Rival(Frozen):
    """Another word that the sound of a finding may hold, and how much less it fits."""

    kind: str  # number, sign, side, negation, antonym, twin
    heard: str  # as written; empty: nothing
    other: str  # empty: nothing
    margin: float  # nats; below 0 the rival fits better
    word: int  # place in Transcript.words


class Earlier(Frozen):
    """What an earlier record says of something that is said to be unchanged."""

    record: str  # its key
    day: str = ""  # of that examination, 2026-03-04; empty: not stated
    said: str
    agrees: bool = True  # False: this dictation gives another value, and calls it unchanged


class Finding(Frozen):
    """One thing said about one item, and the words it was taken from."""

    component: Component
    item: str  # id in grammars/, e.g. "reflex_patellar"
    side: Side | None = None  # None: not said. Never a default, never "both"
    site: str = ""  # toe, ankle, v1, c7; empty: not said
    position: Position | None = None  # None: not said
    minutes: float | None = None  # since standing up
    status: Status
    certainty: Certainty = Certainty.STATED
    value: Value | None = None
    unit: str = ""  # UCUM, as said or the item's only one; empty: none said and several possible
    detail: tuple[str, ...] = ()
    excepted: bool = False  # said as an exception ("normal except ..."), so no contradiction to the blanket
    corrected: tuple[str, ...] = ()  # earlier words that a spoken correction replaced, as said
    readings: tuple[str, ...] = ()  # other ways to read the same words; not empty: ask which
    earlier: Earlier | None = None  # the record that "unchanged" is tied to; None: to none
    rivals: tuple[Rival, ...] = ()  # of its words, where the sound was weighed; recordings only
    evidence: tuple[Evidence, ...] = Field(min_length=1)  # in the order said

    @property
    def is_bound(self) -> bool:
        """Whether its number was said as a bound ("more than ten steps")."""
        return any(part in BOUNDS for part in self.detail)

    @property
    def quote(self) -> str:
        """All words of the evidence, pieces apart joined by ` ... `."""
        return " ... ".join(piece.quote for piece in self.evidence)


class RemarkKind(StrEnum):
    """Why words became no finding."""

    NOT_PLACED = "not-placed"  # inside the examination, and yet nothing was made of them
    CORRECTED = "corrected"  # struck or replaced by the speaker
    HISTORY = "history"
    IMPRESSION = "impression"
    PLAN = "plan"
    TALK = "talk"  # about another time or another person, or no examination at all
    BLANKET_UNBOUNDED = "blanket-unbounded"  # "rest of the examination normal": scope unknown
    MISHEARD = "misheard"  # words that are none, and may be a term of the trade
    REFERENCE = "reference"  # which patient it is about, as said
    NEXT_PATIENT = "next-patient"  # another patient seems to begin here
    KEPT = "kept"  # the examiner wants the words in the note as they stand
    LEFT_OUT = "left-out"  # the examiner saw the words and left them out of the note


class Remark(Frozen):
    """Words kept in view that became no finding."""

    kind: RemarkKind
    evidence: Evidence
    component: Component | None = None
    item: str = ""  # the item the words name, when one is named
    readings: tuple[
        str, ...
    ] = ()  # terms that misheard words may be; items told of in what was set aside, or excepted from
