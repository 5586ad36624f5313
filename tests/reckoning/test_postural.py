"""The figures of a whole series."""

from __future__ import annotations

from reckoning.series import figures, pressure, rate, series

from dictate.reckoning import reckon


def test_changes_are_listed_for_every_upright_reading():
    """Each with its minute, pressure and rate, signs as changes."""
    first, second = figures("postural change", series("supine 138/82, 70 > 1 min 130/80, 74 > 5 min 116/74, 78"))
    assert first.text == "Standing at 1 min: from supine -8/-2 mmHg, +4/min"
    assert second.text == "Standing at 5 min: from supine -22/-8 mmHg, +8/min"
    assert sorted(second.inputs) == [0, 1, 4, 5]


def test_two_values_of_one_position_are_not_judged():
    """Neither is chosen as baseline; the figure names both."""
    findings = (pressure("130/80", "supine"), pressure("150/80", "supine"), pressure("120/80", "standing", 1.0))
    names = [figure.name for figure in reckon(findings)]
    assert "orthostatic hypotension criterion" not in names
    (figure,) = figures("postural change", findings)
    assert "130/80" in figure.text
    assert "150/80" in figure.text


def test_lying_sitting_and_standing_list_both_baselines():
    """With a lying and a sitting reading both changes are listed, the criterion only from lying."""
    findings = series("supine 122/74, 64 > sitting 124/76, 66 > 5 min 128/78, 70")
    (figure,) = figures("postural change", findings)
    assert figure.text == "Standing at 5 min: from supine +6/+4 mmHg, +6/min; sitting +4/+2 mmHg, +4/min"
    assert figures("sit-to-stand criterion", findings) == ()


def test_a_tilt_is_an_upright_position():
    """Tilted readings are compared as standing ones are."""
    findings = (pressure("140/80", "supine"), pressure("118/78", "tilted", 3.0))
    (figure,) = figures("orthostatic hypotension criterion", findings)
    assert "met at 3 min" in figure.text


def test_nothing_is_computed_from_one_position():
    """Lying readings alone, or readings without position."""
    assert [f.name for f in reckon((pressure("120/70"), rate(70)))] == ["mean arterial pressure"]
