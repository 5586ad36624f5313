"""The only module that knows faster-whisper: samples + hints → Words and spans of speech."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from dictate.errors import InputError, MachineError
from dictate.hearing.audio import RATE_HZ, Samples
from dictate.hearing.chunks import Span
from dictate.hearing.kept import Encoded, Shelf, Views
from dictate.hearing.models import Model, find_model
from dictate.hearing.slack import give_back_slack
from dictate.hearing.spelling import SPACE, mended
from dictate.hearing.voice import SILENCE_MS, find_voice
from dictate.hearing.weighing import as_array, log_probabilities, storage
from dictate.model.words import Hints, ModelIdentity, Transcript

if TYPE_CHECKING:
    from faster_whisper import WhisperModel
    from faster_whisper.tokenizer import Tokenizer

Progress = Callable[[float], None]  # share done, 0..1

# Windows of the encoder in seconds; a chunk takes the shortest that holds it. Under 15 s terms get lost.
WINDOWS_S = (15, 18, 21, 24, 30)
FULL_WINDOW_S = 30
FRAMES_PER_S = 100
BATCH = 5  # bounds memory: a block without pauses is seven chunks, and all at once hold 90 MB more than five
ALIGN_BATCH = 2  # looks at every frame of every head, so it needs more memory
PROMPT_TOKENS = 223  # half of the decoder's context, less one: the library's own limit for hotwords
THREADS = 4  # more threads per chunk stop paying


@dataclass(frozen=True)
class Decoded:
    """What the decoder made of one chunk."""

    text: str
    tokens: tuple[int, ...]
    mean_logprob: float
    no_speech: float


@dataclass(frozen=True)
class Timed:
    """One word of a chunk with its times in the chunk, in seconds."""

    text: str  # with the white space before it
    start_s: float
    end_s: float
    probability: float


class Engine:
    """A Whisper model, loaded at the first use."""

    def __init__(
        self, model: str | None = None, *, device: str = "auto", offline: bool = False, threads: int | None = None
    ) -> None:
        if device not in ("auto", "cpu", "cuda"):
            raise InputError(f"--device {device}: no such device: use auto, cpu or cuda")
        self._wanted, self._device, self._offline = model, device, offline
        self._shelf = Shelf()
        self.threads = threads or min(THREADS, os.cpu_count() or 1)

    @cached_property
    def model(self) -> Model:
        """The verified model, without loading it."""
        return find_model(self._wanted, fetch=fetch_from_hub, offline=self._offline)

    def load(self) -> None:
        """Load the model now rather than when it is first needed."""
        _ = self._tokenizer

    @property
    def identity(self) -> ModelIdentity:
        """Name and SHA-256 of the model."""
        return self.model.identity

    @cached_property
    def _whisper(self) -> WhisperModel:
        from faster_whisper import WhisperModel

        device = _usable_device(self._device)
        kind = "int8" if device == "cpu" else "int8_float16"
        try:
            return WhisperModel(
                str(self.model.folder),
                device=device,
                compute_type=kind,
                cpu_threads=self.threads,
                local_files_only=True,
            )
        except (RuntimeError, ValueError, OSError) as fault:
            reason = " ".join(str(fault).split())[:120]
            raise MachineError(
                f"model {self.model.name}: cannot be loaded on {device}: {reason}: try --device cpu"
            ) from fault

    @cached_property
    def _tokenizer(self) -> Tokenizer:
        from faster_whisper.tokenizer import Tokenizer

        whisper = self._whisper
        return Tokenizer(whisper.hf_tokenizer, whisper.model.is_multilingual, task="transcribe", language="en")

    @cached_property
    def _speller(self) -> Any:
        """Text → tokens; takes a moment, and is needed for lists of terms only."""
        return mended(self._whisper.hf_tokenizer)

    @cached_property
    def _suppressed(self) -> list[int]:
        """Tokens that are no speech: signs of music, speakers' names, the model's own marks."""
        own = self._tokenizer
        marks = (own.transcribe, own.translate, own.sot, own.sot_prev, own.sot_lm, own.no_speech)
        return sorted({*own.non_speech_tokens, *marks})

    @property
    def knows_trade(self) -> bool:
        """Whether the decoder has learnt the trade's words, so that no list of terms is needed."""
        return self.model.adapted

    def hear(self, path: Path, *, hints: Hints, progress: Progress | None = None) -> Transcript:
        """Everything said in a recording, with times; voiced stretches that gave no words are named.

        Raises: InputError for the recording, MachineError for the model.
        """
        from dictate.hearing.hear import hear_recording

        return hear_recording(self, Path(path), hints=hints, progress=progress)

    def keep(self, sha256: str, views: Views) -> None:
        """Keep the views of a recording, by its digest, until forget()."""
        self._shelf.keep(sha256, views)

    def forget(self) -> None:
        """Let go of what was kept for weighing."""
        self._shelf.forget()

    def weigh(self, sha256: str, start_s: float, end_s: float, texts: Sequence[str]) -> list[float]:
        """Log-probability (nats) of each text for a stretch of a recording; empty when it is not at hand."""
        view = self._shelf.stretch(sha256, start_s, end_s)
        if view is None or not texts:
            return []
        begin = self._tokenizer.sot_sequence
        return log_probabilities(self._whisper, begin, view, [self._spelt(text) for text in texts])

    def knows(self, word: str) -> bool:
        """Whether the recogniser's vocabulary has the word whole, as it has every word that is at all common."""
        tokens = self._whisper.hf_tokenizer
        return any(tokens.token_to_id(SPACE + form) is not None for form in (word.lower(), word.capitalize()))

    def spans(self, samples: Samples, *, silence_ms: int = SILENCE_MS) -> list[Span]:
        """Where voice is heard, without padding; spans are apart by so much silence."""
        return find_voice(samples, silence_ms=silence_ms)

    def language(self, view: Encoded) -> tuple[str, float]:
        """The likeliest language of a chunk and its probability; English for a model that knows no other."""
        whisper = self._whisper.model
        if not whisper.is_multilingual:
            return "en", 1.0
        name, share = whisper.detect_language(storage([view]))[0][0]
        return str(name).strip("<|>"), float(share)

    def encode(self, samples: Samples, *, window_s: int | None = None) -> Encoded:
        """The encoder's view of one chunk, in the shortest window that holds it."""
        whisper = self._whisper
        features = whisper.feature_extractor(samples)[:, : int(np.ceil(len(samples) / RATE_HZ * FRAMES_PER_S))]
        fitting = (each for each in WINDOWS_S if each * FRAMES_PER_S >= features.shape[1])
        frames = (window_s or next(fitting, FULL_WINDOW_S)) * FRAMES_PER_S
        window = np.zeros((features.shape[0], frames), np.float32)
        window[:, : min(frames, features.shape[1])] = features[:, :frames]
        return as_array(whisper.encode(window))

    def prompt(self, terms: Sequence[str], *, fill: Sequence[str] = (), length: int | None = None) -> list[int]:
        """Tokens that make the decoder expect `terms`; with `length`, filled in front from `fill` to just that many.

        Prompts of one batch must have one length.
        """
        own = self._tokenizer
        tokens = self._spelt(", ".join(terms)) if terms else []
        if length is not None and len(tokens) < length and fill:
            tokens = self._spelt(", ".join(fill) + ",") + tokens
        tokens = tokens[-(PROMPT_TOKENS if length is None else length) :]
        return [*([own.sot_prev, *tokens] if tokens else []), *own.sot_sequence, own.no_timestamps]

    def _spelt(self, text: str) -> list[int]:
        tokens: list[int] = self._speller.encode(" " + text, add_special_tokens=False).ids
        return tokens

    def decode(self, encoded: Sequence[Encoded], prompts: Sequence[list[int]], *, beam: int = 5) -> list[Decoded]:
        """Text of each chunk; chunks of one window and prompts of one length are decoded together."""
        give_back_slack()  # decoding takes the most of all, so nothing is held for others before it or behind it
        groups: dict[tuple[int, int], list[int]] = {}
        for index, (chunk, prompt) in enumerate(zip(encoded, prompts, strict=True)):
            groups.setdefault((len(chunk), len(prompt)), []).append(index)
        results: dict[int, Decoded] = {}
        for members in groups.values():
            for start in range(0, len(members), BATCH):
                batch = members[start : start + BATCH]
                found = self._generate([encoded[i] for i in batch], [prompts[i] for i in batch], beam)
                results.update(zip(batch, found, strict=True))
        give_back_slack()
        return [results[index] for index in range(len(encoded))]

    def _generate(self, encoded: list[Encoded], prompts: list[list[int]], beam: int) -> list[Decoded]:
        whisper = self._whisper
        outcome = whisper.model.generate(
            storage(encoded),
            prompts,
            beam_size=beam,
            max_length=whisper.max_length,
            suppress_blank=True,
            suppress_tokens=self._suppressed,
            return_scores=True,
            return_no_speech_prob=True,
        )
        return [self._decoded(each) for each in outcome]

    def _decoded(self, outcome: Any) -> Decoded:
        tokens = tuple(token for token in outcome.sequences_ids[0] if token < self._tokenizer.eot)
        return Decoded(
            text=self._tokenizer.decode(list(tokens)),
            tokens=tokens,
            mean_logprob=outcome.scores[0] * len(outcome.sequences_ids[0]) / (len(outcome.sequences_ids[0]) + 1),
            no_speech=outcome.no_speech_prob,
        )

    def align(
        self, encoded: Sequence[Encoded], decoded: Sequence[Decoded], seconds: Sequence[float]
    ) -> list[list[Timed]]:
        """Times and probability of each word of each chunk; what lies beyond the window of a chunk has none.

        The library writes into memory that is not its own when it is told of more frames than there are, or of none.
        """
        words: list[list[Timed]] = [[] for _ in decoded]
        groups: dict[int, list[int]] = {}
        for index, text in enumerate(decoded):
            if text.tokens:
                groups.setdefault(len(encoded[index]), []).append(index)
        for members in groups.values():
            for start in range(0, len(members), ALIGN_BATCH):
                batch = members[start : start + ALIGN_BATCH]
                found = self._whisper.find_alignment(
                    self._tokenizer,
                    [list(decoded[i].tokens) for i in batch],
                    storage([encoded[i] for i in batch]),
                    [max(2, min(int(seconds[i] * FRAMES_PER_S), 2 * len(encoded[i]))) for i in batch],
                )
                for index, each in zip(batch, found, strict=True):
                    words[index] = _timed(each)
        return words


def _timed(alignment: list[dict[str, Any]]) -> list[Timed]:
    from faster_whisper.transcribe import merge_punctuations

    merge_punctuations(alignment, "\"'“¿([{-", "\"'.。,，!！?？:：”)]}、")
    return [
        Timed(each["word"], float(each["start"]), float(each["end"]), float(each["probability"]))
        for each in alignment
        if each["word"].strip()
    ]


def _usable_device(wanted: str) -> str:
    import ctranslate2

    cards = ctranslate2.get_cuda_device_count()
    if wanted == "cuda" and not cards:
        raise MachineError("--device cuda: no usable graphics card found: use --device cpu")
    return "cuda" if cards and wanted != "cpu" else "cpu"


def fetch_from_hub(name: str, only_here: bool) -> Path:
    """Folder of a model of the hub, downloaded unless `only_here`; the hub's own folder of downloads is used."""
    from faster_whisper.utils import download_model

    try:
        return Path(download_model(name, local_files_only=only_here))
    except (OSError, RuntimeError, ValueError) as fault:
        reason = " ".join(str(fault).split())[:120]
        raise MachineError(
            f"model {name}: could not be fetched from the model hub: {reason}: check the network"
        ) from fault
