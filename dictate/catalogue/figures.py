"""Catalogue of the sentences of computed figures, by the module that writes them."""

from __future__ import annotations

from dictate.catalogue.note import POSITIONS, STATUSES
from dictate.model import Side

__all__ = ["POSITIONS", "STATUSES"]  # the note's own words, used in these sentences too
SIDES = {Side.RIGHT: "right", Side.LEFT: "left", Side.BOTH: "both", Side.MIDLINE: "midline"}

# asymmetry
ROOTS_BEHIND = " ({roots})"
REFLEX_PAIR = "{reflex} right {right}, left {left}{roots}"
REFLEXES_DIFFER = "Reflexes differ: {parts}"
STRENGTH_SPARED = ". At 5: {names}"
STRENGTH_BY_ROOT = "Strength by root (nerve): {rows}{spared}"
BOTH_GRADES = "both {grade}"

# balance
WOMEN_MEN = "{women} (women) and {men} (men)"
ONE_LEG = "One-leg stance{side} {seconds} s, eyes {eyes}: mean at {age} years {mean} s (best of three, up to 45 s)"

# body
BODY_MASS_INDEX = "Body mass index {index} kg/m²"

# changes
UNSTATED_TIME = "an unstated time"
MINUTES_AND = "{times} and {last} min"

# circumstances
NO_SYMPTOM = "none"
NO_SYMPTOMS = "no {symptoms}"
SYMPTOMS_PRESENT = "present"
RHYTHM = "Heart rhythm {rhythm}: changes of rate are uncertain, and no ratio of rate to pressure is computed"
READINGS_MISSING = "Postural readings not dictated although dizziness is asked about: {wanted}"
THIS_ARM = ", {side} arm"
OTHER_ARM = "{when}, {side} arm: lying pressure of the {other} arm only, so not compared"
WANTED_LYING = "lying"
WANTED_STANDING = "standing"
WANTED_EARLY = "standing from {first} to {last} min"
WANTED_LATE = "standing at {minutes} min"
WANTED_RATE = "standing, of the heart rate"

# doubts
IN_DOUBT = "; in doubt: {values}"
SEVERAL_IN_DOUBT = "{count} of its values"
OTHER_TOTAL = "; another total was dictated"

# ears
EARS_FIT_NONE = "fit no single rule; look again"
CONDUCTIVE_BOTH = "fit a conductive loss of both sides, equal"
CONDUCTIVE = "fit a conductive loss, {side}"
SEVERE_SENSORINEURAL = "fit a severe sensorineural loss, {side} (bone heard by the other ear)"
IF_WORSE = ", if the {side} is the worse ear"
SENSORINEURAL = "fit a sensorineural loss, {side}{worse}"
RINNE_AND_WEBER = "Rinne and Weber together {pattern}; no cause is claimed"

# falls
SYSTOLIC = "systolic"
DIASTOLIC = "diastolic"
NOT_KNOWN = "not known"
AND = " and "
NOT_MET_LATER = "; not met at {times}"
FALL_MET = "met at {times}{largest}{later}"
AND_AT = " (and at {times})"
FALL_TIME_OPEN = "met ({fall}), but the time since standing was not said{also}"
FALL_DELAYED = "first met at {times} ({fall}), not met up to 3 min: delayed"
FALL_LATE_ONLY = "met at {times}{largest}, but no reading from 1 to 3 min"
NO_PRESSURES = "no pressures to compare"
FALL_BRIEF = "; a fall of that size at {times} did not last"
NONE_EARLY = "; none from 1 to 3 min"
FALL_NOT_MET = "not met at {times}{gap}{brief}"
FALL_AT_ONCE_ONLY = "met at {times} only; no later reading shows whether it lasted"
TIME_UNSAID = "the time since standing was not said"
NO_READING_FROM_ONE = "no reading from 1 min on"
MOST_AT = ", most {when} ({fall})"
NOT_JUDGED = "not judged: "
ORTHOSTATIC_HYPOTENSION = "Orthostatic hypotension (fall 20/10): {lead}{sentence}"
MET_AT = "met at {times}"
NOT_MET = "not met"
MET_TIME_UNSAID = "met, time not said"
LAIN_SHORT = ", after {minutes} min, not {wanted}"
HIGH_FROM = {"140/90 or more": "from 140 or 90", "above 160": "above 160"}  # by the convention
LARGER_FALL = "Fall of 30 systolic (lying pressure {baseline}, high {high}{lain}): {verdict}"
INITIAL_NOT_REACHED = "not reached"
INITIAL_NO_RECOVERY_SHOWN = "reached; recovery not shown: no later reading"
INITIAL_NO_RECOVERY = "reached; no recovery {when}"
INITIAL_RECOVERY = "reached, with recovery {when}; a cuff cannot confirm it"
INITIAL_FALL = "Initial fall (above 40 systolic or 20 diastolic within 15 s): {verdict}"
LOW_UPRIGHT = "Systolic below 90 upright: {values}"
SITTING_NOT_JUDGED = "not judged: no reading with its minute from 1 min on"
SITTING_TIME_UNSAID = "met, but the time since standing was not said"
SIT_TO_STAND = "Sitting to standing, fall of 15 systolic or 7 diastolic: {verdict}; no lying reading to compare"

# gait
MEAN_OF_TRIALS = ", mean of {count} trials"
SLOW_WALK = "0.8 m/s or less"
USUAL_WALK = "above 0.8 m/s"
WALK_BAND_FEET = "; band {band} (Goldman 2013)"
WALK_BAND_SPEED = "; band {band} (Perry 1995)"
WALKED = "{distance} {unit} in {seconds} s{how}{several}"
WALKING_SPEED = "Walking speed {speed:.2f} m/s ({walked}), {judged}"
WALK_CHANGE = "speed {percent} %; faster by 20 % or more (Hobart 2013): {verdict}"
CHANGE_MET = "met"
CHANGE_NOT_MET = "not met"
WALK_SINCE = "25-foot walk, {before} at the earlier visit{day}, now {now}: {change}"
ON_DAY = " ({day})"
BELOW_SECONDS = "below {low} s"
SECONDS_BETWEEN = "from {low} s, below {high} s"
SECONDS_OR_MORE = "{high} s or more"
BELOW_SPEED = "below {low} m/s"
ABOVE_SPEED = "above {high} m/s"
SPEED_BETWEEN = "{low} to {high} m/s"
BELOW_LIMIT = "below {limit} s ({source})"
REACHES = "reaches {limits}"
UP_AND_GO = "Timed up and go {seconds} s: {judged}"
TANDEM = "Tandem gait: {parts}, as the ataxia scale counts"
STEPS_ABOVE = "{count} steps (more than ten)"
STEPS_NOT_ABOVE = "{count} steps (not more than ten)"
ONE_MISSTEP = "{count} misstep"
MISSTEPS = "{count} missteps"
USUAL_MISSTEPS = "{said} (up to one)"
MORE_MISSTEPS = "{said} (more than one)"

# levels
MOTOR_LEVEL = "Motor level {side}: {level} by key muscles{beside}"
SENSORY_AS_SAID = "; the sensory level stands as said"
MOTOR_AS_SAID = ", {levels} as dictated"

# muscles
SHOULDER_ABDUCTION = "shoulder abduction"
ELBOW_FLEXION = "elbow flexion"
WRIST_EXTENSION = "wrist extension"
HIP_FLEXION = "hip flexion"
KNEE_EXTENSION = "knee extension"
ANKLE_DORSIFLEXION = "ankle dorsiflexion"
MUSCLE_SUM_MISSING = "Muscle sum score not computed: {movement} {side} is missing"
NO_VALUE_IN_SUM = "{grades} has no value in it"
MUSCLE_SUM_REFUSED = "Muscle sum score not computed: {reason}"
SUM_LOW = "below 48"
SUM_NOT_LOW = "not below 48"
MUSCLE_SUM = "Muscle sum score of six movements on both sides: {total} of 60, {judged}"

# postural
SAID_TWICE = "Postural change not judged on readings dictated twice with different values: {values}"
FALL_IN_MMHG = "{fall} mmHg"
RATE_CHANGE = "{change}/min"
OF_ARM = " ({side} arm)"
CHANGES_FROM = "{when}: from {changes}"

# pressures
OLDER_GUIDELINE = "older British guideline"
MEAN_PRESSURE = "{pressure}: mean pressure {mean:.0f} mmHg, pulse pressure {pulse} mmHg"
ABOVE_LIMITS = "above {limits}"
NOT_ABOVE = "not above {limit} ({source})"
EQUAL = "equal"
LEFT_HIGHER = "left higher"
RIGHT_HIGHER = "right higher"
ARM_DIFFERENCE = "Systolic difference between the arms{where}: {difference} mmHg ({higher}); {judged}; one pair only"

# pupils
IN_LIGHT = "in light"
IN_THE_DARK = "in the dark"
PUPIL_DIFFERENCE = "{millimetres} mm ({larger})"
PUPILS_ABOVE = "above 1 mm"
PUPILS_NOT_ABOVE = "not above 1 mm"
PUPILS_DIFFER = "Difference between the pupils: {parts}; {limit}"
BEFORE_LIGHT = "before light"
LARGER = "{side} larger"

# rates
NO_RATES = "no rates to compare"
NO_RISE_LIMIT = "no threshold below {years} years"
RISE_AGE_OPEN = "{largest} at {times} reaches 30 (adults), not 40 (12 to 19 y); age not given"
RISE_AGE_ONCE = "{largest} at {times}: one reading alone reaches 40 (12 to 19 y); age not given"
RISE_WITH_FALL = "not met: {largest}, but with a fall of pressure"
RISE_TIME_OPEN = "{largest} reaches {limit}, but the time since standing was not said"
RISE_NOT_MET = "not met (largest rise {largest}{limit})"
RISE_LATE_ONLY = "not met within {minutes} min (read later only)"
NO_RATE_IN_TIME = "no reading with its time from 1 to {minutes} min"
RISE_NOT_LASTING = "not met: {largest} at {times} did not last ({later} later)"
RISE_NO_PRESSURES = "a rise of {limit} reached at {times}, but no pressures to exclude a fall"
RISE_ONCE = "; one reading does not show that it lasts"
RISE_LIMIT = "limit {limit}"
RISE_LIMIT_AGED = "limit {limit}, age {age}"
RISE_MET = "met at {times} ({largest}, {limit}){once}"
RISE_LEADS = {"not judged": "not judged: ", "open": "open: "}  # in front of a verdict that is none
WITH_SYMPTOMS = "; symptoms: {symptoms}"
SYMPTOMS_NOT_SAID = "not said"
RATE_CRITERION = "Postural heart-rate criterion (lasting rise, no fall): {lead}{sentence}{symptoms}"
RATIO_BELOW = "below"
RATIO_NOT_BELOW = "not below"
RATE_RATIO = "Rate rise over systolic fall{when}: {sum}, {side} 0.5 (if sinus rhythm)"

# readings
WHEN_UNSAID = "{position}, time not said"
AT = "at {time}"  # the time of a reading
ONCE = "once"
MINUTES = "{minutes} min"
SECONDS = "{seconds} s"

# scales
BOTH_PUPILS = "both pupils"
ONE_PUPIL = "one pupil"
COMA_WITH_PUPILS = "Coma scale with pupils: {coma} - {unreactive} = {total} ({which} unreactive)"
SUM = "{name}: {total} of {highest} ({parts})"
SUM_REFUSED = "{name} not computed: {part} {reason}"
VERBAL_INTUBATED = "; verbal 1 was said of an intubated patient, whose words cannot be tested"
PART_NOT_SAID = "is missing"
PART_UNTESTABLE = "could not be tested"
SUM_OF_SCORED = "{name} of {count} scored items: {total}; not counted: {names} (untestable)"

# sensation
BELOW = "below"
WITHIN = "within"
VIBRATION = "Vibration {where} {points}/8: {judged} the usual for {age} years ({lowest} or more)"

# vessels
RETINAL_GAP = "{side} {gap} mmHg below the arm ({arm}; ratio {ratio:.2f})"
RETINAL = "Retinal diastolic: {parts}; no limit is built in"
EYES_ALIKE = "both eyes alike"
EYE_LOWER = "{side} eye lower by {difference} mmHg ({percent} %)"
SIDES_IN_FULL = SIDES | {Side.BOTH: "both sides"}
FACIAL_PULSE = "facial pulse {side}{said}"
BRUITS = {
    "carotid_bruit": "carotid bruit {side}{said}",
    "orbital_bruit": "orbital bruit {side}{said}",
    "temporal_bruit": "temporal bruit {side}{said}",
}
PULSES = (
    "{said}. A narrowed and a blocked vessel cannot be told apart by these; loss at the inner corner of the eye alone "
    "proves no disease (nasal artery reversed in 39 of 100 healthy adults)"
)

# vision
ACUITY = "Acuity: {parts}{between}"
ACUITY_EYE = "{side}{said} = {decimal} (logMAR {logmar:.2f})"
ACUITY_NOT_COMPARED = "; not compared: read under different words"
ONE_LINE_WORSE = "; {side} {count} line worse"
LINES_WORSE = "; {side} {count} lines worse"
