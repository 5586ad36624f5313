"""Rivals of the words a finding hangs on."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from dictate.grammar import Grammar
from dictate.model import Finding, Source, Transcript, Word
from dictate.reading import Ears, read


def heard(text: str, **unsure: float) -> Transcript:
    """A recording's transcript, two words a second; every word is sure but those named."""
    words = tuple(
        Word(text=part, start_s=at / 2, end_s=at / 2 + 0.4, probability=unsure.get("p" + part.strip(".,"), 0.999))
        for at, part in enumerate(text.split())
    )
    return Transcript(words=words, sources=(Source(name="a.wav", kind="recording", sha256="0" * 64),))


class Scale:
    """Weighs every text alike but for what a test favours, and keeps what it was asked."""

    def __init__(self, **nats: float) -> None:
        self.nats, self.asked = nats, []

    def __call__(self, source: int, start_s: float, end_s: float, texts: Sequence[str]) -> list[float]:
        """Nats for every word of the text that is named."""
        self.asked.append(list(texts))
        return [sum(self.nats.get("p" + word.strip(".,").lower(), 0.0) for word in text.split()) for text in texts]


def found(grammar: Grammar, text: str, scale: Scale, **unsure: float) -> tuple[Finding, ...]:
    """Findings of a recording."""
    return read(heard(text, **unsure), grammar, ears=Ears(scale, lambda word: True)).findings


def test_a_number_keeps_its_rivals_and_their_margins(grammar: Grammar) -> None:
    """The margin is what the written number fits better by."""
    (finding,) = found(grammar, "Pulse 90 regular rate.", Scale(p90=-1.0, p19=-2.5), p90=0.6)[:1]
    margins = {rival.other: rival.margin for rival in finding.rivals if rival.kind == "number"}
    assert margins["19"] == 1.5
    assert all(rival.heard == "90" and rival.word == 1 for rival in finding.rivals)


def test_what_was_heard_for_certain_is_not_weighed(grammar: Grammar) -> None:
    """Most words are sure, and cost nothing."""
    scale = Scale()
    found(grammar, "Pulse 90. Biceps 2 plus right, 3 plus left. No tremor.", scale)
    assert scale.asked == []


@pytest.mark.parametrize(
    ("text", "unsure", "kind", "other"),
    [
        ("Biceps 2 plus right, 3 plus left.", "left", "side", "right"),
        ("Deltoid 4 minus on the left.", "minus", "sign", "plus"),
        ("Tone increased in the left leg.", "increased", "antonym", "decreased"),
        ("No tremor in the right hand.", "No", "negation", ""),
        ("Hip adductors 4 on the left.", "adductors", "twin", "abductors"),
    ],
)
def test_each_kind_has_its_rival(grammar: Grammar, text: str, unsure: str, kind: str, other: str) -> None:
    """Sides, signs, antonyms and negations of a finding are weighed when they were not sure."""
    findings = found(grammar, text, Scale(), **{"p" + unsure: 0.5})
    assert (kind, other) in {(rival.kind, rival.other) for finding in findings for rival in finding.rivals}


def test_words_one_sound_apart_are_weighed_even_when_sure_and_without_the_sentence_before(grammar: Grammar) -> None:
    """The adductors before prime the decoder to write adductors again."""
    scale = Scale()
    findings = found(grammar, "Hip adductors 4 plus on the right. Hip adductors 4 minus on the left.", scale)
    assert [rival.other for finding in findings for rival in finding.rivals] == ["abductors", "abductors"]
    assert [texts[0] for texts in scale.asked] == ["Hip adductors 4 plus", "the right. Hip adductors 4 minus"]


def test_a_lost_no_is_weighed(grammar: Grammar) -> None:
    """A sign that stands as present may have been denied."""
    scale = Scale()
    found(grammar, "Gait normal. Tremor in the right hand.", scale, pTremor=0.5)
    assert any("no Tremor" in text for texts in scale.asked for text in texts)


def test_a_rival_takes_the_capital_of_what_was_heard(grammar: Grammar) -> None:
    """The first word of a sentence is weighed against a first word; the rival is kept as the table has it."""
    scale = Scale()
    findings = found(grammar, "Cranial nerves intact. Judgement normal. Motor bulk normal.", scale, pJudgement=0.4)
    asked = [text for texts in scale.asked for text in texts]
    assert any("Jaw jerk normal." in text for text in asked)
    assert not any("jaw jerk" in text for text in asked)
    assert "jaw jerk" in {rival.other for finding in findings for rival in finding.rivals}


def test_typed_text_is_never_weighed(grammar: Grammar) -> None:
    """Words without a time were not heard."""
    scale = Scale()
    typed = Transcript(
        words=tuple(Word(text=part) for part in "Pulse 90.".split()),
        sources=(Source(name="a.txt", kind="text", sha256="0" * 64),),
    )
    (finding,) = read(typed, grammar, ears=Ears(scale, lambda word: True)).findings
    assert (finding.rivals, scale.asked) == ((), [])


def test_sound_that_is_not_at_hand_leaves_no_rivals(grammar: Grammar) -> None:
    """No answer is no doubt."""
    transcript = heard("Pulse 90.", p90=0.5)
    (finding,) = read(transcript, grammar, ears=Ears(lambda *_: [], lambda word: True)).findings
    assert finding.rivals == ()
