"""What carries over from one statement and sentence to the next, and what ends it."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "On the left, deltoid four, biceps four, triceps five.",
            ["strength_deltoid left measured 4", "strength_biceps left measured 4", "strength_triceps left measured 5"],
        ),
        (
            "On the left: deltoid four. Biceps four. On the right: deltoid five.",
            [
                "strength_deltoid left measured 4",
                "strength_biceps left measured 4",
                "strength_deltoid right measured 5",
            ],
        ),
        (
            "On the left: deltoid four, biceps four.\nQuadriceps five.",
            ["strength_deltoid left measured 4", "strength_biceps left measured 4", "strength_quadriceps measured 5"],
        ),
        (
            "On the left: deltoid four. Reflexes. Biceps two plus.",
            ["strength_deltoid left measured 4", "reflex_biceps measured 2+"],
        ),
        (
            "On the right: finger to nose normal. Heel to shin normal.",
            ["finger_nose right normal", "heel_shin right normal"],
        ),
        (
            "On the left: deltoid four, right biceps five, triceps four.",
            ["strength_deltoid left measured 4", "strength_biceps right measured 5"],
        ),
    ],
)
def test_a_declared_side_holds_until_something_ends_it(rows, phrase, findings):
    """Another declared side, another component, the end of the line; a side of its own comes first."""
    assert rows(phrase)[: len(findings)] == findings


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Right deltoid five, biceps five, triceps four plus.",
            [
                "strength_deltoid right measured 5",
                "strength_biceps right measured 5",
                "strength_triceps right measured 4+",
            ],
        ),
        (
            "Right deltoid five, biceps five. Triceps four.",
            ["strength_deltoid right measured 5", "strength_biceps right measured 5", "strength_triceps measured 4"],
        ),
        (
            "Right deltoid five, biceps reflex two plus.",
            ["strength_deltoid right measured 5", "reflex_biceps measured 2+"],
        ),
        (
            "Right deltoid five, left deltoid four, biceps four.",
            [
                "strength_deltoid right measured 5",
                "strength_deltoid left measured 4",
                "strength_biceps left measured 4",
            ],
        ),
        ("Left ptosis. Tremor.", ["ptosis left present", "tremor present"]),
    ],
)
def test_a_side_before_a_name_holds_in_its_sentence_and_scale(rows, phrase, findings):
    """For later names of the same scale, to the full stop or the next side; never for another kind of item."""
    assert rows(phrase) == findings


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Right knee jerk two plus. Three plus on the left.",
            ["reflex_patellar right measured 2+", "reflex_patellar left measured 3+"],
        ),
        (
            "Right deltoid four. The same on the left.",
            ["strength_deltoid right measured 4", "strength_deltoid left measured 4"],
        ),
        (
            "Right deltoid four, same on the left.",
            ["strength_deltoid right measured 4", "strength_deltoid left measured 4"],
        ),
    ],
)
def test_a_sentence_may_go_on_about_the_last_item(rows, phrase, findings):
    """Another side, or the same as on the first."""
    assert rows(phrase) == findings


@pytest.mark.parametrize("phrase", ["The same on the left.", "Left.", "Three plus on the left.", "Strike that."])
def test_words_that_go_on_about_nothing_find_nothing(rows, phrase):
    """Nothing was said before them."""
    assert rows(phrase) == []


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("Motor. Right biceps five.", ["strength_biceps right measured 5"]),
        ("Reflexes. Right biceps two plus.", ["reflex_biceps right measured 2+"]),
        ("Reflexes. Gait normal. Right biceps two plus.", ["gait normal", "reflex_biceps right measured 2+"]),
        (
            "Motor. Right biceps five. Reflexes. Right biceps two plus.",
            ["strength_biceps right measured 5", "reflex_biceps right measured 2+"],
        ),
    ],
)
def test_a_component_holds_until_the_next(rows, phrase, findings):
    """The heading in force decides what a short name means."""
    assert rows(phrase) == findings


def test_the_component_of_a_finding_is_its_items_own(reading):
    """Whatever heading it was said under."""
    (finding,) = reading("Reflexes. Gait normal.").findings
    assert finding.component == "coordination_gait"


def test_findings_come_in_the_order_said(reading):
    """Not sorted by component or item."""
    items = [finding.item for finding in reading("Gait normal. Left ptosis. Tone normal. Pulse 66.").findings]
    assert items == ["gait", "ptosis", "tone", "heart_rate"]


def test_the_next_patient_is_noticed(remarks):
    """Another patient seems to begin."""
    assert remarks("Next patient. Gait normal.") == ["next-patient: Next patient."]


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("No pronator drift or Babinski sign.", ["pronator_drift absent", "plantar_response normal"]),
        ("Gag-shrug reflexes intact.", ["gag present", "trapezius normal"]),
        ("She can walk on heels, toes and in tandem.", ["heel_walk normal", "toe_walk normal", "tandem_gait normal"]),
        ("She can walk on her heels with difficulty.", ["heel_walk abnormal with difficulty"]),
        ("Can only walk on his toes holding on.", []),
        ("Gait: normal, including tandem.", ["gait normal", "tandem_gait normal"]),
        ("Speech is slow but not dysarthric.", ["speech abnormal slow"]),
        ("Coordination: no dysmetria on finger-to-nose.", ["finger_nose normal"]),
        ("Neck: supple, without carotid bruits.", ["neck_stiffness absent", "carotid_bruit absent"]),
        ("Finger taps normal on the left. And on the right.", ["finger_taps left normal", "finger_taps right normal"]),
        (
            "Light touch was reduced over the left leg. Pinprick was the same.",
            ["light_touch left leg abnormal reduced", "pinprick left leg abnormal reduced"],
        ),
        (
            "Heel shin is good on the right; on the left he couldn't because of his sore hip.",
            ["heel_shin right normal", "heel_shin left not_assessable"],
        ),
        (
            "NIHSS 4. Motor arm left 4, right 0.",
            ["nihss_total measured 4", "nihss_arm_left measured 4", "nihss_arm_right measured 0"],
        ),
        (
            "Blinks to threat on the left and not on the right.",
            ["visual_fields left normal blinks to threat", "visual_fields right abnormal absent"],
        ),
        (
            "Two beats of clonus at the left ankle, none on the right.",
            ["clonus left ankle present 2 beats", "clonus right ankle absent"],
        ),
        ("He does not recognise his own hand, there is left neglect.", ["neglect left present"]),
        ("Ataxia clinic. Gait broad based but independent.", ["gait abnormal broad based independent"]),
        ("Stance steady. She also has positive Patrick on the right.", ["stance normal"]),
        ("Recalled 2/6 at five minutes and could not recite a list of 6 in 6 trials.", ["recall measured 2/6"]),
        (
            "Deep tendon reflexes are 2 and equal at biceps and patella, and 1 at the ankles.",
            ["reflex_biceps both measured 2+", "reflex_patellar both measured 2+", "reflex_achilles measured 1+"],
        ),
    ],
)
def test_what_is_said_once_holds_for_just_what_it_was_said_of(rows, phrase, findings):
    """Ability, negation, inclusion and values reach the names of their own list and no further."""
    assert rows(phrase) == findings


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("Tongue wasted + fasciculating.", ["tongue abnormal wasted and fasciculating"]),
        ("Babinski + on the left.", ["plantar_response left abnormal extensor"]),
        ("Grasp reflex there on the left, not on the right.", ["grasp left present", "grasp right absent"]),
        ("In the arms she has normal bulk and tone.", ["bulk arm normal", "tone arm normal"]),
        (
            "Right leg: hip flexors four. Left side normal.",
            ["strength_iliopsoas right measured 4", "strength_all left normal"],
        ),
        ("Cranial nerves, two to twelve, all fine.", ["cranial_nerves_2_12 normal"]),
        ("Clock drawing, the numbers are bunched on one side.", []),
    ],
)
def test_signs_and_counts_stay_with_their_words(rows, phrase, findings):
    """A plus between words links them, one side is no number, a code is no value."""
    assert rows(phrase) == findings


def test_numbers_the_last_item_cannot_have_go_on_about_it_no_further(rows, remarks):
    """Millimetres are no vibration: neither they nor the bare number beside them."""
    phrase = (
        "Vibration eight of eight at both big toes. Two point six millimetres on the left index, three on the right."
    )
    assert rows(phrase) == ["vibration both great_toe measured 8/8"]
    assert remarks(phrase) == ["not-placed: Two point six millimetres on the left index, three on the right."]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Right deltoid four. Left three, no, three plus.",
            ["strength_deltoid right measured 4", "strength_deltoid left measured 3+"],
        ),
        (
            "Pulse lying 70. Standing at three minutes 80, no, 86.",
            ["heart_rate supine measured 70", "heart_rate standing 3 min measured 86"],
        ),
        (
            "Knee jerks. Right two, left three, sorry, left two.",
            ["reflex_patellar right measured 2+", "reflex_patellar left measured 2+"],
        ),
        ("Right deltoid four. Sorry, three plus.", ["strength_deltoid right measured 3+"]),
    ],
)
def test_a_correction_takes_back_the_number_before_it_and_not_the_last_statement(rows, text, wanted):
    """Words without a name that say a number and correct it speak of that number; none: of the last statement."""
    assert rows(text) == wanted


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Clonus 0 beats on both sides.", ["clonus both absent"]),
        ("Oedema 0.", ["edema absent"]),
        ("Tremor 0.", ["tremor absent"]),
        ("Systolic murmur 0 of 6.", ["murmur absent systolic"]),
        ("Ptosis 0 mm on the right, 2 mm on the left.", ["ptosis right absent", "ptosis left present 2"]),
        ("Oedema 0 to 1 plus at the ankles.", ["edema ankle present 0 to 1+"]),
    ],
)
def test_nought_of_a_sign_is_its_absence(rows, text, wanted):
    """A sign of which nought was counted or graded is absent, whichever way the nought is written; a range is none."""
    assert rows(text) == wanted


def test_how_it_was_examined_does_not_end_the_list_it_was_said_in(rows):
    """ "Intubated" between the items of a scale is an aside."""
    assert rows("Stroke scale: language 1, dysarthria untestable, intubated, neglect 0.") == [
        "nihss_language measured 1",
        "nihss_dysarthria not_assessable UN",
        "examination_conditions present intubated",
        "nihss_neglect measured 0",
    ]


def test_a_plus_grade_of_a_sign_without_a_scale_is_kept(rows):
    """A number with its plus behind a sign says how much of it there was."""
    assert rows("Tremor of the right hand 2 plus.") == ["tremor right hand present 2+"]
    assert rows("RAPD right two plus.") == ["rapd right present 2+"]
