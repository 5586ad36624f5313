"""The catalogue of the note's words."""

from __future__ import annotations

from dictate.model import Component, Position, RemarkKind, Severity, Side, Status

COMPONENTS = {
    Component.GENERAL: "GENERAL EXAMINATION",
    Component.MENTAL_STATUS: "MENTAL STATUS",
    Component.CRANIAL_NERVES: "CRANIAL NERVES",
    Component.MOTOR: "MOTOR",
    Component.SENSORY: "SENSORY",
    Component.COORDINATION_GAIT: "COORDINATION AND GAIT",
    Component.REFLEXES: "REFLEXES",
}
SECTIONS = {  # spoken, and yet no finding
    RemarkKind.KEPT: "REMARKS (as dictated)",
    RemarkKind.HISTORY: "HISTORY (as dictated)",
    RemarkKind.IMPRESSION: "IMPRESSION (as dictated)",
    RemarkKind.PLAN: "PLAN (as dictated)",
}
SIDES = {Side.RIGHT: "right", Side.LEFT: "left", Side.BOTH: "both sides", Side.MIDLINE: "midline"}  # in written order
POSITIONS = {
    Position.SUPINE: "supine",
    Position.SITTING: "sitting",
    Position.STANDING: "standing",
    Position.TILTED: "tilted",
}
STATUSES = {
    Status.MEASURED: "measured",
    Status.NORMAL: "normal",
    Status.ABNORMAL: "abnormal",
    Status.PRESENT: "present",
    Status.ABSENT: "absent",
    Status.UNCHANGED: "unchanged",
    Status.NOT_EXAMINED: "not examined",
    Status.NOT_ASSESSABLE: "not assessable",
}
UNITS = {  # UCUM → as written behind a number; others as they are
    "mm[Hg]": " mmHg",
    "/min": "/min",
    "/(10.s)": " in 10 seconds",
    "Cel": " °C",
    "[degF]": " °F",
    "deg": "°",
    "%": "%",
    "[lb_av]": " lb",
    "[in_i]": " in",
    "[ft_i]": " ft",
    "1": "",
}
ABBREVIATIONS = {"gcs", "four", "sara", "nihss"}  # parts of ids that are written in capitals

DRAFT = "DRAFT, not signed, {count} open"
SIGNED = "Signed by {name}{time}"
SIGNED_AT = ", {time}"
PEOPLE = {  # field of the examination → as written, in this order
    "countersigned_by": "Countersigned by {name}",
    "examined_by": "Examined by {name}",
    "dictated_by": "Dictated by {name}",
}
PATIENT = "Patient: {patient}"
NO_PATIENT = "Patient: no reference given"
EXAMINED = "Time of examination: {time}{origin}"
EXAMINED_FROM = {"option": "", "spoken": " (as dictated)", "recording": " (creation time of the recording)", "": ""}
AGE = "Age: {age}{origin}"
AGE_FROM = {"option": "", "spoken": ' (as dictated: "{quote}")', "": ""}
NOT_STATED = "Time of examination not stated"
NOTHING = "nothing dictated"
AT_ONCE = "at once"
AFTER_STANDING = "at {minutes} min"
POSTURAL = "Postural series"
AS_SAID = 'as said: "{quote}"'
UNCERTAIN = "uncertain:"
COMPUTED = "Computed: {text}"
QUERIES = {  # in this order
    Severity.MUST: "QUERIES TO SETTLE BEFORE SIGNING",
    Severity.LOOK: "QUERIES TO LOOK AT",
}
NOT_PLACED = "NOT PLACED (heard, and yet part of nothing above)"
NORMAL_LIST = "Normal: {names}"
ABSENT_LIST = "Absent: {names}"
CAUTION = (
    "This note states what was dictated. It supports licensed practice, makes no diagnosis, and is to be checked "
    "by the examiner."
)
