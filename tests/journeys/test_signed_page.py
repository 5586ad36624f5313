"""A saved record in a real browser: settled, signed, read, added to, withdrawn."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from by_hand import DEMOS
from journeys.browsing import OTHER_VIEWS, VIEWS, Views, look_at, settle_all
from records.visits import doubtful, visit

from dictate.cli.opening import examination_in
from dictate.grammar import Grammar
from dictate.model import Examination, Severity
from dictate.notes import write_note
from dictate.records import Records, open_records
from dictate.review.kept import RecordShelf
from dictate.review.sitting import Sitting

if TYPE_CHECKING:
    from playwright.sync_api import Page

PROGRAM = Path(sys.executable).with_name("dictate")
Serve = Callable[[Sitting], str]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Records of their own."""
    return tmp_path / "records"


@pytest.fixture
def records(folder: Path) -> Iterator[Records]:
    """Opened as `dictate review` does, for as long as the page is served."""
    with open_records(folder) as one:
        yield one


@pytest.fixture
def noisy(heard: Callable[[str], Path]) -> Examination:
    """The demonstration that holds a doubt of nearly every kind, with a reference."""
    exam = examination_in(heard("noisy-queries") / "noisy-queries.exam.json")
    return exam.model_copy(update={"patient": "P-1"})


def typed(page: Page, label: str, words: str) -> None:
    """Go to a field by keyboard and type into it."""
    page.get_by_label(label, exact=True).first.focus()
    page.keyboard.type(words)


@pytest.mark.enable_socket
@pytest.mark.parametrize("views", [VIEWS, pytest.param(OTHER_VIEWS, marks=pytest.mark.slow)])
def test_saved_record_from_review_to_withdrawal(
    records: Records, folder: Path, noisy: Examination, grammar: Grammar, served: Serve, page: Page, tmp_path: Path,
    views: Views,
) -> None:  # fmt: skip
    """By keyboard alone. What the page shows is what the records hold; after signing nothing of it can be edited."""

    def seen(name: str) -> None:
        look_at(page, name, views, tmp_path)

    audio = [DEMOS / "noisy-queries.flac"]
    key = records.save(noisy, who="A", why="dictated", audio=audio, keep="until-signed").key
    page.goto(served(Sitting(RecordShelf(records, key, grammar, account="A"), grammar, who="A. Examiner")))
    with page.expect_response(lambda reply: "/clip" in reply.url) as clip:
        page.keyboard.press("h")
    assert clip.value.status in (200, 206)
    settle_all(page)
    assert records.open(key).exam.open_queries == ()
    seen("settled")
    page.get_by_label("Your name").focus()
    page.keyboard.press("Control+A")
    page.keyboard.press("Delete")
    page.keyboard.press("Enter")
    page.wait_for_selector("#said.refusal >> text=your name is missing")
    seen("refused")
    typed(page, "Your name", "C. Trainee")
    typed(page, "Who countersigns, if anybody", "A. Examiner")
    page.keyboard.press("Escape")
    page.keyboard.press("s")
    page.wait_for_selector("pre.signed >> text=Signed by C. Trainee")

    page.reload()
    signed = records.open(key)
    assert (signed.state, signed.exam.countersigned_by, signed.sounds) == ("signed", "A. Examiner", ())
    assert page.locator("pre.signed").text_content() == signed.note
    assert page.get_by_role("button", name="Undo").count() == page.locator("main a").count() == 0
    seen("signed")

    typed(page, "What to add", "Jaw jerk normal.\nGag reflex normal.")
    typed(page, "Reason", "forgotten")
    page.keyboard.press("Enter")
    page.wait_for_selector("pre.signed >> text=Jaw jerk normal.")
    seen("amended")
    page.locator("#withdraw-reason").focus()
    page.keyboard.type("another patient's")
    page.keyboard.press("Enter")
    page.wait_for_selector("text=WITHDRAWN")
    seen("withdrawn")
    assert page.locator("form").count() == 0
    one = records.open(key)
    assert records.verify() == []
    added = [(a.by, a.why, a.text) for a in one.addenda]
    assert (one.state, added) == ("withdrawn", [("A. Examiner", "forgotten", "Jaw jerk normal.\nGag reflex normal.")])
    assert page.locator("pre.signed").text_content() == one.note


@pytest.mark.enable_socket
def test_trainees_note_is_countersigned(
    records: Records, grammar: Grammar, served: Serve, page: Page, tmp_path: Path
) -> None:
    """By keyboard alone: refused without a name and under the trainee's own, then taken once, and the form is gone."""
    views = (*VIEWS, *OTHER_VIEWS)
    key = records.save(visit(), who="A", why="dictated").key
    records.sign(key, by="C. Trainee", note=lambda exam: write_note(exam, grammar), base=1)
    page.goto(served(Sitting(RecordShelf(records, key, grammar, account="A"), grammar, who="A. Examiner")))
    look_at(page, "to-countersign", views, tmp_path)
    for name, said in (("", "name is missing"), ("C. Trainee", "somebody else")):
        typed(page, "Name of who countersigns", name)
        page.keyboard.press("Enter")
        page.wait_for_selector(f"#said.refusal >> text={said}")
        assert page.get_by_label("Name of who countersigns").input_value() == name
    look_at(page, "not-countersigned", views, tmp_path)
    page.get_by_label("Name of who countersigns").focus()
    page.keyboard.press("Control+A")
    page.keyboard.type("B. Examiner")
    page.keyboard.press("Enter")
    page.wait_for_selector("pre.signed >> text=B. Examiner")
    page.reload()
    assert page.get_by_label("Name of who countersigns").count() == 0
    assert "countersigned by B. Examiner" in page.locator(".state").inner_text()
    look_at(page, "countersigned", views, tmp_path)
    one = records.open(key)
    assert (one.exam.signed_by, one.exam.countersigned_by) == ("C. Trainee", "B. Examiner")
    assert page.locator("pre.signed").text_content() == one.note
    assert records.verify() == []


def test_looks_are_passed_over_by_enter_in_a_terminal(folder: Path, tmp_path: Path) -> None:
    """`dictate sign` asks once for each."""
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
    for number in (1, 2):
        child.expect(rf"look {number} of 2: doubt {number}\?")
        child.expect("enter: passed over")
        child.send("\r")
    child.expect(f"signed: record {key}")
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0
    with open_records(folder) as records:
        assert [records.open(one).state for one in (key, other)] == ["signed", "draft"]
        assert [decision.answer for decision in records.open(key).exam.decisions] == ["passed over"] * 2
