"""What the page shows and what its forms do."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from typing import Any

import httpx
import pytest
from by_hand import DEMOS
from starlette.testclient import TestClient

from dictate.errors import Damaged
from dictate.model import Action, Decision
from dictate.review.server import door_to
from dictate.review.sitting import Sitting

PORT, TOKEN = 8766, "the-token"
HERE = f"http://127.0.0.1:{PORT}"
Open = Callable[..., "Browser"]


class Browser:
    """A browser that opened the address of a sitting."""

    def __init__(self, sitting: Sitting) -> None:
        self.sitting = sitting
        self.client = TestClient(door_to(sitting, port=PORT, token=TOKEN), base_url=HERE)
        self.client.get("/open", params={"token": TOKEN})

    def get(self, path: str) -> httpx.Response:
        """One page."""
        return self.client.get(path)

    def post(self, path: str, **fields: Any) -> httpx.Response:
        """One form, sent from the page."""
        fields.setdefault("revision", self.sitting.revision)
        return self.client.post(path, data=fields, headers={"origin": HERE})


@pytest.fixture
def browse(sitting_of: Callable[..., Sitting]) -> Open:
    """Text → a browser."""
    return lambda text, **more: Browser(sitting_of(text, **more))


def test_question_with_words_line_and_keys(browse: Open) -> None:
    """Everything that is needed to answer is on one page, the patient's reference first."""
    text = browse("Biceps reflex two plus. Gait normal.", patient="P-17", heard=True).get("/").text
    for piece in (
        "<strong>P-17</strong>", "DRAFT", "1 to settle", "Biceps reflex 2+: which side?",
        'class="asked">Biceps reflex two plus.',
        "Biceps reflex: left 2+", 'data-key="1"', 'data-key="x"', "the recording is not at hand",
    ):  # fmt: skip
        assert piece in text
    assert text.index('class="asked"') < text.index("<h1>") < text.index("Biceps reflex: left 2+")


@pytest.mark.parametrize("path", ["/", "/note", "/finding/0", "/read-so"])
def test_reference_and_state_are_on_every_page(browse: Open, path: str) -> None:
    """Whose note it is, and that it is a draft."""
    text = browse("Biceps reflex two plus.", patient="P-17").get(path).text
    assert "<strong>P-17</strong>" in text
    assert "DRAFT" in text


def test_answer_settles_and_shows_the_line(browse: Open) -> None:
    """The next page says what the note reads now."""
    browser = browse("Biceps reflex two plus.")
    reply = browser.post("/decide", query=0, answer="left")
    assert "Now: Biceps reflex: left 2+" in reply.text
    assert str(browser.sitting.exam.findings[0].side) == "left"


def test_answer_to_an_older_view_changes_nothing(browse: Open) -> None:
    """Two windows of one sitting: the second is shown the note anew."""
    browser = browse("Biceps reflex two plus.")
    browser.post("/decide", query=0, answer="left")
    reply = browser.post("/decide", revision=0, finding=0, answer="right")
    assert "was changed in another window" in reply.text
    assert str(browser.sitting.exam.findings[0].side) == "left"


@pytest.mark.parametrize("path", ["/", "/note", "/finding/0", "/read-so", "/note.txt"])
def test_record_that_moved_on_is_said(browse: Open, path: str) -> None:
    """Another program changed it; nothing is overwritten, and nothing shown or copied that is true no more."""
    browser = browse("Biceps reflex two plus.")
    shelf = browser.sitting.shelf
    shelf.moved = True  # type: ignore[attr-defined]
    for reply in (browser.get(path), browser.post("/decide", query=0, answer="left")):
        assert reply.status_code == 409
        assert "moved on" in reply.text
        assert "2+" not in reply.text
    shelf.exam = browse("Gait normal.").sitting.exam  # type: ignore[attr-defined]
    shelf.moved = False  # type: ignore[attr-defined]
    assert "Opened again" in browser.post("/again").text
    assert "Gait" in browser.get("/note").text


def test_damage_is_one_line(browse: Open, monkeypatch: pytest.MonkeyPatch) -> None:
    """A record that was changed behind the program's back while it is open is said to be."""
    browser = browse("Gait normal.")

    def damaged() -> bool:
        raise Damaged("record x: was changed behind the program's back")

    monkeypatch.setattr(browser.sitting.shelf, "moved_on", damaged)
    for path in ("/", "/note.txt"):
        reply = browser.get(path)
        assert (reply.status_code, reply.text) == (500, "record x: was changed behind the program's back")


def test_refusal_stays_at_its_question(browse: Open) -> None:
    """With what would be understood."""
    browser = browse("Biceps reflex two plus. Right knee jerk seven plus.")
    reply = browser.post("/decide", query=1, answer="blicket", here="/?q=1")
    assert "is not understood of knee jerk" in reply.text
    assert "Right knee jerk seven plus." in reply.text
    assert "is not understood" not in browser.get("/").text


def test_check_tells_while_typing(browse: Open) -> None:
    """The line, the doubts it would bring, or why it is none; nothing is kept."""
    browser = browse("Right knee jerk seven plus.")
    good = browser.post("/check", query=0, answer="2+").json()
    assert (good["after"], good["raises"]) == (["Knee jerk: right 2+"], [])
    assert "no such grade" in browser.post("/check", query=0, answer="8+").json()["raises"][0]
    assert "not understood" in browser.post("/check", query=0, answer="142/84").json()["refused"]
    assert browser.sitting.exam.decisions == ()


def test_whole_note_reaches_every_value(browse: Open) -> None:
    """Each finding is a link to where it can be changed; open questions stand beside it."""
    browser = browse("Right knee jerk seven plus. Left knee jerk two plus. Gait normal. Wugs are blicket.")
    text = browser.get("/note").text
    assert [f'href="/finding/{at}"' in text for at in range(4)] == [True, True, True, False]
    assert 'aria-label="question about knee jerk right 7+"' in text
    assert "Wugs are blicket." in text
    assert "Right knee jerk seven plus." in browser.get("/finding/0").text
    assert "no finding stands here" in browser.get("/finding/9").text


def test_finding_is_added_under_a_part(browse: Open) -> None:
    """Typed on the whole note, read under the component chosen there."""
    browser = browse("Gait normal.")
    reply = browser.post("/decide", action="add", answer="left biceps four", under="motor", back="/note")
    assert "left 4" in reply.text
    assert reply.url.path == "/note"
    assert browser.sitting.exam.findings[1].component == "motor"


def test_taken_back_from_the_page(browse: Open) -> None:
    """One, or all."""
    browser = browse("Biceps reflex two plus.")
    browser.post("/decide", query=0, answer="left")
    browser.post("/decide", finding=0, answer="3+")
    browser.post("/undo")
    assert len(browser.sitting.exam.decisions) == 1
    browser.post("/undo", all="yes")
    assert browser.sitting.exam.decisions == ()
    assert "nothing to take back" in browser.post("/undo").text


def test_note_is_copied_as_plain_text(browse: Open) -> None:
    """A draft keeps its first line and its marks."""
    browser = browse("Biceps reflex two plus.")
    reply = browser.get("/note.txt")
    assert reply.headers["content-type"].startswith("text/plain")
    assert reply.text.startswith("DRAFT, not signed, 2 queries open\n")
    assert "[?1]" in reply.text


def test_clip_is_served_or_refused(browse: Open) -> None:
    """The stretch asked for, as WAV; nonsense is 400, no sound is 404."""
    browser = browse("Gait normal.", sound=DEMOS / "noisy-queries.flac")
    reply = browser.get("/clip?source=0&start=3.22&end=6.08")
    assert reply.headers["content-type"] == "audio/wav"
    assert reply.content == browser.sitting.clip(0, 3.22, 6.08)
    for query in ("", "?source=0&start=a&end=b", "?source=0&start=nan&end=1", "?source=../x&start=0&end=1"):
        assert browser.get(f"/clip{query}").status_code in (400, 404)
    assert browser.get("/clip?source=1&start=0&end=1").status_code == 404


SCRIPT = '<script>alert(1)</script>" onload="x" {{ 7*7 }}'


def test_script_in_the_words_is_shown_as_words(browse: Open) -> None:
    """In the dictation, in the reference, in what is typed."""
    browser = browse(f"Gait normal. Wug {SCRIPT} blicket.", patient=SCRIPT)
    browser.sitting.decide(Decision(action=Action.ADD, answer=f"gait abnormal {SCRIPT}"))
    for path in ("/", "/note", "/finding/0"):
        text = browser.get(path).text
        assert re.findall(r"<script[^>]*>", text) == ['<script src="/page/review.js" defer>']
        assert "onload=&#34;x&#34;" in text
        assert "49" not in text
    assert "<script>alert" not in browser.post("/decide", finding=0, answer=SCRIPT).text


@pytest.mark.parametrize(
    "path",
    ["/page/../question.html", "/page/..%2fquestion.html", "/page/%2e%2e/frame.html", "/page//etc/passwd",
     "/page/..%5c..%5cserver.py", "/finding/../../etc/passwd", "/question.html"],
)  # fmt: skip
def test_path_tricks_lead_nowhere(browse: Open, path: str) -> None:
    """Only the style and the script lie open."""
    reply = browse("Gait normal.").get(path)
    assert reply.status_code == 404
    assert "root:" not in reply.text


@pytest.mark.parametrize(
    "path", ["/finding/-1", "/finding/x", f"/finding/{'9' * 5000}", "/?q=x", f"/?q={'9' * 5000}", "/?q=\u00b2"]
)
def test_place_that_is_none(browse: Open, path: str) -> None:
    """Another page is shown, nothing breaks."""
    assert browse("Gait normal.").get(path).status_code == 200


def test_form_leads_to_no_other_place(browse: Open) -> None:
    """Where to go next is one of the own pages, after an answer and after a refusal."""
    browser = browse("Biceps reflex two plus.")
    browser.client.follow_redirects = False
    for fields in ({"query": 0, "answer": "left"}, {"query": 9, "answer": "x", "here": "//example.org"}):
        assert browser.post("/decide", back="//example.org", **fields).headers["location"] == "/"


def test_nonsense_is_no_answer(browse: Open) -> None:
    """Unknown actions, no numbers, another kind of body."""
    browser = browse("Biceps reflex two plus.")
    for fields in ({"action": "explode"}, {"query": "x"}, {"finding": "1e9"}, {"under": "knee", "action": "add"}):
        assert browser.post("/decide", **fields).status_code == 400
        assert browser.post("/check", **fields).status_code == 400
    reply = browser.client.post("/decide", json={"answer": "left"}, headers={"origin": HERE})
    assert reply.status_code == 400
    assert browser.sitting.exam.decisions == ()


def test_phrase_is_offered_shown_kept_and_taken_out(browse: Open) -> None:
    """Always read it so: the line is shown before it is written."""
    browser = browse("Nostagmus on left gaze.", heard=True)
    assert "Nothing that can safely be kept." in browser.get("/read-so").text
    reply = browser.post("/decide", query=0, answer="on left gaze present")
    assert "Always read it so for me" in reply.text
    assert "common.yaml: trusted &gt; nystagmus: nostagmus" in browser.get("/read-so").text
    assert browser.sitting.learnt() == ()
    assert "Kept: common.yaml" in browser.post("/learn", back="/read-so").text
    assert "Taken out: common.yaml" in browser.post("/forget", at=0, back="/read-so").text
    assert browser.sitting.learnt() == ()


def test_signing_is_offered_where_the_record_can_be_signed(browse: Open) -> None:
    """When nothing is open, and by the record's own rules."""
    browser = browse("Gait normal.", signing=True)
    assert 'action="/sign"' not in browser.get("/").text
    assert "still open" in browser.post("/sign").text
    browser.post("/decide", query=0, action="seen")
    text = browser.get("/").text
    assert 'action="/sign"' in text
    assert 'name="by" value="Dr A"' in text
    refused = browser.post("/sign", by=" ", countersign="Dr C").text
    assert "your name is missing" in refused
    assert 'name="countersign" value="Dr C"' in refused
    assert "Signed by Dr B, countersigned by Dr C" in browser.post("/sign", by="Dr B", countersign="Dr C").text
    assert 'action="/sign"' not in browse("Gait normal.").get("/").text


@pytest.fixture
def signed(browse: Open) -> Browser:
    """A browser on a note that was just signed there."""
    browser = browse("Gait normal.", signing=True)
    browser.post("/decide", query=0, action="seen")
    browser.post("/sign", by="Dr A")
    return browser


@pytest.mark.parametrize("path", ["/", "/note", "/finding/0", "/read-so", "/?q=0"])
def test_signed_note_is_shown_and_cannot_be_edited(signed: Browser, path: str) -> None:
    """On every address: its text, and forms that add to it; nothing else to send, no value to go to."""
    text = signed.get(path).text
    assert "Signed by Dr A, countersigned by" in text
    assert set(re.findall(r'action="(.*?)"', text)) == {"/countersign", "/amend", "/withdraw"}
    assert set(re.findall(r'href="(.*?)"', text)) == {"/page/review.css", "#main"}
    assert signed.get("/note.txt").text.startswith("Signed by Dr A")
    assert "never changes" in signed.post("/undo").text


def test_signed_note_is_countersigned_once(signed: Browser) -> None:
    """A trainee's note, by a name that is typed; then the form is gone."""
    assert "your name is missing" in signed.post("/countersign", second=" ").text
    assert 'action="/countersign"' not in signed.post("/countersign", second="Dr B").text
    assert "COUNTERSIGNED by Dr B" in signed.get("/").text


def test_signed_note_is_amended_then_withdrawn(signed: Browser) -> None:
    """A refused form keeps what was typed; of a withdrawn note nothing is left to do."""
    refused = signed.post("/amend", by="Dr A", reason=" ", text="Jaw jerk normal.").text
    assert "the reason is missing" in refused
    assert "Jaw jerk normal.</textarea>" in refused
    older = signed.post("/amend", by="Dr A", reason="forgotten", text="Jaw jerk normal.", revision=0).text
    assert "changed in another window" in older
    assert "Jaw jerk normal.</textarea>" in older
    assert "Dr B (forgotten): Jaw jerk normal." in signed.post(
        "/amend", by="Dr B", reason="forgotten", text="Jaw jerk normal."
    ).text  # fmt: skip
    assert "the reason is missing" in signed.post("/withdraw", by="Dr B", reason="").text
    text = signed.post("/withdraw", by="Dr B", reason="another patient's").text
    assert "WITHDRAWN by Dr B (another patient&#39;s)" in text
    assert "<form" not in text
    assert "only a signed note" in signed.post("/withdraw", by="Dr B", reason="again").text


def test_words_typed_for_an_older_view_are_shown_again(browse: Open) -> None:
    """Another window answered meanwhile: they are told, and go into no field, for the question may be another."""
    browser = browse("Biceps reflex two plus. Right knee jerk seven plus.")
    browser.post("/decide", query=0, answer="left")
    text = browser.post("/decide", revision=0, query=1, answer="three plus & more", typed="yes", here="/?q=1").text
    assert "What you typed was not taken: “three plus &amp; more”" in text
    assert 'value="three plus' not in text
    assert "three plus" not in browser.get("/").text


@pytest.mark.parametrize(("place", "of"), [("/?q=1", {"query": 1}), ("/note", {"action": "add"})])
def test_words_that_were_refused_are_in_the_field_again(browse: Open, place: str, of: dict[str, Any]) -> None:
    """To be mended, not typed anew; what was a key is not taken for typed."""
    browser = browse("Biceps reflex two plus. Right knee jerk seven plus.")
    refused = browser.post("/decide", answer="blicket", typed="yes", here=place, **of).text
    assert re.search(r'<input id="typed"[^>]* value="blicket"', refused)
    assert "What you typed" not in refused
    assert 'value="blicket"' not in browser.get(place).text
    assert 'value="blicket"' not in browser.post("/decide", answer="blicket", here=place, **of).text


def test_words_for_a_record_that_moved_on(browse: Open, signed: Browser) -> None:
    """An answer is shown; an addendum stands in its form again when the record was opened anew."""
    browser = browse("Biceps reflex two plus.")
    browser.sitting.shelf.moved = True  # type: ignore[attr-defined]
    assert ">three plus</pre>" in browser.post("/decide", query=0, answer="three plus", typed="yes").text
    fields = {"by": "Dr B", "reason": "forgotten", "text": 'Jaw jerk "normal".\nGag <normal>.'}
    signed.sitting.shelf.moved = True  # type: ignore[attr-defined]
    moved = signed.post("/amend", **fields).text
    kept = {name: html.unescape(words) for name, words in re.findall(r'name="(\w+)" value="([^"]*)"', moved)}
    assert {name: kept[name] for name in fields} == fields
    signed.sitting.shelf.moved = False  # type: ignore[attr-defined]
    again = signed.post("/again", **fields).text
    assert "Gag &lt;normal&gt;.</textarea>" in again
    assert 'value="forgotten"' in again
    assert "Gag" not in signed.get("/").text
