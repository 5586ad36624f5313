"""What each address of the local page answers; a change is answered with where to look next."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from dictate.catalogue import note as note_words
from dictate.errors import DictateError, InputError, MovedOn
from dictate.model import Action, Component
from dictate.notes import note_lines
from dictate.notes.phrases import item_of, title
from dictate.review.door import TooMuch
from dictate.review.effects import values_of
from dictate.review.forms import decision_of, fields_of, leads_to, place_of, typed_in
from dictate.review.passages import AROUND_S, Passage
from dictate.review.shelf import MOVED_ON
from dictate.review.sitting import Sitting
from dictate.review.typed import Refused

if TYPE_CHECKING:
    from starlette.requests import Request
    from starlette.responses import Response

MOVED = "moved.html"


class Pages:
    """The pages of one sitting."""

    def __init__(self, sitting: Sitting, templates: Any) -> None:
        self._sitting, self._templates = sitting, templates
        self._said = ""  # shown once, on the next page
        self._refused = False
        self._typed: dict[str, str] = {}  # in a form that was refused: nobody types it twice

    async def ask(self, request: Request) -> Response:
        """The question asked for, else the most dangerous one that is open."""
        if self._closed():
            return self._shown("signed.html")
        order = self._sitting.open_places()
        if not order:
            return self._shown("done.html", can_teach=self._sitting.can_teach())
        wanted = place_of(request.query_params.get("q", ""))
        at = wanted if wanted in order else order[0]
        place = order.index(at)
        return self._shown(
            "question.html", question=self._sitting.question(at), can_teach=self._sitting.can_teach(),
            after=order[(place + 1) % len(order)], before=order[place - 1],
        )  # fmt: skip

    async def finding(self, request: Request) -> Response:
        """One finding of the note."""
        if self._closed():
            return self._shown("signed.html")
        try:
            question = self._sitting.card(place_of(request.path_params["at"]))
        except Refused as refusal:
            return self._refuse(refusal, "/note")
        return self._shown("question.html", question=question, can_teach=False, after=None, before=None)

    async def note(self, request: Request) -> Response:
        """The whole note, every value in reach."""
        if self._closed():
            return self._shown("signed.html")
        exam, grammar = self._sitting.exam, self._sitting.grammar
        groups = []
        for component, lines in note_lines(exam, grammar).items():
            shown = [(self._label(line), values_of(line, exam, grammar), line.computed) for line in lines]
            groups.append((component, note_words.COMPONENTS[component].capitalize(), shown))
        asked: dict[int, list[int]] = {}
        for query in self._sitting.open_places():
            for at in exam.queries[query].findings:
                asked.setdefault(at, []).append(query)
        remarks = [(r.kind.value.replace("-", " "), r.evidence.quote) for r in exam.remarks]
        return self._shown("note.html", groups=groups, asked=asked, remarks=remarks, draft=self._sitting.note())

    def _label(self, line: Any) -> str:
        """What stands in front of a line's values: the item, or the position of a series."""
        if not line.findings:
            return str(line.text)
        finding, grammar = self._sitting.exam.findings[line.findings[0]], self._sitting.grammar
        item = item_of(grammar, finding.item)
        if line.depth > 1 and item is not None:
            return str(line.text.split(":")[0])
        return title(finding, grammar)

    async def text(self, request: Request) -> Response:
        """The note as plain text."""
        from starlette.responses import PlainTextResponse

        moved = self._sitting.moved_on()  # nobody copies a note that is another by now
        return _plain("The record moved on.", 409) if moved else PlainTextResponse(self._sitting.note())

    async def clip(self, request: Request) -> Response:
        """A stretch of a recording."""
        from starlette.responses import PlainTextResponse, Response

        try:
            source, start_s, end_s = (request.query_params[name] for name in ("source", "start", "end"))
            content = self._sitting.clip(int(source), float(start_s), float(end_s))
        except (KeyError, ValueError):
            return PlainTextResponse("Name source, start and end.", 400)
        except InputError as fault:
            return PlainTextResponse(str(fault), 404)
        return Response(content, media_type="audio/wav")

    async def read_so(self, request: Request) -> Response:
        """Phrases that are always read so: what the last decision offers, and all that were learnt."""
        if self._closed():
            return self._shown("signed.html")
        return self._shown("read_so.html", offered=self._sitting.lessons(), known=self._sitting.learnt())

    async def decide(self, request: Request) -> Response:
        """Carry a decision out."""
        return await self._changed(request, lambda form: self._decide(form))

    def _decide(self, form: dict[str, str]) -> str:
        change = self._sitting.decide(decision_of(form))
        return f"Now: {'; '.join(change.after)}" if change.after else "Settled: the note reads as before."

    async def undo(self, request: Request) -> Response:
        """Take the last decision back, or all."""

        def taken_back(form: dict[str, str]) -> str:
            self._sitting.undo(everything=form.get("all") == "yes")
            return "Taken back."

        return await self._changed(request, taken_back)

    async def learn(self, request: Request) -> Response:
        """Keep the phrases offered."""
        return await self._changed(request, lambda form: f"Kept: {'; '.join(x.line for x in self._sitting.learn())}")

    async def forget(self, request: Request) -> Response:
        """Take a learnt phrase out."""

        def forgotten(form: dict[str, str]) -> str:
            return f"Taken out: {self._sitting.forget(place_of(form.get('at', ''))).line}"

        return await self._changed(request, forgotten)

    async def sign(self, request: Request) -> Response:
        """Close the note."""

        def signed(form: dict[str, str]) -> str:
            self._sitting.sign(by=form.get("by", ""), countersign=form.get("countersign", ""))
            return "Signed."

        return await self._changed(request, signed)

    async def countersign(self, request: Request) -> Response:
        """A second name under a signed note."""

        def countersigned(form: dict[str, str]) -> str:
            self._sitting.countersign(by=form.get("second", ""))
            return "Countersigned."

        return await self._changed(request, countersigned)

    async def amend(self, request: Request) -> Response:
        """Add to a signed note."""

        def amended(form: dict[str, str]) -> str:
            self._sitting.amend(form.get("text", ""), by=form.get("by", ""), why=form.get("reason", ""))
            return "Added."

        return await self._changed(request, amended)

    async def withdraw(self, request: Request) -> Response:
        """Mark a signed note as entered in error."""

        def withdrawn(form: dict[str, str]) -> str:
            self._sitting.withdraw(by=form.get("by", ""), why=form.get("reason", ""))
            return "Withdrawn."

        return await self._changed(request, withdrawn)

    async def again(self, request: Request) -> Response:
        """Open the record as it stands now, after another window changed it."""

        def opened(form: dict[str, str]) -> str:
            self._sitting.open_again()
            return "Opened again, as it stands now."

        return await self._changed(request, opened, keeps=True)

    async def fault(self, request: Request, fault: Exception) -> Response:
        """What is damaged or cannot be read, in its one line."""
        return _plain(str(fault), 500)

    def _closed(self) -> bool:
        return self._sitting.state != "draft"

    async def _changed(
        self, request: Request, change: Callable[[dict[str, str]], str], *, keeps: bool = False
    ) -> Response:
        """Carry a change out and go where the form says; a view that is no longer true changes nothing.

        keeps: what was typed before is still to be sent.
        """
        from starlette.responses import RedirectResponse

        try:
            form = await fields_of(request)
        except TooMuch:
            return _plain("More than one answer holds.", 413)
        except ValueError:
            return _plain("This is no answer of this page.", 400)
        back = form.get("back", "/")
        back = leads_to(back)
        self._typed = typed_in(form)
        if form.get("revision") != str(self._sitting.revision):
            return self._refuse(Refused("the note was changed in another window: look again, then answer"), back)
        try:
            self._said, self._refused = change(form), False
            self._typed = self._typed if keeps else {}
        except MovedOn as fault:
            return self._shown(MOVED, message=str(fault), status=409)
        except DictateError as fault:
            here = form.get("here", back)
            self._typed["at"] = leads_to(here)
            return self._refuse(fault, here)
        except ValueError:
            return _plain("This is no answer of this page.", 400)
        return RedirectResponse(back, 303)

    async def check(self, request: Request) -> Response:
        """What an answer would change, while it is being typed."""
        from starlette.responses import JSONResponse

        try:
            change, doubts = self._sitting.preview(decision_of(await fields_of(request)))
        except TooMuch:
            return _plain("More than one answer holds.", 413)
        except DictateError as fault:
            return JSONResponse({"refused": str(fault)})
        except ValueError:
            return _plain("This is no answer of this page.", 400)
        return JSONResponse({"before": change.before, "after": change.after, "raises": doubts})

    def _refuse(self, fault: DictateError, back: str) -> Response:
        from starlette.responses import RedirectResponse

        self._said, self._refused = str(fault), True
        return RedirectResponse(leads_to(back), 303)

    def _shown(self, name: str, *, status: int = 200, **more: Any) -> Response:
        from starlette.responses import HTMLResponse

        sitting, exam = self._sitting, self._sitting.exam
        if name != MOVED and sitting.moved_on():  # what it holds now is not what this window would show
            name, status, more = MOVED, 409, {"message": MOVED_ON.format(name=sitting.shelf.name)}
        musts = len(exam.open_musts)
        said, self._said = self._said, ""
        typed, self._typed = self._typed, {}
        page = self._templates.get_template(name).render(
            exam=exam, revision=sitting.revision, musts=musts, looks=len(exam.open_queries) - musts, said=said,
            refused=self._refused, sound=sitting.has_sound(), can_sign=sitting.can_sign(), components=list(Component),
            span=_span, around=_around, headings=note_words.COMPONENTS, action=Action, state=sitting.state,
            who=sitting.who, text=sitting.note() if self._closed() else "", typed=typed,
            stale=name == MOVED, **more,
        )  # fmt: skip
        return HTMLResponse(page, status)


def _plain(text: str, status: int) -> Response:
    from starlette.responses import PlainTextResponse

    return PlainTextResponse(text, status)


def _span(passage: Passage) -> str:
    """The address of the passage's clip."""
    return f"/clip?source={passage.source}&start={passage.start_s}&end={passage.end_s}"


def _around(passage: Passage) -> str:
    """The address of the clip with what was said around it."""
    start_s, end_s = max(0.0, (passage.start_s or 0.0) - AROUND_S), (passage.end_s or 0.0) + AROUND_S
    return f"/clip?source={passage.source}&start={start_s}&end={end_s}"
