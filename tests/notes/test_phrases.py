"""One finding in the trade's wording and units."""

from __future__ import annotations

from typing import Any

import pytest
from by_hand import finding, reflex, small_grammar

from dictate.grammar import Grammar, Item
from dictate.model import Certainty, Component, Finding, Pressure, Quantity, Score, Side, Status, Text, Value
from dictate.notes import write_note
from dictate.notes.phrases import STAY, amount, hedge, item_name, nerve_label, nerve_order, phrase, place, statement
from dictate.pipeline import Typed, examine


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (Pressure(systolic=142, diastolic=84), "mm[Hg]", "142/84 mmHg"),
        (Pressure(systolic=90), "mm[Hg]", "90/palpable mmHg"),
        (Quantity(number=36.9), "Cel", "36.9 °C"),
        (Quantity(number=98), "%", "98%"),
        (Quantity(number=40), "deg", "40°"),
        (Quantity(number=12, note="10 m in"), "s", "10 m in 12 s"),
        (Quantity(number=5, note="beats"), "", "5 beats"),
        (Score(points=2, of=3), "", "2/3"),
        (Quantity(number=3), "furlong", "3 furlong"),
    ],
)
def test_amount(value: Value, unit: str, text: str) -> None:
    """A value is written with its unit; a unit unknown here is written as it is."""
    assert amount(value, unit) == text


@pytest.mark.parametrize(
    ("more", "text"),
    [
        ({"side": Side.RIGHT, "site": "great_toe"}, "right great toe"),
        ({"side": Side.BOTH, "site": "ankle"}, "ankle both sides"),
        ({"site": "t10"}, "T10"),
        ({"side": Side.MIDLINE}, "midline"),
        ({}, ""),
    ],
)
def test_place(more: dict[str, object], text: str) -> None:
    """Side and site as they were said, and nothing when neither was."""
    assert place(finding(Component.SENSORY, "vibration", Status.NORMAL, **more)) == text


@pytest.mark.parametrize(
    ("one", "text"),
    [
        (finding(Component.GENERAL, "murmur", Status.PRESENT, value=Text(words="soft")), "present (soft)"),
        (
            finding(Component.GENERAL, "murmur", Status.PRESENT, value=Text(words="soft"), detail=("at the apex",)),
            "present (soft; at the apex)",
        ),
        (finding(Component.MENTAL_STATUS, "gcs", Status.NOT_ASSESSABLE, value=Score(points=None, mark="T")),
         "not assessable (T)"),
        (finding(Component.SENSORY, "vibration", Status.MEASURED, value=Quantity(number=15), unit="s",
                 detail=("more than",)), f"more than 15{STAY}s"),
        (finding(Component.MENTAL_STATUS, "named_score", Status.MEASURED, value=Score(points=3.5),
                 detail=("EDSS", "walking alone")), "3.5 (walking alone)"),
        (finding(Component.GENERAL, "respiratory_rate", Status.MEASURED, value=Quantity(number=32), unit="/min",
                 quote="Respiratory rate about 32."), "about 32/min"),
        (finding(Component.GENERAL, "abdomen", Status.NORMAL, value=Text(words="soft"), detail=("Soft",)), "soft"),
    ],
)  # fmt: skip
def test_statement(one: Finding, text: str, grammar: Grammar) -> None:
    """The status is always told, and no word is told twice."""
    assert statement(one, grammar) == text


def test_longest_hedge_said_is_kept(small: Grammar) -> None:
    """The word of doubt is the examiner's own."""
    one = reflex("reflex_biceps", "3+", certainty=Certainty.UNCERTAIN, quote="I think possibly three plus")
    assert hedge(one, small) == "I think"


def test_certain_finding_has_no_hedge(small: Grammar) -> None:
    """A word of doubt elsewhere in the quote does not make a stated finding doubtful."""
    assert hedge(reflex("reflex_biceps", "3+", quote="no possible clonus"), small) == ""


def test_value_and_unit_stay_together(small: Grammar) -> None:
    """A line never ends between number and unit."""
    one = finding(Component.SENSORY, "vibration", Status.MEASURED, value=Quantity(number=8), unit="s")
    assert phrase(one, small) == f"8{STAY}s"


@pytest.mark.parametrize(("nerve", "order"), [("I", 1), ("II III", 2), ("IX X", 9), ("XII", 12), ("", 0)])
def test_nerve_order(nerve: str, order: int) -> None:
    """An item of several nerves stands with the first."""
    assert nerve_order(nerve) == order


def test_name_of_an_item_the_grammar_lacks(small: Grammar) -> None:
    """Abbreviations in an id stay in capitals."""
    assert item_name(small, "nihss_total") == "NIHSS total"


@pytest.mark.parametrize(
    ("nerve", "label"),
    [("II/III", "II/III"), ("III IV VI", "III/IV/VI"), ("VIII/cerebellar", "VIII"), ("III / motor", "III")],
)
def test_only_numerals_are_written(nerve: str, label: str) -> None:
    """What else the grammar says about the nerve stays there."""
    grammar = small_grammar(ptosis=Item(name="ptosis", kind="presence", nerve=nerve))
    assert nerve_label(grammar, "ptosis") == label


def test_seconds_after_standing_are_written_as_seconds(grammar: Grammar) -> None:
    """A quarter of a minute reads "at 15 s"."""
    text = "Blood pressure lying 142/84, standing at 15 seconds 110/60."
    exam = examine([Typed("t", text)], engine=None, grammar=grammar)
    assert "standing at 15 s: " in write_note(exam, grammar)


def test_doubt_reads_as_a_sentence_would(grammar: Grammar) -> None:
    """ "Possibly present", and yet "possible 3+"."""
    more = {"certainty": Certainty.UNCERTAIN, "side": Side.LEFT}
    drift = finding(Component.MOTOR, "pronator_drift", Status.PRESENT, quote="possible left drift", **more)
    assert phrase(drift, grammar) == "left possibly present"
    assert phrase(reflex("reflex_biceps", "3+", quote="possible left 3+", **more), grammar) == "left possible 3+"


def test_side_a_thing_turns_to_is_a_direction(grammar: Grammar) -> None:
    """ "Uvula deviates to the right" says nothing of a right uvula."""
    said = (("palate", "uvula deviates"), ("weber", "lateralises"), ("tongue", "deviates"))
    for item, value in said:
        one = finding(Component.CRANIAL_NERVES, item, Status.ABNORMAL, value=Text(words=value), side=Side.RIGHT)
        assert phrase(one, grammar) == f"{value} to the right"


def test_note_of_a_unit_has_no_braces(grammar: Grammar) -> None:
    """UCUM writes counts of things as `{words}`."""
    one = finding(Component.MENTAL_STATUS, "fluency", Status.MEASURED, value=Quantity(number=7), unit="{words}")
    assert phrase(one, grammar) == f"7{STAY}words"


def test_rest_of_a_list_is_otherwise_so(grammar: Grammar) -> None:
    """What stands beside exceptions never reads as if there were none."""
    one = finding(Component.MOTOR, "strength_all", Status.NORMAL, excepted=True, quote="otherwise normal")
    assert phrase(one, grammar) == 'otherwise normal, as said: "otherwise normal"'


@pytest.mark.parametrize(
    ("quote", "value", "said"),
    [
        ("Ataxic with intention tremor on the left.", "ataxic intention tremor", "ataxic with intention tremor"),
        ("Gait antalgic, uses a cane.", "antalgic uses a cane", "antalgic, uses a cane"),
        ("Left ptosis two millimetres, fatigable.", "2 mm fatigable", "2 mm, fatigable"),
        ("Slow, with a stick.", "slow with a stick", "slow, with a stick"),
        ("Moderate left lower facial weakness.", "moderate lower facial weakness", "moderate lower facial weakness"),
        ("Ataxic, weak, gone.", "ataxic unsteady", "ataxic unsteady"),
        ("With tremor.", "tremor", "tremor"),
    ],
)  # fmt: skip
def test_descriptors_are_joined_as_they_were_spoken(quote: str, value: str, said: str, grammar: Grammar) -> None:
    """A comma or "with" stands where it was said; nothing else comes in between."""
    one = finding(Component.COORDINATION_GAIT, "gait", Status.ABNORMAL, value=Text(words=value), quote=quote)
    assert phrase(one, grammar) == said


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({}, "midline"),
        ({"detail": ("at rest",)}, "midline (at rest)"),
        ({"certainty": Certainty.UNCERTAIN, "quote": "probably midline"}, "probably midline"),
        ({"side": None}, "normal"),
    ],
)
def test_what_lies_in_the_midline_is_said_once(changes: dict[str, Any], said: str, grammar: Grammar) -> None:
    """ "Tongue: midline", never "midline normal"."""
    one = finding(Component.CRANIAL_NERVES, "tongue", Status.NORMAL, **{"side": Side.MIDLINE, **changes})
    assert phrase(one, grammar) == said


@pytest.mark.parametrize(
    ("quote", "site", "detail", "said"),
    [
        ("Pinprick reduced to mid shin on both sides.", "mid_shin", (), "both sides reduced to mid shin"),
        ("reduced to the mid-shin", "mid_shin", (), "both sides reduced to the mid shin"),
        ("reduced up to the ankles", "ankle", (), "both sides reduced up to the ankles"),
        ("reduced below the right knee", "knee", ("below the knee",), "both sides reduced below the knee"),
        ("reduced to T10", "t10", (), "both sides reduced to T10"),
        ("reduced to T10 (in the bath)", "t10", ("in the bath",), "both sides reduced to T10 (in the bath)"),
        ("reduced in the mid shin", "mid_shin", (), "mid shin both sides reduced"),
        ("reduced to the mid shins", "", (), "both sides reduced"),
        ("compared to hand, foot reduced", "foot", (), "foot both sides reduced"),
    ],
)
def test_how_far_a_disturbance_of_sensation_goes(
    quote: str, site: str, detail: tuple[str, ...], said: str, grammar: Grammar
) -> None:
    """ "To mid shin" is no place but an end; where it was said it stands, and once."""
    one = finding(
        Component.SENSORY, "pinprick", Status.ABNORMAL, value=Text(words="reduced"), side=Side.BOTH, site=site,
        detail=detail, quote=quote,
    )  # fmt: skip
    assert phrase(one, grammar) == said


def test_a_number_at_a_site_goes_no_further(grammar: Grammar) -> None:
    """ "From toe to ankle 8 s": a number is of its site; another component has no such ends."""
    at = {"side": Side.RIGHT, "site": "ankle", "quote": "to the ankle"}
    measured = finding(Component.SENSORY, "vibration", Status.MEASURED, value=Quantity(number=8), unit="s", **at)
    assert phrase(measured, grammar) == f"right ankle 8{STAY}s"
    weak = finding(Component.MOTOR, "bulk", Status.ABNORMAL, value=Text(words="wasted"), **at)
    assert phrase(weak, grammar) == "right ankle wasted"


def test_words_of_the_name_are_not_said_again(grammar: Grammar) -> None:
    """ "Adduction deficit": present, not "present (deficit)"."""
    detail = ("deficit", "partial")
    one = finding(Component.CRANIAL_NERVES, "adduction_deficit", Status.PRESENT, side=Side.LEFT, detail=detail)
    assert phrase(one, grammar) == "left present (partial)"


def test_quadrants_are_places_a_reflex_is_absent_in(grammar: Grammar) -> None:
    """Not at."""
    one = finding(Component.REFLEXES, "abdominal_reflex", Status.ABSENT, site="lower_quadrant")
    assert phrase(one, grammar) == "absent in the lower quadrant"
