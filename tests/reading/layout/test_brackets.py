"""What was found another time, in brackets, is no finding of today."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.model import RemarkKind
from dictate.reading import read, transcript_of_text


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        (
            "Deltoid R 4 (was 3), L 5 (4 last visit).",
            ["strength_deltoid right measured 4", "strength_deltoid left measured 5"],
        ),
        ("Knee jerks 2+ both sides (3+ in June).", ["reflex_patellar both measured 2+"]),
        ("Romberg negative (previously positive).", ["romberg normal"]),
        ("TUG 12 s (17 s in 2023).", ["timed_up_and_go measured 12"]),
        ("Grip 20 kg right [last visit 14].", ["grip_strength right measured 20"]),
        (
            "June findings in brackets. Weight 82 kg [79]. Biceps jerk R 1+ [absent].",
            ["weight measured 82", "reflex_biceps right measured 1+"],
        ),
        (
            "Last visit's values in round brackets.\nTUG 12 s (17), Romberg negative (positive).",
            ["timed_up_and_go measured 12", "romberg normal"],
        ),
    ],
)
def test_an_earlier_value_is_none_of_today(grammar: Grammar, rows, text, wanted):
    """Common practice, no source: follow-up notes put what was found before into brackets. It stays in view as talk."""
    assert rows(text) == wanted
    assert any(one.kind is RemarkKind.TALK for one in read(transcript_of_text(text), grammar).remarks)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Pupils 3 mm (both reactive).", ["pupil_size measured 3", "pupil_reaction both normal"]),
        ("Vibration absent (from the ankles down).", ["vibration ankle abnormal absent"]),
        (
            "GCS 15 (E4 V5 M6).",
            ["gcs_total measured 15", "gcs_eye measured 4", "gcs_verbal measured 5", "gcs_motor measured 6"],
        ),
        (
            "Corrected acuity in brackets. Visual acuity right 6/12 (6/6).",
            ["visual_acuity right measured 6/12", "visual_acuity measured 6/6"],
        ),
    ],
)
def test_other_brackets_are_read(rows, text, wanted):
    """Nothing in them or in front of them says that they are of another time."""
    assert rows(text) == wanted
