"""The value written for words: a named one, a grade, or the descriptor as said."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("phrase", "written"),
    [
        ("Gait slow and wide based.", "slow and wide based"),
        ("Gait wide based and ataxic.", "wide based and ataxic"),
        ("Finger to nose slow and irregular on the left.", "slow and irregular"),
        ("Finger to nose mild dysmetria on the left.", "mild dysmetria"),
        ("Rest tremor of the right hand, mild.", "rest mild"),
        ("Sustained clonus at the right ankle.", "sustained"),
        ("Mild lower facial weakness on the left.", "mild lower facial weakness"),
        ("Plantars extensor.", "extensor"),
        ("Right knee jerk trace.", "trace"),
        ("Tone increased in the right arm.", "increased"),
    ],
)
def test_a_descriptor_is_written_as_said(reading, phrase, written):
    """In the order said, with the link between two of them and the degree they had."""
    (finding,) = reading(phrase).findings
    assert str(finding.value) == written


@pytest.mark.parametrize(
    "phrase", ["Gait normal.", "No tremor.", "Tone intact.", "Cranial nerves negative.", "Ptosis."]
)
def test_where_the_status_says_it_all_there_is_no_value(reading, phrase):
    """Normal, absent, plainly present."""
    (finding,) = reading(phrase).findings
    assert finding.value is None


@pytest.mark.parametrize(
    ("phrase", "kind"),
    [
        ("Plantars extensor.", "choice"),
        ("Right knee jerk trace.", "grade"),
        ("Gait wide based.", "text"),
        ("Pulse 66.", "quantity"),
        ("Blood pressure 142/84.", "pressure"),
        ("Right visual acuity twenty thirty.", "acuity"),
        ("Recall two of three.", "score"),
    ],
)
def test_a_value_is_of_its_items_kind(reading, phrase, kind):
    """A choice, a grade, free words, a number."""
    (finding,) = reading(phrase).findings
    assert finding.value.kind == kind
