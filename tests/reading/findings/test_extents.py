"""How far along the segments a finding reaches."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "site", "detail"),
    [
        ("Pinprick lost from T10 to L2 on the right.", "t10", ("to L2",)),
        ("Light touch reduced below T10 on the left.", "t10", ("below T10",)),
        ("Pinprick reduced below t ten down to L1 on the left.", "t10", ("below T10", "to L1")),
        ("Pinprick reduced up to T10 on the left.", "t10", ("up to T10",)),
        ("Pinprick reduced at T4 on the right.", "t4", ()),
    ],
)
def test_where_it_begins_and_ends_is_kept(reading, remarks, text, site, detail):
    """A segment alone would say less than was said."""
    (finding,) = reading(text).findings
    assert (finding.site, finding.detail) == (site, detail)
    assert remarks(text) == []


@pytest.mark.parametrize("text", ["Sensory level between T8 and T10.", "Sensory level T8 or T10 on the left."])
def test_a_level_said_as_two_is_asked(reading, text):
    """Neither is dropped."""
    (finding,) = reading(text).findings
    assert (str(finding.value), finding.readings) == ("T8", ("T8", "T10"))
