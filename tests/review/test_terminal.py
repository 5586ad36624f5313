"""The same questions in a terminal: keys in, lines out."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from by_hand import DEMOS
from prompt_toolkit.data_structures import Size
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output.vt100 import Vt100_Output

from dictate.cli.files import write_files
from dictate.errors import InputError
from dictate.grammar import Grammar
from dictate.model import Decision, Examination
from dictate.notes import exam_json
from dictate.review.shelf import FileShelf
from dictate.review.sitting import Sitting
from dictate.review.terminal import Terminal, play_clip

Ask = Callable[..., tuple[Sitting, str]]
ESCAPES = re.compile(r"\x1b\[[0-9;?]*[a-zA-Z]")


class Screen:
    """What the terminal shows, as text."""

    encoding = "utf-8"

    def __init__(self) -> None:
        self.text = ""

    def write(self, text: str) -> None:
        """More of it."""
        self.text += text

    def flush(self) -> None:
        """At once."""

    def isatty(self) -> bool:
        """It is one."""
        return True

    def fileno(self) -> int:
        """None of the system's."""
        raise OSError


@pytest.fixture
def ask(sitting_of: Callable[..., Sitting]) -> Ask:
    """Text and keys → the sitting afterwards, and all that was shown; the last key ends it."""

    def run(text: str, keys: str, *, play: Callable[[bytes], None] | None = None, **more: Any) -> tuple[Sitting, str]:
        sitting, screen = sitting_of(text, **more), Screen()
        output = Vt100_Output(screen, lambda: Size(rows=40, columns=200), enable_cpr=False)
        with create_pipe_input() as keyboard:
            keyboard.send_text(keys + "e")
            Terminal(sitting, play=play or (lambda _: None), input=keyboard, output=output).run()
        return sitting, ESCAPES.sub("", screen.text)

    return run


def test_suggestion_is_one_key(ask: Ask) -> None:
    """The side is taken, and the line shown as it reads."""
    sitting, shown = ask("Biceps reflex two plus.", "1", patient="P-17")
    assert str(sitting.exam.findings[0].side) == "left"
    for piece in (
        "Patient: P-17",
        "DRAFT",
        "which side?",
        "[1] left",
        "reads: Biceps reflex: left 2+",
        "»Biceps reflex two plus.«",
    ):
        assert piece in shown


def test_value_is_typed(ask: Ask) -> None:
    """A refused one says what would be understood; the question stays."""
    sitting, shown = ask("Right knee jerk seven plus.", "tblicket\rt2+\r")
    assert str(sitting.exam.findings[0].value) == "2+"
    assert "is not understood of knee jerk" in shown


def test_everything_by_keys(ask: Ask) -> None:
    """Left as said, passed over, next and before, taken back."""
    text = "Biceps reflex two plus. Right knee jerk seven plus. Wugs are blicket."
    sitting, shown = ask(text, "l" + "l" + "p" + "p")
    assert not sitting.exam.open_queries
    assert "No question is open" in shown
    assert "`dictate sign` closes it" in shown
    sitting, _ = ask(text, "nb" + "x" + "u" + "r" + "1" + "U")
    assert sitting.exam.decisions == ()


def test_whole_note_can_be_corrected_and_added_to(ask: Ask) -> None:
    """A number reaches a value, anything else is a phrase."""
    sitting, shown = ask(
        "Left knee jerk two plus. Gait normal.", "w1\r1" + "wright knee jerk three plus\r" + "w9\r" + "w\r"
    )
    assert [(str(one.side), str(one.value)) for one in sitting.exam.findings if one.value] == [
        ("right", "2+"),
        ("right", "3+"),
    ]
    assert "REFLEXES" in shown
    assert "no finding stands here" in shown


def test_whole_note_reads_as_the_note_does(ask: Ask) -> None:
    """Its own headings, plain blanks in front of units, and what was not dictated."""
    _, shown = ask("Gait normal. Blood pressure sitting 140/80.", "w\r")
    for piece in ("COORDINATION AND GAIT", "140/80 mmHg", "MENTAL STATUS\n  nothing dictated"):
        assert piece in shown.replace("\r", "")


def test_value_that_was_heard_can_still_be_corrected(ask: Ask) -> None:
    """Its card stays until an answer; n leaves it, and the review goes on."""
    sitting, shown = ask("Left knee jerk two plus.", "w1\rht3+\r" + "w1\rn")
    assert [str(one.value) for one in sitting.exam.findings] == ["3+"]
    assert "[n] back, unchanged" in shown


def test_clip_is_played_or_said_not_to_be(ask: Ask) -> None:
    """The stretch of the words, wider on request; without sound the questions go on."""
    played: list[bytes] = []
    ask("Biceps reflex two plus.", "hg", heard=True, sound=DEMOS / "noisy-queries.flac", play=played.append)
    near, wide = (len(content) for content in played)
    assert near == 44 + 2 * 16_000 * 2  # header; four words of half a second, two bytes a sample
    assert wide == 44 + 5 * 16_000 * 2  # three seconds behind, none before the start
    _, shown = ask("Biceps reflex two plus.", "h", heard=True)
    assert "the recording is not at hand" in shown
    _, shown = ask("Biceps reflex two plus.", "h")
    assert "There is no sound to these words." in shown


def test_missing_sound_device_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    """Over ssh there is none."""
    monkeypatch.setitem(__import__("sys").modules, "sounddevice", None)
    with pytest.raises(InputError, match="no sound here"):
        play_clip(b"")


def test_note_is_printed(ask: Ask) -> None:
    """As plain text, with its marks."""
    _, shown = ask("Biceps reflex two plus.", "c")
    assert "DRAFT, not signed, 2 queries open" in shown
    assert "[?1]" in shown


def test_phrase_is_kept_on_request(ask: Ask) -> None:
    """Shown, kept, shown as kept, taken out."""
    sitting, shown = ask("Nostagmus on left gaze.", "p" + "mk\r" + "m\r", heard=True)
    assert len(sitting.learnt()) == 1
    assert "common.yaml: trusted > nystagmus: nostagmus" in shown
    sitting, _ = ask("Nostagmus on left gaze.", "p" + "mk\r" + "m1\r", heard=True)
    assert sitting.learnt() == ()


def test_words_never_steer_the_terminal(ask: Ask) -> None:
    """Control characters of a transcript are shown as question marks."""
    _, shown = ask("Gait normal. Wug \x1b[2J\x07 blicket.", "")
    assert "?[2J?" in shown
    assert "\x07" not in shown


@pytest.mark.parametrize("stop", ["\x03", "\x04"])
def test_broken_off_keeps_what_was_decided(ask: Ask, stop: str) -> None:
    """Each answer was saved when it was given."""
    sitting, _ = ask("Biceps reflex two plus. Wugs are blicket.", "1" + stop)
    assert sitting.shelf.open().decisions[0].answer == "left"


@pytest.mark.parametrize(("keys", "ended"), [("2oe", True), ("2e", False)])
def test_a_record_that_moved_on_is_opened_again(
    exam: Callable[..., Examination], grammar: Grammar, tmp_path: Path, keys: str, ended: bool
) -> None:
    """Said before anything else is shown or taken; one key opens it as it stands."""
    path = tmp_path / "visit.exam.json"
    path.write_text(exam_json(exam("Biceps reflex two plus. Wugs are blicket.")), encoding="utf-8")
    one, other = (Sitting(FileShelf(path, grammar, write=write_files), grammar) for _ in range(2))
    other.decide(Decision(query=other.open_places()[0], answer="left"))
    screen = Screen()
    output = Vt100_Output(screen, lambda: Size(rows=40, columns=200), enable_cpr=False)
    with create_pipe_input() as keyboard:
        keyboard.send_text(keys)
        Terminal(one, input=keyboard, output=output).run()
    shown = ESCAPES.sub("", screen.text)
    assert "was changed by another window or person" in shown
    assert "[o] open it again" in shown
    assert "which side?" not in shown
    assert [decision.answer for decision in one.exam.decisions] == ["left"] * ended
