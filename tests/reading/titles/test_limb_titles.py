"""A limb as the title of the sentences behind it. No source: how limbs are dictated one by one, from memory."""

from __future__ import annotations

from collections.abc import Callable

Rows = Callable[[str], list[str]]

RIGHT = "Right arm. Tone normal. Biceps 5. Biceps reflex 2 plus. Pinprick intact. Finger nose normal."
LEFT = "Left arm. Tone increased. Biceps 4."


def test_all_up_to_the_next_title_is_of_the_limb(rows: Rows) -> None:
    """Items of motor system, sensation, coordination and reflexes alike."""
    assert rows(f"{RIGHT} {LEFT}") == [
        "tone right upper_limb normal",
        "strength_biceps right measured 5",
        "reflex_biceps right measured 2+",
        "pinprick right upper_limb normal",
        "finger_nose right normal",
        "tone left upper_limb abnormal increased",
        "strength_biceps left measured 4",
    ]


def test_the_last_limb_has_what_the_earlier_ones_had(rows: Rows) -> None:
    """Its reflexes are its own where those of the right arm were."""
    assert rows(f"{RIGHT} {LEFT} Triceps reflex 3 plus.")[-1] == "reflex_triceps left measured 3+"


def test_nobody_says_where_the_last_limb_ends(rows: Rows) -> None:
    """What no other limb was examined for is of no limb, and asked about."""
    limbs = "Right leg. Hip flexion 5. Left leg. Hip flexion 4."
    assert rows(f"{limbs} Reflexes brisk. Knee extension 5.")[2:] == [
        "reflex_all abnormal brisk",
        "strength_quadriceps measured 5",
    ]


def test_the_last_limb_ends_where_its_list_is_told(rows: Rows) -> None:
    """The right side was not examined for clonus: that none was found is of both, or of which, nobody said."""
    said = "Right side. Biceps 2+. Plantar extensor. Left side. Biceps 3+. Plantar flexor. No clonus."
    assert rows(said)[3:] == ["plantar_response left normal flexor", "clonus absent"]


def test_an_item_of_another_limb_ends_it(rows: Rows) -> None:
    """And so does another side: neither is of the title, nor what follows them."""
    assert rows("Left leg. Hip flexion 4. Biceps jerk 2+. Knee jerk 3+.")[1:] == [
        "reflex_biceps measured 2+",
        "reflex_patellar measured 3+",
    ]
    assert rows("Left leg. Hip flexion 4. Right knee extension 5. Ankle dorsiflexion 5.")[1:] == [
        "strength_quadriceps right measured 5",
        "strength_tibialis_anterior measured 5",
    ]


def test_a_word_for_how_it_was_is_no_item_of_another_part(rows: Rows) -> None:
    """ "Mute" is what a plantar response may be, and what a patient may be."""
    assert rows("Right leg. Knee jerk 2+. Plantar response mute. Ankle jerk 1+.")[1:] == [
        "plantar_response right abnormal mute",
        "reflex_achilles right measured 1+",
    ]


def test_behind_a_finding_without_a_side_it_may_be_its_place(rows: Rows) -> None:
    """Of the leg, the pinprick or the touch: nobody knows."""
    assert rows("Pinprick reduced. Left leg. Light touch normal.")[1] == "light_touch normal"


def test_throughout_is_of_no_last_limb(rows: Rows) -> None:
    """It speaks of all of them."""
    assert rows("Tone. Right arm. Increased. Left arm. Normal. Power. 5 throughout.") == [
        "tone right upper_limb abnormal increased",
        "tone left upper_limb normal",
        "strength_all measured 5",
    ]


def test_a_segment_is_the_title_of_its_line(rows: Rows) -> None:
    """ "C8:" in front of muscles: the pinprick behind them is of that segment, and no reflexes are."""
    said = "C8: finger flexion 5 right. Pinprick normal. T1: Pinprick reduced on the left. Reflexes normal."
    assert rows(said) == [
        "strength_finger_flexors right measured 5",
        "pinprick c8 normal",
        "pinprick left t1 abnormal reduced",
        "reflexes_all normal",
    ]
    assert rows("C8: finger flexion 5 right.\nPinprick normal.")[1] == "pinprick normal"


def test_a_limb_that_was_left_is_not_gone_on_about(rows: Rows) -> None:
    """Hip flexion was of the right leg; what is normal of the left one, nobody said."""
    assert rows("Motor. Right leg. Hip flexion 3. Left leg. Normal.") == ["strength_iliopsoas right measured 3"]


def test_a_part_of_the_limb_is_a_part_of_it(rows: Rows) -> None:
    """As "power in the right arm 4 proximally" is."""
    assert rows("Right arm. Power four minus proximally, three distally.") == [
        "strength_upper_limb_proximal right measured 4-",
        "strength_upper_limb_distal right measured 3",
    ]
