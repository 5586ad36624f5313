"""Words → tokens: what is cut, what stays whole, where a sentence ends."""

from __future__ import annotations

import pytest

from dictate.model import Transcript, Word
from dictate.reading.tokens import evidence, make_doc, tokenize, transcript_of_text


@pytest.mark.parametrize(
    ("phrase", "pieces"),
    [
        ("142/84", ["142", "/", "84"]),
        ("4-/5", ["4", "-", "/", "5"]),
        ("2+", ["2", "+"]),
        ("36.8", ["36.8"]),
        ("wide-based gait", ["wide", "based", "gait"]),
        ("T10 level", ["t10", "level"]),
        ("V2 reduced", ["v2", "reduced"]),
        ("S1 S2", ["s1", "s2"]),
        ("Romberg's sign", ["romberg", "sign"]),
        ("doesn't", ["does", "not"]),
        ("4→2", ["4", "->", "2"]),
        ("4–2", ["4", "-", "2"]),
        ('"supple"', ["supple"]),
        ("E4", ["e", "4"]),
    ],
)
def test_a_word_is_cut_into_letters_numbers_and_signs(cut, phrase, pieces):
    """Letters, numbers and signs are tokens; hyphens between letters, quotation marks and the possessive are none."""
    assert [token.lower for token in cut(phrase)] == pieces


def test_a_token_knows_what_it_is_glued_to(cut):
    """ "2+" is one thing, "2 +" two."""
    assert [token.glued for token in cut("2+")] == [False, True]
    assert [token.glued for token in cut("2 +")] == [False, False]


def test_a_token_keeps_what_stood_there(cut):
    """Matching is in lower case, the words stay as they were."""
    (token,) = cut("PERRL")
    assert (token.text, token.lower) == ("PERRL", "perrl")


@pytest.mark.parametrize(
    ("phrase", "sentences"),
    [
        ("Gait normal. Tone normal.", 2),
        ("Gait normal", 1),
        ("Gait normal? Tone normal!", 2),
        ("Temp. 36.8 and wt. 70 kg.", 1),
        ("Dr. Who", 1),
        ("Biceps ... two plus.", 1),
        ("Gait normal\nTone normal", 2),
        ("Gait normal,\n\ntone normal", 2),
        ("Temperature 36.8, pulse 70", 1),
    ],
)
def test_where_a_sentence_ends(cut, phrase, sentences):
    """At a full stop, a question or exclamation mark, or a line's end; not at an abbreviation or a decimal point."""
    assert sum(token.ends_sentence for token in cut(phrase)) == sentences


def test_a_wrapped_line_goes_on(cut):
    """A long line of punctuated text that goes on in lower case is no end of a sentence."""
    text = (
        "Pinprick and light touch are reduced in both legs in a stocking distribution up to\nthe mid calf. Gait normal."
    )
    assert sum(token.ends_sentence for token in cut(text)) == 2


@pytest.mark.parametrize(("silence_s", "ends"), [(0.3, False), (1.4, False), (1.6, True), (4.0, True)])
def test_a_long_silence_ends_a_sentence(silence_s, ends):
    """Where the recogniser gave no full stop, a silence over a second and a half is one."""
    words = (Word(text="gait", start_s=0.0, end_s=0.5), Word(text="tone", start_s=0.5 + silence_s, end_s=9.0))
    assert tokenize(Transcript(words=words))[0].ends_sentence is ends


def test_another_recording_is_another_sentence():
    """Words of two sources never share a sentence."""
    words = (
        Word(text="gait", start_s=0.0, end_s=0.5, source=0),
        Word(text="tone", start_s=0.6, end_s=0.9, source=1),
    )
    assert tokenize(Transcript(words=words))[0].ends_sentence


def test_a_typed_text_is_kept_to_the_letter():
    """Words with the white space before them give the text back."""
    text = "Gait  normal.\n\n Tone normal."
    transcript = transcript_of_text(text)
    assert "".join(word.lead + word.text for word in transcript.words) == text
    assert [source.kind for source in transcript.sources] == ["text"]
    assert all(word.start_s is None for word in transcript.words)


def test_an_empty_text_has_no_words():
    """Nothing said, nothing there."""
    assert transcript_of_text(" \n").words == ()
    assert tokenize(transcript_of_text("")) == []


def test_evidence_quotes_whole_words_with_their_times():
    """Tokens inside a word are quoted with the whole word, from its start to its end."""
    words = (
        Word(text="Biceps", start_s=1.0, end_s=1.4),
        Word(text="2+,", start_s=1.5, end_s=1.9),
        Word(text="right", start_s=2.0, end_s=2.2),
    )
    transcript = Transcript(words=words)
    tokens = tokenize(transcript)
    piece = evidence(transcript, tokens, 1, 2)
    assert (piece.first, piece.last, piece.quote, piece.start_s, piece.end_s) == (1, 1, "2+,", 1.5, 1.9)


def test_a_doc_knows_the_words_of_its_tokens(cut):
    """Each token of the Doc leads back to its word."""
    doc = make_doc(cut("Biceps 2+ right"))
    assert [token.text for token in doc] == ["biceps", "2", "+", "right"]
    assert [token._.word for token in doc] == [0, 1, 1, 2]
