"""Visual acuity: lines of the charts as decimal and logMAR.

Sources: Holladay JT. J Cataract Refract Surg 2004;30:287, table 1 (looked up: conversion chart) · Bach M, visual acuity
cheat sheet (looked up): letters, and the conventions on which papers differ.
"""

from __future__ import annotations

import pytest

from dictate.reckoning.vision import decimal_of, logmar_of


@pytest.mark.parametrize(
    ("feet", "metres", "decimal", "logmar"),
    [
        ("20/10", "6/3", 2.0, -0.30),
        ("20/12.5", "6/3.8", 1.6, -0.20),
        ("20/16", "6/4.8", 1.25, -0.10),
        ("20/20", "6/6", 1.0, 0.00),
        ("20/25", "6/7.5", 0.8, 0.10),
        ("20/30", "6/9", 0.67, 0.18),
        ("20/32", "6/9.6", 0.63, 0.20),
        ("20/40", "6/12", 0.5, 0.30),
        ("20/50", "6/15", 0.4, 0.40),
        ("20/60", "6/18", 0.33, 0.48),
        ("20/63", "6/19", 0.32, 0.50),
        ("20/70", "6/21", 0.29, 0.54),
        ("20/80", "6/24", 0.25, 0.60),
        ("20/100", "6/30", 0.20, 0.70),
        ("20/125", "6/37.5", 0.16, 0.80),
        ("20/150", "6/45", 0.13, 0.88),
        ("20/160", "6/48", 0.125, 0.90),
        ("20/200", "6/60", 0.10, 1.00),
        ("20/400", "3/60", 0.05, 1.30),
    ],
)
def test_lines_of_the_charts(feet, metres, decimal, logmar):
    """Feet and metres give the same. Source: Holladay 2004, table 1 (looked up; the last row is the formula)."""
    for text in (feet, metres):
        assert decimal_of(text) == pytest.approx(decimal, rel=0.03)
        assert logmar_of(text) == pytest.approx(logmar, abs=0.011)


@pytest.mark.parametrize(
    ("text", "decimal", "logmar"),
    [("6/5", 1.2, -0.08), ("6/36", 0.17, 0.78), ("1/60", 0.017, 1.78), ("20/30", 0.6667, 0.1761)],
)
def test_the_formula(text, decimal, logmar):
    """Distance over line, and its negative logarithm. Source: Holladay 2004 (formula), arithmetic."""
    assert decimal_of(text) == pytest.approx(decimal, rel=0.03)
    assert logmar_of(text) == pytest.approx(logmar, abs=0.005)


@pytest.mark.parametrize(
    ("text", "decimal", "logmar"),
    [
        ("0.8", 0.8, 0.10),
        ("1.0", 1.0, 0.00),
        ("0.05", 0.05, 1.30),
        ("logMAR 0.1", 0.794, 0.10),
        ("logMAR -0.1", 1.259, -0.10),
        ("logMAR 0.30", 0.501, 0.30),
    ],
)
def test_decimals_and_logmar_as_said(text, decimal, logmar):
    """Each is the other's: logMAR = -log10(decimal). Source: Holladay 2004 (formula), arithmetic."""
    assert decimal_of(text) == pytest.approx(decimal, abs=0.001)
    assert logmar_of(text) == pytest.approx(logmar, abs=0.005)


@pytest.mark.parametrize(
    ("text", "logmar"), [("20/40-1", 0.32), ("20/25+2", 0.06), ("20/30-1", 0.176), ("20/40-", 0.30), ("20/40+", 0.30)]
)
def test_letters_count_on_five_letter_lines_only(text, logmar):
    """0.02 a letter; 20/30 is no such line, and a sign without its number counts nothing. Source: Bach (looked up)."""
    assert logmar_of(text) == pytest.approx(logmar, abs=0.005)


@pytest.mark.parametrize("text", ["counting fingers", "hand movements", "light perception", "J1", "20/0", "0/20", "20"])
def test_words_and_impossible_lines_are_not_converted(text):
    """Conventions differ (Holladay 2004, Schulze-Bonsel 2006, Lange 2009, Bach): none is built in. Source: own rule."""
    assert decimal_of(text) is None
    assert logmar_of(text) is None
