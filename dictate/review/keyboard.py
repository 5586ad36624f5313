"""The keyboard and lines of a terminal: one key, one typed line, lines said."""

from __future__ import annotations

import functools
from collections.abc import Callable, Container
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from prompt_toolkit.input import Input
    from prompt_toolkit.output import Output

END = "e"
STOPS = ("c-c", "c-d")
ASIDE = "c-z"


class Keyboard:
    """A terminal that is asked; Ctrl-C and Ctrl-D end what is asked, Ctrl-Z puts the program aside."""

    def __init__(self, input: Input | None = None, output: Output | None = None) -> None:
        """input, output: of prompt_toolkit; None: the terminal the program runs in."""
        self._input, self._output = input, output

    def say(self, *lines: str) -> None:
        """Lines as they are, without what would steer the terminal."""
        from prompt_toolkit import print_formatted_text
        from prompt_toolkit.formatted_text import FormattedText

        text = "\n".join(map(_printable, lines))
        print_formatted_text(FormattedText([("", text)]), output=self._output)

    def key(self, wanted: Container[str]) -> str:
        """One of the keys, or the end."""
        from prompt_toolkit.application import Application
        from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
        from prompt_toolkit.layout import Layout, Window
        from prompt_toolkit.layout.controls import FormattedTextControl

        keys = KeyBindings()

        @keys.add("<any>")
        def pressed(event: KeyPressEvent) -> None:
            if event.data in wanted:
                event.app.exit(result=event.data)

        keys.add(ASIDE)(lambda event: event.app.suspend_to_background())
        for stop in STOPS:
            keys.add(stop)(lambda event: event.app.exit(result=END))
        window = Window(FormattedTextControl("key: "), height=1)
        app: Application[str] = Application(
            Layout(window), key_bindings=keys, input=self._input, output=self._output, erase_when_done=True
        )
        return app.run()

    def line(self, message: str, above: Callable[[str], str]) -> str:
        """A typed line, with what it would do above it; empty when it was broken off."""
        from prompt_toolkit import PromptSession
        from prompt_toolkit.application import get_app

        session: PromptSession[str] = PromptSession(input=self._input, output=self._output, enable_suspend=True)

        @functools.lru_cache(maxsize=1)  # the prompt is drawn several times a key
        def told_of(text: str) -> str:
            return _printable(above(text))

        def asked() -> str:
            told = told_of(get_app().current_buffer.text)
            return f"  {told}\n{message}" if told else message

        try:
            return session.prompt(asked)
        except (EOFError, KeyboardInterrupt):
            return ""


def _printable(text: str) -> str:
    """Words of a dictation never steer the terminal."""
    return "".join(
        letter if letter.isprintable() or letter == "\n" else " " if letter.isspace() else "?" for letter in text
    )
