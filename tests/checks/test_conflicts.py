"""Values and statements that cannot both stand."""

from __future__ import annotations

import pytest

from dictate.checks import run_checks
from dictate.grammar import load_grammar
from dictate.model import Earlier, Evidence, Text, Transcript, Word
from dictate.pipeline import Typed, examine


def test_the_same_grade_twice_with_two_values_must_be_asked(said, ask):
    """Left knee jerk 3+ and later 1+: both are kept, and asked about."""
    (query,) = ask(
        "values-conflict",
        said("reflex_patellar", "measured", "3+", side="left"),
        said("reflex_patellar", "measured", "1+", side="left"),
    )
    assert query.severity == "must"
    assert set(query.suggestions) == {"3+", "1+"}
    assert query.findings == (1, 0)


def test_a_value_for_both_sides_meets_one_for_a_side(said, ask):
    """Both 2+ and then right 3+ cannot stand together."""
    pair = (
        said("reflex_patellar", "measured", "2+", side="both"),
        said("reflex_patellar", "measured", "3+", side="right"),
    )
    assert len(ask("values-conflict", *pair)) == 1
    exception = pair[1].model_copy(update={"excepted": True})
    assert ask("values-conflict", pair[0], exception) == ()


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ({"side": "left"}, {"side": "right"}),
        ({"side": "left", "site": "arm"}, {"side": "left", "site": "leg"}),
        ({"side": "left"}, {"side": "left", "detail": ("with reinforcement",)}),
    ],
)
def test_different_places_or_conditions_do_not_conflict(said, ask, first, second):
    """Another side, another site, another way of testing."""
    pair = (said("reflex_patellar", "measured", "3+", **first), said("reflex_patellar", "measured", "1+", **second))
    assert ask("values-conflict", *pair) == ()


def test_the_same_value_twice_does_not_conflict(said, ask):
    """Said again is no conflict; nor is a score with and without its maximum."""
    assert ask("values-conflict", said("recall", "measured", "2/3"), said("recall", "measured", "2")) == ()


def test_two_pressures_in_one_position_must_be_asked(said, ask):
    """Sitting 130/80 and sitting 150/80 without a word of correction."""
    assert (
        len(
            ask(
                "values-conflict",
                said("blood_pressure", "measured", "130/80", position="sitting"),
                said("blood_pressure", "measured", "150/80", position="sitting"),
            )
        )
        == 1
    )


@pytest.mark.parametrize(
    "second",
    [
        {"position": "standing"},
        {"position": "sitting", "minutes": 3.0},
        {"position": "sitting", "detail": ("repeat",)},
        {"position": "sitting", "quote": "repeat sitting one fifty over eighty"},
        {"position": "sitting", "side": "right"},
    ],
)
def test_a_repeated_or_other_pressure_does_not_conflict(said, ask, second):
    """A repeat that is said to be one, another position, another minute, another arm."""
    first = {"position": "sitting", **({"side": "left"} if "side" in second else {})}
    pair = (
        said("blood_pressure", "measured", "130/80", **first),
        said("blood_pressure", "measured", "150/80", **second),
    )
    assert ask("values-conflict", *pair) == ()


def test_the_pulse_of_a_repeated_pressure_does_not_conflict(said, ask):
    """The pulse given with a repeat is a repeat."""
    assert (
        ask(
            "values-conflict",
            said("blood_pressure", "measured", "146/82", position="supine"),
            said("heart_rate", "measured", "64", position="supine"),
            said("blood_pressure", "measured", "144/80", position="supine", detail=("repeat",)),
            said("heart_rate", "measured", "62", position="supine"),
        )
        == ()
    )


def test_a_reading_whose_position_is_asked_for_is_not_asked_about_twice(said, ask):
    """Two readings without position inside a series get the position question only."""
    assert (
        ask(
            "values-conflict",
            said("blood_pressure", "measured", "140/80", position="supine"),
            said("blood_pressure", "measured", "118/70"),
            said("blood_pressure", "measured", "102/60"),
        )
        == ()
    )


def test_two_choices_of_one_item_conflict(said, ask):
    """Regular and later irregular rhythm; it is not reported a second time as contradiction."""
    pair = (said("heart_rhythm", "normal", "regular"), said("heart_rhythm", "abnormal", "irregular"))
    assert len(ask("values-conflict", *pair)) == 1
    assert ask("contradiction", *pair) == ()


def test_several_kinds_of_disturbed_speech_stand_together(said, ask):
    """Dysarthric and hypophonic is one description."""
    pair = (said("speech", "abnormal", "dysarthric"), said("gait", "normal"), said("speech", "abnormal", "hypophonic"))
    assert ask("values-conflict", *pair) == ()


@pytest.mark.parametrize("turned", [False, True])
def test_absent_without_side_excludes_present_on_a_side(said, ask, turned):
    """ "No tremor" and "rest tremor right hand", whichever came first."""
    pair = [said("tremor", "absent"), said("tremor", "present", "rest", side="right", site="hand")]
    (query,) = ask("contradiction", *(reversed(pair) if turned else pair))
    assert (query.item, query.side, query.severity) == ("tremor", "right", "must")
    assert len(query.findings) == 2


@pytest.mark.parametrize(
    ("denied", "found"),
    [
        ({"side": "left"}, {"side": "right"}),
        ({"site": "leg"}, {"side": "right", "site": "hand"}),
        ({"side": "left"}, {}),
        ({"detail": ("on medication",)}, {"side": "right", "detail": ("off medication",)}),
    ],
)
def test_side_site_and_condition_keep_statements_apart(said, ask, denied, found):
    """Present on one side and absent on the other is no contradiction."""
    assert ask("contradiction", said("tremor", "absent", **denied), said("tremor", "present", **found)) == ()


def test_a_denial_of_the_arm_reaches_the_hand(said, ask):
    """No tremor of the right arm excludes one of the right hand, not the other way round."""
    arm, hand = {"side": "right", "site": "arm"}, {"side": "right", "site": "hand"}
    assert len(ask("contradiction", said("tremor", "absent", **arm), said("tremor", "present", **hand))) == 1
    assert ask("contradiction", said("tremor", "absent", **hand), said("tremor", "present", **arm)) == ()


def test_the_denial_of_a_kind_reaches_that_kind_only(said, ask):
    """ "No rest tremor" beside a postural tremor is no contradiction; beside a rest tremor it is."""
    denied = said("tremor", "absent", "rest", quote="no rest tremor")
    postural = said("tremor", "present", "postural", side="right", quote="postural tremor right")
    resting = said("tremor", "present", "rest", side="right", quote="rest tremor right")
    assert ask("contradiction", denied, postural) == ()
    assert len(ask("contradiction", denied, resting)) == 1


def test_normal_tone_excludes_increased_tone(said, ask):
    """A plain normal against an abnormal of the same item."""
    pair = (said("tone", "normal"), said("tone", "abnormal", "increased", side="left", site="leg"))
    assert len(ask("contradiction", *pair)) == 1


def test_otherwise_normal_spares_what_was_said_before(said, ask):
    """ "Tone increased on the left, otherwise normal"."""
    increased = said("tone", "abnormal", "increased", side="left")
    rest = said("tone", "normal", quote="tone otherwise normal")
    assert ask("contradiction", increased, rest) == ()
    assert len(ask("contradiction", rest, increased)) == 1


def test_gag_present_excludes_gag_absent_on_a_side(said, ask):
    """For a reflex that ought to be there, absent is the finding."""
    (query,) = ask("contradiction", said("gag", "present"), said("gag", "absent", side="left"))
    assert query.side == "left"
    assert ask("contradiction", said("gag", "present", side="right"), said("gag", "absent", side="left")) == ()


@pytest.mark.parametrize("turned", [False, True])
def test_a_blanket_excludes_an_abnormal_finding_of_its_reach(said, ask, turned):
    """Cranial nerves II to XII intact, and nystagmus."""
    pair = [said("cranial_nerves_2_12", "normal"), said("nystagmus", "present")]
    (query,) = ask("contradiction", *(reversed(pair) if turned else pair))
    assert query.item == "nystagmus"
    assert any("except" in text for text in query.suggestions)


@pytest.mark.parametrize(
    ("blanket", "finding"),
    [
        (("cranial_nerves_2_12", "normal"), ("smell", "abnormal", "reduced")),
        (("cranial_nerves_3_6", "normal"), ("facial_strength", "abnormal", "droop")),
        (("cranial_nerves_all", "not_examined"), ("nystagmus", "present")),
        (("cranial_nerves_2_12", "normal"), ("nystagmus", "absent")),
        (("cranial_nerves_2_12", "normal"), ("gag", "present")),
        (("coordination_all", "normal"), ("gait", "abnormal", "ataxic")),
        (("sensory_all", "normal"), ("romberg", "abnormal", "positive")),
        (("mental_status_all", "normal"), ("speech", "abnormal", "dysarthric")),
        (("strength_all", "measured", "5"), ("tone", "abnormal", "spastic")),
        (("reflex_all", "measured", "2+"), ("plantar_response", "abnormal", "extensor")),
        (("reflex_all", "measured", "2+"), ("reflex_patellar", "measured", "2+")),
        (("strength_all", "measured", "5"), ("strength_deltoid", "not_assessable")),
        (("motor_all", "normal"), ("pinprick", "abnormal", "reduced")),
    ],
)
def test_a_blanket_reaches_no_further_than_it_says(said, ask, blanket, finding):
    """Outside its reach, or nothing abnormal: no contradiction."""
    assert ask("contradiction", said(*blanket), said(*finding, side="left")) == ()


@pytest.mark.parametrize(
    ("blanket", "finding"),
    [
        (("strength_all", "measured", "5"), ("strength_deltoid", "measured", "4")),
        (("strength_all", "normal"), ("strength_deltoid", "measured", "5-")),
        (("strength_all", "measured", "5"), ("strength_upper_limb", "measured", "4")),
        (("strength_upper_limb", "measured", "5"), ("strength_deltoid", "measured", "4")),
        (("strength_all", "measured", "5"), ("strength_deltoid", "abnormal", "weak")),
        (("reflex_all", "measured", "2+"), ("reflex_achilles", "measured", "0")),
        (("reflexes_all", "normal"), ("plantar_response", "abnormal", "extensor")),
        (("cranial_nerves_3_6", "normal"), ("ptosis", "present")),
        (("cranial_nerves_2_12", "normal"), ("gag", "absent")),
        (("motor_all", "normal"), ("pronator_drift", "present")),
        (("motor_all", "normal"), ("strength_upper_limb", "measured", "4")),
        (("coordination_all", "normal"), ("finger_nose", "abnormal", "dysmetria")),
        (("reflexes_all", "normal"), ("abdominal_reflex", "absent")),
    ],
)
def test_a_blanket_and_its_exception_must_be_asked(said, ask, blanket, finding):
    """An abnormal finding, or another grade, within the reach of a blanket."""
    (query,) = ask("contradiction", said(*blanket), said(*finding, side="left"))
    assert query.item == finding[0]


def test_an_exception_said_as_one_is_none(said, ask):
    """ "Strength five throughout except left deltoid four"."""
    assert (
        ask(
            "contradiction",
            said("strength_all", "measured", "5"),
            said("strength_deltoid", "measured", "4", side="left", excepted=True),
        )
        == ()
    )


def test_a_blanket_of_one_side_leaves_the_other(said, ask):
    """Strength of the right arm 5, left deltoid 4."""
    right = said("strength_upper_limb", "measured", "5", side="right")
    assert ask("contradiction", right, said("strength_deltoid", "measured", "4", side="left")) == ()
    assert len(ask("contradiction", right, said("strength_deltoid", "measured", "4", side="right"))) == 1


def test_symptoms_at_different_times_stand_together(said, ask):
    """Lightheaded at once, none at three minutes; tingling but no dizziness on overbreathing."""
    standing = {"position": "standing"}
    assert (
        ask(
            "contradiction",
            said("orthostatic_symptoms", "present", "lightheaded", minutes=0.0, **standing),
            said("orthostatic_symptoms", "absent", minutes=3.0, **standing),
            said("orthostatic_symptoms", "present", "tingling", site="hyperventilation"),
            said("orthostatic_symptoms", "absent", "dizziness", site="hyperventilation"),
        )
        == ()
    )


def test_a_bare_plural_speaks_of_both_sides(said, ask):
    """ "Knee jerks 2+" and later "left knee jerk 3+" cannot both be; without plural the side is asked instead."""
    left = said("reflex_patellar", "measured", "3+", side="left")
    plural = said("reflex_patellar", "measured", "2+", quote="knee jerks two plus")
    single = said("reflex_patellar", "measured", "2+", quote="knee jerk two plus")
    assert len(ask("values-conflict", plural, left)) == 1
    assert ask("values-conflict", single, left) == ()
    assert len(ask("side-missing", single, left)) == 1


def test_plantars_flexor_and_one_extensor_must_be_asked(said, ask):
    """A choice without side against another on one side is asked once."""
    pair = (
        said("plantar_response", "normal", "flexor", quote="toes down"),
        said("plantar_response", "abnormal", "extensor", side="right", quote="right plantar extensor"),
    )
    assert len(ask("contradiction", *pair)) + len(ask("values-conflict", *pair)) == 1


def test_no_level_excludes_a_level(said, ask):
    """ "No sensory level" and a level at T4."""
    assert len(ask("contradiction", said("sensory_level", "absent"), said("sensory_level", "measured", "T4"))) == 1


def test_values_of_two_kinds_are_not_compared(said, ask):
    """A number and a descriptor of one item stand side by side."""
    seconds = said("finger_taps", "measured", "30", side="left")
    words = said("finger_taps", "abnormal", Text(words="slow"), side="left")
    assert ask("values-conflict", seconds, words) == ()


def test_a_change_of_unit_is_another_value(said, ask):
    """71 kg and 71 lb are two values."""
    pair = (said("weight", "measured", "71", unit="kg"), said("weight", "measured", "71", unit="[lb_av]"))
    assert len(ask("values-conflict", *pair)) == 1


def test_choices_of_a_closed_list_conflict_even_when_both_are_abnormal(said, ask):
    """Sluggish and later fixed; said in one breath they describe one finding."""
    sluggish = said("pupil_reaction", "abnormal", "sluggish", side="left")
    fixed = said("pupil_reaction", "abnormal", "fixed", side="left")
    assert len(ask("values-conflict", sluggish, said("gait", "normal"), fixed)) == 1
    assert ask("values-conflict", sluggish, fixed) == ()


def test_what_the_grammar_does_not_know_is_left_alone(said, ask):
    """An item of an older grammar raises nothing and breaks nothing."""
    old = said("gait", "normal").model_copy(update={"item": "gait_of_old"})
    assert ask("contradiction", old, said("gait", "abnormal", "ataxic")) == ()
    assert ask("value-implausible", old) == ()


def _codes(exam, grammar, text, drift, motor):
    """Codes asked of two findings, taken from "left drift" and from "motor examination ..." in the text."""
    words = text.split()
    placed = []
    for finding, start, count in ((drift, "left", 2), (motor, "motor", 3)):
        first = words.index(start)
        quote = " ".join(words[first : first + count])
        evidence = (Evidence(first=first, last=first + count - 1, quote=quote),)
        placed.append(finding.model_copy(update={"evidence": evidence}))
    one = exam(transcript=Transcript(words=tuple(Word(text=word) for word in words)))
    queries = run_checks(one.model_copy(update={"findings": tuple(placed)}), grammar)
    return [query.code for query in queries]


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("left drift , the rest of the motor examination normal", 0),
        ("left drift ; otherwise motor examination normal", 0),
        ("left drift . motor examination normal otherwise", 0),
        ("left drift . motor examination normal", 1),
        ("otherwise well. left drift . motor examination normal. otherwise", 1),
    ],
)
def test_the_rest_is_told_by_the_words_around_it(said, exam, grammar, text, count):
    """ "The rest of the", "otherwise" may stand outside the words a blanket was taken from."""
    drift, motor = said("pronator_drift", "present", side="left"), said("motor_all", "normal")
    assert _codes(exam, grammar, text, drift, motor) == ["contradiction"] * count


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("unseen", ["not_examined", "not_assessable"])
@pytest.mark.parametrize(
    ("found", "where", "reach", "suggestions"),
    [
        (("gait", "normal"), {}, {}, 2),
        (("gait", "abnormal", "ataxic"), {}, {}, 2),
        (("reflex_patellar", "measured", "2+"), {"side": "left"}, {}, 3),
        (("reflex_patellar", "measured", "2+"), {"side": "both"}, {"side": "left"}, 3),
        (("blood_pressure", "measured", "120/80"), {"position": "supine"}, {}, 3),
    ],
)
def test_what_was_found_and_yet_not_examined_must_be_asked(said, ask, turned, unseen, found, where, reach, suggestions):
    """Whichever came first; where it was found at a part of what was not examined, that part may be the exception."""
    pair = (said(*found, **where), said(found[0], unseen, **reach))
    (query,) = ask("contradiction", *(pair[::-1] if turned else pair))
    assert (query.severity, len(query.suggestions)) == ("must", suggestions)
    assert ask("contradiction", pair[0].model_copy(update={"excepted": True}), pair[1]) == ()


@pytest.mark.parametrize(
    ("found", "where", "other", "reach"),
    [
        (("reflex_patellar", "measured", "2+"), {"side": "left"}, "reflex_patellar", {"side": "right"}),
        (("reflex_patellar", "measured", "2+"), {}, "reflex_patellar", {"side": "left"}),
        (("tone", "normal"), {"site": "arm"}, "tone", {"site": "leg"}),
        (("blood_pressure", "measured", "120/80"), {"position": "supine"}, "blood_pressure", {"position": "standing"}),
        (("blood_pressure", "measured", "120/80"), {"position": "supine"}, "general_all", {}),
        (("gait", "normal"), {}, "gait", {"detail": ("with eyes closed",)}),
        (("gait", "not_assessable"), {}, "gait", {}),
    ],
)
def test_what_was_not_examined_elsewhere_or_otherwise_is_no_contradiction(said, ask, found, where, other, reach):
    """Another side, site, position or condition; a blanket of other items."""
    assert ask("contradiction", said(*found, **where), said(other, "not_examined", **reach)) == ()


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("left drift . motor examination not done", 1),
        ("left drift . rest of the motor examination not done", 0),
        ("left drift . motor examination not formally done", 0),
        ("left drift . motor examination not done in detail", 0),
        ("left drift . motor examination not done. formally", 1),
    ],
)
def test_not_examined_as_to_the_rest_or_in_part_is_no_contradiction(said, exam, grammar, text, count):
    """ "The rest of it" spares what was said before; "not formally" says how far it was examined (common practice)."""
    normal, unseen = said("motor_all", "normal"), said("motor_all", "not_examined")
    assert _codes(exam, grammar, text, normal, unseen) == ["contradiction"] * count


@pytest.mark.parametrize("agrees", [True, False])
def test_a_value_called_unchanged_is_held_against_the_earlier_record(said, ask, agrees):
    """ "Deltoid unchanged at four" after a 3."""
    one = said("strength_deltoid", "measured", "4", side="left")
    one = one.model_copy(update={"earlier": Earlier(record="k7", said="3", agrees=agrees)})
    asked = ask("values-conflict", one)
    assert [(query.severity, query.suggestions) for query in asked] == ([] if agrees else [("must", ("4",))])


@pytest.mark.parametrize(
    ("text", "conflicts"),
    [
        ("Blood pressure 180/90, repeated 160/80.", 0),
        ("Blood pressure 180/90. Repeat blood pressure 160/80.", 0),
        ("Blood pressure lying 180/90, on repeat 160/80.", 0),
        ("Blood pressure 180/90, 160/80.", 1),
        ("Knee jerks repeated. Blood pressure 180/90. Then blood pressure 160/80.", 1),
    ],
)
def test_a_reading_behind_the_word_repeated_is_a_second_one(text, conflicts):
    """Right before the reading or its name; further away it says nothing of it."""
    exam = examine([Typed("typed", text)], engine=None, grammar=load_grammar())
    assert sum(query.code == "values-conflict" for query in exam.queries) == conflicts
