"""Punctuation spoken as words reads as if it were written."""

from __future__ import annotations

from dictate.grammar import Grammar
from dictate.reading import read, transcript_of_text
from dictate.reading.layout.dictated_marks import Mark, with_dictated_marks
from dictate.reading.tokens import tokenize

PHRASES: dict[Mark, tuple[str, ...]] = {
    ".": ("full stop", "period"),
    ",": ("comma",),
    ":": ("colon",),
    "line": ("new line",),
}


def marked(text: str) -> str:
    return " ".join(token.lower for token in with_dictated_marks(tokenize(transcript_of_text(text)), PHRASES))


def test_spoken_marks_become_marks() -> None:
    said = "Motor colon tone normal comma power five full stop new line reflexes two plus full stop"
    assert marked(said) == "motor : tone normal , power five . . reflexes two plus ."


def test_one_or_two_are_words_of_what_is_told() -> None:
    assert marked("His speech came to a full stop.") == "his speech came to a full stop ."


def test_a_sentence_ends_where_its_stop_was_spoken() -> None:
    tokens = with_dictated_marks(
        tokenize(transcript_of_text("gag present comma palate central full stop new line ok")), PHRASES
    )
    assert [token.lower for token in tokens if token.ends_sentence] == [".", ".", "ok"]


def test_spoken_and_written_punctuation_give_the_same_findings(grammar: Grammar) -> None:
    spoken = (
        "cranial nerves colon fields full full stop eye movements normal comma no nystagmus full stop "
        "romberg not attempted full stop"
    )
    written = "cranial nerves: fields full. eye movements normal, no nystagmus. romberg not attempted."
    one, two = (read(transcript_of_text(text), grammar).findings for text in (spoken, written))
    assert [(f.item, f.status, f.value) for f in one] == [(f.item, f.status, f.value) for f in two]
    assert len(one) == 4
