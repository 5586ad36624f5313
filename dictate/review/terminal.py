"""The same questions at the keyboard of a terminal, over ssh too."""

from __future__ import annotations

import io
import wave
from collections.abc import Callable, Container, Iterator, Sequence
from typing import TYPE_CHECKING

from dictate.errors import DictateError, InputError
from dictate.model import Action, Decision
from dictate.review.effects import Difference, values_of
from dictate.review.keyboard import END, Keyboard
from dictate.review.passages import AROUND_S, Passage
from dictate.review.questions import Choice, Question
from dictate.review.shelf import MOVED_ON
from dictate.review.sitting import Sitting
from dictate.review.typed import Refused

if TYPE_CHECKING:
    from prompt_toolkit.input import Input
    from prompt_toolkit.output import Output

KEYS_ANYWHERE = {
    "w": "whole note",
    "u": "undo",
    "U": "undo everything",
    "c": "print the note",
    "m": "always read so",
    END: "end",
}
Play = Callable[[bytes], None]


def play_clip(content: bytes) -> None:
    """Play a WAV file through the sound device. Raises InputError where there is none."""
    try:
        import numpy as np
        import sounddevice
    except (ImportError, OSError) as fault:  # OSError: the sound library of the system is missing
        raise InputError("no sound here: pip install 'dictate[live]', and PortAudio") from fault
    with wave.open(io.BytesIO(content)) as file:
        samples = np.frombuffer(file.readframes(file.getnframes()), dtype="<i2")
        rate = file.getframerate()
    try:
        sounddevice.play(samples, rate)
        sounddevice.wait()
    except sounddevice.PortAudioError as fault:
        raise InputError("no sound device here: use the page on a machine that has one") from fault


class Terminal:
    """Asks at the keyboard until everything is settled or the examiner ends."""

    def __init__(
        self, sitting: Sitting, *, play: Play = play_clip, input: Input | None = None, output: Output | None = None
    ) -> None:
        """input, output: of prompt_toolkit; None: the terminal the program runs in."""
        self._sitting, self._play = sitting, play
        self._keyboard = Keyboard(input, output)
        self._at: int | None = None  # the open query shown last, for next and before

    def run(self) -> None:
        """Ask until the end."""
        while self._sitting.state == "draft":
            if self._sitting.moved_on():
                if self._opened_again() is False:
                    return
                continue
            order = self._sitting.open_places()
            if not order:
                sign = " End with e; `dictate sign` closes it." if self._sitting.state == "draft" else ""
                self._keyboard.say("", f"No question is open. Read the whole note once more: w.{sign}")
                if self._anywhere(self._press(KEYS_ANYWHERE)) is False:
                    return
                continue
            at = self._at if self._at in order else order[0]
            question = self._sitting.question(at)
            self._show(question)
            if self._answered(question, order) is False:
                return

    def _opened_again(self) -> bool:
        """Another window or person was here: nothing that is true no more is shown or asked. False: the end."""
        self._keyboard.say("", MOVED_ON.format(name=self._sitting.shelf.name), f"  [o] open it again  [{END}] end")
        if self._keyboard.key({"o": "open again", END: "end"}) == END:
            return False
        try:
            self._sitting.open_again()
        except DictateError as fault:  # nothing is left of it
            self._keyboard.say(str(fault))
            return False
        if self._sitting.state != "draft":
            self._keyboard.say(
                f"{self._sitting.shelf.name}: is {self._sitting.state} now: `dictate amend` adds to a signed one"
            )
        return True

    def _press(self, wanted: Container[str]) -> str:
        """One of the keys; empty where the record moved on before it: what it was meant for is true no more."""
        key = self._keyboard.key(wanted)
        return "" if key != END and self._sitting.moved_on() else key

    def _answered(self, question: Question, order: Sequence[int]) -> bool:
        """One key for one question; False: the end."""
        own = {choice.key: choice for choice in (*question.choices, *question.others) if choice.key}
        more = {"h": "hear", "g": "hear around", "n": "next", "b": "before"}
        if question.hint:
            more["t"] = "type"
        key = self._press({**own, **more, **KEYS_ANYWHERE})
        at = question.query if question.query is not None else order[0]
        if key in own:
            self._try(lambda: self._sitting.decide(own[key].decision))
        elif key in ("n", "b"):
            self._at = order[(order.index(at) + (1 if key == "n" else -1)) % len(order)]
        elif key in ("h", "g"):
            self._hear(question.passages, around=key == "g")
        elif key == "t" and question.hint:
            self._type(question)
        else:
            return self._anywhere(key)
        return True

    def _anywhere(self, key: str) -> bool:
        if key == END:
            return False
        if key == "w":
            self._whole()
        elif key == "c":
            self._keyboard.say(self._sitting.note())
        elif key in ("u", "U"):
            self._try(lambda: self._sitting.undo(everything=key == "U"))
        elif key == "m":
            self._learn()
        return True

    def _show(self, question: Question) -> None:
        exam = self._sitting.exam
        musts = len(exam.open_musts)
        rank = "to settle" if question.must else "to look at"
        self._keyboard.say(
            "",
            "─" * 60,
            f"Patient: {exam.patient or 'no reference given'}    DRAFT    {musts} to settle, "
            f"{len(exam.open_queries) - musts} to look at",
            *([f"{question.number} of {question.count} open, {rank}: {question.title}"] if question.count else []),
        )
        for passage in question.passages:
            self._keyboard.say(f"  heard: … {passage.before} »{passage.words}« {passage.behind} …")
        self._keyboard.say("", question.message, *(f"  now:   {line}" for line in question.now), "")
        for choice in (*question.choices, *question.others):
            self._keyboard.say(*_choice_lines(choice, question.now))
        if question.hint:
            self._keyboard.say(f"  [t] type another answer: {question.hint}")
        hear = "  [h] hear  [g] hear what is around  [n] "
        anywhere = "  ".join(f"[{key}] {what}" for key, what in KEYS_ANYWHERE.items())
        self._keyboard.say(hear + (f"next  [b] before  {anywhere}" if question.count else "back, unchanged"))

    def _type(self, question: Question) -> None:
        line = self._keyboard.line("> ", lambda text: self._preview(question, text))
        if line.strip():
            answer = Decision(query=question.query, finding=question.finding, answer=line)
            self._try(lambda: self._sitting.decide(answer))

    def _preview(self, question: Question, text: str) -> str:
        """What the line would change, while it is being typed."""
        if not text.strip():
            return question.hint
        try:
            decision = Decision(query=question.query, finding=question.finding, answer=text)
            change, doubts = self._sitting.preview(decision)
        except DictateError as fault:
            return str(fault)
        return "; ".join((*(f"reads: {line}" for line in change.after), *(f"then asks: {doubt}" for doubt in doubts)))

    def _hear(self, passages: Sequence[Passage], *, around: bool) -> None:
        wider = AROUND_S if around else 0.0
        playable = [one for one in passages if one.playable]
        if not playable:
            self._keyboard.say("There is no sound to these words.")
        for one in playable:
            start_s, end_s = max(0.0, (one.start_s or 0.0) - wider), (one.end_s or 0.0) + wider
            try:
                self._play(self._sitting.clip(one.source, start_s, end_s))
            except DictateError as fault:
                self._keyboard.say(str(fault))
                return

    def _whole(self) -> None:
        """Every value with a number to reach it by."""
        from dictate.catalogue import note as note_words
        from dictate.notes import note_lines

        exam, grammar = self._sitting.exam, self._sitting.grammar
        for component, lines in note_lines(exam, grammar).items():
            self._keyboard.say("", note_words.COMPONENTS[component], *(() if lines else (f"  {note_words.NOTHING}",)))
            for line in lines:
                self._keyboard.say(
                    f"  {line.text}", *(f"      {at + 1:>3}  {words}" for at, words in values_of(line, exam, grammar))
                )
        typed = self._keyboard.line("number of a value, or a phrase to add, or nothing: ", lambda _: "")
        if typed.strip().isdigit():
            self._correct(int(typed) - 1)
        elif typed.strip():
            self._try(lambda: self._sitting.decide(Decision(action=Action.ADD, answer=typed)))

    def _correct(self, at: int) -> None:
        try:
            card = self._sitting.card(at)
        except Refused as refusal:
            self._keyboard.say(str(refusal))
            return
        self._show(card)
        while self._card_key(card):
            pass

    def _card_key(self, card: Question) -> bool:
        """One key for one value of the note; False: done with it. What is heard may still have to be corrected."""
        own = {choice.key: choice for choice in (*card.choices, *card.others) if choice.key}
        more = {"h": "hear", "g": "hear around", "n": "back", END: "back", **({"t": "type"} if card.hint else {})}
        key = self._press({**own, **more})
        if key in ("h", "g"):
            self._hear(card.passages, around=key == "g")
            return True
        if key in own:
            self._try(lambda: self._sitting.decide(own[key].decision))
        elif key == "t":
            self._type(card)
        return False

    def _learn(self) -> None:
        offered = self._sitting.lessons()
        if not offered:
            self._keyboard.say("Nothing that can safely be kept came of the last answer.")
        for lesson in offered:
            self._keyboard.say(f"{lesson.reads}: {lesson.line}")
        for at, lesson in enumerate(self._sitting.learnt(), 1):
            self._keyboard.say(f"  kept {at}: {lesson.line}")
        line = self._keyboard.line("k keeps what is offered, a number takes a kept one out: ", lambda _: "").strip()
        if line == "k":
            self._try_words(lambda: "; ".join(lesson.line for lesson in self._sitting.learn()))
        elif line.isdigit():
            self._try_words(lambda: f"taken out: {self._sitting.forget(int(line) - 1).line}")

    def _try(self, change: Callable[[], Difference]) -> None:
        self._try_words(
            lambda: "\n".join(f"  reads: {line}" for line in change().after) or "  the note reads as before"
        )

    def _try_words(self, change: Callable[[], str]) -> None:
        try:
            self._keyboard.say(change())
        except DictateError as fault:
            self._keyboard.say(f"  {fault}")


def _choice_lines(choice: Choice, now: Sequence[str]) -> Iterator[str]:
    yield f"  [{choice.key or ' '}] {choice.label}"
    gone = choice.change.before if not choice.change.after else [x for x in choice.change.before if x not in now]
    yield from (f"        {'was:  ' if choice.change.after else 'goes: '} {line}" for line in gone)
    yield from (f"        reads: {line}" for line in choice.change.after)
    yield from (f"        then asks: {doubt}" for doubt in choice.raises)
