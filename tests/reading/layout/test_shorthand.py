"""Typed shorthand that means something in company."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("V/A 6/12 RE, 6/9 LE.", ["visual_acuity right measured 6/12", "visual_acuity left measured 6/9"]),
        ("Pupils RE 3 mm LE 4 mm", ["pupil_size right measured 3", "pupil_size left measured 4"]),
        ("Power UE 5/5, LE 4/5.", ["strength_upper_limb measured 5", "strength_lower_limb measured 4"]),
        ("Knee jerks -/-. Ankle jerks +/+.", ["reflex_patellar both measured 0", "reflex_achilles both measured 1+"]),
        ("Reflexes R/L\nknee -/+", ["reflex_patellar right measured 0", "reflex_patellar left measured 1+"]),
        ("Knee jerks +/-.", ["reflex_patellar measured trace"]),
        ("Tenderness over D7. Pin level D6.", ["tenderness t7 present", "sensory_level measured T6"]),
        ("Light touch reduced below D8.", ["light_touch t8 abnormal reduced"]),
    ],
)
def test_shorthand_in_company(rows, text, wanted):
    """Common practice, no source: eyes behind an acuity and legs behind a power, signs of jerks, dorsal segments."""
    assert rows(text) == wanted
