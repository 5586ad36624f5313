"""How far a "no" reaches. No source: how lists are denied, from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        # over what has no name here, closed by an "or"
        ("No chest pain, dizziness or palpitations.", ["orthostatic_symptoms absent"]),
        ("No drift, fatigue or tremor.", ["pronator_drift absent", "tremor absent"]),
        ("No cough, ptosis on the left or diplopia.", ["ptosis left absent", "diplopia absent"]),
        ("No diplopia, vertigo or dizziness.", ["diplopia absent", "orthostatic_symptoms absent"]),
        ("No papilloedema, haemorrhages or exudates.", ["disc_margins normal", "fundi normal"]),
        ("No fever, rash, or neck stiffness.", ["temperature normal", "skin normal", "neck_stiffness absent"]),
        (
            "No cranial nerve deficit, motor weakness, sensory loss or ataxia.",
            ["cranial_nerves_all normal", "strength_all normal", "sensory_all normal", "coordination_all normal"],
        ),
        ("No sensory loss to pinprick or vibration.", ["pinprick normal", "vibration normal"]),
    ],
)
def test_it_reaches_the_whole_list(rows: Rows, said: str, found: list[str]) -> None:
    """Nothing of it is present because a word of the list is unknown."""
    assert rows(said) == found


@pytest.mark.parametrize(
    ("said", "found"),
    [
        (
            "No wasting or fasciculation, weakness of the left foot.",
            ["bulk normal", "fasciculations absent", "strength_lower_limb_distal left abnormal weakness"],
        ),
        ("No drift or tremor; left arm slightly slow.", ["pronator_drift absent", "tremor absent"]),
        ("No wheeze, clubbing present.", ["lungs normal", "clubbing present"]),
        ("No drift, slight tremor.", ["pronator_drift absent", "tremor present slight"]),
    ],
)
def test_it_ends_with_the_list(rows: Rows, said: str, found: list[str]) -> None:
    """Behind its "or", a semicolon or a word of its own something else is said."""
    assert rows(said) == found


def test_a_loss_told_by_modality_is_of_each(rows: Rows) -> None:
    """And of no sensation as a whole."""
    found = rows("Sensory loss to pinprick and light touch below T4.")
    assert found == ["pinprick t4 abnormal sensory loss", "light_touch t4 abnormal sensory loss"]


@pytest.mark.parametrize("said", ["Diplopia he denies.", "Diplopia is denied."])
def test_a_denial_may_stand_behind(rows: Rows, said: str) -> None:
    """Where nothing else follows."""
    assert rows(f"Eye movements full. {said}") == ["eye_movements normal", "diplopia absent"]
