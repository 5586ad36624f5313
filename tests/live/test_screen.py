"""The screen: few words that say it all, in eighty columns."""

from __future__ import annotations

import io

from rich.console import Console

from dictate.live.screen import PlainScreen, View, WideScreen, at, draw

VIEW = View(
    patient="P-17", state="listening", phrase="Knee jerk three plus.", taken=["Knee jerk: 3+"],
    doubts=["Knee jerk: which side? [must]"], still_open=[f"item {n}" for n in range(12)],
    notices=["the microphone is gone"],
    clock="2:05", level="████····", length_s=187, behind_s=12,
)  # fmt: skip


def drawn(view: View, width: int = 80) -> str:
    """The screen as text."""
    console = Console(width=width, file=io.StringIO(), record=True)
    console.print(draw(view))
    return console.export_text()


def test_everything_is_on_it() -> None:
    """Phrase, taken, doubtful, open, clock, patient, trouble, level; without colour too."""
    text = drawn(VIEW)
    for part in (
        "LISTENING", "3:07", "P-17", "Knee jerk three plus.", "✓  Knee jerk: 3+", "?  Knee jerk: which side?", "item 0",
        "and 4 more", "!  the microphone is gone", "S", "2 : 0 5", "████", "12 s still to be heard",
    ):  # fmt: skip
        assert part in text, part


def test_fits_a_small_terminal() -> None:
    """24 lines of 80 letters."""
    long = VIEW.__class__(**{**VIEW.__dict__, "taken": ["x"] * 30, "doubts": ["y"] * 30, "notices": ["z"] * 30})
    lines = drawn(long).splitlines()
    assert len(lines) <= 24
    assert max(map(len, lines)) <= 80


def test_nothing_said_yet() -> None:
    """It does not look broken."""
    assert "GETTING READY" in drawn(View())


def test_wide_screen_shows_the_view() -> None:
    """And gives the terminal back."""
    out = io.StringIO()
    screen = WideScreen(Console(file=out, width=80))
    screen.line("not shown as a line")
    screen.show(VIEW)
    screen.close()
    assert "Knee jerk: 3+" in out.getvalue()
    assert "not shown as a line" not in out.getvalue()


def test_plain_screen_prints_lines() -> None:
    """Lines only."""
    out = io.StringIO()
    screen = PlainScreen(out)
    screen.line(f"{at(67)} Gait normal.")
    screen.show(VIEW)
    screen.close()
    assert out.getvalue() == "[1:07] Gait normal.\n"
