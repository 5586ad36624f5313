"""Pages in a real browser: wide and narrow, light and dark, printed, and without any request."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from by_hand import DEMOS

from dictate.grammar import Grammar
from dictate.notes import note_html
from dictate.pipeline import examine

NAMES = ("clinic-examination", "postural-series", "stroke-corrections", "noisy-queries")


@pytest.fixture(scope="module")
def pages(grammar: Grammar, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The notes of the demonstration texts."""
    folder = tmp_path_factory.mktemp("pages")
    made = {}
    for name in NAMES:
        made[name] = folder / f"{name}.html"
        exam = examine([DEMOS / f"{name}.txt"], engine=None, grammar=grammar)
        made[name].write_text(note_html(exam, grammar), encoding="utf-8")
    return made


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("width", [1280, 400])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_page_fits_and_asks_for_nothing(
    name: str, width: int, scheme: str, browser: Any, pages: dict[str, Path]
) -> None:
    """No sideways scrolling, no complaint of the browser, no request, and enough contrast."""
    page = browser.new_page(viewport={"width": width, "height": 900}, color_scheme=scheme)
    asked: list[str] = []
    said: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: said.append(message.text))
    page.goto(pages[name].as_uri())
    assert asked == [pages[name].as_uri()]
    assert said == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    paper, ink = page.evaluate(
        "[getComputedStyle(document.body).backgroundColor, getComputedStyle(document.body).color]"
    )
    assert contrast(paper, ink) >= 7
    page.close()


def test_link_of_the_summary_leads_to_its_finding(browser: Any, pages: dict[str, Path]) -> None:
    """A click shows the place."""
    page = browser.new_page(viewport={"width": 400, "height": 700})
    page.goto(pages["stroke-corrections"].as_uri())
    link = page.locator(".standout a").last
    link.click()
    target = page.locator(":target")
    assert target.inner_text() == link.inner_text()
    box = target.bounding_box()
    assert 0 <= box["y"] <= 700
    page.close()


def test_page_prints(browser: Any, pages: dict[str, Path]) -> None:
    """As PDF, on white whatever the screen shows."""
    page = browser.new_page(color_scheme="dark")
    page.goto(pages["postural-series"].as_uri())
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    assert page.pdf(format="A4").startswith(b"%PDF-")
    page.close()


def contrast(one: str, other: str) -> float:
    """Contrast of two colours. Source: WCAG 2.1, contrast ratio (7 for AAA)."""

    def light(colour: str) -> float:
        parts = [int(part) / 255 for part in colour.strip("rgb()").split(",")]
        linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    bright, dark = sorted((light(one), light(other)), reverse=True)
    return (bright + 0.05) / (dark + 0.05)
