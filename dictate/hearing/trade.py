"""What the decoder learns of the trade: low-rank changes added to the weights of Whisper base, once, in the cache."""

from __future__ import annotations

import hashlib
import json
import shutil
import struct
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

import numpy as np

from dictate.errors import MachineError

ADAPTER = Path(__file__).with_name("trade.npz")
# Half of what is in the file, which was mixed for it: at full strength the decoder hears terms in ordinary talk.
STRENGTH = 0.5
RANK_SCALE = 2.0  # the factor the changes were learnt with
RECORD = "made.json"  # digests of what the model was made from, and of what was made
HALF = 4  # the file's number for 16-bit floats


@dataclass(frozen=True)
class Place:
    """Where one matrix lies in the file of weights."""

    offset: int
    shape: tuple[int, ...]
    kind: int


def adapter_sha256() -> str:
    """SHA-256 of the adapter that comes with the program."""
    return hashlib.sha256(ADAPTER.read_bytes()).hexdigest()


def adapt(base: Path, base_sha256: str, out: Path) -> None:
    """Copy the model of `base` to the new folder `out` with the adapter added to its decoder."""
    out.mkdir()
    for file in base.iterdir():
        if file.is_file() and file.name != RECORD:
            shutil.copyfile(file, out / file.name)
    with np.load(ADAPTER) as changes, (out / "model.bin").open("r+b") as weights:
        places = dict(_places(weights))
        for name in sorted({key.rsplit("|", 1)[0] for key in changes.files}):
            place = places.get(name.replace("|", "/") + "/weight")
            if place is None or place.kind != HALF or len(place.shape) != 2:
                raise MachineError(f"model {base}: does not fit the adapter: use --model base-plain")
            change = changes[f"{name}|B"].astype(np.float32) @ changes[f"{name}|A"].astype(np.float32)
            _add(weights, place, STRENGTH * RANK_SCALE * change)
    record = {"base": base_sha256, "adapter": adapter_sha256(), "strength": STRENGTH, "model.bin": _sha256(out)}
    (out / RECORD).write_text(json.dumps(record), encoding="utf-8")


def adapted_sha256(folder: Path, base_sha256: str) -> str | None:
    """SHA-256 of an adapted model that is whole and was made from this base and adapter; None otherwise."""
    try:
        record = json.loads((folder / RECORD).read_text(encoding="utf-8"))
        made_from = {"base": base_sha256, "adapter": adapter_sha256(), "strength": STRENGTH}
        if not isinstance(record, dict) or any(record.get(key) != value for key, value in made_from.items()):
            return None
        sha256 = _sha256(folder)
    except (OSError, ValueError):
        return None
    return sha256 if sha256 == record.get("model.bin") else None


def _add(weights: BinaryIO, place: Place, change: np.ndarray) -> None:
    count = place.shape[0] * place.shape[1]
    weights.seek(place.offset)
    old = np.frombuffer(weights.read(2 * count), np.float16).reshape(place.shape)
    weights.seek(place.offset)
    weights.write((old.astype(np.float32) + change).astype(np.float16).tobytes())


def _places(weights: BinaryIO) -> Iterator[tuple[str, Place]]:
    """Name and place of every matrix in a file of CTranslate2 weights."""
    _number(weights, "I")  # version of the format
    _text(weights)  # kind of model
    _number(weights, "I")  # its revision
    for _ in range(_number(weights, "I")):
        name = _text(weights)
        shape = tuple(_number(weights, "I") for _ in range(_number(weights, "B")))
        kind, size = _number(weights, "B"), _number(weights, "I")
        yield name, Place(weights.tell(), shape, kind)
        weights.seek(size, 1)


def _number(file: BinaryIO, code: str) -> int:
    return int(struct.unpack("<" + code, file.read(struct.calcsize("<" + code)))[0])


def _text(file: BinaryIO) -> str:
    return file.read(_number(file, "H"))[:-1].decode()


def _sha256(folder: Path) -> str:
    with (folder / "model.bin").open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()
