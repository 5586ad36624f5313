"""Keys and typed lines of a terminal."""

from __future__ import annotations

import io
from collections.abc import Callable
from typing import TypeVar

import pytest
from prompt_toolkit.data_structures import Size
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output.vt100 import Vt100_Output

from dictate.review.keyboard import END, Keyboard

Got = TypeVar("Got")


def asked(keys: str, ask: Callable[[Keyboard], Got]) -> tuple[Got, str]:
    """What comes of the keys, and what was shown."""
    shown = io.StringIO()
    output = Vt100_Output(shown, lambda: Size(rows=20, columns=80), enable_cpr=False)
    with create_pipe_input() as pipe:
        pipe.send_text(keys)
        return ask(Keyboard(pipe, output)), shown.getvalue()


def test_only_the_keys_wanted_count() -> None:
    """Others are passed over."""
    assert asked("qx1", lambda keyboard: keyboard.key({"1": "left", "2": "right"}))[0] == "1"


@pytest.mark.parametrize("stop", ["\x03", "\x04"])
def test_breaking_off_ends(stop: str) -> None:
    """A key is the end, a line is empty."""
    assert asked(stop, lambda keyboard: keyboard.key({"1": "left"}))[0] == END
    assert asked(stop, lambda keyboard: keyboard.line("> ", lambda text: ""))[0] == ""


def test_a_line_tells_what_it_would_do() -> None:
    """While it is typed."""
    line, shown = asked("two\r", lambda keyboard: keyboard.line("> ", lambda text: f"reads: {text.upper()}"))
    assert line == "two"
    assert "TWO" in shown.replace("\x1b[0m", "")


def test_what_would_steer_is_not_said() -> None:
    """A blank that keeps words together is a blank, anything else that is no letter a question mark."""
    _, shown = asked("", lambda keyboard: keyboard.say("140/80\N{NO-BREAK SPACE}mmHg", "a\x07b"))
    assert "140/80 mmHg" in shown
    assert "a?b" in shown
