"""Catalogue of the questions that queries ask and of their answers, by the module that asks them."""

from __future__ import annotations

# conflicts
SAID_TWICE = "{topic}: {first}, then {second}; which is right?"
NOT_UNCHANGED = "{topic}: {said}, said to be unchanged, {before} before"
OF_RECORD = "{text} (record {record}); which is right?"
CONTRADICTION = "{first}, yet {second}: which is right?"
EXCEPT = "{whole} except {part}"

# heard
OR = " or "
MAY_BE = "{finding}: may have been {rivals}; which was said?"
MISHEARD = '"{quote}" may have been {terms}; which was said?'
NEITHER = "neither"
RIVAL = '"{other}" in place of "{heard}"'
MENDED = "{finding}: {heard}, and taken for a term that sounds like it: is it right?"
OF_RECORDING = " of recording {number}"
SPEECH_WITHOUT_WORDS = "At {time}{recording} more was said than was written down: play it; what is missing?"
NOTHING_BELONGS = "nothing that belongs in the note"

# place
ONE_AGAINST_OTHER = "{topic} {said}: it is of one side against the other; which side?"
WHICH_SIDE = "{topic} {said}: which side?"
WHICH_POSITION = "{topic} {said}: in which position?"
HOW_LONG = "{topic} {said}: how long after standing up?"
BY_CLOCK = " The recording ran {time} since standing or the last timed reading was spoken."

# ranges
SYSTOLIC_OUTSIDE = "systolic is outside 1 to {highest}; what was measured?"
DIASTOLIC_NOT_BELOW = "diastolic is not below systolic; what was measured?"
DIASTOLIC_LOW = "diastolic is below {lowest}; what was measured?"
DIASTOLIC_OUTSIDE = "diastolic is outside 1 to {highest}; what was measured?"
BELOW_ZERO_MEASURED = "it is below zero; what was measured?"
TOO_FAST_MEASURED = "no one walks that fast; what was measured?"
TOO_FAST_WALKED = "no one walks that fast; which distance, and which time?"
LARGER_IN_LIGHT = "light makes it larger; which was before light, and which in it?"
THRILL_BELOW = "a thrill goes with grade {grade} or more; which is right?"
NO_THRILL_FROM = "from grade {grade} on a thrill is felt; which is right?"
LONGER_BACKWARD = "longer than the {forward} forward; which is right?"
OUTSIDE_MEASURED = "outside {limits}; what was measured?"
ITS_LIMITS = "its limits"
UPPER_LIMIT = "the limit of {high}{unit}"
LOWER_LIMIT = "the lowest of {low}{unit}"
RANGE = "{low} to {high}{unit}"
MORE_THAN_COUNTED = "more than the {highest} there are; what was counted?"
BELOW_ZERO_COUNTED = "it is below zero; what was counted?"
OUTSIDE_COUNTED = "outside {limits}; what was counted?"
NO_SUCH_GRADE = "the scale ({scale}) has no such grade; which one?"
LINE_OF_ZERO = "a line of zero does not exist; what was read?"
MORE_THAN_GRADED = "more than the {highest} there are; which grade?"
NO_SUCH_SEGMENT = "there is no such segment; which level?"
OTHER_UNIT = "{topic} {value:g}, said with {unit}: which number, and in which unit?"
WHICH_UNIT = "{topic} {value}: in which unit?"

# scope
READING = "reading {reading}"
NOT_MENTIONED = "{component}, not mentioned: {names}. Examined?"
NOT_EXAMINED = "not examined"
LOST_EXCEPTION = '"{quote}" is an exception from {names}, and became no finding: what was found?'
LOST_NEGATION = '"{quote}" stands in front of {finding}: was it denied?'
STRUCK_WHAT = '"{quote}" stands in front of words that strike something out: does the note hold what it should?'
MISHEARD_STRIKE = (
    '"{quote}" may have been an order to strike out what stands before it, which still stands: is that right?'
)
NO_FINDING = '{about}"{quote}" became no finding: leave it out?'
KEEP_WORDS = "keep the words"
LEAVE_OUT = "leave out"
KEPT_AS_HISTORY = "Kept as history, though it gives {names}: is it the examination?"
LEAVE_AS_HISTORY = "leave as history"
KEPT_AS_TALK = "Kept as talk, though it gives {names}: is it the examination?"
LEAVE_AS_TALK = "leave as talk"
KEPT_AS_IMPRESSION = "Kept as impression, though it gives {names}: is it the examination?"
LEAVE_AS_IMPRESSION = "leave as impression"
KEPT_AS_PLAN = "Kept as plan, though it gives {names}: is it the examination?"
LEAVE_AS_PLAN = "leave as plan"
WHICH_PARTS = '"{quote}": which parts were examined?'
NONE_FURTHER = "none further"
NO_EARLIER_RECORD = "{finding}: no earlier record speaks of it; what was found?"
ANOTHER_BEGINS = '"{quote}": does another patient begin here?'
ANOTHER_FROM_HERE = "another patient from here on"
SAME_PATIENT = "same patient"
WHOSE_EXAMINATION = "The dictation names another patient than the note is made for: whose examination is it?"
ANOTHER_PATIENT = "another patient"
NOTES_PATIENT = "the note's patient"

# sound
RECORDING_NUMBER = "recording {number}"
THE_RECORDING = "the recording"
OTHER_LANGUAGE = (
    "{recording} seems to be in another language ({language}), and English words were made of it: "
    "check every finding, or dictate it again in English"
)
SOUND_OF = "{recording} was hard to hear ({faults}): check numbers and sides against what you remember, or play it"
SOUND_NOISY = "speech is only {level:.0f} dB above the noise"
SOUND_LOW = "very low, {level:.0f} dB below full scale"
SOUND_CLIPPED = "too loud for the microphone, {share:.1%} of it cut off"
SOUND_TONES = "tones in the pauses {below:.0f} dB below speech (music, a machine?)"
SOUND_VOICES = "two people seem to speak, their voices {apart:.0f} semitones apart"
SOUND_CHANNELS = "two people seem to speak, one on each channel"

# voices
OTHER_CHANNEL = "{finding}: said on the channel that speaks less; is it the examiner's finding?"
SECOND_VOICE = "{finding}: said by another voice than most; is it the examiner's finding?"
PERHAPS_ANSWERED = "{finding}: said behind a question, perhaps by the patient; is it the examiner's finding?"
EXAMINERS_WORDS = "yes, a finding"

# totals
MUSCLE_SUM = "MRC sum score {said}, but the grades add up to {added}: which is right?"
ADD_UP = "add up to {total}"
ALLOW = "allow {low} to {high}"
WITHOUT = " without {names} (untestable)"
TOTAL_MISMATCH = "{topic} {said}, but the parts {reach}: which is right?"

# whole
ONE_LEFT_OUT = "{count} finding left out"
LEFT_OUT = "{count} findings left out"
NO_EXAMINATION = "As a whole this does not read as an examination, {left_out}: is it one?"
THEN = ", then "
AGE_GIVEN = "; {age} given"
WHICH_AGE = "Age {said} dictated{given}: which is right?"
NO_WORDS = "No words were heard in {names}: is it the right recording, and was the microphone on?"
TIME_NOT_STATED = "The time of the examination was not stated: when was it?"

# wording
MINUTES = "{minutes} min"
