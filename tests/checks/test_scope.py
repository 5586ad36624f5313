"""What the note as a whole leaves open."""

from __future__ import annotations

import pytest

from dictate.checks import run_checks
from dictate.grammar import load_grammar
from dictate.model import Evidence, Remark, RemarkKind
from dictate.pipeline import Typed, examine


def remark(kind: RemarkKind, quote: str) -> Remark:
    """Words that became no finding."""
    return Remark(kind=kind, evidence=Evidence(first=0, last=0, quote=quote, start_s=3.0, end_s=4.0))


def test_nothing_is_asked_for_without_a_scope(said, ask):
    """What was not dictated is no query of its own."""
    assert ask("scope-item-missing", said("heart_rate", "measured", "70")) == ()


def test_one_grouped_question_for_each_component(said, ask):
    """Missing items of one component share a question."""
    queries = ask(
        "scope-item-missing", said("blood_pressure", "measured", "120/80", position="supine"), scope="dizziness"
    )
    assert [(query.component, query.severity) for query in queries] == [
        ("cranial_nerves", "look"),
        ("sensory", "look"),
        ("coordination_gait", "look"),
    ]


def test_a_blanket_and_not_examined_are_mentions(said, ask):
    """Covered by a blanket, or said not to have been examined: not asked."""
    queries = ask(
        "scope-item-missing",
        said("blood_pressure", "measured", "120/80", position="supine"),
        said("cranial_nerves_2_12", "normal"),
        said("gait", "not_examined"),
        said("sensory_all", "normal"),
        scope="dizziness",
    )
    assert queries == ()


def test_words_that_became_nothing_are_looked_at(ask):
    """Every not-placed remark is shown with its words and time; talk is not."""
    queries = ask(
        "not-placed",
        remarks=(remark(RemarkKind.NOT_PLACED, "brisk as ever"), remark(RemarkKind.TALK, "the phone rang")),
    )
    assert [(query.quote, query.start_s, query.severity) for query in queries] == [("brisk as ever", 3.0, "look")]


def test_an_exception_that_became_nothing_must_be_asked_about(ask):
    """What it is excepted from says too much until it is known. Source: own rule."""
    lost = remark(RemarkKind.NOT_PLACED, "left sixth").model_copy(update={"readings": ("cranial_nerves_all",)})
    (query,) = ask("not-placed", remarks=(lost,))
    assert query.severity == "must"
    assert query.message == '"left sixth" is an exception from cranial nerves, and became no finding: what was found?'


def test_the_rest_of_the_examination_must_be_bounded(said, ask):
    """The components nothing was said of are suggested."""
    (query,) = ask(
        "blanket-unbounded",
        said("gait", "normal"),
        remarks=(remark(RemarkKind.BLANKET_UNBOUNDED, "rest of the examination is normal"),),
    )
    assert query.severity == "must"
    assert "sensory" in query.suggestions
    assert "coordination gait" not in query.suggestions


def test_unchanged_beside_what_was_found_is_bounded():
    """ "Knee jerk two plus, unchanged": what was found is known; of the other side, or of the rest, it is not."""

    grammar = load_grammar()

    def codes(text: str) -> list[str]:
        exam = examine([Typed("typed", text)], engine=None, grammar=grammar)
        return [query.code for query in exam.open_musts]

    assert codes("Knee jerk right two plus, unchanged.") == []
    assert codes("Deltoid 4 on the left, right unchanged.") == ["blanket-unbounded"]
    assert codes("Knee jerk two plus on the right, otherwise unchanged.") == ["blanket-unbounded"]
    assert codes("Knee jerks right two plus, unchanged on both sides.") == ["blanket-unbounded"]


def test_another_patient_must_be_asked(ask):
    """Two people's findings must not stand in one note."""
    (query,) = ask("several-patients", remarks=(remark(RemarkKind.NEXT_PATIENT, "next patient"),))
    assert (query.severity, query.quote) == ("must", "next patient")


@pytest.mark.parametrize(
    ("spoken", "patient", "count"),
    [("471", "471", 0), ("471", "472", 1), ("471", "", 0), ("P104", "p-104", 0), ("P104", "P-105", 1)],
)
def test_a_spoken_reference_is_held_against_the_one_given(exam, grammar, spoken, patient, count):
    """Another reference than the one given must be asked; the message names neither."""
    said = remark(RemarkKind.REFERENCE, "patient number").model_copy(update={"readings": (spoken,)})
    found = run_checks(exam(remarks=(said,), patient=patient), grammar)
    queries = [query for query in found if query.code == "patient-mismatch"]
    assert len(queries) == count
    assert all(patient not in query.message and spoken not in query.message for query in queries)


def test_missing_readings_of_a_series_join_the_question():
    """A figure that lists them puts them into the one question of the component."""
    from by_hand import examination, finding

    from dictate.checks import run_checks
    from dictate.model import Component, Figure, Status

    listed = Figure(name="postural readings missing", text="Not dictated: lying; standing at 5 min", inputs=(0,))
    pressure = finding(Component.GENERAL, "blood_pressure", Status.MEASURED)
    exam = examination(pressure, scope="dizziness", figures=(listed,))
    messages = [one.message for one in run_checks(exam, load_grammar()) if one.code == "scope-item-missing"]
    (general,) = [one for one in messages if one.startswith("General")]
    assert "reading lying, reading standing at 5 min. Examined?" in general


@pytest.mark.parametrize(
    ("quote", "severity"),
    [("I am not so sure about the", "must"), ("I wouldn't say there is", "must"), ("the lower part of the", "look")],
)
def test_words_that_may_deny_the_finding_behind_them_must_be_asked(said, ask, quote, severity):
    """Whatever was meant by a "not" that nothing took, what follows it is no plain finding."""
    before, behind = said("gait", "normal"), said("ptosis", "present", side="left")
    (query,) = ask("not-placed", before, behind, remarks=(remark(RemarkKind.NOT_PLACED, quote),))
    assert query.severity == severity


@pytest.mark.parametrize(
    ("quote", "severity"), [("strike hat.", "must"), ("strikes me as slow", "look"), ("the hat was stricken", "look")]
)
def test_words_that_begin_as_an_order_to_strike_must_be_settled(said, ask, quote: str, severity: str) -> None:
    """ "Strike hat" is what a recogniser made of "strike that" of some voices; the finding stands."""
    (query,) = ask("not-placed", said("heart_rate", "measured", "70"), remarks=(remark(RemarkKind.NOT_PLACED, quote),))
    assert query.severity == severity
