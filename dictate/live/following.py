"""Follows a dictation phrase by phrase: what is taken is shown, what is said to the program is done."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from dictate.grammar import Control, Grammar
from dictate.live.clock import MARKS_MIN, StandingClock
from dictate.live.doubting import Doubted
from dictate.live.kept import Kept, Mute, Said
from dictate.live.recogniser import Heard
from dictate.live.screen import Screen, View, at
from dictate.live.spoken import CONFIRMED, find_orders
from dictate.live.taken import Phrase, Taken, Taker, describe
from dictate.live.tones import Sounds, Tone
from dictate.model import Examination, Finding, Position, Word
from dictate.notes.phrases import capital


class Follower:
    """Knows what was taken so far; `now_s`: seconds of sound taken in, `stop`: ends the dictation."""

    def __init__(
        self, kept: Kept, grammar: Grammar, screen: Screen, *, now_s: Callable[[], float], stop: Callable[[], None],
        sounds: Sounds | None = None, weigh: Callable[[Phrase], None] | None = None,
    ) -> None:  # fmt: skip
        self._weigh = weigh
        self._kept, self._grammar, self._screen = kept, grammar, screen
        self._now_s, self._stop, self._sounds = now_s, stop, sounds
        self.view = View(patient=kept.facts.patient)
        asked = grammar.scopes[kept.facts.scope].standing_minutes if kept.facts.scope in grammar.scopes else ()
        self.clock = StandingClock(asked or MARKS_MIN)
        self.taker = Taker(grammar, scope=kept.facts.scope)
        self._last: tuple[Finding, ...] = ()
        self._paused_s: float | None = None
        self._speaks = False

    @property
    def paused(self) -> bool:
        """Whether what is said is not for the note."""
        return self._paused_s is not None

    @property
    def listening(self) -> str:
        """How it stands while it hears."""
        return "paused" if self.paused else "listening"

    def restore(self) -> int:
        """Take up what was heard before; the sample up to which it was."""
        said = [entry for entry in self._kept.entries() if isinstance(entry, Said)]
        for entry in said:
            if entry.control == "pause" and not entry.paused:
                self._paused_s = entry.end_s
            elif entry.control == "resume":
                self._paused_s = None
        findings = self.taker.take_up([w for one in said if not one.control and not one.paused for w in one.words])
        self._last = findings[-1:]
        started = [(entry.start_s, None) for entry in said if entry.control == "start_clock" and not entry.paused]
        told = [(finding.evidence[0].start_s or 0.0, finding) for finding in findings]
        for at_s, finding in sorted([*told, *started], key=lambda each: each[0]):
            if finding is None:
                self.clock.start(at_s)
            else:
                self._follow_standing((finding,), at_s)
        self.clock.due(max((entry.end_s for entry in said), default=0.0))  # those rang then
        return max((entry.done for entry in said), default=0)

    def get_ready(self) -> None:
        """Read something, while the recogniser's model loads: the first phrase need not wait for the reader."""
        Taker(self._grammar).take([Word(text="Ready.", start_s=0.0, end_s=0.1, probability=1.0)])

    def whole(self) -> Examination:
        """Everything taken so far, read at once."""
        return self.taker.whole()

    def tick(self) -> None:
        """Time goes on."""
        now_s = self._now_s()
        if self._sounds is not None and self._sounds.speaks != self._speaks:
            self._speaks = not self._speaks
            self.state("reading aloud, not listening" if self._speaks else self.listening)
        for mark in self.clock.due(now_s):
            self._say(f"{at(now_s)} > standing for {mark:g} min")
            self._tone("clock")
        self.view.clock, self.view.length_s = self.clock.show(now_s), now_s
        self._screen.show(self.view)

    def heard(self, heard: Heard) -> None:
        """A phrase: what is said to the program is done, the rest is taken."""
        rest = 0
        orders = find_orders(heard.words, self._grammar, fitting=heard.order)
        for order in orders:
            self._dictated(heard, heard.words[rest : order.first])
            self._order(order.control, heard, heard.words[order.first : order.last + 1])
            rest = order.last + 1
        if rest < len(heard.words) or not orders:
            self._dictated(heard, heard.words[rest:], last=True)

    def _dictated(self, heard: Heard, words: tuple[Word, ...], *, last: bool = False) -> None:
        lost = heard.lost if last else ()
        if not words and not lost:
            return
        start_s = (words[0].start_s if words else None) or heard.start_s
        paused = self._paused_s is not None
        entry = Said(words=words, lost=lost, start_s=start_s, end_s=heard.end_s, done=heard.done if last else 0)
        self._kept.log(entry.model_copy(update={"paused": paused}))
        if paused:
            return
        self._say(f"{at(start_s)} {' '.join(word.text for word in words) or '(voice without words)'}")
        taken = self.taker.take(words)
        self._show(taken, words, lost=bool(lost))
        if words and self._weigh:
            self._weigh(self.taker.phrase(start_s))
        self._follow_standing(taken.findings, start_s)

    def _show(self, taken: Taken, words: tuple[Word, ...], *, lost: bool) -> None:
        findings = [describe(finding, self._grammar) + self._clock_says(finding) for finding in taken.findings]
        gone = [describe(finding, self._grammar) for finding in taken.gone]
        doubts = [f"{query.message} [{query.severity.value}]" for query in taken.queries]
        doubts += [f"not placed: “{quote}”" for quote in taken.not_placed]
        doubts += ["someone spoke and no words were made of it"] if lost else []
        for mark, lines in (("=", findings), ("x no longer:", gone), ("?", doubts)):
            for line in lines:
                self._say(f"       {mark} {line}")
        self._last = taken.findings or self._last
        view = self.view
        view.phrase = " ".join(word.text for word in words)
        view.taken, view.doubts = findings + [f"no longer: {each}" for each in gone], doubts
        if self._kept.facts.scope:
            view.still_open = [name for names in self.taker.missing().values() for name in names]
        if doubts:
            self._tone("not placed" if not findings else "doubtful")
        elif findings:
            self._tone("taken")

    def doubted(self, doubted: Doubted) -> None:
        """A doubt that came later than what it is about."""
        doubts = [f"{query.message} [{query.severity.value}]" for query in doubted.taken.queries]
        doubts += [f"or is it: {describe(finding, self._grammar)}" for finding in doubted.taken.findings]
        new = [each for each in doubts if each not in self.view.doubts]
        for line in new:
            self._say(f"{at(doubted.start_s)} ? {line}")
        if new:
            self.view.doubts = [*self.view.doubts, *new]
            self._tone("doubtful")

    def _clock_says(self, finding: Finding) -> str:
        """The minutes since standing, as a suggestion beside a reading that has none."""
        start_s = finding.evidence[-1].start_s or 0.0
        minutes = self.clock.minutes(start_s)
        if minutes is None or finding.minutes is not None or finding.position is not Position.STANDING:
            return ""
        return f" (clock: {self.clock.show(start_s)} standing, not said)"

    def _follow_standing(self, findings: Sequence[Finding], start_s: float) -> None:
        """The clock starts at the first reading said to be standing, and stops when one is not."""
        for finding in findings:
            if not self._grammar.item(finding.item).positions or finding.position is None:
                continue
            if finding.position is Position.STANDING and not self.clock.runs:
                self._start_clock(start_s - 60 * (finding.minutes or 0.0), start_s)
            elif finding.position is not Position.STANDING and self.clock.runs:
                self.clock.stop()
                self._say(f"{at(start_s)} > standing clock stopped")

    def _start_clock(self, from_s: float, at_s: float) -> None:
        self.clock.start(from_s)
        self._say(f"{at(at_s)} > standing clock started")

    def _order(self, control: Control, heard: Heard, words: tuple[Word, ...]) -> None:
        """Do what was said to the program, and say that it was understood."""
        start_s, end_s = words[0].start_s or heard.start_s, words[-1].end_s or heard.end_s
        entry = Said(words=words, start_s=start_s, end_s=end_s, done=heard.done, control=control, paused=self.paused)
        self._kept.log(entry)
        if self._paused_s is not None and control not in ("resume", "end"):
            return
        text = f"{at(start_s)} > understood: {CONFIRMED[control]}"
        self._say(text)
        self.view.phrase = CONFIRMED[control]
        self._tone("order")
        if control == "pause":
            self._paused_s = end_s
            self.state("paused")
        elif control == "resume":
            self.leave_pause(start_s)
            self.state("listening")
        elif control == "end":
            self._stop()
        elif control == "start_clock":
            self.clock.start(start_s)
        else:
            self._tell(self._read_back() if control == "read_back" else self._still_open())

    def _tell(self, lines: list[str]) -> None:
        for line in lines:
            self._say(f"       {line}")
        self.view.taken, self.view.doubts = lines, []
        if self._sounds:
            self._sounds.read_aloud(". ".join(lines), now_s=self._now_s)

    def _read_back(self) -> list[str]:
        return [describe(finding, self._grammar) for finding in self._last] or ["nothing taken yet"]

    def _still_open(self) -> list[str]:
        """What the scope still asks for; without a scope the queries that are open."""
        if not self.taker.words:
            return ["nothing taken yet"]
        if self._kept.facts.scope:
            parts = self._grammar.components
            missing = self.taker.missing().items()
            return [f"{capital(parts[part].headings[0])}: {', '.join(names)}" for part, names in missing] or ["nothing"]
        return [query.message for query in self.taker.whole().open_musts] or ["nothing"]

    def leave_pause(self, now_s: float | None = None) -> None:
        """What was said between is no dictation."""
        if self._paused_s is not None:
            end_s = self._now_s() if now_s is None else now_s
            self._kept.log(Mute(start_s=self._paused_s, end_s=max(end_s, self._paused_s), why="paused"))
            self._paused_s = None

    def state(self, text: str) -> None:
        """Say how the dictation stands."""
        self.view.state = text
        self._say(f"{at(self._now_s())} > {text}")
        self._screen.show(self.view)

    def notice(self, text: str) -> None:
        """Say what the examiner has to know at once."""
        self.view.notices.append(text)
        self._screen.line(f"! {text}")

    def _say(self, text: str) -> None:
        self._screen.line(text)

    def _tone(self, tone: Tone) -> None:
        if self._sounds:
            self._sounds.tone(tone, now_s=self._now_s())
