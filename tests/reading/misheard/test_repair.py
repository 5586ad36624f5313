"""Words that are none, mended towards terms."""

from __future__ import annotations

from collections.abc import Sequence

from reading.misheard.test_margins import heard

from dictate.grammar import Grammar
from dictate.model import RemarkKind
from dictate.reading import Ears, read
from dictate.reading.read import Reading

UNKNOWN = {"tossus", "apexia", "retropeption", "blorf", "carpentry"}


def hear(grammar: Grammar, text: str, *fitting: str, nats: float = 10.0) -> Reading:
    """Read a recording whose sound fits these words as well as what was heard, and others worse by so many nats."""

    def weigh(source: int, start_s: float, end_s: float, texts: Sequence[str]) -> list[float]:
        return [0.0 if text == texts[0] or any(word in text for word in fitting) else -nats for text in texts]

    return read(heard(text), grammar, ears=Ears(weigh, lambda word: word not in UNKNOWN))


def test_a_term_that_sounds_alike_and_fits_is_taken(grammar: Grammar) -> None:
    """What was heard stays with the finding."""
    reading = hear(grammar, "Tossus on the left.", "tosis")
    (finding,) = reading.findings
    assert (finding.item, finding.side, finding.detail) == ("ptosis", "left", ("heard as Tossus",))
    assert finding.quote.startswith("Tossus")


def test_two_terms_that_fit_alike_are_asked(grammar: Grammar) -> None:
    """Neither is taken, both are named."""
    reading = hear(grammar, "No apexia.", "apraxia", "alexia")
    (remark,) = [remark for remark in reading.remarks if remark.kind is RemarkKind.MISHEARD]
    assert {"apraxia", "alexia"} <= set(remark.readings)
    assert not [finding for finding in reading.findings if finding.detail]


def test_a_term_that_the_sound_does_not_bear_out_is_left(grammar: Grammar) -> None:
    """Likeness of spelling is not enough."""
    reading = hear(grammar, "Tossus on the left.", nats=30.0)
    assert not [finding for finding in reading.findings if finding.item == "ptosis"]


def test_two_words_may_be_one_term(grammar: Grammar) -> None:
    """A window holds up to three words."""
    reading = hear(grammar, "Gait normal. Retropeption present.", "etropulsion")
    assert "pull_test" in {finding.item for finding in reading.findings}


def test_english_and_trade_are_not_touched(grammar: Grammar) -> None:
    """Nothing is weighed where every word is known; a strange word like no term stays as it is."""
    asked: list[str] = []

    def weigh(source: int, start_s: float, end_s: float, texts: Sequence[str]) -> list[float]:
        asked.extend(texts)
        return [0.0, *(-50.0 for _ in texts[1:])]

    reading = read(heard("The blorf enjoyed carpentry."), grammar, ears=Ears(weigh, lambda word: word not in UNKNOWN))
    assert reading.findings == ()
    asked.clear()
    read(heard("Gait normal, and he sings."), grammar, ears=Ears(weigh, lambda word: True))
    assert asked == []
