"""The page in a real browser: settled by keyboard alone, heard, corrected, added to, taken back, copied."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import wave
from collections.abc import Callable, Iterator
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from by_hand import DEMOS
from journeys.browsing import AXE, OTHER_VIEWS, VIEWS, Views, look_at, pressed, settle_all, stored

from dictate.cli.files import write_files
from dictate.grammar import Grammar
from dictate.pipeline import examine_transcript
from dictate.reading import transcript_of_text
from dictate.review import in_order
from dictate.review.shelf import FileShelf
from dictate.review.sitting import Sitting

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.enable_socket

Opened = Callable[..., str]
Serve = Callable[[Sitting], str]


@pytest.fixture(scope="module")
def noisy(heard: Callable[[str], Path]) -> Path:
    """The examination of the demonstration that holds a doubt of nearly every kind, heard from its recording."""
    return heard("noisy-queries") / "noisy-queries.exam.json"


@pytest.fixture
def path(noisy: Path, tmp_path: Path) -> Path:
    """A copy of it, to be reviewed."""
    return Path(shutil.copy(noisy, tmp_path / "visit.exam.json"))


@pytest.fixture
def address(path: Path, served: Serve, grammar: Grammar) -> str:
    """Where a review of the copy is served, by this process."""
    return served(sitting_over(path, grammar))


def sitting_over(path: Path, grammar: Grammar) -> Sitting:
    """What `dictate review` opens."""
    return Sitting(
        FileShelf(path, grammar, write=write_files, recordings=[DEMOS]), grammar, who="A", own_folder=path.parent
    )


@pytest.fixture
def program(tmp_path: Path) -> Iterator[Opened]:
    """Start `dictate review` as people do; returns the address it tells."""
    running: list[subprocess.Popen[str]] = []

    def start(*arguments: str) -> str:
        program = Path(sys.executable).with_name("dictate")
        env = {**os.environ, "DICTATE_GRAMMAR": str(tmp_path / "own")}
        command = [str(program), "review", *arguments, "--no-open"]
        process = subprocess.Popen(command, stderr=subprocess.PIPE, text=True, env=env, cwd=tmp_path)
        running.append(process)
        assert process.stderr
        told = iter(process.stderr.readline, "")  # sound that another test left behind is told first
        found = next(filter(None, (re.search(r"http://127\.0\.0\.1:\d+/open\?token=\S+", line) for line in told)), None)
        assert found
        return found.group()

    yield start
    for process in running:
        process.terminate()
        process.communicate(timeout=30)


def test_every_query_by_keyboard_alone(program: Opened, path: Path, page: Page) -> None:
    """A suggestion taken is one key; what has none is typed or passed over. The file holds all of it at the end."""
    asked = stored(path)
    page.goto(program(str(path), "--recording", str(DEMOS)))
    settle_all(page)
    assert page.locator("h1").inner_text() == "No question is open"
    exam = stored(path)
    assert not exam.open_queries
    assert len(exam.decisions) == len(asked.open_queries)
    assert all(decision.who and decision.at for decision in exam.decisions)
    musts = [asked.queries[at].severity for at in in_order(asked)]
    assert musts == sorted(musts, key=lambda severity: severity != "must")


def test_answer_is_read_out_and_tab_goes_on_from_there(address: str, page: Page) -> None:
    """A screen reader is led to what came of the answer, and the keyboard is not thrown back to the top."""
    page.goto(address)
    assert page.evaluate("document.activeElement === document.body")
    pressed(page, "1")
    assert page.evaluate("document.activeElement.id") == "said"
    assert page.evaluate("document.activeElement.innerText").startswith("Now: ")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.closest('article.question') !== null")
    pressed(page, "1")


def test_focus_is_not_taken_from_who_was_quicker(address: str, page: Page) -> None:
    """Somebody who is typing before the script has come goes on typing."""
    page.goto(address)
    page.route("**/review.js", lambda route: (page.locator("#typed").focus(), route.continue_()))
    pressed(page, "1")
    page.wait_for_function("document.body.dataset.revision === '1' && typeof tell === 'function'")
    assert page.evaluate("document.activeElement.id") == "typed"


def test_everything_is_taken_back_by_a_second_step_only(address: str, path: Path, page: Page) -> None:
    """One key pressed by mistake takes no more than one answer."""
    page.goto(address)
    before = stored(path)
    pressed(page, "1")
    pressed(page, "1")
    page.locator("summary", has_text="Undo everything (2)").focus()
    assert not page.get_by_role("button", name="Take all 2 back").is_visible()
    page.keyboard.press("Enter")
    assert len(stored(path).decisions) == 2
    page.keyboard.press("Tab")
    pressed(page, "Enter")
    assert stored(path).findings == before.findings
    assert not stored(path).decisions


def test_clip_is_heard_by_one_key(address: str, path: Path, page: Page) -> None:
    """The bytes of that very span are served, and the browser takes them for sound."""
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


def test_side_is_corrected_finding_added_and_both_taken_back(address: str, path: Path, page: Page) -> None:
    """On the whole note: reached by keyboard, typed, shown, undone."""
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


def test_note_is_copied_with_its_draft_line(address: str, path: Path, page: Page) -> None:
    """One key; the clipboard holds plain text with its marks."""
    page.goto(address)
    page.keyboard.press("c")
    page.wait_for_selector("#said.done")
    copied = page.evaluate("navigator.clipboard.readText()")
    assert re.match(r"DRAFT, not signed, \d+ queries open\n", copied)
    assert "Ankle jerk: right 7+ [?" in copied


def test_keys_do_nothing_while_typing_or_when_turned_off(address: str, path: Path, page: Page) -> None:
    """A letter in a phrase is a letter; and single keys can be turned off for good."""
    page.goto(address)
    page.keyboard.press("t")
    page.keyboard.type("1xrlu")
    assert page.locator("#typed").input_value() == "1xrlu"
    page.keyboard.press("Escape")
    switch = page.get_by_label("Single keys answer")
    switch.press("Space")  # no click: the page still closes up where the field was
    assert not switch.is_checked()
    page.locator("h1").click()
    page.keyboard.press("1")
    page.reload()
    page.keyboard.press("1")
    page.wait_for_timeout(300)
    assert stored(path).decisions == ()


def test_a_program_that_has_ended_is_told(address: str, path: Path, page: Page) -> None:
    """Behind a page that still stands: what is typed is not lost in silence, and nothing says it was copied."""
    page.goto(address)
    page.evaluate("() => { window.fetch = () => Promise.reject(new TypeError('Failed to fetch')); }")
    page.keyboard.press("t")
    page.keyboard.type("142/86")
    page.wait_for_selector("text=The program behind this page has ended")
    assert page.locator("#typed").input_value() == "142/86"
    page.keyboard.press("Escape")
    page.keyboard.press("c")
    page.wait_for_selector("#said.refusal >> text=start it again; all that was answered is kept")
    assert stored(path).decisions == ()


def test_a_screen_reader_tells_the_key_from_the_answer(address: str, page: Page) -> None:
    """A key 1 for an answer 2 is not read as twelve; one heading of the first rank, and named parts."""
    page.goto(address)
    seen = page.locator("body").aria_snapshot()
    names = re.findall(r"button [\"'](.*)[\"']", seen)
    answers = [name for name in names if name.startswith("key ")]
    assert answers
    assert [name.partition(":")[0].strip() for name in answers] == [f"key {n}" for n in range(1, len(answers) + 1)]
    assert seen.count("[level=1]") == 1
    for part in ("Words it is about", "In the note now", "Answers", "Other answers"):
        assert f'region "{part}"' in seen


def test_second_window_of_the_program_sees_that_the_record_moved_on(
    address: str, path: Path, grammar: Grammar, served: Serve, page: Page
) -> None:
    """Two servers on one file: the second keeps its hands off."""
    page.goto(served(sitting_over(path, grammar)))
    other = page.context.new_page()
    other.goto(address)
    pressed(other, "1")
    page.keyboard.press("1")
    page.wait_for_selector("text=The record moved on")
    assert len(stored(path).decisions) == 1
    look_at(page, "moved", VIEWS, path.parent)
    pressed(page, "1")
    assert page.locator("h1").inner_text() == other.locator("h1").inner_text()
    pressed(page, "1")
    other.reload()
    assert other.locator("h1").inner_text() == "The record moved on"
    assert len(stored(path).decisions) == 2


def test_address_works_once_and_for_one_browser(address: str, page: Page, browser: Browser) -> None:
    """Somebody who reads it over a shoulder comes too late."""
    page.goto(address)
    stranger = browser.new_context().new_page()
    for path in (address, address.split("/open")[0] + "/", address.split("/open")[0] + "/note"):
        reply = stranger.goto(path)
        assert reply is not None
        assert reply.status == 403
    stranger.context.close()


def test_script_in_a_dictation_stays_words(served: Serve, grammar: Grammar, tmp_path: Path, page: Page) -> None:
    """Nothing of it runs, on any page."""
    words = "Gait normal. Wug <img src=x onerror=document.title='run'> <script>document.title='run'</script> blicket."
    exam = examine_transcript(transcript_of_text(words), grammar=grammar, patient="<b onclick=alert(1)>P</b>")
    shelf = FileShelf(tmp_path / "visit.exam.json", grammar, write=write_files, fresh=exam)
    address = served(Sitting(shelf, grammar))
    page.goto(address)
    for path in ("/", "/note"):
        page.goto(address.split("/open")[0] + path)
        assert "onerror" in page.locator("main").inner_text()
        assert page.title().endswith("· dictate")
        assert page.locator("main img, main script, .patient b").count() == 0


@pytest.mark.parametrize("views", [VIEWS, pytest.param(OTHER_VIEWS, marks=pytest.mark.slow)])
def test_pages_fit_and_pass_the_accessibility_rules(address: str, page: Page, tmp_path: Path, views: Views) -> None:
    """Nothing runs over the side, the reference stays on screen, and axe-core finds nothing where it is installed."""
    page.goto(address)
    for name, path in {"question": "/", "note": "/note", "finding": "/finding/9", "read-so": "/read-so"}.items():
        page.goto(address.split("/open")[0] + path)
        look_at(page, name, views, tmp_path)


def test_axe_is_run_where_it_is_installed() -> None:
    """The rules were not skipped without saying so."""
    if not os.environ.get(AXE):
        pytest.skip(f"axe-core is not installed: npm install axe-core, and name its axe.min.js in {AXE}")
    assert Path(os.environ[AXE]).is_file()
