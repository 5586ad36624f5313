"""Titles inside sentences. No source: what recognisers write for lists, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


LEGS = [
    "strength_iliopsoas right measured 5",
    "strength_quadriceps right measured 5",
    "strength_iliopsoas left measured 4",
    "strength_quadriceps left measured 3",
]


@pytest.mark.parametrize(
    "said",
    [
        "Right leg. Hip flexion 5. Knee extension 5. Left leg. Hip flexion 4. Knee extension 3.",
        "Right leg, hip flexion 5, knee extension 5, left leg, hip flexion 4, knee extension 3.",
        "Right leg, hip flexion 5. Knee extension 5, left leg. Hip flexion 4. Knee extension 3.",
        "Right leg hip flexion 5. Knee extension 5. Left leg hip flexion 4. Knee extension 3.",
        "Right leg. Hip flexion 5. Knee extension 5 left leg. Hip flexion 4, knee extension 3.",
        "Right leg, hip flexion 5, knee extension 5 left leg, hip flexion 4. Knee extension 3.",
    ],
)
def test_wherever_stops_and_commas_are_written(rows: Rows, said: str) -> None:
    """The same list."""
    assert rows(said) == LEGS


def test_a_title_behind_what_cannot_be_of_it(rows: Rows) -> None:
    """No finger is flexed in a leg."""
    assert rows("Right arm. Finger flexors 4, left leg. Hip flexion 4.") == [
        "strength_finger_flexors right measured 4",
        "strength_iliopsoas left measured 4",
    ]


def test_eyes_and_sides_as_a_whole(rows: Rows) -> None:
    """As limbs."""
    assert rows("Right eye, acuity 6/9, pupil 3 mm, left eye, acuity 6/12, pupil 4 mm.")[1:3] == [
        "pupil_size right measured 3",
        "visual_acuity left measured 6/12",
    ]
    said = "Reflexes on the right, biceps 2+, knee 2+. Reflexes on the left, biceps 3+. Knee 3+."
    assert rows(said)[2:] == ["reflex_biceps left measured 3+", "reflex_patellar left measured 3+"]


def test_a_sign_told_with_the_side_may_be_of_it(rows: Rows) -> None:
    """The list behind it is of the left, what stands right before it of nobody knows which side."""
    said = "On the right. Biceps 2+. Triceps 2+. Hoffmann sign present on the left. Biceps 3+. Triceps 3+."
    assert rows(said)[2:] == [
        "hoffmann present",
        "reflex_biceps left measured 3+",
        "reflex_triceps left measured 3+",
    ]


def test_where_it_may_be_either_neither_has_a_side(rows: Rows) -> None:
    """Nothing is told again, and the light touch can be of the left foot."""
    assert rows("Right foot, pinprick reduced, light touch reduced, left foot, vibration absent.") == [
        "pinprick right foot abnormal reduced",
        "light_touch abnormal reduced",
        "vibration abnormal absent",
    ]


def test_the_first_title_behind_something_else(rows: Rows) -> None:
    """Of what is said of all no limb is the place."""
    said = "Tone normal throughout, right arm, deltoid 5, biceps 5, left arm, deltoid 4, biceps 4."
    assert rows(said)[:2] == ["tone normal", "strength_deltoid right measured 5"]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        (
            "On the left the biceps was 3. The knee jerk was absent on the right. Triceps 2+.",
            ["strength_biceps left measured 3", "reflex_patellar right measured 0", "reflex_triceps measured 2+"],
        ),
        (
            "Right arm. Power 5. Reflexes absent on the left. Plantar flexor.",
            ["strength_upper_limb right measured 5", "reflex_all left measured 0", "plantar_response normal flexor"],
        ),
        ("Right leg tone increased. Sensation normal.", ["tone right leg abnormal increased", "sensory_all normal"]),
        (
            "Knee extension 5 left leg. Hip flexion 4.",
            ["strength_quadriceps measured 5", "strength_iliopsoas measured 4"],
        ),
    ],
)
def test_in_prose_a_side_is_a_place(rows: Rows, said: str, found: list[str]) -> None:
    """No title, and nothing behind it is of that side."""
    assert rows(said) == found
