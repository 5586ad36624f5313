"""Folders and names that everything else may rely on."""

from __future__ import annotations

import contextlib
import os
import re
import shutil
import tempfile
import tomllib
from datetime import datetime, timedelta
from pathlib import Path

import platformdirs

from dictate.errors import InputError

PROGRAM = "dictate"
DEFAULT_MODEL = "base"
CLOCKS_DIFFER = timedelta(minutes=10)


def cache_folder() -> Path:
    """Folder of assembled and downloaded models; `DICTATE_CACHE` overrides it."""
    return Path(os.environ.get("DICTATE_CACHE") or platformdirs.user_cache_dir(PROGRAM))


def records_folder() -> Path:
    """Folder of the saved records; `DICTATE_RECORDS` overrides it."""
    return Path(os.environ.get("DICTATE_RECORDS") or Path(platformdirs.user_data_dir(PROGRAM)) / "records")


def user_grammar_folder() -> Path:
    """Folder of the user's own grammar files, read when it exists."""
    return Path(os.environ.get("DICTATE_GRAMMAR") or Path(platformdirs.user_config_dir(PROGRAM)) / "grammars")


def figures_file() -> Path:
    """The user's choices where sources of computed figures differ, TOML; `DICTATE_FIGURES` overrides it."""
    return Path(os.environ.get("DICTATE_FIGURES") or Path(platformdirs.user_config_dir(PROGRAM)) / "figures.toml")


def figures_settings() -> dict[str, object]:
    """What that file says; empty when there is none. Raises InputError when it cannot be read."""
    path = figures_file()
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return {}
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as fault:
        raise InputError(f"{path}: cannot be read as TOML: {str(fault).splitlines()[0]}") from fault


def sound_folder() -> Path:
    """Folder of dictations as they are spoken, kept until their note is written; `DICTATE_SOUND` overrides it."""
    return Path(os.environ.get("DICTATE_SOUND") or Path(platformdirs.user_state_dir(PROGRAM)) / "dictations")


def microphone_file() -> Path:
    """File that remembers the name of the microphone used last."""
    return Path(platformdirs.user_config_dir(PROGRAM)) / "microphone"


def packaged_grammar_folder() -> Path:
    """The grammar that came with the program: in the wheel, else at the top of the checkout."""
    inside = Path(__file__).parent / "grammars"
    return inside if inside.is_dir() else Path(__file__).parent.parent / "grammars"


def is_to_come(moment: datetime, now: datetime) -> bool:
    """Whether a time lies ahead by more than clocks differ. now: with a zone, which moment has if it names none."""
    latest = now + CLOCKS_DIFFER
    return moment > (latest.replace(tzinfo=None) if moment.tzinfo is None else latest)


def temporary_folder() -> tempfile.TemporaryDirectory[str]:
    """A folder only the user can open (0700), removed when done; its name tells which process it belongs to.

    Those that dead processes left are removed first: a worker of a batch has nobody else to do it.
    """
    clear_temporary_folders()
    return tempfile.TemporaryDirectory(prefix=_of_this_process(), ignore_cleanup_errors=True)


def passing_folder() -> Path:
    """The same, removed by whoever clears up once this process is gone."""
    return Path(tempfile.mkdtemp(prefix=_of_this_process()))


def _of_this_process() -> str:
    return f"{PROGRAM}-{os.getpid()}-"


def rescue_folder() -> Path:
    """A folder only the user can open (0700), for sound that its own disk refused; nobody removes it but the user."""
    return Path(tempfile.mkdtemp(prefix=f"{PROGRAM}-rescued-"))


def clear_temporary_folders() -> list[Path]:
    """Remove the user's temporary folders whose process is gone; rescued sound is kept and comes back."""
    if os.name != "posix":  # elsewhere a process cannot be asked for without ending it
        return []
    rescued = []
    for folder in sorted(Path(tempfile.gettempdir()).glob(f"{PROGRAM}-*")):
        with contextlib.suppress(OSError):
            if folder.is_symlink() or not folder.is_dir() or folder.stat().st_uid != os.getuid():
                continue
            if folder.name.startswith(f"{PROGRAM}-rescued-"):
                rescued.append(folder)
            elif (found := re.match(rf"{PROGRAM}-(\d{{1,9}})-", folder.name)) and not _runs(int(found[1])):
                shutil.rmtree(folder, ignore_errors=True)
    return rescued


def _runs(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except OSError:  # another user's
        return True
    return True
