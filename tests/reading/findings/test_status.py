"""present, absent, normal, not examined, not assessable; stated or uncertain."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "finding"),
    [
        ("Gait normal.", "gait normal"),
        ("Gait wide based.", "gait abnormal wide based"),
        ("Gait is not normal.", "gait abnormal not normal"),
        ("Gait not ataxic.", "gait normal"),
        ("Gait unchanged since the last visit.", "gait unchanged"),
        ("Tremor absent.", "tremor absent"),
        ("No tremor.", "tremor absent"),
        ("No tremor on the left.", "tremor left absent"),
        ("Myoclonus.", "myoclonus present"),
        ("Rest tremor of the right hand, mild.", "tremor right hand present rest mild"),
        ("Soft carotid bruit on the left.", "carotid_bruit left present soft"),
        ("No facial weakness.", "facial_strength normal"),
        ("Left facial droop.", "facial_strength left abnormal facial droop"),
        ("Facial droop absent.", "facial_strength normal"),
        ("Neck supple.", "neck_stiffness absent"),
        ("No sensory level.", "sensory_level absent"),
        ("Sensory level at T four.", "sensory_level measured T4"),
        ("Gag present.", "gag present"),
        ("Corneal reflexes present bilaterally.", "corneal_reflex both present"),
        ("Abdominal reflexes absent on the left.", "abdominal_reflex left absent"),
        ("Right ankle jerk absent.", "reflex_achilles right measured 0"),
        ("Right knee jerk trace.", "reflex_patellar right measured trace"),
        ("Vibration absent at the right great toe.", "vibration right great_toe abnormal absent"),
        ("Romberg negative.", "romberg normal"),
        ("Romberg positive.", "romberg abnormal positive"),
        ("Hoffmann negative bilaterally.", "hoffmann both absent"),
        ("Hoffmann positive on the right.", "hoffmann right present"),
        ("Plantars flexor.", "plantar_response normal flexor"),
        ("Toes downgoing.", "plantar_response normal flexor"),
        ("Toes up on the left.", "plantar_response left abnormal extensor"),
        ("Right plantar equivocal.", "plantar_response right abnormal equivocal"),
        ("Plantar response mute on the left.", "plantar_response left abnormal mute"),
        ("Right pupil sluggish.", "pupil_reaction right abnormal sluggish"),
        ("Pupils equal.", "anisocoria absent"),
        ("EOMI.", "eye_movements normal"),
        ("Discs sharp.", "disc_margins normal"),
        ("Power full throughout.", "strength_all normal"),
        ("Jaw jerk normal.", "jaw_jerk normal"),
        ("Alert.", "consciousness normal alert"),
        ("Mood low.", "mood abnormal low"),
        ("Heart rhythm irregularly irregular.", "heart_rhythm abnormal irregularly irregular"),
        ("Tongue midline.", "tongue midline normal"),
        ("Coordination normal.", "coordination_all normal"),
        ("Visual acuity counting fingers on the left.", "visual_acuity left measured counting fingers"),
        ("Ashworth one plus in the right arm.", "ashworth right arm measured 1+"),
        ("Speech dysarthric.", "speech abnormal dysarthric"),
    ],
)
def test_what_the_words_say_of_the_item(rows, phrase, finding):
    """The same words always give the same row."""
    assert rows(phrase) == [finding]


@pytest.mark.parametrize(
    ("phrase", "finding"),
    [
        ("Gait not examined.", "gait not_examined"),
        ("Gait deferred because of hip pain.", "gait not_examined"),
        ("I did not look at the fundi.", "fundi not_examined"),
        ("Heel to shin not tested on the left because of a painful hip.", "heel_shin left not_examined"),
        ("Tone could not be assessed.", "tone not_assessable"),
        ("Right heel to shin not assessable because of pain.", "heel_shin right not_assessable"),
        ("Left heel to shin could not be tested because of the cast.", "heel_shin left not_assessable"),
        ("Unable to tandem walk.", "tandem_gait abnormal unable"),
        ("Unable to heel walk on the right.", "heel_walk right abnormal unable"),
        ("GCS eyes four, verbal T, motor six, total 10T.", "gcs_verbal not_assessable T"),
    ],
)
def test_not_done_not_possible_and_not_able_are_told_apart(rows, phrase, finding):
    """Not tried, could not be judged, could not do it because of what is examined."""
    assert finding in rows(phrase)


@pytest.mark.parametrize(
    ("phrase", "reason"),
    [
        ("Gait deferred because of hip pain.", "because of hip pain"),
        ("Left heel to shin could not be tested because of the cast.", "because of the cast"),
        ("Tandem gait not tested, because of the risk of falling.", "because of the risk of falling"),
    ],
)
def test_the_reason_is_kept_as_said(reading, phrase, reason):
    """In the detail of the finding."""
    (finding,) = reading(phrase).findings
    assert finding.detail == (reason,)


@pytest.mark.parametrize(
    ("phrase", "uncertain"),
    [
        ("Probably left facial droop.", True),
        ("Possible nystagmus on left gaze.", True),
        ("Gait possibly wide based.", True),
        ("I think the left plantar is extensor.", True),
        ("Questionable left pronator drift.", True),
        ("Left pronator drift.", False),
        ("Gait wide based.", False),
    ],
)
def test_a_hedge_is_kept(reading, phrase, uncertain):
    """Never upgraded, never added."""
    (finding,) = reading(phrase).findings
    assert (finding.certainty == "uncertain") is uncertain


def test_a_hedge_holds_for_its_own_finding_only(rows):
    """The next statement is stated."""
    assert rows("Possible left ptosis. Gait wide based.") == ["ptosis left present ?", "gait abnormal wide based"]


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("PERRL.", ["anisocoria absent", "pupil_reaction both normal"]),
        ("Oriented times three.", [f"orientation_{of} normal" for of in ("person", "place", "time")]),
        ("Oriented to person only.", ["orientation_person normal"]),
        ("Disoriented to time.", ["orientation_time abnormal disoriented"]),
    ],
)
def test_one_phrase_may_say_several_things(rows, phrase, findings):
    """And no size, number or side that was not said."""
    assert sorted(rows(phrase)) == findings


@pytest.mark.parametrize(
    ("phrase", "side"),
    [
        ("Knee jerks two plus.", None),
        ("No carotid bruits.", None),
        ("Plantars flexor.", None),
        ("Knee jerks two plus and symmetric.", "both"),
        ("Knee jerks two plus bilaterally.", "both"),
        ("Reflexes two plus and symmetric throughout.", None),
        ("Nystagmus on left gaze.", None),
        ("Left ptosis.", "left"),
    ],
)
def test_a_side_is_only_what_was_said(reading, phrase, side):
    """A bare plural says no side, nor does a direction of gaze."""
    (finding,) = reading(phrase).findings
    assert finding.side == side


def test_direction_of_gaze_is_the_value(rows):
    """ "On left gaze" describes, it is no side."""
    assert rows("Nystagmus on left gaze.") == ["nystagmus present on left gaze"]
