"""A pause inside a statement. No source: how people pause, and what recognisers write for it, was heard and seen."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dictate.grammar import Grammar
from dictate.model import Examination, Source, Transcript, Word
from dictate.pipeline import Typed, examine, examine_transcript

Rows = Callable[[str], list[str]]


def spoken(text: str, grammar: Grammar) -> Examination:
    """A word each 0.4 s; `|` is a pause of two seconds for which the recogniser wrote nothing."""
    words, at_s = [], 0.0
    for word in text.split():
        if word == "|":
            at_s += 2.0
        else:
            words.append(Word(text=word, start_s=at_s, end_s=at_s + 0.3, probability=0.99))
            at_s += 0.4
    source = Source(name="a.wav", kind="recording", sha256="0" * 64)
    return examine_transcript(Transcript(words=tuple(words), sources=(source,)), grammar=grammar)


@pytest.fixture
def heard(grammar: Grammar) -> Rows:
    """Findings of a recording in which these words were heard."""
    return lambda text: [
        " ".join(filter(None, (one.item, one.side, one.site, str(one.value or one.status.value))))
        for one in spoken(text, grammar).findings
    ]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("BP 140 over. 80.", "blood_pressure 140/80"),
        ("BP 140 over | 80.", "blood_pressure 140/80"),
        ("BP 140 over... 80.", "blood_pressure 140/80"),
        ("BP 140 over- 80.", "blood_pressure 140/80"),
        ("BP 140 over, 80.", "blood_pressure 140/80"),
        ("BP 140. Over 80.", "blood_pressure 140/80"),
        ("Visual acuity right 20. Over 40.", "visual_acuity right 20/40"),
        ("Temperature 37. Point five.", "temperature 37.5"),
        ("Montreal cognitive assessment 26. Out of 30.", "cognitive_total 26/30"),
        ("Left deltoid four. Minus.", "strength_deltoid left 4-"),
        ("Left deltoid 4. -.", "strength_deltoid left 4-"),
        ("Left deltoid 4... minus.", "strength_deltoid left 4-"),
        ("Deltoid four. Minus, on the left.", "strength_deltoid left 4-"),
        ("Vibration five. Seconds at the left great toe.", "vibration left great_toe 5"),
    ],
)
def test_a_number_is_put_together(heard: Rows, said: str, found: str) -> None:
    """Its second part, its sign, its unit."""
    assert heard(f"Heart sounds normal. {said} Gait normal.") == ["heart_sounds normal", found, "gait normal"]


def test_a_side_in_front_of_a_comma_is_no_value_of_the_heading(heard: Rows) -> None:
    """ "Right" is what a hand may be, too."""
    said = "Upper limbs. Right, tone normal, biceps 5, triceps 5. Left, tone increased, biceps 4, triceps 4."
    assert heard(said)[:2] == ["tone right normal", "strength_biceps right 5"]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        (
            "Left deltoid. Four minus. Right deltoid. Five.",
            ["strength_deltoid left 4-", "strength_deltoid right 5"],
        ),
        ("Left deltoid, | four minus.", ["strength_deltoid left 4-"]),
        ("Left deltoid 4. Minus biceps 4.", ["strength_deltoid left 4-", "strength_biceps left 4"]),
        ("Left deltoid. Four minus, right deltoid five.", ["strength_deltoid left 4-", "strength_deltoid right 5"]),
        ("Biceps reflex. Right. Three plus. Left. Two plus.", ["reflex_biceps right 3+", "reflex_biceps left 2+"]),
        ("Left knee jerk. Absent.", ["reflex_patellar left 0"]),
        ("There is no. Nystagmus.", ["nystagmus absent"]),
        ("Plantar on the. Left extensor.", ["plantar_response left extensor"]),
    ],
)
def test_a_value_stays_with_the_name_in_front_of_it(heard: Rows, said: str, found: list[str]) -> None:
    """And with its side, and never goes to the name behind it."""
    assert heard(f"Tone normal. {said} Gait normal.") == ["tone normal", *found, "gait normal"]


@pytest.mark.parametrize(
    ("said", "found"),
    [
        (
            "Right deltoid 5. Biceps 5. Triceps 4 plus. Left deltoid 5. Biceps 4.",
            [
                "strength_deltoid right 5",
                "strength_biceps right 5",
                "strength_triceps right 4+",
                "strength_deltoid left 5",
                "strength_biceps left 4",
            ],
        ),
        (
            "Right biceps 5. Triceps 4. Correction, 4 minus. Wrist extensors 4.",
            ["strength_biceps right 5", "strength_triceps right 4-", "strength_wrist_extensors right 4"],
        ),
        (
            "Right knee jerk 3 plus. Ankle 2 plus. Plantar extensor.",
            ["reflex_patellar right 3+", "reflex_achilles right 2+", "plantar_response right extensor"],
        ),
        # not of that side: in the middle of the body, both in the plural, after a long silence, behind something else
        ("Right deltoid 5. Neck flexion 5.", ["strength_deltoid right 5", "strength_neck_flexors 5"]),
        ("Right knee jerk 3 plus. Ankle jerks 2 plus.", ["reflex_patellar right 3+", "reflex_achilles 2+"]),
        ("Right deltoid 5. | Biceps 5.", ["strength_deltoid right 5", "strength_biceps 5"]),
        ("Right deltoid 5. Tone normal. Biceps 5.", ["strength_deltoid right 5", "tone normal", "strength_biceps 5"]),
    ],
)
def test_a_list_of_one_side_goes_on_over_full_stops(heard: Rows, said: str, found: list[str]) -> None:
    """Name and grade after name and grade, said in one go: the stops are the recogniser's."""
    assert heard(f"Lungs clear. {said} Gait normal.") == ["lungs normal", *found, "gait normal"]


@pytest.mark.parametrize(
    "said",
    [
        "Nystagmus. Normal saccades.",  # two items
        "Right quadriceps 4. L side 5/5 throughout.",  # a side, no unit
        "Pronator drift. Right. Finger taps normal.",  # "right" may be assent, and the drift of neither side
        "Knee jerk two plus. On the left. Ankle jerk absent.",  # of what came, or of what comes?
        "Has no drift? Minus.",  # a question ends
    ],
)
def test_what_may_be_two_statements_stays_two(grammar: Grammar, said: str) -> None:
    """As the full stop says: what is left open then is asked about."""
    apart = examine([Typed("x", said)], engine=None, grammar=grammar)
    assert [(one.item, one.side, one.value) for one in spoken(said, grammar).findings] == [
        (one.item, one.side, one.value) for one in apart.findings
    ]


def test_who_types_a_full_stop_means_it(grammar: Grammar) -> None:
    """And so it stays what it was."""
    exam = examine([Typed("x", "Left deltoid 4. Minus. Gait normal.")], engine=None, grammar=grammar)
    assert [str(one.value) for one in exam.findings if one.item == "strength_deltoid"] == ["4"]
    assert any(query.quote == "Minus." for query in exam.queries)


def test_nothing_runs_on_into_another_recording(grammar: Grammar) -> None:
    """A number is not put together of two."""
    texts = ("BP", "140", "over", "80.")
    words = tuple(
        Word(text=text, start_s=at * 0.4, end_s=at * 0.4 + 0.3, probability=0.9, source=at // 3)
        for at, text in enumerate(texts)
    )
    sources = tuple(Source(name=name, kind="recording", sha256="0" * 64) for name in "ab")
    exam = examine_transcript(Transcript(words=words, sources=sources), grammar=grammar)
    assert not exam.findings


def test_a_lone_no_is_asked_about(grammar: Grammar) -> None:
    """It may deny what comes, or answer what was asked before: it must be settled, beside the finding."""
    exam = spoken("Eye movements full. No. Nystagmus. Gait normal.", grammar)
    (asked,) = [query for query in exam.open_musts if "was it denied" in query.message]
    assert [exam.findings[at].item for at in asked.findings] == ["nystagmus"]


@pytest.mark.parametrize(
    "said", ["Gait normal. Red that wall. Strike that.", "Gait normal. Knee jerk. Strike that.",
             "Gait normal. Red that back, strike that, standing blood pressure 118 over 78."],
)  # fmt: skip
def test_what_strike_that_struck_is_asked_about(grammar: Grammar, said: str) -> None:
    """Words that became nothing stand before it: they, or the finding before them?"""
    asked = [query for query in spoken(said, grammar).open_musts if "strike something out" in query.message]
    assert [query.code for query in asked] == ["not-placed"]
    plain = spoken("Gait normal. Strike that. Tone normal.", grammar)
    assert [query.code for query in plain.open_musts] == []
    assert [one.item for one in plain.findings] == ["tone"]
