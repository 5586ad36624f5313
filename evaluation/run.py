"""Recordings heard and held against what was said: tables of words, numbers, findings and queries."""

from __future__ import annotations

import csv
import io
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from dictate.grammar import DoubtFile, Grammar
from dictate.hearing import Engine
from dictate.model import Examination, Transcript
from dictate.notes import findings_csv, queries_csv
from dictate.pipeline import examine_transcript, hints_of
from dictate.reading import transcript_of_text
from evaluation.compare import Row, Tally, compare_rows, compare_words

SOUNDS = (".wav", ".flac", ".mp3", ".m4a", ".ogg", ".opus", ".webm")
COLUMNS = (
    "group recordings minutes WER terms numbers rows wrong silent silent_must missing must/100 look/100 RTF".split()
)


@dataclass(frozen=True)
class Case:
    """One recording, the text that was spoken (empty: unknown) and the findings it holds."""

    recording: Path
    text: str
    gold: list[Row]
    group: str


def cases(folder: Path, grammar: Grammar) -> Iterator[Case]:
    """Recordings of a folder: NAME.wav with NAME.gold.csv, NAME.txt or both; NAME__VOICE__CONDITION.wav with NAME.txt.

    Without a gold table the findings are those that the text itself gives: what hearing changed is counted alone.
    """
    for path in sorted(path for path in folder.iterdir() if path.suffix.lower() in SOUNDS):
        parts = path.stem.split("__")
        text_file, gold_file = folder / f"{parts[0]}.txt", folder / f"{parts[0]}.gold.csv"
        text = text_file.read_text(encoding="utf-8") if text_file.is_file() else ""
        if gold_file.is_file():
            gold = _table(gold_file.read_text(encoding="utf-8"))
        elif text:
            gold = _table(findings_csv(examine_transcript(transcript_of_text(text), grammar=grammar)))
        else:
            continue
        yield Case(path, text, gold, " ".join(parts[1:]) or path.stem)


def heard(case: Case, engine: Engine, grammar: Grammar) -> tuple[Transcript, float]:
    """The recording's transcript and the seconds it took; what is needed for weighing stays with the engine."""
    begin = time.perf_counter()
    transcript = engine.hear(case.recording, hints=hints_of(grammar))
    return transcript, time.perf_counter() - begin


def score(case: Case, transcript: Transcript, exam: Examination, work_s: float, terms: set[str]) -> Tally:
    """Counts of one recording."""
    tally = Tally(recordings=1, work_s=work_s, sound_s=transcript.sources[0].duration_s or 0.0)
    if case.text:
        compare_words(case.text, transcript.quote(0, len(transcript.words) - 1), terms, tally)
    compare_rows(case.gold, _table(findings_csv(exam)), _table(queries_csv(exam)), tally)
    return tally


def evaluate(folder: Path, *, model: str | None = None, ways: Sequence[str] = ("all",)) -> dict[str, dict[str, Tally]]:
    """Way → group → counts; every recording is heard once and read in each way."""
    from dictate.grammar import load_grammar

    grammar = load_grammar()
    engine = Engine(model, offline=True)
    engine.load()
    terms = terms_of(grammar)
    totals: dict[str, dict[str, Tally]] = {way: {} for way in ways}
    for case in cases(folder, grammar):
        transcript, hearing_s = heard(case, engine, grammar)
        for way in ways:
            begin = time.perf_counter()
            weigher, knowledge, words = WAYS[way](engine, grammar, transcript)
            exam = examine_transcript(words, grammar=knowledge, weigher=weigher)
            tally = score(case, words, exam, hearing_s + time.perf_counter() - begin, terms)
            for group in (case.group, "all"):
                totals[way].setdefault(group, Tally()).add(tally)
        engine.forget()
        print(case.recording.name, file=sys.stderr)
    return totals


def terms_of(grammar: Grammar) -> set[str]:
    """Words of the items' names and terms, plain words of four letters and more."""
    return {
        word.lower()
        for item in grammar.items.values()
        for name in (item.name, *item.terms)
        for word in name.split()
        if word.isalpha() and len(word) > 3
    }


def table(totals: dict[str, Tally]) -> str:
    """Counts as a Markdown table."""
    lines = ["| " + " | ".join(COLUMNS) + " |", "|" + "---|" * len(COLUMNS)]
    for group, tally in totals.items():
        per = 100 / max(1, tally.rows)
        cells = [
            group,
            str(tally.recordings),
            f"{tally.sound_s / 60:.1f}",
            f"{tally.word_errors / max(1, tally.words):.3f}",
            f"{tally.terms_right}/{tally.terms}",
            f"{tally.numbers_right}/{tally.numbers}",
            str(tally.rows),
            str(tally.rows - tally.right),
            str(tally.silent_wrong),
            str(tally.silent_wrong_must),
            str(tally.silent_missing),
            f"{tally.must * per:.1f}",
            f"{tally.look * per:.1f}",
            f"{tally.work_s / max(1e-9, tally.sound_s):.3f}",
        ]
        lines.append("| " + " | ".join(cells) + " |")
    return "\n".join(lines)


def _table(text: str) -> list[Row]:
    return list(csv.DictReader(io.StringIO(text)))


def _without(grammar: Grammar, *, limits: Sequence[str] = (), rivals: bool = False) -> Grammar:
    """The grammar without some limits, or without rivals."""
    doubt = grammar.doubt
    left = {name: limit for name, limit in doubt.limits.items() if name not in limits}
    return grammar.model_copy(update={"doubt": DoubtFile(limits=left, rivals={} if rivals else doubt.rivals)})


def _all(engine: Engine, grammar: Grammar, heard: Transcript) -> tuple[Any, Grammar, Transcript]:
    return engine, grammar, heard


def _no_doubt(engine: Engine, grammar: Grammar, heard: Transcript) -> tuple[Any, Grammar, Transcript]:
    return engine, _without(grammar, rivals=True), heard


def _no_repair(engine: Engine, grammar: Grammar, heard: Transcript) -> tuple[Any, Grammar, Transcript]:
    return engine, _without(grammar, limits=["repair"]), heard


def _no_lean(engine: Engine, grammar: Grammar, heard: Transcript) -> tuple[Any, Grammar, Transcript]:
    return engine, _without(grammar, limits=["lean"]), heard


def _no_omission(engine: Engine, grammar: Grammar, heard: Transcript) -> tuple[Any, Grammar, Transcript]:
    return engine, grammar, heard.model_copy(update={"untranscribed": ()})


def _nothing(engine: Engine, grammar: Grammar, heard: Transcript) -> tuple[Any, Grammar, Transcript]:
    return None, grammar, heard.model_copy(update={"untranscribed": ()})


# Each mechanism off by itself. What a second hearing of a stretch put into the words stays in all of them.
WAYS: dict[str, Callable[[Engine, Grammar, Transcript], tuple[Any, Grammar, Transcript]]] = {
    "all": _all,
    "no doubt about values": _no_doubt,
    "no expectations": _no_lean,
    "no repair": _no_repair,
    "no omission queries": _no_omission,
    "nothing": _nothing,
}
