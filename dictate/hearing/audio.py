"""Any recording → float32 mono 16 kHz."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
import numpy.typing as npt

from dictate.errors import InputError
from dictate.hearing.sides import Turn, alone
from dictate.hearing.whole import cut_short, looks_like_sound
from dictate.model.words import Source

if TYPE_CHECKING:
    import av

Samples = npt.NDArray[np.float32]

RATE_HZ = 16_000
BLOCK_S = 120.0  # bounds memory: what is computed from a block is many times its sound (docs/hearing.md)
SEARCH_S = 30.0  # a block ends in the quietest place of its last half minute
HUSH_S = 0.5
MISSING_S = 0.5  # declared and decoded length may differ by this much (encoder delay, rounding) ...
MISSING_LOSSLESS_S = 0.02  # ... but not where every sample is counted
# Time stamps of frames that jump by more than this: sound in between is lost. By container; the others may pause.
GAP_S = {"wav": 0.1, "flac": 0.1, "ogg": 0.1, "matroska,webm": 0.5}
ONE_SIDED = 0.6  # mean below this share of the louder channel: the voice is on one channel, or the two cancel
OFFSET = 0.01  # a microphone's own steady voltage; larger ones hide low speech from the search for voice
FIRST_YEAR = 1990  # containers write 1904 or 1970 when they do not know the time

# Only containers that hold sound themselves: a play list or a script renamed to .wav must not make the decoder
# open other files or addresses.
CONTAINERS = (
    "wav,w64,rf64,flac,mp3,aac,ogg,mov,mp4,m4a,3gp,3g2,mj2,matroska,webm,aiff,caf,au,amr,asf,avi,mpeg,mpegts,flv,ac3"
)


@dataclass(frozen=True)
class Block:
    """A piece of a recording that begins and ends in a quiet place.

    samples: float32 (n,), mono, 16 kHz, -1..1.
    alone: where the left and where the right channel sounds alone, in seconds of the block.
    """

    start_s: float
    samples: Samples
    alone: tuple[Sequence[Turn], Sequence[Turn]] = ((), ())

    @property
    def end_s(self) -> float:
        """Where the block ends in the recording."""
        return self.start_s + len(self.samples) / RATE_HZ


class Recording:
    """One sound file, checked on opening and read once, block by block."""

    def __init__(self, path: Path, *, block_s: float = BLOCK_S) -> None:
        self.path = path
        self._block = int(block_s * RATE_HZ)
        _must_be_file(path)
        self.sha256 = _digest(path)
        if cut_short(path):
            raise InputError(f"{path.name}: cut short: its header promises more: copy the whole file again")
        with _open(path) as container:
            self.created_at = _creation_time(container)
            self.declared_s = _declared_s(container)
            self._slack_s = MISSING_LOSSLESS_S if container.format.name in {"wav", "flac"} else MISSING_S
        self.duration_s: float | None = None  # known once the blocks were read to the end

    def source(self) -> Source:
        """Where the words came from; the name carries no folder."""
        return Source(
            name=self.path.name,
            kind="recording",
            sha256=self.sha256,
            duration_s=None if self.duration_s is None else round(self.duration_s, 3),
            created_at=self.created_at,
        )

    def blocks(self) -> Iterator[Block]:
        """Decode the recording; raises InputError where it is damaged or cut short."""
        held: list[npt.NDArray[np.float32]] = []
        size = done = 0
        for piece in _decode(self.path):
            held.append(piece)
            size += piece.shape[1]
            while size >= self._block:
                sound = np.concatenate(held, axis=1)
                cut = _quiet_place(sound[:, : self._block])
                yield _block(done, sound[:, :cut])
                held, size, done = [sound[:, cut:].copy()], size - cut, done + cut
        self.duration_s = (done + size) / RATE_HZ
        self._check_whole()
        if size:
            yield _block(done, np.concatenate(held, axis=1))

    def _check_whole(self) -> None:
        got, due = self.duration_s or 0.0, self.declared_s
        if got == 0.0:
            raise InputError(f"{self.path.name}: holds no sound: record it again or name another file")
        if due is not None and got < due - self._slack_s:
            raise InputError(
                f"{self.path.name}: cut short: {got:.1f} s of {due:.1f} s can be read: copy the whole file again"
            )


def _must_be_file(path: Path) -> None:
    try:
        if path.is_dir():
            raise InputError(f"{path}: is a folder: name a recording, or use `dictate batch` for a folder")
        if not path.exists():
            raise InputError(f"{path}: no such file: check the name")
        if not path.is_file():
            raise InputError(f"{path}: not a regular file: name a recording")
        if path.stat().st_size == 0:
            raise InputError(f"{path.name}: the file is empty: copy or record it again")
    except (OSError, ValueError) as fault:
        raise InputError(f"{path}: cannot be read: {_reason(fault)}") from fault


def _digest(path: Path) -> str:
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError as fault:
        raise InputError(f"{path}: cannot be read: {_reason(fault)}: check its permissions") from fault


def _open(path: Path) -> av.container.InputContainer:
    """Open the container, or say in one line why it is none."""
    import av

    options = {"format_whitelist": CONTAINERS, "protocol_whitelist": "file"}
    try:
        container = av.open(f"file:{path}", options=options, metadata_errors="replace")
    except (av.error.FFmpegError, OSError, ValueError) as fault:
        if looks_like_sound(path):
            raise _damaged(path, "and cannot be opened") from fault
        kinds = "wav, flac, mp3, m4a, ogg, opus or webm"
        raise InputError(f"{path.name}: not a recording this program can read: use {kinds}") from fault
    if not container.streams.audio:
        container.close()
        raise InputError(f"{path.name}: holds no sound track: name a recording with sound")
    return container


def _decode(path: Path) -> Iterator[npt.NDArray[np.float32]]:
    """Sound as float32 (channels, n) at 16 kHz, one or two channels; a damaged packet stops it."""
    import av

    heard, due_s = 0, 0.0
    with _open(path) as container:
        gap_s = GAP_S.get(container.format.name, float("inf"))
        stream = container.streams.audio[0]
        resampler: av.AudioResampler | None = None
        try:
            for packet in container.demux(stream):
                for frame in _frames(packet, first=resampler is None):
                    if frame.time is not None:
                        if due_s and frame.time > due_s + gap_s:
                            raise _damaged(path, f"at {due_s:.1f} s")
                        due_s = frame.time + frame.samples / frame.sample_rate
                    if resampler is None:
                        layout = "mono" if len(frame.layout.channels) == 1 else "stereo"
                        resampler = av.AudioResampler(format="fltp", layout=layout, rate=RATE_HZ, frame_size=RATE_HZ)
                    for out in resampler.resample(frame):
                        heard += out.samples
                        yield _samples(out)
            for out in resampler.resample(None) if resampler else ():
                heard += out.samples
                yield _samples(out)
        except (av.error.FFmpegError, ValueError) as fault:
            raise _damaged(path, f"at {heard / RATE_HZ:.1f} s") from fault


def _damaged(path: Path, where: str) -> InputError:
    return InputError(f"{path.name}: damaged or cut short {where}: copy the whole file again")


def _frames(packet: Any, *, first: bool) -> list[av.AudioFrame]:
    """Frames of a packet; before the first sound a bad packet is a leftover tag and is passed over."""
    import av

    try:
        return [frame for frame in packet.decode() if isinstance(frame, av.AudioFrame)]
    except av.error.InvalidDataError:
        if first and packet.size:
            return []
        raise


def _samples(frame: av.AudioFrame) -> npt.NDArray[np.float32]:
    return frame.to_ndarray().astype(np.float32, copy=False)


def _block(first: int, sound: npt.NDArray[np.float32]) -> Block:
    """One channel of one or two.

    The mean, or the louder one where the voice is on one side or the two cancel each other; never where both sound
    alone in turn, as the quieter talker would be lost.
    """
    if not np.isfinite(sound).all():
        sound = np.nan_to_num(sound, copy=False, posinf=1.0, neginf=-1.0)
    offset = sound.mean(axis=1, dtype=np.float64, keepdims=True)
    if np.abs(offset).max() > OFFSET:
        sound = sound - offset.astype(np.float32)
    if sound.shape[0] == 1:
        return Block(first / RATE_HZ, np.ascontiguousarray(sound[0]))
    mean = sound.mean(axis=0, dtype=np.float32)
    loud = max(sound, key=_strength)
    left, right = alone(sound, RATE_HZ)
    one_sided = _strength(mean) < ONE_SIDED * _strength(loud) and not (left and right)
    return Block(first / RATE_HZ, np.ascontiguousarray(loud if one_sided else mean), (left, right))


def _strength(samples: Samples) -> float:
    """Root mean square without the offset."""
    return float(np.std(samples)) if samples.size else 0.0


def _quiet_place(sound: npt.NDArray[np.float32]) -> int:
    """Middle of the quietest half second in the last part of the block, as a sample index."""
    hush = int(HUSH_S * RATE_HZ)
    tail = min(int(SEARCH_S * RATE_HZ), sound.shape[1] // 2)
    start = sound.shape[1] - tail
    if tail < 2 * hush:
        return int(sound.shape[1])
    loudness = (sound[:, start:].astype(np.float64) ** 2).sum(axis=0)
    total = np.concatenate(([0.0], np.cumsum(loudness)))
    window = total[hush:] - total[:-hush]
    return int(start + np.argmin(window)) + hush // 2


def _declared_s(container: av.container.InputContainer) -> float | None:
    """Length that the container itself states; None when it states none, or when it is only a guess."""
    stream = container.streams.audio[0]
    if "mp3" in container.format.name.split(",") or "aac" in container.format.name.split(","):
        return None  # guessed from the size of the file
    if stream.duration and stream.time_base:
        return float(stream.duration) * float(stream.time_base)
    if container.duration and len(container.streams) == 1:
        return float(container.duration) / 1e6  # microseconds
    return None


def _creation_time(container: av.container.InputContainer) -> datetime | None:
    """When the recording says it was made; None when it does not say, or only a day."""
    tags = {**container.streams.audio[0].metadata, **container.metadata}
    spoken = {key.lower(): value.strip() for key, value in tags.items()}
    clock, day = spoken.get("creation_time", ""), spoken.get("date", "")
    for text in (clock, f"{day}T{clock}", day):
        moment = _moment(text)
        if moment and moment.year >= FIRST_YEAR:
            return moment
    return None


def _moment(text: str) -> datetime | None:
    if ":" not in text or "-" not in text:
        return None
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        return None


def _reason(fault: OSError | ValueError) -> str:
    return (getattr(fault, "strerror", None) or str(fault)).lower()
