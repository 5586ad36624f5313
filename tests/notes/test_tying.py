"""What is said to be unchanged, tied to an earlier record and held against it."""

from __future__ import annotations

import pytest
from by_hand import DEMOS, examination
from notes.test_fhir import NOW

from dictate.grammar import Grammar
from dictate.model import Examination
from dictate.notes import write_note
from dictate.notes.fhir import bundle_of, examination_of
from dictate.notes.tying import tie
from dictate.pipeline import Typed, examine, reconsider

EARLIER = (
    "General examination. Pulse eighty four. Cranial nerves intact. Motor. Left deltoid four minus. "
    "Right triceps five. Tone not tested. Reflexes. Right biceps two plus, left biceps three plus. Gait hemiparetic."
)


def read(text: str, grammar: Grammar) -> Examination:
    """A dictation."""
    return examine([Typed("typed", text)], engine=None, grammar=grammar)


def tied(text: str, grammar: Grammar, earlier: str = EARLIER) -> Examination:
    """A dictation with the earlier record beside it, and its queries asked anew."""
    return reconsider(tie(read(text, grammar), read(earlier, grammar), grammar, record="k7"), grammar)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Motor. Left deltoid unchanged.", ["4-"]),
        ("Motor. Deltoid unchanged.", ["left 4-"]),
        ("Gait unchanged from last time.", ["hemiparetic"]),
        ("Reflexes unchanged since the last visit.", ["biceps reflex right 2+; biceps reflex left 3+"]),
    ],
)
def test_unchanged_says_what_the_earlier_record_says(text: str, said: list[str], grammar: Grammar) -> None:
    """And is not asked about any more."""
    exam = tied(text, grammar)
    assert [one.earlier and one.earlier.said for one in exam.findings] == said
    assert [query.code for query in exam.open_musts] == []


@pytest.mark.parametrize(
    "text", ["Motor. Right deltoid unchanged.", "Motor. Tone unchanged.", "Romberg test unchanged."]
)
def test_what_the_earlier_record_does_not_say_stays_open(text: str, grammar: Grammar) -> None:
    """Another side, something that was not examined, something nobody spoke of: nothing is made up."""
    exam = tied(text, grammar)
    assert [one.earlier for one in exam.findings] == [None]
    assert [query.code for query in exam.open_musts] == ["blanket-unbounded"]


def test_value_called_unchanged_and_yet_another(grammar: Grammar) -> None:
    """ "Pulse unchanged at sixty six" after 84: asked; at eighty four: tied."""
    other, same = (tied(f"General. Pulse unchanged at {said}.", grammar) for said in ("sixty six", "eighty four"))
    assert [query.code for query in other.open_musts] == ["values-conflict"]
    assert "66/min, said to be unchanged, 84/min before (record k7)" in other.open_musts[0].message
    assert same.open_musts == ()


def test_note_names_the_record(grammar: Grammar) -> None:
    """Its key and day stand beside the word, so that it can be looked up."""
    earlier = read(EARLIER, grammar).model_copy(update={"examined_at": NOW})
    exam = tie(read("Gait unchanged.", grammar), earlier, grammar, record="k7")
    assert "Gait: unchanged (2026-03-05, record k7: hemiparetic)" in write_note(exam, grammar)
    undated = tied("Gait unchanged.", grammar)
    assert "Gait: unchanged (earlier record k7: hemiparetic)" in write_note(undated, grammar)
    assert examination_of(bundle_of(exam, grammar, written_at=NOW)) == exam


def test_third_visit_is_tied_through_the_second(grammar: Grammar) -> None:
    """Unchanged twice: the value is still that of the first."""
    second = tie(read("Gait unchanged.", grammar), read(EARLIER, grammar), grammar, record="k7")
    third = tie(read("Gait unchanged.", grammar), second, grammar, record="k8")
    assert [one.earlier and one.earlier.said for one in third.findings] == ["hemiparetic"]
    lost = tie(read("Gait unchanged.", grammar), read("Gait unchanged.", grammar), grammar, record="k8")
    assert lost.findings[0].earlier is None


@pytest.mark.parametrize("name", ["clinic-examination", "stroke-corrections"])
def test_nothing_is_tied_where_nothing_is_called_unchanged(name: str, grammar: Grammar) -> None:
    """The demonstrations stay as they are."""
    exam = examine([DEMOS / f"{name}.txt"], engine=None, grammar=grammar)
    assert tie(exam, exam, grammar, record="k7") == exam
    assert tie(examination(), exam, grammar, record="k7") == examination()


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Timed twenty five foot walk 5 seconds.", ["25 ft in 6 s"]),
        ("Timed twenty five foot walk: first trial 5.2 seconds, second trial 4.8 seconds.", ["25 ft in 6 s"] * 2),
        ("Timed twenty five foot walk 5 seconds with a stick.", [None]),
        ("Ten metre walk 8 seconds.", [None]),
    ],
)
def test_a_walk_of_25_feet_stands_beside_the_one_before(text: str, said: list[str | None], grammar: Grammar) -> None:
    """The mean of its trials, under the same conditions; nothing was claimed, so nothing is asked."""
    before = "Timed twenty five foot walk: first trial 6.2 seconds, second trial 5.8 seconds. Ten metre walk 9 seconds."
    exam = tied(text, grammar, earlier=before)
    assert [one.earlier and one.earlier.said for one in exam.findings] == said
    assert [query.code for query in exam.open_musts] == []
    changes = [one.text for one in exam.figures if one.name == "25-foot walk since the earlier visit"]
    assert all("now 25 ft in 5 s: speed +20 %; faster by 20 % or more (Hobart 2013): met" in one for one in changes)
    assert len(changes) == bool(said[0])


def test_unchanged_behind_a_value_holds_that_value_against_the_record(grammar: Grammar) -> None:
    """ "4 on the left, unchanged since the last visit" after 4-: asked; what the other side was is no matter."""
    earlier = "Motor. Deltoid right 5, left 4 minus."
    exam = tied("Motor. Deltoid strength 4 on the left, unchanged since the last visit.", grammar, earlier)
    assert [query.code for query in exam.open_musts] == ["values-conflict"]
    assert {one.earlier and one.earlier.said for one in exam.findings} == {"4-", "left 4-"}
    same = tied("Motor. Deltoid strength 4 minus on the left, unchanged since the last visit.", grammar, earlier)
    assert same.open_musts == ()


@pytest.mark.parametrize(
    ("text", "asks"),
    [
        ("Knee jerk right two plus, unchanged.", False),
        ("Left deltoid 4. Unchanged since the last visit.", False),
        ("Cranial nerves intact, unchanged.", False),
        ("Knee jerks right two plus, left three plus, unchanged on both sides.", False),
        ("Knee jerk two plus on the right, otherwise unchanged.", True),
        ("Knee jerks right two plus, unchanged on both sides.", True),
        ("Biceps jerk right two plus, left unchanged.", True),
        ("Gait not examined, unchanged.", True),
    ],
)
def test_what_was_told_with_it_is_not_asked_for(text: str, asks: bool, grammar: Grammar) -> None:
    """What was found is known where it stands beside "unchanged", record or none; what does not is asked for."""
    codes = ["blanket-unbounded"] * asks
    assert [query.code for query in read(text, grammar).open_musts] == codes
    assert [query.code for query in tied(text, grammar, "Motor. Tone normal.").open_musts] == codes
