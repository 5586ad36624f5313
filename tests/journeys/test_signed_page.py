"""A saved record in a real browser: settled, signed, read, added to, withdrawn."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from journeys.test_review_page import browser, page, pressed  # noqa: F401  fixtures
from records.visits import doubtful, visit

from dictate.model import Severity
from dictate.records import open_records

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.enable_socket
PROGRAM = Path(sys.executable).with_name("dictate")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Records of their own."""
    return tmp_path / "records"


@pytest.fixture
def key(folder: Path) -> str:
    """A draft with something to settle."""
    from dictate.grammar import load_grammar
    from dictate.pipeline import examine_transcript
    from dictate.reading import transcript_of_text

    words = transcript_of_text("Biceps reflex two plus. Gait normal.")
    exam = examine_transcript(words, grammar=load_grammar(), patient="P-1")
    with open_records(folder) as records:
        return records.save(exam, who="A", why="dictated").key


@pytest.fixture
def address(folder: Path, key: str, tmp_path: Path) -> Iterator[str]:
    """`dictate review` on it."""
    env = {**os.environ, "DICTATE_GRAMMAR": str(tmp_path / "own"), "DICTATE_RECORDS": str(folder)}
    command = [str(PROGRAM), "review", key, "--no-open", "--who", "A. Examiner"]
    process = subprocess.Popen(command, stderr=subprocess.PIPE, text=True, env=env, cwd=tmp_path)
    assert process.stderr
    found = re.search(r"http://127\.0\.0\.1:\d+/open\?token=\S+", process.stderr.readline())
    assert found
    yield found.group()
    process.terminate()
    process.communicate(timeout=30)


def test_settled_signed_amended_withdrawn(address: str, page: Page, folder: Path, key: str) -> None:  # noqa: F811
    """What the page shows is what the records hold; after signing nothing of it can be edited."""
    page.goto(address)
    while page.locator('[action="/decide"]').count():
        pressed(page, "1" if page.locator('[data-key="1"]').count() else "p")
    assert page.get_by_label("Your name").input_value() == "A. Examiner"
    page.get_by_label("Your name").fill("")
    page.get_by_role("button", name="Sign the note of P-1").click()
    page.wait_for_selector("#said.refusal >> text=your name is missing")
    page.get_by_label("Your name").fill("C. Trainee")
    page.get_by_label("Who countersigns").fill("A. Examiner")
    page.get_by_role("button", name="Sign the note of P-1").click()
    page.wait_for_selector("pre.signed >> text=Signed by C. Trainee")

    page.reload()
    with open_records(folder) as records:
        signed = records.open(key)
    assert (signed.state, signed.exam.countersigned_by) == ("signed", "A. Examiner")
    assert page.locator("pre.signed").text_content() == signed.note
    assert page.get_by_role("button", name="Undo").count() == page.locator("main a").count() == 0

    page.get_by_label("What to add").fill("Jaw jerk normal.")
    page.locator("#amend-reason").fill("forgotten")
    page.get_by_role("button", name="Add to the note of P-1").click()
    page.wait_for_selector("pre.signed >> text=Jaw jerk normal.")
    page.locator("#withdraw-reason").fill("another patient's")
    page.get_by_role("button", name="Withdraw the note of P-1").click()
    page.wait_for_selector("text=WITHDRAWN")
    assert page.locator("form").count() == 0
    with open_records(folder) as records:
        one = records.open(key)
        assert records.verify() == []
    added = [(a.by, a.why, a.text) for a in one.addenda]
    assert (one.state, added) == ("withdrawn", [("A. Examiner", "forgotten", "Jaw jerk normal.")])
    assert page.locator("pre.signed").text_content() == one.note


@pytest.mark.parametrize("answer", ["\r", "no\r"])
def test_looks_are_passed_over_by_enter_in_a_terminal(folder: Path, tmp_path: Path, answer: str) -> None:
    """`dictate sign` asks once for each; anything but enter stops, and the draft stays a draft."""
    pexpect = pytest.importorskip("pexpect", reason="pexpect is not installed: pip install pexpect")
    with open_records(folder) as records:
        key = records.save(doubtful(Severity.LOOK, Severity.LOOK), who="A", why="dictated").key
        other = records.save(visit(), who="A", why="dictated").key
    env = {**os.environ, "TERM": "xterm", "DICTATE_GRAMMAR": str(tmp_path / "own"), "DICTATE_RECORDS": str(folder)}
    child = pexpect.spawn(
        str(PROGRAM), ["sign", key, "--by", "A. Examiner"], cwd=tmp_path, env=env, encoding="utf-8", timeout=60,
        dimensions=(40, 160),
    )  # fmt: skip
    child.expect(f"record {key}, patient: P-1")
    child.expect(r"look 1 of 2: doubt 1\?")
    child.expect("enter: passed over")
    child.send("\r")
    child.expect(r"look 2 of 2: doubt 2\?")
    child.expect("enter: passed over")
    child.send(answer)
    child.expect(f"signed: record {key}" if answer == "\r" else "stopped: nothing was changed")
    child.expect(pexpect.EOF)
    child.close()
    with open_records(folder) as records:
        one = records.open(key)
        assert records.open(other).state == "draft"
    assert (one.state, child.exitstatus == 0) == (("signed", True) if answer == "\r" else ("draft", False))
    assert [decision.answer for decision in one.exam.decisions] == (["passed over"] * 2 if answer == "\r" else [])
