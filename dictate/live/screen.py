"""What the examiner sees: a screen to be read from two metres, or plain lines."""

from __future__ import annotations

import sys
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Protocol, TextIO

if TYPE_CHECKING:
    from rich.console import Console, RenderableType

MOST_TAKEN = 6
MOST_DOUBTS = 4
MOST_OPEN = 8
MOST_NOTICES = 2


@dataclass
class View:
    """Everything that is shown."""

    patient: str = ""
    state: str = "getting ready"  # listening, paused, hearing the whole again
    phrase: str = ""
    taken: list[str] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)
    still_open: list[str] = field(default_factory=list)
    notices: list[str] = field(default_factory=list)
    clock: str = ""
    level: str = ""
    length_s: float = 0.0
    behind_s: float = 0.0


class Screen(Protocol):
    """Where a session shows itself."""

    def line(self, text: str) -> None:
        """Something happened."""

    def show(self, view: View) -> None:
        """How things stand."""

    def close(self) -> None:
        """No more will come."""


class PlainScreen:
    """Lines only, in the order in which things happen."""

    def __init__(self, out: TextIO | None = None) -> None:
        self._out = out or sys.stderr

    def line(self, text: str) -> None:
        """Print it at once."""
        print(text, file=self._out, flush=True)

    def show(self, view: View) -> None:
        """Lines say it all."""

    def close(self) -> None:
        """Nothing to clear away."""


class WideScreen:
    """The whole terminal, few words, much space; colour never says anything alone."""

    def __init__(self, console: Console | None = None) -> None:
        from rich.console import Console
        from rich.live import Live

        self._console = console or Console(stderr=True)
        self._live: Any = Live(console=self._console, screen=self._console.is_terminal, auto_refresh=False)
        self._live.start()

    def line(self, text: str) -> None:
        """The screen shows it by itself."""

    def show(self, view: View) -> None:
        """Draw anew."""
        self._live.update(draw(view), refresh=True)

    def close(self) -> None:
        """Give the terminal back."""
        self._live.stop()


def draw(view: View) -> RenderableType:
    """One column from top to bottom: state and clock, phrase, taken, doubts, still open, notices, level."""
    from rich.console import Group
    from rich.padding import Padding
    from rich.rule import Rule
    from rich.table import Table
    from rich.text import Text

    head = Table.grid(expand=True)
    head.add_column(ratio=1)
    head.add_column(justify="right")
    left = f"{view.state.upper()}  {_minutes(view.length_s)}" + (f"   {view.patient}" if view.patient else "")
    head.add_row(
        Text(left, style="bold reverse" if view.state == "listening" else "bold"),
        Text(f"STANDING {_wide(view.clock)}" if view.clock else "", style="bold"),
    )
    parts: list[RenderableType] = [head, Text()]
    parts.append(Padding(Text(f"“{view.phrase}”" if view.phrase else "…", style="bold"), (0, 2)))
    parts += [Text(), *(Text(f"  ✓  {each}", style="bold green") for each in view.taken[-MOST_TAKEN:])]
    if view.doubts:
        parts += [Text(), *(Text(f"  ?  {each}", style="bold yellow") for each in view.doubts[-MOST_DOUBTS:])]
    if view.still_open:
        shown = view.still_open[:MOST_OPEN]
        more = len(view.still_open) - len(shown)
        parts += [Text(), Rule("still open"), Text(", ".join(shown) + (f" and {more} more" if more else ""))]
    if view.notices:
        parts += [Text(), *(Text(f"  !  {each}", style="bold red") for each in view.notices[-MOST_NOTICES:])]
    behind = f"   {view.behind_s:.0f} s still to be heard" if view.behind_s > 5 else ""
    parts += [Text(), Text(f"{view.level}{behind}", style="dim")]
    return Group(*parts)


def at(seconds: float) -> str:
    """`[1:07]`"""
    return f"[{_minutes(seconds)}]"


def _minutes(seconds: float) -> str:
    return f"{int(seconds) // 60}:{int(seconds) % 60:02}"


def _wide(text: str) -> str:
    """Spaced out, so that it is read from afar."""
    return " ".join(text)
