"""Folders and names that everything else may rely on."""

from __future__ import annotations

import os
import tomllib
from pathlib import Path

import platformdirs

from dictate.errors import InputError

PROGRAM = "dictate"
DEFAULT_MODEL = "base"


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
