"""From recordings or typed transcripts to the examination they describe."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest

from dictate.errors import InputError
from dictate.grammar import Grammar
from dictate.model import Conventions, Examination, Hints, ModelIdentity, Severity, Source, Stretch, Transcript, Word
from dictate.pipeline import FIRST_HINTS, Typed, examine, examine_transcript, hints_of, is_text, join, reconsider

MADE = datetime(2026, 3, 4, 14, 5)


def recording(*texts: str, name: str = "a.flac", created_at: datetime | None = None) -> Transcript:
    """Words heard in one recording."""
    return Transcript(
        words=tuple(Word(text=text, start_s=float(at), end_s=at + 0.5) for at, text in enumerate(texts)),
        sources=(Source(name=name, kind="recording", sha256="0" * 64, created_at=created_at),),
        speech=(Stretch(start_s=0.0, end_s=1.0),),
        untranscribed=(Stretch(start_s=2.0, end_s=3.0),),
        model=ModelIdentity(name="base", sha256="0" * 64),
    )


class Silent:
    """An engine that hears nothing, and keeps what it was told."""

    def __init__(self) -> None:
        self.hints: Hints | None = None

    def hear(self, path: Path, *, hints: Hints, progress: Callable[[float], None] | None = None) -> Transcript:
        """No words."""
        self.hints = hints
        if progress:
            progress(0.5)
        return recording(name=path.name)


def test_joined_words_know_their_source() -> None:
    """The second piece starts a new paragraph and keeps its own times."""
    both = join([recording("knees", "two"), recording("ankles", name="b.flac")])
    assert [(word.text, word.source, word.start_s) for word in both.words] == [
        ("knees", 0, 0.0), ("two", 0, 1.0), ("ankles", 1, 0.0),
    ]  # fmt: skip
    assert both.words[2].lead == "\n\n"
    assert [source.name for source in both.sources] == ["a.flac", "b.flac"]
    assert [stretch.source for stretch in both.speech + both.untranscribed] == [0, 1, 0, 1]
    assert both.model is not None


def test_one_piece_stays_as_it_is() -> None:
    """Joining one transcript changes nothing."""
    assert join([recording("knees")]) == recording("knees")


def test_long_words_come_first_in_the_hints(small: Grammar) -> None:
    """They are misheard most, and the first pass has little room."""
    hints = hints_of(small)
    assert hints.by_component["general"][0] == "orthostatic symptoms"
    assert all(len([t for t in hints.first if t in terms]) <= FIRST_HINTS for terms in hints.by_component.values())
    assert hints.headings["motor"] == ("motor",)


@pytest.mark.parametrize(
    ("source", "text"), [(Path("a.txt"), True), (Path("A.TXT"), True), (Path("a.flac"), False), (Typed("-", "x"), True)]
)
def test_what_is_text(source: Path | Typed, text: bool) -> None:
    """Only `.txt` and typed text need no engine."""
    assert is_text(source) is text


@pytest.mark.parametrize(
    ("content", "told"),
    [(b"", "the text is empty"), (b" \n", "the text is empty"), (b"\xff\xfe\x00k", "is no UTF-8 text")],
)
def test_bad_text(grammar: Grammar, tmp_path: Path, content: bytes, told: str) -> None:
    """One line says what is wrong with it."""
    path = tmp_path / "a.txt"
    path.write_bytes(content)
    with pytest.raises(InputError, match=told):
        examine([path], engine=None, grammar=grammar)


def test_text_that_is_not_there(grammar: Grammar, tmp_path: Path) -> None:
    """A missing file and a folder are told apart."""
    with pytest.raises(InputError, match="no such file"):
        examine([tmp_path / "none.txt"], engine=None, grammar=grammar)
    (tmp_path / "folder.txt").mkdir()
    with pytest.raises(InputError, match="is a folder"):
        examine([tmp_path / "folder.txt"], engine=None, grammar=grammar)


def test_silence_gives_a_query(grammar: Grammar) -> None:
    """A recording without words is no empty normal examination."""
    engine = Silent()
    shares: list[float] = []
    exam = examine([Path("a.flac"), Path("b.flac")], engine=engine, grammar=grammar, progress=shares.append)
    assert not exam.findings
    assert "speech-not-transcribed" in {query.code for query in exam.open_musts}
    assert engine.hints == hints_of(grammar)
    assert shares == [0.25, 0.75]


@pytest.mark.parametrize(
    ("given", "made", "time", "origin"),
    [
        (datetime(2026, 1, 1), MADE, datetime(2026, 1, 1), "option"),
        (None, MADE, MADE, "recording"),
        (None, None, None, ""),
    ],
)
def test_time_of_examination(
    grammar: Grammar, given: datetime | None, made: datetime | None, time: datetime | None, origin: str
) -> None:
    """The option, else the recording's own time, else a query; never the clock."""
    exam = examine_transcript(recording("gait", "normal", created_at=made), grammar=grammar, examined_at=given)
    assert (exam.examined_at, exam.examined_at_from) == (time, origin)
    asked = [query for query in exam.queries if query.code == "time-missing"]
    assert [query.severity for query in asked] == ([] if time else [Severity.LOOK])


def test_same_words_give_the_same_examination(grammar: Grammar) -> None:
    """Reading asks neither clock nor chance."""
    typed = Typed("a", "Reflexes. Biceps two plus on the right.")
    assert examine([typed], engine=None, grammar=grammar) == examine([typed], engine=None, grammar=grammar)


def test_a_dictated_age_serves_the_figures_and_is_no_left_over() -> None:
    """It stands in the examination with its words; the words that say it are not asked about."""
    from dictate.grammar import load_grammar
    from dictate.pipeline import Typed, examine

    grammar = load_grammar()
    rises = "Lying blood pressure 116/72, pulse 66. Standing at five minutes 112/74, pulse 100."

    def heard(words: str, age: float | None = None):
        return examine([Typed("text", f"{words} {rises}")], engine=None, grammar=grammar, age=age)

    exam = heard("Twenty seven year old woman.")
    assert (exam.person.age_years, exam.person.age_from) == (27, "spoken")
    assert exam.remarks == ()
    assert "age 27" in " ".join(figure.text for figure in exam.figures)
    two = heard("Twenty seven year old woman. Seventy two year old man.")
    assert two.person.age_years is None
    (asked,) = [query for query in two.queries if query.code == "values-conflict"]
    assert asked.message == "Age 27, then 72 dictated: which is right?"
    assert asked.suggestions == ("27", "72")
    other = heard("Twenty seven year old woman.", age=72)
    assert [query.code for query in other.queries].count("values-conflict") == 1
    same = heard("Twenty seven year old woman.", age=27)
    assert "values-conflict" not in {query.code for query in same.queries}


def test_a_text_that_is_no_examination_gives_no_finding_and_says_so(grammar: Grammar) -> None:
    """What sounded like findings is asked about at once, not passed over."""
    talk = "We went up the hill on Sunday and the dog ran ahead of us through the wet grass to the old gate. " * 5
    exam = examine([Typed("walk", talk + "There was a tremor in his voice.")], engine=None, grammar=grammar)
    assert exam.findings == ()
    assert [one.message for one in exam.open_musts] == [
        "As a whole this does not read as an examination, 1 finding left out: is it one?"
    ]


def test_reconsidering_changes_nothing_by_itself(grammar: Grammar) -> None:
    """Figures and queries come of the findings alone; the age they need is kept."""
    typed = Typed("a", "Blood pressure lying 140 over 80, standing at one minute 110 over 66. Biceps reflex two plus.")
    exam = examine([typed], engine=None, grammar=grammar, age=70)
    assert exam.person.age_years == 70
    assert exam.figures
    assert reconsider(exam, grammar) == exam
    fewer = reconsider(exam.model_copy(update={"findings": exam.findings[:1]}), grammar)
    assert "side-missing" not in {query.code for query in fewer.queries}
    assert fewer.figures != exam.figures


def test_the_conventions_of_an_examination_hold_when_it_is_computed_again(grammar: Grammar) -> None:
    """They travel in its file; one written before they did has the defaults."""
    typed = Typed("a", "Blood pressure lying 150 over 80, standing at one minute 118 over 70.")
    other = Conventions(supine_hypertension="above 160")
    exam = examine([typed], engine=None, grammar=grammar, conventions=other)
    again = Examination.model_validate_json(exam.model_dump_json())
    assert reconsider(again, grammar).figures == exam.figures
    plain = examine([typed], engine=None, grammar=grammar)
    assert plain.figures != exam.figures
    older = plain.model_dump(mode="json", exclude={"conventions"})
    assert reconsider(Examination.model_validate_json(json.dumps(older)), grammar) == plain
