"""The front door of reckoning."""

from __future__ import annotations

from reckoning.series import coma, muscles, series

from dictate.reckoning import reckon


def test_figures_come_in_fixed_order_with_a_source():
    """Pressures, posture, scales; every figure but a refusal names its source and its findings."""
    findings = (*coma(4, 5, 6), *muscles("5 5 5 5 5 5", "5 5 5 5 5 5"), *series("supine 150/85, 65 > 3 min 106/66, 73"))
    figures = reckon(findings)
    assert [figure.name for figure in figures] == [
        "mean arterial pressure",
        "mean arterial pressure",
        "postural change",
        "orthostatic hypotension criterion",
        "fall of 30 systolic",
        "postural heart-rate criterion",
        "rate to pressure ratio",
        "coma scale sum",
        "muscle sum score",
    ]
    assert all(figure.source and figure.inputs for figure in figures)


def test_nothing_said_nothing_computed():
    """No findings, no figures."""
    assert reckon(()) == ()
