"""The models the rooms meet in."""

from dictate.model.base import Frozen
from dictate.model.conventions import Conventions
from dictate.model.examination import FORMAT, FORMAT_VERSION, Around, AsRead, Examination, Figure, Origin
from dictate.model.findings import (
    BOUNDS,
    SEGMENT,
    Certainty,
    Component,
    Earlier,
    Evidence,
    Finding,
    Position,
    Remark,
    RemarkKind,
    Rival,
    Side,
    Status,
)
from dictate.model.persons import Person
from dictate.model.queries import Action, Change, Decision, Query, Severity
from dictate.model.values import Acuity, Choice, Grade, Pressure, Quantity, Score, Text, Value, number_text
from dictate.model.words import Hints, ModelIdentity, Sound, Source, Stretch, Transcript, Word

__all__ = [
    "BOUNDS",
    "FORMAT",
    "FORMAT_VERSION",
    "SEGMENT",
    "Action",
    "Acuity",
    "Around",
    "AsRead",
    "Certainty",
    "Change",
    "Choice",
    "Component",
    "Conventions",
    "Decision",
    "Earlier",
    "Evidence",
    "Examination",
    "Figure",
    "Finding",
    "Frozen",
    "Grade",
    "Hints",
    "ModelIdentity",
    "Origin",
    "Person",
    "Position",
    "Pressure",
    "Quantity",
    "Query",
    "Remark",
    "RemarkKind",
    "Rival",
    "Score",
    "Severity",
    "Side",
    "Sound",
    "Source",
    "Status",
    "Stretch",
    "Text",
    "Transcript",
    "Value",
    "Word",
    "number_text",
]
