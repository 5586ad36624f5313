"""Phrases that were read wrong once, and said nothing of it: each is read right from then on."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.model import RemarkKind
from dictate.reading import transcript_of_text
from dictate.reading.read import read

READ = [
    ("Nystagmus on right gaze, none on left gaze.", ["nystagmus present on right gaze (none on left gaze)"]),
    ("Nystagmus on right gaze but not on left gaze.", ["nystagmus present on right gaze (but not on left gaze)"]),
    ("Diplopia on R gaze.", ["diplopia present on right gaze"]),
    ("No bruit over the left vertebral artery.", ["vertebral_bruit left absent"]),
    ("Soft bruit over the right eye.", ["orbital_bruit right present soft"]),
    (
        "Sustained clonus at the right ankle and 4 beats of clonus at the left ankle.",
        ["clonus right ankle present sustained", "clonus left ankle present 4 beats"],
    ),
    ("Clonus eight beats left ankle, none right.", ["clonus left ankle present 8 beats", "clonus right ankle absent"]),
    (
        "Coordination normal except dysmetria of the left finger to nose.",
        ["coordination_all normal", "finger_nose left abnormal dysmetria"],
    ),
    ("He cannot walk on the right heel.", ["heel_walk right abnormal unable"]),
    ("Eyes midline.", ["gaze_deviation absent"]),
    (
        "Tone, there's paratonia in both legs. The arms are all right.",
        ["tone both leg abnormal paratonia", "tone arm normal"],
    ),
    (
        "Motor exam in the upper extremities reveals normal tone and strength.",
        ["tone upper_limb normal", "strength_upper_limb normal"],
    ),
    ("Sensory. In the right leg, pinprick reduced.", ["pinprick right leg abnormal reduced"]),
    (
        "Hip abduction four, hip adduction five, on the left.",
        ["strength_hip_abductors left measured 4", "strength_hip_adductors left measured 5"],
    ),
    (
        "Power L/R\nHip flex 2/3\nKnee ext 4/4",
        [
            "strength_iliopsoas left measured 2",
            "strength_iliopsoas right measured 3",
            "strength_quadriceps left measured 4",
            "strength_quadriceps right measured 4",
        ],
    ),
    ("Heel shin not tested, too weak.", ["heel_shin not_examined (too weak)"]),
    ("No level, Romberg too unsteady to test.", ["romberg not_assessable"]),
    ("No skew, direction changing nystagmus.", ["skew absent", "nystagmus present direction changing"]),
    (
        "No resting tremor, postural tremor or bradykinesia.",
        ["tremor absent", "bradykinesia absent"],
    ),
    ("Left deltoid weak, 4/5.", ["strength_deltoid left measured 4"]),
    (
        "Bradykinesia moderate right, mild left.",
        ["bradykinesia right present moderate", "bradykinesia left present mild"],
    ),
    ("Neck stiff, Kernig negative.", ["neck_stiffness present", "kernig absent"]),
    ("He does not report diplopia.", ["diplopia absent"]),
    ("She doesn't report any dizziness on standing.", ["orthostatic_symptoms absent"]),
    ("RASS minus two.", ["named_score measured -2 (RASS)"]),
    ("Ambulatory. RASS minus two.", ["named_score measured -2 (RASS)"]),  # the first word of its sentence
    (
        "MMSE 28/30, modified Rankin 2.",
        ["cognitive_total measured 28/30 (MMSE)", "named_score measured 2 (modified rankin)"],
    ),
    ("Sensory and gait not examined.", ["sensory_all not_examined", "gait not_examined"]),
    ("Coarse tremor at rest in the right hand.", ["tremor right hand present coarse at rest"]),
    (
        "Right grip four plus, left grip five.",
        ["strength_finger_flexors right measured 4+", "strength_finger_flexors left measured 5"],
    ),
    (
        "Disoriented to time, otherwise oriented.",
        ["orientation_time abnormal disoriented", "orientation_person normal", "orientation_place normal"],
    ),
]


def row(grammar: Grammar, text: str) -> list[str]:
    """Item, side, site, status, value and detail of every finding."""
    return [
        " ".join(
            filter(
                None,
                (
                    f.item,
                    f.side,
                    f.site,
                    f.status.value,
                    str(f.value or ""),
                    f"({'; '.join(f.detail)})" if f.detail else "",
                ),
            )
        )
        for f in read(transcript_of_text(text), grammar).findings
    ]


@pytest.mark.parametrize(("text", "wanted"), READ, ids=[text for text, _ in READ])
def test_a_phrase_once_misread(grammar: Grammar, text: str, wanted: list[str]) -> None:
    """Every finding, and no other."""
    assert row(grammar, text) == wanted


ARRIVAL = """EMS: found in the kitchen, slumped to the left.

NIHSS
Gaze 2
Facial palsy 1
Extinction/neglect 1
Total 4
"""


def test_a_scale_on_its_own_line_ends_the_history(grammar: Grammar) -> None:
    """Its parts and its total are findings."""
    assert row(grammar, ARRIVAL) == [
        "nihss_gaze measured 2",
        "nihss_facial measured 1",
        "nihss_neglect measured 1",
        "nihss_total measured 4",
    ]


def test_a_titled_examination_ends_the_history(grammar: Grammar) -> None:
    """In whatever words the title says that it is one."""
    text = "HISTORY: weak since May.\nFocused bedside exam: left deltoid 4/5."
    assert row(grammar, text) == ["strength_deltoid left measured 4"]


def test_a_history_says_which_measured_items_it_keeps(grammar: Grammar) -> None:
    """So that an examination under a heading nobody knows is asked for."""
    text = "HISTORY: BP 120/80, HR 80, RR 14, SpO2 97%, temperature 37.1, GCS 15, left deltoid 4/5."
    kept = [r for r in read(transcript_of_text(text), grammar).remarks if r.kind is RemarkKind.HISTORY]
    assert [len(one.readings) for one in kept] == [7]
