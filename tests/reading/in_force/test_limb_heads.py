"""A limb at the head of its sentence. No source: how limbs are dictated, from memory."""

from __future__ import annotations

from collections.abc import Callable

Rows = Callable[[str], list[str]]


def test_a_limb_and_its_side_in_front_of_a_colon(rows: Rows) -> None:
    """All of the sentence is of it."""
    assert rows("Legs, left: hip flexion 4, knee extension 5.") == [
        "strength_iliopsoas left measured 4",
        "strength_quadriceps left measured 5",
    ]


def test_a_limb_in_front_of_a_denial(rows: Rows) -> None:
    """ "Right ankle, no clonus." """
    assert rows("Right ankle, no clonus.") == ["clonus right ankle absent"]
