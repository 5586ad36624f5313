"""A position or a time said anew behind a correction stands; the first one does not, and stays in view."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.model import RemarkKind
from dictate.reading import read, transcript_of_text


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("BP 142 over 88 lying, sorry, sitting.", [("142/88", "sitting", None)]),
        ("BP lying, sorry, sitting 142 over 88.", [("142/88", "sitting", None)]),
        ("Sitting BP 120/70, no, lying.", [("120/70", "supine", None)]),
        ("BP 142 over 88 lying. Correction, sitting.", [("142/88", "sitting", None)]),
        ("Standing at one minute, sorry, sitting, 120/70.", [("120/70", "sitting", None)]),
        ("BP standing at one minute 120/70. Sorry, at three minutes.", [("120/70", "standing", 3)]),
        (
            "BP 142/88 lying, 130/80 standing at one minute, sorry, three minutes.",
            [("142/88", "supine", None), ("130/80", "standing", 3)],
        ),
        ("Lying 140/80, correction, standing 120/70.", [("120/70", "standing", None)]),
        ("BP 142 over 88 lying. Correction, 132 over 88.", [("132/88", "supine", None)]),
        ("BP 142 over 88 lying. Correction, standing 132 over 88.", [("132/88", "standing", None)]),
        (
            "Lying 142/88. Standing 120/70 at one minute, correction 110/70. At three minutes 108/70.",
            [("142/88", "supine", None), ("110/70", "standing", 1), ("108/70", "standing", 3)],
        ),
    ],
)
def test_the_last_position_said_stands(
    grammar: Grammar, text: str, wanted: list[tuple[str, str, float | None]]
) -> None:
    """Common practice, no source: what is said behind a correction takes the place of what was said before it."""
    findings = read(transcript_of_text(text), grammar).findings
    said = [(str(one.value), one.position and one.position.value, one.minutes) for one in findings]
    assert said == wanted


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("BP 118 over 76, sorry, 74, left arm. Pulse 68.", "118/74"),
        ("BP 118 over 76, no, over 74. Pulse 68.", "118/74"),
        ("BP 118 over 76, sorry, 116. Pulse 68.", "116/76"),
        ("BP 118 over 76, sorry, 128 over 74. Pulse 68.", "128/74"),
    ],
)
def test_half_a_pressure_said_anew_replaces_the_half_it_is_near(grammar: Grammar, text: str, value: str) -> None:
    """Common practice, no source."""
    findings = read(transcript_of_text(text), grammar).findings
    assert [str(one.value) for one in findings] == [value, "68"]


def test_what_was_taken_back_stays_in_view(grammar: Grammar) -> None:
    """It is kept as corrected, and asks nothing."""
    remarks = read(transcript_of_text("BP 142 over 88 lying, sorry, sitting."), grammar).remarks
    assert {one.kind for one in remarks} == {RemarkKind.CORRECTED}
    assert remarks[0].evidence.quote.startswith("lying")


@pytest.mark.parametrize(
    "text",
    [
        "Blood pressure lying 140 over 80. Standing at three minutes 118, no, 128 over 78.",
        "Blood pressure lying 140 over 80. Standing at three minutes 118, sorry 128 over 78.",
        "Blood pressure lying 140 over 80. Standing at three minutes 118, correction, 128 over 78.",
    ],
)
def test_half_a_pressure_taken_back_takes_no_other_with_it(grammar: Grammar, text: str) -> None:
    """The pressure before it stays with its position, and the new one has that of its half. Common practice."""
    reading = read(transcript_of_text(text), grammar)
    said = [(str(one.value), one.position and one.position.value, one.minutes) for one in reading.findings]
    assert said == [("140/80", "supine", None), ("128/78", "standing", 3)]
    assert [one.kind for one in reading.remarks] == [RemarkKind.CORRECTED]
