"""Codes of letters and digits, and signs that join words."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("He takes B12. Power 5 in the legs.", ["strength_lower_limb measured 5"]),
        ("Tone + power normal in the arms.", ["tone arm normal", "strength_upper_limb normal"]),
    ],
)
def test_codes(rows, text, wanted):
    """Common practice, no source."""
    assert rows(text) == wanted
