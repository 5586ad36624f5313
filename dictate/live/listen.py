"""A session of phrases: sound is recorded, phrases are heard as they end, and the whole once more at the end."""

from __future__ import annotations

import contextlib
import queue
import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from dictate.errors import BrokenOff, MachineError
from dictate.grammar import Grammar
from dictate.live import ear as ears
from dictate.live import recogniser
from dictate.live.doubting import AskedWeigher, Doubted, Doubter
from dictate.live.ending import hear_whole, rescue
from dictate.live.following import Follower
from dictate.live.kept import Kept, seconds_samples
from dictate.live.recorder import Ended, Gap, Notice, Recorder, SoundSource
from dictate.live.safe_sound import HEAD_BYTES, SafeSound
from dictate.live.screen import Screen
from dictate.live.taken import differences
from dictate.live.tones import Muting, Sounds
from dictate.model import Conventions, Examination, Transcript
from dictate.pipeline import Weigher, examine_transcript, hints_of
from dictate.settings import rescue_folder

if TYPE_CHECKING:
    from dictate.hearing.hear import Listener

TICK_S = 0.1
CATCH_UP_BYTES = 320_000  # ten seconds
BEHIND_S = 25.0  # a phrase may take half of it before it ends


@dataclass(frozen=True)
class Result:
    """How a dictation ended; `whole` False: it could not be heard again, this is what was heard live."""

    exam: Examination
    changed: tuple[str, ...]
    whole: bool
    sounds: tuple[Path, ...] = ()  # as they were heard: the sources of the transcript


class Session:
    """One dictation from its first sound to its transcript."""

    def __init__(
        self, source: SoundSource, kept: Kept, grammar: Grammar, make: Callable[[], Listener], screen: Screen, *,
        sounds: Callable[[Muting], Sounds] | None = None, fast: bool = False, name: str = "",
        created_at: datetime | None = None, open_sound: Callable[[Path], SafeSound] = SafeSound,
        conventions: Conventions | None = None,
    ) -> None:  # fmt: skip
        self._kept, self._grammar, self._screen = kept, grammar, screen
        self._name, self._created_at, self._waits_for_sound = name, created_at, source.plays
        self._waiting = False
        self._behind, self._conventions = False, conventions
        self._events: queue.SimpleQueue[Any] = queue.SimpleQueue()
        muting = Muting(on_mute=kept.log)
        self.follower = Follower(
            kept, grammar, screen, now_s=lambda: self._recorder.now_s, stop=self.stop,
            sounds=sounds(muting) if sounds else None, weigh=lambda phrase: self._doubter.add(phrase),
        )  # fmt: skip
        done, before = self.follower.restore(), kept.samples()
        if kept.last_sound_at is not None and not kept.facts.file:
            self.follower.clock.miss(max(0.0, time.time() - kept.last_sound_at))
        earlier = kept.pieces()
        sound = open_sound(earlier[-1] if earlier and kept.facts.file else kept.next_piece())  # a file's sound joins
        orders = tuple(phrase for phrases in grammar.controls.values() for phrase in phrases)
        self.ear = ears.Ear(make, hints_of(grammar), self._events, first=done, orders=orders)
        self._doubter = Doubter(self.follower.taker, self.ear.ask, self._events)
        self._catch_up(earlier, done)
        self._recorder = Recorder(
            source, self.ear, muting, self._events, next_piece=kept.next_piece, sound=sound,
            before=before - sound.samples, open_sound=open_sound, fast=fast,
        )  # fmt: skip

    def stop(self) -> None:
        """No more sound: finish properly."""
        self._recorder.halt.set()

    def run(self) -> Result:
        """Listen until the source ends or `stop`; then hear the whole again. Raises: DictateError."""
        try:
            self._recorder.start()
            self.follower.get_ready()
            self._doubter.start()
            self._wait_for(recogniser.Finished)
            self.follower.leave_pause()
            return self._whole()
        finally:
            self.stop()
            self._doubter.end()
            if self._recorder.is_alive():
                self._recorder.join(5)
            self.ear.close()
            self._screen.close()

    def _catch_up(self, earlier: list[Path], done: int) -> None:
        """Sound of an interrupted dictation that was recorded, and not heard yet."""
        start = 0
        for path in earlier:
            samples = seconds_samples(path)
            with path.open("rb") as sound:
                sound.seek(HEAD_BYTES + 2 * min(samples, max(0, done - start)))
                while pcm := sound.read(CATCH_UP_BYTES):
                    self.ear.add(pcm)
            start += samples

    def _wait_for(self, *kinds: type) -> Any:
        """Handle events until one of these kinds comes."""
        while True:
            event: object = None
            with contextlib.suppress(queue.Empty):
                event = self._events.get(timeout=TICK_S)
            self._tick()
            if event is not None:
                self._handle(event)
                if isinstance(event, kinds):
                    return event

    def _handle(self, event: object) -> None:
        follower = self.follower
        if isinstance(event, recogniser.Ready):
            self._waiting = self._waits_for_sound and not self._recorder.taking.is_set()
            follower.state("waiting for the microphone" if self._waiting else follower.listening)
        elif isinstance(event, recogniser.Heard):
            wrong = self._recorder.level.heard_speech()
            if wrong:
                follower.notice(wrong)
            follower.heard(event)
        elif isinstance(event, Doubted):
            follower.doubted(event)
        elif isinstance(event, Gap):
            follower.clock.miss(event.seconds)
        elif isinstance(event, Notice):
            follower.notice(event.text)
        elif isinstance(event, ears.Died):
            if event.for_good:
                raise MachineError(f"{event.reason}: the sound is kept: `dictate listen --resume` takes it up")
            follower.notice(f"{event.reason}: it is started anew, recording goes on")
        elif isinstance(event, Ended):
            if event.fault:
                follower.notice(event.fault)
            self.ear.end()

    def _tick(self) -> None:
        behind_s = self.ear.behind_s
        if (behind_s > BEHIND_S) != self._behind and not self._recorder.halt.is_set():
            self._behind = not self._behind
            said = f"recognition is {behind_s:.0f} s behind: recording goes on" if self._behind else "caught up"
            self.follower.notice(said)
        if self._waiting and self._recorder.taking.is_set():
            self._waiting = False
            self.follower.state(self.follower.listening)
        self.follower.view.behind_s, self.follower.view.level = behind_s, self._recorder.level.bar()
        self.follower.tick()

    def _whole(self) -> Result:
        self.follower.state("hearing the whole again")
        self._doubter.end()
        live = self.follower.whole()
        try:
            transcript, sounds = hear_whole(
                self._kept, self._hear, self._grammar, name=self._name, created_at=self._created_at,
                instead=self._rescued(),
            )  # fmt: skip
        except BrokenOff:
            raise
        except MachineError as fault:
            self.follower.notice(f"the whole cannot be heard again, this is what was heard live: {fault}")
            dated = tuple(one.model_copy(update={"created_at": self._created_at}) for one in live.transcript.sources)
            heard = live.transcript.model_copy(update={"sources": dated})
            return Result(self._examined(heard, None), (), whole=False)
        final = self._examined(transcript, AskedWeigher(self.ear.ask))
        return Result(final, tuple(differences(live, final, self._grammar)), whole=True, sounds=sounds)

    def _examined(self, transcript: Transcript, weigher: Weigher | None) -> Examination:
        facts = self._kept.facts
        return examine_transcript(
            transcript, grammar=self._grammar, weigher=weigher, scope=facts.scope, patient=facts.patient,
            examined_at=facts.examined_at, age=facts.age, height=facts.height, conventions=self._conventions,
        )  # fmt: skip

    def _hear(self, path: Path) -> Transcript:
        self.ear.whole(path)
        answer = self._wait_for(recogniser.Whole, recogniser.Failed)
        if isinstance(answer, recogniser.Failed):
            raise MachineError(answer.reason)
        transcript: Transcript = answer.transcript
        return transcript

    def _rescued(self) -> dict[Path, Path]:
        """Sound that its own disk never took, written elsewhere."""
        places = {}
        for sound in self._recorder.unsaved:
            path = rescue(sound.everything(), rescue_folder())
            self.follower.notice(f"the disk took no more: the whole sound is in {path}")
            places[sound.path] = path
        return places
