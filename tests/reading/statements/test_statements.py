"""Where a statement starts and ends, and how far a denial or an exception reaches."""

from __future__ import annotations

import pytest


def said(statements):
    return [
        ([node.text for node in one.names], [node.text for node in one.before if not node.is_break])
        for one in statements
    ]


@pytest.mark.parametrize(
    ("phrase", "names"),
    [
        ("left deltoid four, right deltoid five", [["deltoid"], ["deltoid"]]),
        ("light touch and pinprick intact", [["light touch", "pinprick"]]),
        ("gait normal, no tremor", [["gait"], ["tremor"]]),
        ("knee jerk two plus, ankle jerk absent", [["knee jerk"], ["ankle jerk"]]),
        ("eyes three, verbal four, motor six, total thirteen", [["eyes"], ["verbal"], ["motor"], ["total"]]),
        ("no oedema, clubbing or cyanosis", [["oedema", "clubbing", "cyanosis"]]),
    ],
)
def test_names_said_together_share_a_statement(statements, phrase, names):
    """A list before one value is one statement; a name with a value of its own is another."""
    assert [[node.text for node in one.names] for one in statements(phrase)] == names


def test_a_side_goes_to_the_name_it_stands_before(statements):
    """ "Left deltoid four, right deltoid five"."""
    first, second = statements("left deltoid four, right deltoid five")
    assert [node.text for node in first.after] == ["four"]
    assert [node.text for node in second.before] == [",", "right"]


def test_a_side_goes_to_the_value_it_stands_behind(statements):
    """ "Two plus on the right, ankle jerk ..."."""
    first, second = statements("knee jerk two plus on the right, ankle jerk absent on the left")
    assert [node.text for node in first.after] == ["two plus", "on the right"]
    assert [node.text for node in second.after] == ["absent", "on the left"]


def test_a_degree_goes_to_what_follows(statements):
    """ "Gait normal, mild ptosis": the ptosis is mild."""
    _, second = statements("gait normal, mild ptosis")
    assert "mild" in [node.text for node in second.before]


def test_words_before_the_first_name_may_go_on_about_what_was_said(statements):
    """ "Three plus on the left." has no name of its own."""
    (orphan,) = statements("three plus on the left")
    assert orphan.names == []
    assert [node.text for node in orphan.after] == ["three plus", "on the left"]


def test_nothing_said_is_no_statement(statements):
    """Empty."""
    assert statements("") == []


def test_a_correction_starts_the_statement_it_corrects_with(statements):
    """ "..., correction, left deltoid four minus"."""
    _, second = statements("left deltoid four, correction, left deltoid four minus")
    assert "correction" in [node.text for node in second.before]


def test_exceptions_are_marked_to_the_end_of_the_sentence(statements):
    """Everything after "except" is an exception."""
    found = statements("power five throughout except left deltoid four and right biceps four", "motor")
    assert [one.excepted for one in found] == [False, True, True]


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("No oedema, clubbing or cyanosis.", ["edema absent", "clubbing absent", "cyanosis absent"]),
        ("No edema, clubbing, or cyanosis.", ["edema absent", "clubbing absent", "cyanosis absent"]),
        ("No tremor, chorea or dystonia.", ["tremor absent", "chorea absent", "dystonia absent"]),
        ("Neither tremor nor chorea.", ["tremor absent", "chorea absent"]),
        ("No carotid or orbital bruits.", ["carotid_bruit absent", "orbital_bruit absent"]),
        ("No tremor, gait normal.", ["tremor absent", "gait normal"]),
        ("No ptosis, left facial droop.", ["ptosis absent", "facial_strength left abnormal facial droop"]),
        (
            "No ptosis or nystagmus, pupils three millimetres on both sides.",
            ["ptosis absent", "nystagmus absent", "pupil_size both measured 3"],
        ),
        ("No nystagmus or diplopia, gait normal.", ["nystagmus absent", "diplopia absent", "gait normal"]),
        (
            "No rest tremor, but postural tremor of the right hand.",
            ["tremor absent", "tremor right hand present postural"],
        ),
        ("Tremor of the right hand, none on the left.", ["tremor right hand present", "tremor left hand absent"]),
    ],
)
def test_a_denial_reaches_to_the_end_of_its_list(rows, phrase, findings):
    """And no further: not to a name with a value of its own, not over "but"."""
    assert rows(phrase) == findings


@pytest.mark.parametrize(
    ("phrase", "blanket", "exceptions"),
    [
        (
            "Power five out of five throughout, except left deltoid four.",
            "strength_all measured 5",
            ["strength_deltoid left measured 4"],
        ),
        (
            "Power five out of five throughout except left deltoid four, left finger extensors four minus, "
            "and left ankle dorsiflexion four plus.",
            "strength_all measured 5",
            [
                "strength_deltoid left measured 4",
                "strength_finger_extensors left measured 4-",
                "strength_tibialis_anterior left measured 4+",
            ],
        ),
        (
            "Cranial nerves normal except left facial droop.",
            "cranial_nerves_all normal",
            ["facial_strength left abnormal facial droop"],
        ),
        (
            "Reflexes two plus and symmetric throughout except absent ankle jerks.",
            "reflex_all measured 2+",
            ["reflex_achilles measured 0"],
        ),
    ],
)
def test_exceptions_are_findings_of_their_own(reading, rows, phrase, blanket, exceptions):
    """One row for the blanket, one for each exception, marked as such."""
    assert rows(phrase) == [blanket, *exceptions]
    assert [finding.excepted for finding in reading(phrase).findings] == [False, *(True for _ in exceptions)]


@pytest.mark.parametrize(
    ("phrase", "finding"),
    [
        ("Cranial nerves two through twelve intact.", "cranial_nerves_2_12 normal"),
        ("Cranial nerves three to six intact.", "cranial_nerves_3_6 normal"),
        ("Motor examination normal.", "motor_all normal"),
        ("Sensation intact to all modalities.", "sensory_all normal"),
        ("Reflexes two plus throughout.", "reflex_all measured 2+"),
        ("Reflexes normal.", "reflexes_all normal"),
        ("Reflexes absent throughout.", "reflex_all measured 0"),
        ("Strength five out of five in the right arm.", "strength_upper_limb right measured 5"),
        ("Motor. Right side five out of five throughout.", "strength_all right measured 5"),
        ("Motor. LUE 4/5.", "strength_upper_limb left measured 4"),
    ],
)
def test_a_blanket_is_one_row(rows, phrase, finding):
    """Never expanded into findings that were not said."""
    assert rows(phrase) == [finding]


@pytest.mark.parametrize(
    ("phrase", "finding"),
    [
        ("Motor: mild left pronator drift.", ("pronator_drift", "left", "mild")),
        ("Cranial nerves: mild right facial weakness.", ("facial_strength", "right", "mild facial weakness")),
        ("Sensation: slightly reduced pinprick left foot.", ("pinprick", "left", "slightly reduced")),
        ("Coordination: mild left dysmetria on finger nose.", ("finger_nose", "left", "mild dysmetria")),
        ("Gait: mild ataxic.", ("gait", None, "mild ataxic")),
    ],
)
def test_how_much_behind_a_heading_is_of_what_follows(reading, phrase, finding):
    """It was given to the heading, and lost."""
    (one,) = reading(phrase).findings
    assert (one.item, one.side, str(one.value)) == finding
