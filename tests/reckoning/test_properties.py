"""Properties of postural series: order does not matter, and less never decides more."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reckoning.series import pressure, rate

from dictate.model import Finding
from dictate.reckoning import reckon
from dictate.reckoning.changes import changes_of
from dictate.reckoning.falls import fall_verdict
from dictate.reckoning.rates import rise_verdict
from dictate.reckoning.readings import readings_of

STANCES = (
    ("supine", None),
    ("sitting", None),
    ("standing", None),
    *(("standing", minutes) for minutes in (0.0, 0.25, 0.5, 1.0, 2.0, 3.0, 5.0, 10.0, 12.0)),
)
AGES = (None, 11.0, 16.0, 34.0)
JUDGED = ("classical", "delayed", "met", "met, time open", "not met")


@st.composite
def one_series(draw: st.DrawFn) -> tuple[tuple[Finding, ...], ...]:
    """Readings of different stances, each with a pressure, a rate, or both; no stance is said twice."""
    stances = draw(st.lists(st.sampled_from(STANCES), unique=True, max_size=7))
    found = []
    for position, minutes in stances:
        parts: list[Finding] = []
        kind = draw(st.sampled_from(("both", "both", "pressure", "rate")))
        if kind != "rate":
            systolic = draw(st.sampled_from((80, 100, 119, 120, 139, 140, 160)))
            diastolic = draw(st.sampled_from((50, 69, 70, 79)))
            parts.append(pressure(f"{systolic}/{diastolic}", position, minutes))
        if kind != "pressure":
            parts.append(rate(draw(st.sampled_from((60, 70, 89, 90, 100, 110))), position, minutes))
        found.append(tuple(parts))
    return tuple(found)


def flat(readings: tuple[tuple[Finding, ...], ...]) -> tuple[Finding, ...]:
    """The findings of all readings, in order."""
    return tuple(finding for parts in readings for finding in parts)


def verdicts(findings: tuple[Finding, ...], age: float | None) -> dict[str, str]:
    """What each criterion says; sitting as a baseline is another criterion than lying."""
    readings = readings_of(findings)
    lying = tuple(one for one in changes_of(readings) if one.baseline.position == "supine")
    names = {figure.name: figure.text for figure in reckon(findings, age=age)}
    words = names.get("sit-to-stand criterion", "not judged")
    return {
        "fall": fall_verdict(lying)[0],
        "rise": rise_verdict(lying, age=age)[0],
        "sitting": "not judged" if "not judged" in words else "judged",
    }


@settings(max_examples=40, deadline=None)
@given(one_series(), st.randoms(use_true_random=False), st.sampled_from(AGES))
def test_order_of_readings_does_not_matter(readings, random, age):
    """Every figure says the same, whatever the order in which readings and their parts were spoken."""
    mixed = list(flat(readings))
    random.shuffle(mixed)
    said = sorted((figure.name, figure.text, figure.value) for figure in reckon(flat(readings), age=age))
    again = sorted((figure.name, figure.text, figure.value) for figure in reckon(mixed, age=age))
    assert said == again


@pytest.mark.parametrize("age", AGES)
@settings(max_examples=40, deadline=None)
@given(readings=one_series())
def test_taking_a_reading_away_never_decides(age, readings):
    """Not judged stays not judged; open never becomes met. From sitting it is another criterion of its own name."""
    whole = verdicts(flat(readings), age)
    for at in range(len(readings)):
        rest = verdicts(flat((*readings[:at], *readings[at + 1 :])), age)
        for name in ("fall", "rise"):
            if whole[name] == "not judged":
                assert rest[name] not in JUDGED, (name, whole, rest)
            if whole[name] == "open":
                assert rest[name] != "met"
        if whole["sitting"] == "not judged" and readings[at][0].position != "supine":
            assert rest["sitting"] == "not judged"


CHOICES = (None, ("118/70", 95.0), ("138/78", 95.0), ("138/78", 65.0), (None, 95.0))


def test_taking_a_reading_away_never_decides_in_any_small_series():
    """Every series of readings that fall or not and rise or not, at no, 0, 1, 5 and 12 minutes: 3125 of them."""
    lying = (pressure("140/80", "supine"), rate(60, "supine"))
    seen: dict[tuple[object, ...], tuple[str, ...]] = {}
    for chosen in itertools.product(CHOICES, repeat=5):
        findings = [*lying]
        for minutes, choice in zip((None, 0.0, 1.0, 5.0, 12.0), chosen, strict=True):
            if choice is not None:
                findings += [pressure(choice[0], "standing", minutes)] if choice[0] else []
                findings.append(rate(choice[1], "standing", minutes))
        changes = changes_of(readings_of(tuple(findings)))
        seen[chosen] = (fall_verdict(changes)[0], *(rise_verdict(changes, age=age)[0] for age in (None, 16.0, 34.0)))
    for chosen, whole in seen.items():
        for at in range(5):
            rest = seen[(*chosen[:at], None, *chosen[at + 1 :])]
            assert not any(one == "not judged" and other in JUDGED for one, other in zip(whole, rest, strict=True))
            assert not any(one == "open" and other == "met" for one, other in zip(whole, rest, strict=True))


@settings(max_examples=40, deadline=None)
@given(one_series(), st.sampled_from(AGES))
def test_taking_a_part_away_never_decides(readings, age):
    """The same for a single pressure or rate."""
    findings = flat(readings)
    whole = verdicts(findings, age)
    for at in range(len(findings)):
        rest = verdicts((*findings[:at], *findings[at + 1 :]), age)
        for name in ("fall", "rise"):
            if whole[name] == "not judged":
                assert rest[name] not in JUDGED, (name, whole, rest)


@settings(max_examples=40, deadline=None)
@given(one_series(), st.sampled_from(AGES))
def test_every_figure_is_short_and_points_at_its_findings(readings, age):
    """Lines that survive pasting: none longer than two lines of the note; inputs, source and formula are there."""
    findings = flat(readings)
    for figure in reckon(findings, age=age):
        assert len(figure.text) <= 160, figure.text
        assert figure.inputs
        assert all(0 <= place < len(findings) for place in figure.inputs)
        assert figure.source
        assert figure.formula
        assert "\n" not in figure.text
