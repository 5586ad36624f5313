"""Spoken history, impression and plan: kept verbatim, outside the examination."""

from __future__ import annotations

import pytest

from dictate.model import RemarkKind
from dictate.reading.layout.sections import sentences_of, split


def test_marks_are_cut_at_the_ends_of_sentences(cut, lexicon):
    """Every mark is in one sentence."""
    tokens = cut("Gait normal. Tone normal")
    marks = lexicon.find(tokens)
    sentences = sentences_of(marks, tokens)
    assert [sentence[0].text for sentence in sentences] == ["gait", "tone"]
    assert [mark for sentence in sentences for mark in sentence] == marks


def test_a_section_holds_to_the_next_heading(cut, lexicon):
    """One stretch for all its sentences."""
    tokens = cut("Gait normal. Plan. Home. See again. Reflexes: knees two plus.")
    inside, kept = split(lexicon.find(tokens), tokens)
    assert [sentence[0].text for sentence in inside] == ["gait", "reflexes"]
    assert [(kind, tokens[start].lower, tokens[end].lower) for kind, start, end in kept] == [
        (RemarkKind.PLAN, "plan", "reflexes")
    ]


@pytest.mark.parametrize(
    ("phrase", "kept"),
    [
        ("History. Weak on the left for two days.", ["history: History. Weak on the left for two days."]),
        ("History of present illness: left arm weak.", ["history: History of present illness: left arm weak."]),
        (
            "Impression. Left hemiparesis. Plan. MRI of the brain.",
            ["impression: Impression. Left hemiparesis.", "plan: Plan. MRI of the brain."],
        ),
        ("Plan:\nreflexes again,\nin six weeks.", ["plan: Plan:\nreflexes again,\nin six weeks."]),
    ],
)
def test_a_section_is_kept_verbatim_and_gives_no_finding(rows, remarks, phrase, kept):
    """Even where its words would be findings elsewhere."""
    assert rows(phrase) == []
    assert remarks(phrase) == kept


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Gait normal. Impression: possible stroke with left deltoid four. Plan: repeat reflexes.",
            ["gait normal"],
        ),
        ("History: weak for two days. Motor: left deltoid four.", ["strength_deltoid left measured 4"]),
        ("Plan: see again. Reflexes: biceps two plus bilaterally.", ["reflex_biceps both measured 2+"]),
    ],
)
def test_the_examination_goes_on_with_a_component(rows, phrase, findings):
    """What stands before the section and after the next heading is examination."""
    assert rows(phrase) == findings


def test_a_heading_is_one_only_at_the_start_of_a_sentence(rows):
    """ "Gait normal, no history" opens no section."""
    assert rows("Gait normal by history. Tone normal.")[-1] == "tone normal"


@pytest.mark.parametrize(
    "heading", ["Examination:", "PHYSICAL EXAMINATION:", "Objective:", "Neurological exam.", "On examination"]
)
def test_a_heading_of_the_examination_ends_the_history(rows, remarks, heading):
    """Though no component is named: "HISTORY: ... EXAMINATION: ..."."""
    text = f"HISTORY: He had a stiff gait.\n{heading} Gait is normal."
    assert rows(text) == ["gait normal"]
    assert remarks(text) == ["history: HISTORY: He had a stiff gait."]


@pytest.mark.parametrize("heading", ["Assessment", "Comment", "Follow-up"])
def test_a_word_of_other_uses_opens_its_section_with_a_colon_only(rows, heading):
    """ "Assessment of gait" is examination, "Assessment: gait disorder" is not."""
    assert rows(f"{heading}: gait is unsteady.") == []
    assert rows(f"{heading} of the gait, it was unsteady.") == ["gait abnormal unsteady"]


def test_follow_up_in_front_of_everything_names_the_visit(reading):
    """It was a plan, and took the findings behind it out of the examination; elsewhere it is one."""
    said = reading("Follow-up. Knee jerk right two plus. Gait normal.")
    assert [finding.item for finding in said.findings] == ["reflex_patellar", "gait"]
    assert not [one for one in said.remarks if one.kind is RemarkKind.PLAN]
    for text in ("Follow-up: MRI of the brain. Gait normal.", "Gait normal. Follow up. Scan of the head in two weeks."):
        said = reading(text)
        assert [finding.item for finding in said.findings] == ["gait"]
        assert [one.kind for one in said.remarks] == [RemarkKind.PLAN]
