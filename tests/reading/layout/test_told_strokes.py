"""The stroke scale told in sentences. No source: how it is told, from memory; its parts: NINDS form."""

from __future__ import annotations

from collections.abc import Callable

Rows = Callable[[str], list[str]]

TOLD = (
    "Running through the stroke scale. She's alert so zero for level of consciousness. She couldn't tell me her age, "
    "that scores two on questions. Gaze, a forced deviation to the left, which is a two. Left arm holds for the full "
    "ten seconds, zero. Right arm, no effort against gravity, three. Left leg zero. Neglect, zero. Total is seven."
)


def test_points_in_sentences_are_of_the_part_that_is_told(rows: Rows) -> None:
    """Behind the scale's name; what else is told of the part is read besides."""
    assert rows(TOLD) == [
        "consciousness normal alert",
        "nihss_consciousness measured 0",
        "nihss_questions measured 2",
        "gaze_deviation present to left",
        "nihss_gaze measured 2",
        "nihss_arm_left measured 0",
        "nihss_arm_right measured 3",
        "nihss_leg_left measured 0",
        "nihss_neglect measured 0",
        "nihss_total measured 7",
    ]


def test_a_few_sentences_with_numbers_are_no_scale(rows: Rows) -> None:
    """Nor is anything without the name of the scale in front."""
    assert rows("Stroke scale not done. Left leg 5. Reflexes 2+ throughout.")[-1] == "reflex_all measured 2+"
    assert not any("nihss" in row for row in rows(TOLD.partition(". ")[2]))
