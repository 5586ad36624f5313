"""Catalogue of the words of notes, comparisons, pictures and pages."""

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
NAMES = {  # of the components, inside a sentence or beside a finding
    Component.GENERAL: "General",
    Component.MENTAL_STATUS: "Mental status",
    Component.CRANIAL_NERVES: "Cranial nerves",
    Component.MOTOR: "Motor",
    Component.SENSORY: "Sensory",
    Component.COORDINATION_GAIT: "Coordination and gait",
    Component.REFLEXES: "Reflexes",
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
INSIDE = frozenset(  # a sign is in these and at any other site
    "abdomen arm back buttock calf chest eyelid face finger foot forearm forehead great_toe groin hand head "
    "index_finger jaw leg limb little_finger low_back lower_limb lower_quadrant middle_finger neck palm perineum "
    "ring_finger shin sole thigh thumb toe tongue trunk upper_limb upper_quadrant".split()
)
REACHES = ("up to", "down to", "to", "as far as", "below", "above", "distal to", "proximal to")  # in front of a site
TURNING = ("deviates", "lateralises")  # values that end so: their side is a direction
TOLD = ("examination_conditions", "orthostatic_symptoms")  # present says nothing: what was said of them does
SHORT_NAMES = {"orthostatic_symptoms": "symptoms"}  # where the position stands beside it
PLACE_NAMES = {"dix_hallpike": "Dix-Hallpike"}  # places that are names
ADVERBS = {"possible": "possibly", "probable": "probably", "questionable": "questionably"}  # in front of a status
JOINING = frozenset(("with", "but"))  # said between two descriptors, and kept between them
OTHERWISE = "otherwise {said}"
ABBREVIATIONS = {"gcs", "four", "sara", "nihss"}  # parts of ids that are written in capitals

DRAFT = "DRAFT, not signed, {count} open"
SIGNED = "Signed by {name}{time}"
SIGNED_AT = ", {time}"
PEOPLE = {  # field of the examination → as written, in this order
    "countersigned_by": "Countersigned by {name}",
    "examined_by": "Examined by {name}",
    "dictated_by": "Dictated by {name}",
}
AT_PLACE = "at the {place}"
IN_PLACE = "in the {place}"
AT_SEGMENT = "at {place}"
TO_SIDE = "to the {side}"
ONE_QUERY = "1 query"
QUERY_COUNT = "{count} queries"
NOTEWORTHY = "NOTEWORTHY"
HEARD = 'heard "{quote}"'
AT_TIME = "at {time}"
OF_SOURCE = " of {name}"
PATIENT = "Patient: {patient}"
NO_PATIENT = "Patient: no reference given"
PATIENT_SPOKEN = 'Patient: no reference given (as dictated: "{quote}")'
EXAMINED = "Time of examination: {time}{origin}"
EXAMINED_FROM = {"option": "", "spoken": " (as dictated)", "recording": " (creation time of the recording)", "": ""}
AGE = "Age: {age}{origin}"
AGE_FROM = {"option": "", "spoken": ' (as dictated: "{quote}")', "": ""}
MONTHS = "{count} months"
YEARS = "{count} years"
SPAN = "{first} to {last}"
NOT_STATED = "Time of examination not stated"
NOTHING = "nothing dictated"
AT_ONCE = "at once"
AFTER_STANDING = "at {minutes} min"
SECONDS_AFTER_STANDING = "at {seconds} s"
POSTURAL = "Postural series"
AS_SAID = 'as said: "{quote}"'
EARLIER = "{day}, record {record}: {said}"  # what "unchanged" is tied to
EARLIER_UNDATED = "earlier record {record}: {said}"
UNCERTAIN = "uncertain:"
COMPUTED = "Computed: {text}"
QUERIES = {  # in this order
    Severity.MUST: "QUERIES TO SETTLE BEFORE SIGNING",
    Severity.LOOK: "QUERIES TO LOOK AT",
}
NOT_PLACED = "NOT PLACED (heard, and yet part of nothing above)"
NORMAL_LIST = "Normal:"
ABSENT_LIST = "Absent:"
NOT_EXAMINED_LIST = "Not examined:"
CAUTION = (
    "This note states what was dictated. It supports licensed practice, makes no diagnosis, and is to be checked "
    "by the examiner."
)

# Around a signed note, from its record
WITHDRAWN = "WITHDRAWN {at} by {who}: entered in error. Reason: {why}"
MOVED = 'MOVED {at} by {who} to the reference "{patient}". Reason: {why}'
ERASED_NOTE = "ERASED {at} by {who}. Reason: {why}"
SOUND_ERASED = "Recordings erased {at} by {who}. Reason: {why}"
ADDENDUM = "ADDENDUM {at} by {who}. Reason: {why}"
COUNTERSIGNED = "COUNTERSIGNED {at} by {who}"
BACKWARD = "{said} (dated earlier than what it follows: the machine's clock had been turned back)"
FOOT = "Record {key}, revision {revision}, head {head}"

HANDED_ON_WITHDRAWN = "{record}: WITHDRAWN, entered in error: the {form} does not say so"  # beside the file, not in it
HANDED_ON_ADDENDA = (
    "{record}: addenda after signing: {count}: the {form} holds none of them: `dictate export {record}` prints them"
)

# Comparison of visits
BOUND = "said as a limit"
TOLD_OTHERWISE = "the value"
SAID_OTHERWISE = "given in another way"
UNIT_DIFFERS = "unit differs"
DOUBT_DIFFERS = "said with doubt at one visit only"
SAID_TWICE = "said twice with different values at one visit"
ADDED = "Added after signing"
PLACE_DIFFERS = "{what} differs"
PLACES_DIFFER = "{what} and {last} differ"
PLACE_PARTS = {"side": "side", "site": "site", "position": "position", "minutes": "time since standing",
               "condition": "condition"}  # fmt: skip
OF_REST = "at one visit of the rest alone"  # "otherwise normal", beside something that is not
OF_TRIALS = "means of the trials"
TIED = "said to be unchanged, and tied to the earlier record"
SAID_UNCHANGED = "said to be unchanged, and the earlier record says otherwise"
NOTHING_TO_TIE = "said to be unchanged, and no earlier statement to tie it to"
AND_ALSO = " and also "
COMPARISON = "COMPARISON OF VISITS"
VISIT_STATES = {  # of records whose statements are not all there is to say
    "amended": " (amended after signing: read the addenda, they are not compared)",
    "withdrawn": " (WITHDRAWN: entered in error)",
}
VISIT = "visit {number}, {time}"
NOT_STATED_SHORT = "time of examination not stated"
FROM_TO = "FROM {earlier} TO {later}"
VISIT_OF = "visit {number} ({time})"  # in a heading
OUT_OF_ORDER = "The times of examination contradict this order: compared in the order given"
NO_CHANGE = "No statement changed"
NOW = "{earlier}, now {later}"
TRENDS = "OVER ALL VISITS"
TREND_STEP = ", then "
KINDS = {  # of notes/directions.py, in the order in which they are written
    "new": "NEW",
    "new by name": "NEW BY NAME (last time the whole was said to be normal)",
    "worse": "WORSE",
    "not so": "SAID TO BE UNCHANGED, AND YET DIFFERENT",
    "changed": "CHANGED (nothing says which is better)",
    "better": "BETTER",
    "gone": "GONE",
    "not named this time": "NOT NAMED THIS TIME (the whole was said to be normal)",
    "not comparable": "NOT COMPARABLE",
    "not examined this time": "NOT EXAMINED THIS TIME",
    "not assessable this time": "NOT ASSESSABLE THIS TIME",
    "nothing dictated this time": "NOTHING DICTATED THIS TIME (it may have been examined)",
    "not examined last time": "NOT EXAMINED LAST TIME",
    "not assessable last time": "NOT ASSESSABLE LAST TIME",
    "nothing dictated last time": "NOTHING DICTATED LAST TIME (it may have been examined)",
    "unchanged": "UNCHANGED",
}
COMPARISON_CAUTION = (
    "This compares what was dictated. Better and worse follow the item or its scale and judge no patient. It makes no "
    "diagnosis, and is to be checked by the examiner."
)

# Pictures
SERIES_DESCRIPTION = "Blood pressure, heart rate and symptoms in the order dictated. {rows}."
SERIES_COLUMNS = ("position", "blood pressure", "heart rate", "symptoms")
SERIES_UNITS = "mmHg, /min"
SERIES_KEY = "bar: systolic to diastolic · ring: heart rate · S: symptoms"
SERIES_BOUNDS = "arrow: said as a limit, the value lies this way"
SIGNS = {">": ">", ">=": "≥", "<": "<", "<=": "≤"}  # in front of a number that was said as a limit
SYMPTOMS_MARK = "S"
STRENGTH_TITLE = "Strength by side"
REFLEX_TITLE = "Reflexes by side"
BODY_DESCRIPTION = "As dictated, the patient seen from the front. {rows}."
BODY_COLUMNS = ("item", "right", "left", "side not said, or said of many")
BODY_ALSO = "also said: {said}"
BODY_KEY = "filled mark, bold: noteworthy · ring: other · no mark: not said of that side"
PATIENTS_SIDE = {Side.RIGHT: "patient's right", Side.LEFT: "patient's left"}
FIELD_TITLE = "Visual fields"
FIELD_DESCRIPTION = "As the patient sees them. {rows}."
FIELD_COLUMNS = ("visual fields, as dictated",)
FIELD_KEY = ("as the patient sees them", "shaded: lost · white: not named · dashed: not said")
NOT_SAID = "not said"
NOT_SAID_BY_ITSELF = "not said by itself"  # of an item of a side, where the last column speaks of many
EYES = {Side.LEFT: "left eye", Side.RIGHT: "right eye"}
TREND_TITLE = "Over the visits: {name}"
TREND_COLUMNS = ("visit", "as dictated")
VISIT_SHORT = "visit {number}"
NO_NUMBER = "no number"

# Page
PAGE_TITLE = "Neurological examination"
LANGUAGE = "en"

# FHIR document
VERSION_PROGRAM = "program"
VERSION_GRAMMAR = "grammar, SHA-256"
VERSION_MODEL = "speech model {name}, SHA-256"
TRANSCRIPT = "words of the dictation"
SOURCE_KINDS = {"recording": "recording of the dictation", "text": "text of the dictation"}
EXAMINER_NOT_NAMED = "the examiner, not named"

# languages of recordings, those met most; others by their code
LANGUAGES = {
    "ar": "Arabic", "cs": "Czech", "da": "Danish", "de": "German", "el": "Greek", "es": "Spanish", "fi": "Finnish",
    "fr": "French", "hi": "Hindi", "hu": "Hungarian", "it": "Italian", "ja": "Japanese", "ko": "Korean",
    "nl": "Dutch", "no": "Norwegian", "pl": "Polish", "pt": "Portuguese", "ro": "Romanian", "ru": "Russian",
    "sv": "Swedish", "tr": "Turkish", "uk": "Ukrainian", "vi": "Vietnamese", "zh": "Chinese",
}  # fmt: skip
