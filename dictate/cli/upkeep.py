"""`dictate grammar check` and `dictate doctor`: is everything in order, and what to do when it is not."""

from __future__ import annotations

import sys
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Annotated

import typer

FAULT = 1
PARTS = ("faster-whisper", "ctranslate2", "av", "spacy", "pydantic", "PyYAML", "typer", "rich")


def check(
    folder: Annotated[Path | None, typer.Argument(metavar="[FOLDER]", help="Your own grammar files.")] = None,
) -> None:
    """Validate grammar files and run their examples.

    Example: dictate grammar check my-phrases
    """
    from dictate.cli.asked import open_grammar
    from dictate.examples import report, run_examples

    status = report(run_examples(open_grammar(folder)))
    if status:
        raise typer.Exit(status)


def doctor() -> None:
    """Say what is installed, which speech model is used, what is missing and how to get it.

    Example: dictate doctor
    """
    from dictate.cli.asked import open_grammar
    from dictate.hearing import describe_models, fetch_from_hub
    from dictate.settings import PROGRAM, cache_folder, user_grammar_folder

    print(f"{PROGRAM} {_version(PROGRAM)}, Python {sys.version.split()[0]}")
    for part in PARTS:
        print(f"  {part} {_version(part)}")
    print(f"cache: {cache_folder()}")
    states = [(report.state, report.text) for report in describe_models(fetch=fetch_from_hub)]
    for state, text in states:
        print(f"{state}: {text}")
    grammar = open_grammar(None)
    own = user_grammar_folder()
    print(f"grammar: {len(grammar.items)} items, SHA-256 {grammar.sha256[:12]}...")
    print(f"own phrases: {own}{'' if own.is_dir() else ' (none yet)'}")
    if any(state in ("missing", "damaged") for state, _ in states):
        raise typer.Exit(FAULT)


def _version(part: str) -> str:
    try:
        return version(part)
    except PackageNotFoundError:
        return "missing: pip install dictate"
