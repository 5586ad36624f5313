"""What the journeys in a browser share: keys, the files behind the page, the rules of accessibility, pictures."""

from __future__ import annotations

import json
import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from dictate.model import Examination

if TYPE_CHECKING:
    from playwright.sync_api import Page

AXE = "DICTATE_AXE"  # names axe.min.js of the npm package axe-core
SHOTS = "DICTATE_SHOTS"  # names a folder that keeps what the page looked like
Views = Sequence[tuple[int, Literal["light", "dark"]]]
VIEWS: Views = ((1280, "light"), (400, "dark"))
OTHER_VIEWS: Views = ((1280, "dark"), (400, "light"))
WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]


def stored(path: Path) -> Examination:
    """What the file holds now."""
    return Examination.model_validate_json(path.read_bytes())


def pressed(page: Page, key: str) -> None:
    """Press one key that answers, and wait for the next page."""
    before = page.locator("body").get_attribute("data-revision")
    page.keyboard.press(key)
    page.wait_for_function("before => document.body?.dataset.revision !== before", arg=before)
    page.wait_for_load_state()  # a key pressed before the script listens is a key lost


def settle_all(page: Page) -> None:
    """Answer every question by keyboard alone: the first suggestion, else pass over, else type a grade."""
    while page.locator('.rank:text-matches("^To ")').count():
        if page.locator('[data-key="1"]').count():
            pressed(page, "1")
        elif page.locator('[data-key="p"]').count():
            pressed(page, "p")
        else:
            assert "which one?" in page.locator("h1").inner_text()
            page.keyboard.press("t")
            page.keyboard.type("2+")
            page.wait_for_selector(".typing .comes")
            pressed(page, "Enter")


REFERENCE_ON_SCREEN = """() => {
    const top = document.querySelector(".patient").getBoundingClientRect().top
    return 0 <= top && top < 100
}"""


def look_at(page: Page, name: str, views: Views, folder: Path) -> None:
    """Nothing runs over the side, the reference stays on screen, axe-core finds nothing; a picture is kept."""
    for width, scheme in views:
        page.set_viewport_size({"width": width, "height": 800})
        page.emulate_media(color_scheme=scheme)
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        page.evaluate("window.scrollTo(0, document.body.scrollHeight)")
        page.wait_for_function(REFERENCE_ON_SCREEN)  # where it sticks is worked out a frame after the scrolling
        page.evaluate("window.scrollTo(0, 0)")
        page.screenshot(path=Path(os.environ.get(SHOTS, folder)) / f"{name}-{width}-{scheme}.png", full_page=True)
        faults = _axe(page)
        assert not faults, json.dumps(faults, indent=1)


def _axe(page: Page) -> list[dict[str, Any]]:
    """What axe-core has to say against the page; nothing where it is not installed."""
    named = os.environ.get(AXE, "")
    if not named:
        return []
    if not page.evaluate("'axe' in window"):
        page.evaluate(Path(named).read_text(encoding="utf-8"))
    run = "async tags => (await axe.run({runOnly: tags})).violations"
    return [
        {"rule": one["id"], "impact": one["impact"], "where": [node["html"] for node in one["nodes"]]}
        for one in page.evaluate(run, WCAG)
    ]
