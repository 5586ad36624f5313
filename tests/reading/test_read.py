"""read(): transcript → findings with evidence, and remarks."""

from __future__ import annotations

import pytest
from by_hand import DEMOS, small_grammar

from dictate.model import Transcript, Word
from dictate.reading.read import Reading, lexicon_of, read
from dictate.reading.tokens import transcript_of_text


def test_nothing_said_is_nothing_found(grammar):
    """An empty transcript, or one of white space."""
    assert read(Transcript(), grammar) == Reading((), ())
    assert read(transcript_of_text(" \n "), grammar) == Reading((), ())


def test_the_same_words_give_the_same_reading(grammar):
    """Nothing is kept from one transcript to the next."""
    text = (DEMOS / "stroke-corrections.txt").read_text(encoding="utf-8")
    first = read(transcript_of_text(text), grammar)
    read(transcript_of_text("On the left: Motor. Standing."), grammar)
    assert read(transcript_of_text(text), grammar) == first


def test_evidence_is_where_the_words_stand(grammar):
    """Its quote is that part of the transcript."""
    transcript = transcript_of_text("Tone normal. Left deltoid four minus, biceps five.")
    for finding in read(transcript, grammar).findings:
        for piece in finding.evidence:
            assert transcript.quote(piece.first, piece.last) == piece.quote
    assert read(transcript, grammar).findings[0].quote == "Tone normal."


def test_evidence_has_the_times_of_its_words(grammar):
    """From the start of the first to the end of the last."""
    words = tuple(
        Word(text=text, start_s=float(place), end_s=place + 0.5)
        for place, text in enumerate("Gait normal. Left ptosis.".split())
    )
    first, second = read(Transcript(words=words), grammar).findings
    assert (first.evidence[0].start_s, first.evidence[0].end_s) == (0.0, 1.5)
    assert (second.evidence[0].start_s, second.evidence[0].end_s) == (2.0, 3.5)


def test_the_lexicon_of_a_grammar_is_built_once(grammar):
    """The same phrases serve every transcript; another grammar has its own."""
    assert lexicon_of(grammar) is lexicon_of(grammar)
    assert lexicon_of(small_grammar()) is not lexicon_of(grammar)


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        ("GCS eyes three, verbal four, motor six, total thirteen.", ["3", "4", "6", "13"]),
        ("GCS E3 V4 M6, total 13.", ["3", "4", "6", "13"]),
    ],
)
def test_parts_and_total_are_rows_as_dictated(reading, phrase, findings):
    """Four rows, nothing computed."""
    assert [str(finding.value) for finding in reading(phrase).findings] == findings


@pytest.mark.parametrize(
    "phrase",
    [
        "blood pressure one forty two over eighty four",
        "BLOOD PRESSURE ONE FORTY TWO OVER EIGHTY FOUR",
        "Blood pressure: 142/84.",
        "blood pressure 142 over 84",
        "BP 142/84",
    ],
)
def test_the_way_it_is_written_changes_nothing(rows, phrase):
    """Capitals, punctuation, digits or words."""
    assert rows(phrase) == ["blood_pressure measured 142/84"]


@pytest.mark.parametrize(
    ("phrase", "findings"),
    [
        (
            "Reflexes: 2+ biceps, 3+ patellar, 1+ Achilles bilaterally.",
            ["reflex_biceps measured 2+", "reflex_patellar measured 3+", "reflex_achilles both measured 1+"],
        ),
        (
            "BP 110/70, HR 64 lying.",
            ["blood_pressure supine measured 110/70", "heart_rate supine measured 64"],
        ),
        ("I could not find any nystagmus.", ["nystagmus absent"]),
        ("Left ptosis, gait normal.", ["ptosis left present", "gait normal"]),
        ("Upper limbs: power normal.", ["strength_upper_limb normal"]),
        ("Right biceps jerk is brisker than the left.", ["reflex_biceps right abnormal brisker than the left"]),
        ("No deformity, scoliosis or kyphosis.", ["spine normal"]),
        (
            "Visual fields full except left superior quadrantanopia.",
            ["visual_fields normal", "visual_fields left abnormal superior quadrantanopia"],
        ),
        ("Left triceps jerk three plus no four plus.", ["reflex_triceps left measured 4+"]),
    ],
)
def test_words_stay_with_their_own_neighbours(rows, phrase, findings):
    """Each of these was once read wrongly and said nothing."""
    assert rows(phrase) == findings


def test_trusted_mishearing_is_read_and_not_shown(grammar):
    """What the user told to read so; other mended words are still shown."""
    words = tuple(
        Word(text=text, start_s=float(place), end_s=place + 0.5)
        for place, text in enumerate("Nostagmus on left gays. No carotid brutes.".split())
    )
    common = grammar.common.model_copy(update={"trusted": {"nystagmus": ("nostagmus",), "gaze": ("gays",)}})
    trusting = grammar.model_copy(update={"common": common, "sha256": "trusting"})
    shown = [finding.detail for finding in read(Transcript(words=words), trusting).findings]
    assert shown == [(), ("heard as brutes",)]
    assert read(Transcript(words=words), grammar).findings[0].detail == ("heard as Nostagmus", "heard as gays")
