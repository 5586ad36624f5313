"""The page in a real browser: settled by keyboard alone, heard, corrected, added to, taken back, copied."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
import wave
from collections.abc import Callable, Iterator
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from by_hand import DEMOS

from dictate.model import Examination
from dictate.review import in_order

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.enable_socket

BROWSERS = ("chromium", "chromium-browser", "google-chrome")
AXE = "DICTATE_AXE"  # names axe.min.js of the npm package axe-core
WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
SHOTS = "DICTATE_SHOTS"  # names a folder that keeps what the page looked like

Served = Callable[..., "tuple[str, Path]"]


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """The system's Chromium, without a window."""
    found = next(filter(None, map(shutil.which, BROWSERS)), None)
    if found is None:
        pytest.skip("no Chromium on this machine: apt-get install chromium")
    playwright = pytest.importorskip("playwright.sync_api")
    with playwright.sync_playwright() as driver:
        arguments = ["--no-sandbox"] if os.geteuid() == 0 else []
        one = driver.chromium.launch(executable_path=found, args=arguments)
        yield one
        one.close()


@pytest.fixture(scope="module")
def noisy(heard: Callable[[str], Path]) -> Path:
    """The examination of the demonstration that holds a doubt of nearly every kind, heard from its recording."""
    return heard("noisy-queries") / "noisy-queries.exam.json"


@pytest.fixture
def served(noisy: Path, tmp_path: Path) -> Iterator[Served]:
    """Start `dictate review` on a copy of the demonstration; returns the address to open and the file."""
    running: list[subprocess.Popen[str]] = []

    def start(*arguments: str, text: str = "") -> tuple[str, Path]:
        path = tmp_path / "visit.exam.json"
        if text:
            path = tmp_path / "visit.txt"
            path.write_text(text, encoding="utf-8")
        elif not path.exists():
            shutil.copy(noisy, path)
        program = Path(sys.executable).with_name("dictate")
        env = {**os.environ, "DICTATE_GRAMMAR": str(tmp_path / "own")}
        command = [str(program), "review", str(path), "--no-open", "--recording", str(DEMOS), *arguments]
        process = subprocess.Popen(command, stderr=subprocess.PIPE, text=True, env=env, cwd=tmp_path)
        running.append(process)
        assert process.stderr
        found = re.search(r"http://127\.0\.0\.1:\d+/open\?token=\S+", process.stderr.readline())
        assert found
        return found.group(), tmp_path / "visit.exam.json"

    yield start
    for process in running:
        process.terminate()
        process.communicate(timeout=30)


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A window that may write to the clipboard and that fails the test when a script does."""
    context = browser.new_context(permissions=["clipboard-read", "clipboard-write"])
    one = context.new_page()
    faults: list[str] = []
    one.on("pageerror", lambda fault: faults.append(str(fault)))
    one.on("console", lambda line: faults.append(line.text) if line.type == "error" else None)
    yield one
    context.close()
    assert not [fault for fault in faults if "409" not in fault]


def stored(path: Path) -> Examination:
    """What the file holds now."""
    return Examination.model_validate_json(path.read_bytes())


def pressed(page: Page, key: str) -> None:
    """Press one key that answers, and wait for the next page."""
    before = page.locator("body").get_attribute("data-revision")
    page.keyboard.press(key)
    page.wait_for_function("before => document.body?.dataset.revision !== before", arg=before)


def test_every_query_by_keyboard_alone(served: Served, page: Page) -> None:
    """A suggestion taken is one key; what has none is typed or passed over. The file holds all of it at the end."""
    address, path = served()
    page.goto(address)
    asked = stored(path)
    expected = len(asked.open_queries)
    for _ in range(expected):
        query = page.locator("h1").inner_text()
        if page.locator('[data-key="1"]').count():
            pressed(page, "1")
        elif page.locator('[data-key="p"]').count():
            pressed(page, "p")
        else:
            assert "which one?" in query
            page.keyboard.press("t")
            page.keyboard.type("2+")
            page.wait_for_selector(".typing .comes")
            pressed(page, "Enter")
    assert page.locator("h1").inner_text() == "No question is open"
    exam = stored(path)
    assert not exam.open_queries
    assert len(exam.decisions) == expected
    assert all(decision.who and decision.at for decision in exam.decisions)
    musts = [asked.queries[at].severity for at in in_order(asked)]
    assert musts == sorted(musts, key=lambda severity: severity != "must")


def test_clip_is_heard_by_one_key(served: Served, page: Page) -> None:
    """The bytes of that very span are served, and the browser takes them for sound."""
    address, path = served()
    page.goto(address)
    exam = stored(path)
    piece = exam.findings[exam.queries[in_order(exam)[0]].findings[0]].evidence[0]
    assert piece.start_s is not None
    assert piece.end_s is not None
    with page.expect_response(lambda reply: "/clip" in reply.url) as caught:
        page.keyboard.press("h")
    assert caught.value.status in (200, 206)
    body = page.evaluate("async url => [...new Uint8Array(await (await fetch(url)).arrayBuffer())]", caught.value.url)
    with wave.open(BytesIO(bytes(body))) as clip:
        length_s = clip.getnframes() / clip.getframerate()
    assert length_s == pytest.approx(piece.end_s - piece.start_s, abs=0.001)
    page.wait_for_function("() => sound && sound.readyState >= 2 && !sound.error")
    assert page.evaluate("() => sound.duration") == pytest.approx(length_s, abs=0.01)


def test_side_is_corrected_finding_added_and_both_taken_back(served: Served, page: Page) -> None:
    """On the whole note: reached by keyboard, typed, shown, undone."""
    address, path = served()
    page.goto(address)
    page.keyboard.press("w")
    page.wait_for_url("**/note")
    link = page.get_by_role("link", name="right present", exact=False).first
    link.focus()
    page.keyboard.press("Enter")
    page.wait_for_url("**/finding/*")
    page.keyboard.press("t")
    page.keyboard.type("left")
    assert page.locator(".typing .comes").inner_text() == "reads: Pronator drift: left present"
    pressed(page, "Enter")
    drift = next(finding for finding in stored(path).findings if finding.item == "pronator_drift")
    assert (str(drift.side), drift.corrected) == ("left", ("right",))

    page.keyboard.press("a")
    page.keyboard.type("biceps reflex three plus on the right")
    page.wait_for_selector(".typing .comes")
    pressed(page, "Enter")
    assert page.get_by_role("link", name="right 3+").count()
    assert stored(path).findings[-1].quote == "biceps reflex three plus on the right"

    pressed(page, "u")
    pressed(page, "u")
    exam = stored(path)
    assert exam.decisions == ()
    assert "reflex_biceps" not in {finding.item for finding in exam.findings}


def test_note_is_copied_with_its_draft_line(served: Served, page: Page) -> None:
    """One key; the clipboard holds plain text with its marks."""
    address, _ = served()
    page.goto(address)
    page.keyboard.press("c")
    page.wait_for_selector("#said.done")
    copied = page.evaluate("navigator.clipboard.readText()")
    assert re.match(r"DRAFT, not signed, \d+ queries open\n", copied)
    assert "Ankle jerk: right 7+ [?" in copied


def test_keys_do_nothing_while_typing_or_when_turned_off(served: Served, page: Page) -> None:
    """A letter in a phrase is a letter; and single keys can be turned off for good."""
    address, path = served()
    page.goto(address)
    page.keyboard.press("t")
    page.keyboard.type("1xrlu")
    assert page.locator("#typed").input_value() == "1xrlu"
    page.keyboard.press("Escape")
    page.get_by_label("Single keys answer").uncheck()
    page.locator("h1").click()
    page.keyboard.press("1")
    page.reload()
    page.keyboard.press("1")
    page.wait_for_timeout(300)
    assert stored(path).decisions == ()


def test_second_window_of_the_program_sees_that_the_record_moved_on(served: Served, page: Page) -> None:
    """Two programs on one file: the second keeps its hands off."""
    first, path = served()
    second, _ = served()
    page.goto(second)
    other = page.context.new_page()
    other.goto(first)
    pressed(other, "1")
    page.keyboard.press("1")
    page.wait_for_selector("text=The record moved on")
    assert len(stored(path).decisions) == 1


def test_address_works_once_and_for_one_browser(served: Served, page: Page, browser: Browser) -> None:
    """Somebody who reads it over a shoulder comes too late."""
    address, _ = served()
    page.goto(address)
    stranger = browser.new_context().new_page()
    for path in (address, address.split("/open")[0] + "/", address.split("/open")[0] + "/note"):
        reply = stranger.goto(path)
        assert reply is not None
        assert reply.status == 403
    stranger.context.close()


def test_script_in_a_dictation_stays_words(served: Served, page: Page) -> None:
    """Nothing of it runs, on any page."""
    words = "Gait normal. Wug <img src=x onerror=document.title='run'> <script>document.title='run'</script> blicket."
    address, _ = served("--patient", "<b onclick=alert(1)>P</b>", text=words)
    page.goto(address)
    for path in ("/", "/note"):
        page.goto(address.split("/open")[0] + path)
        assert page.title().endswith("· dictate")
        assert page.locator("main img, main script, .patient b").count() == 0


@pytest.mark.parametrize(
    ("width", "scheme"),
    [
        (1280, "light"),
        (400, "dark"),
        pytest.param(1280, "dark", marks=pytest.mark.slow),
        pytest.param(400, "light", marks=pytest.mark.slow),
    ],
)
def test_pages_fit_and_pass_the_accessibility_rules(
    served: Served, browser: Browser, tmp_path: Path, width: int, scheme: Any
) -> None:
    """Nothing runs over the side, the reference stays on screen, and axe-core finds nothing where it is installed."""
    address, _ = served()
    context = browser.new_context(viewport={"width": width, "height": 800}, color_scheme=scheme)
    page = context.new_page()
    page.goto(address)
    folder = Path(os.environ.get(SHOTS, tmp_path))
    for name, path in {"question": "/", "note": "/note", "finding": "/finding/9", "read-so": "/read-so"}.items():
        page.goto(address.split("/open")[0] + path)
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        page.evaluate("window.scrollTo(0, document.body.scrollHeight)")
        box = page.locator(".patient").bounding_box()
        assert box is not None
        assert 0 <= box["y"] < 100
        page.evaluate("window.scrollTo(0, 0)")
        page.screenshot(path=folder / f"{name}-{width}-{scheme}.png", full_page=True)
        faults = _axe(page)
        assert not faults, json.dumps(faults, indent=1)
    context.close()


def _axe(page: Page) -> list[dict[str, Any]]:
    """What axe-core has to say against the page; nothing where it is not installed."""
    named = os.environ.get(AXE, "")
    if not named:
        return []
    page.evaluate(Path(named).read_text(encoding="utf-8"))
    run = "async tags => (await axe.run({runOnly: tags})).violations"
    return [
        {"rule": one["id"], "impact": one["impact"], "where": [node["html"] for node in one["nodes"]]}
        for one in page.evaluate(run, WCAG)
    ]


def test_axe_is_run_where_it_is_installed() -> None:
    """The rules were not skipped without saying so."""
    if not os.environ.get(AXE):
        pytest.skip(f"axe-core is not installed: npm install axe-core, and name its axe.min.js in {AXE}")
    assert Path(os.environ[AXE]).is_file()
