"""Folders and names that everything else may rely on."""

from __future__ import annotations

import os
from pathlib import Path

import platformdirs

PROGRAM = "dictate"
DEFAULT_MODEL = "base"


def cache_folder() -> Path:
    """Folder of assembled and downloaded models; `DICTATE_CACHE` overrides it."""
    return Path(os.environ.get("DICTATE_CACHE") or platformdirs.user_cache_dir(PROGRAM))


def user_grammar_folder() -> Path:
    """Folder of the user's own grammar files, read when it exists."""
    return Path(os.environ.get("DICTATE_GRAMMAR") or Path(platformdirs.user_config_dir(PROGRAM)) / "grammars")


def packaged_grammar_folder() -> Path:
    """The grammar that came with the program: in the wheel, else at the top of the checkout."""
    inside = Path(__file__).parent / "grammars"
    return inside if inside.is_dir() else Path(__file__).parent.parent / "grammars"
