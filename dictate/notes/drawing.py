"""Pictures as SVG: title and description inside, a table beside, and nothing that only colour tells."""

from __future__ import annotations

from dataclasses import dataclass
from xml.sax.saxutils import escape, quoteattr

from dictate.notes.phrases import STAY, TURNING_ROUND

INK = "currentColor"  # black on paper, light on a dark page
FAINT = "0.35"
FONT = 11
NO_SIGNS = f"\ufffe\uffff{TURNING_ROUND}"  # no characters at all, and what turns the order of others round


@dataclass(frozen=True)
class Picture:
    """A drawing, what it shows in words, and the same as a table."""

    title: str
    description: str
    svg: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def tag(name: str, *children: str, **attributes: str | float) -> str:
    """An element; `stroke_width` becomes `stroke-width`. Children are markup already: text goes through label()."""
    said = "".join(f" {key.replace('_', '-')}={quoteattr(_shown(_short(value)))}" for key, value in attributes.items())
    return f"<{name}{said}/>" if not children else f"<{name}{said}>{''.join(children)}</{name}>"


def label(words: str, x: float, y: float, *, anchor: str = "start", size: float = FONT, weight: str = "normal") -> str:
    """Text at a place, escaped."""
    plain = safe(words.replace(STAY, " "))
    return tag("text", plain, x=x, y=y, text_anchor=anchor, font_size=size, font_weight=weight, fill=INK)


def line(x1: float, y1: float, x2: float, y2: float, *, width: float = 1, dash: str = "", faint: bool = False) -> str:
    """A straight line."""
    more = {"stroke_dasharray": dash} if dash else {}
    return tag(
        "line",
        x1=x1,
        y1=y1,
        x2=x2,
        y2=y2,
        stroke=INK,
        stroke_width=width,
        stroke_opacity=FAINT if faint else "1",
        **more,
    )


def dot(x: float, y: float, *, filled: bool, radius: float = 3.5) -> str:
    """A round mark; hollow ones show what lies behind."""
    return tag("circle", cx=x, cy=y, r=radius, stroke=INK, stroke_width=1.4, fill=INK if filled else "none")


def path(steps: str, *, width: float = 1.5, fill: str = "none", opacity: str = "1", stroke: str = INK) -> str:
    """A free outline."""
    return tag("path", d=steps, stroke=stroke, stroke_width=width, fill=fill, fill_opacity=opacity,
               stroke_linejoin="round", stroke_linecap="round")  # fmt: skip


def drawing(title: str, description: str, width: float, height: float, *parts: str) -> str:
    """The whole picture, as wide as its place and no wider than it was drawn for."""
    head = f"<title>{safe(title)}</title><desc>{safe(description)}</desc>"
    return tag(
        "svg", head, *parts, xmlns="http://www.w3.org/2000/svg", viewBox=f"0 0 {_short(width)} {_short(height)}",
        width=width, height=height, role="img", aria_label=f"{title}. {description}", font_family="sans-serif",
    )  # fmt: skip


def safe(words: str) -> str:
    """Text for a page or a drawing: what markup means is escaped, what XML forbids is left out."""
    return escape(_shown(words))


def _shown(words: str) -> str:
    return "".join(sign for sign in words if (sign >= " " or sign in "\t\n") and sign not in NO_SIGNS)


def _short(value: str | float) -> str:
    return value if isinstance(value, str) else f"{value:.1f}".removesuffix(".0")
