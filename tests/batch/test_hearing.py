"""A batch hears what `note` hears: real recordings, cut from the demonstrations."""

from __future__ import annotations

import csv
import functools
import random
import wave
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from by_hand import DEMOS
from sleepers import run, setting

from dictate.grammar import Grammar
from dictate.hearing import Engine
from dictate.hearing.audio import RATE_HZ, Recording
from dictate.model import Examination
from dictate.pipeline import examine

CLOSE_S = 0.02 + 1e-6  # times are whole frames of 0.02 s


def cut(folder: Path, name: str, start_s: float, end_s: float) -> None:
    """A stretch of a demonstration as a recording of its own."""
    samples = next(Recording(DEMOS / f"{name}.flac").blocks()).samples[int(start_s * RATE_HZ) : int(end_s * RATE_HZ)]
    folder.mkdir(exist_ok=True)
    with wave.open(str(folder / f"{name}-{start_s:.0f}.wav"), "wb") as file:
        file.setparams((1, 2, RATE_HZ, 0, "NONE", ""))
        file.writeframes((samples * 32767).astype(np.int16).tobytes())


WHY = ("empty", "not a recording", "cut short")


def spoil(folder: Path) -> None:
    """Recordings that are none."""
    (folder / "empty.wav").touch()
    (folder / "noise.mp3").write_bytes(random.Random(1).randbytes(50_000))
    (folder / "short.flac").write_bytes((DEMOS / "noisy-queries.flac").read_bytes()[:60_000])
    (folder / "text.wav").write_text("Gait normal.", encoding="utf-8")


def same(one: Examination, other: Examination) -> None:
    """Findings and queries are the same, times within 0.02 s."""

    def plain(exam: Examination) -> object:
        return [
            item.model_dump(exclude={"start_s", "end_s", "evidence"}) for item in (*exam.findings, *exam.queries)
        ]  # fmt: skip

    assert plain(one) == plain(other)
    for mine, theirs in zip(one.transcript.words, other.transcript.words, strict=True):
        assert mine.text == theirs.text
        assert mine.start_s == pytest.approx(theirs.start_s, abs=CLOSE_S)


def compared(grammar: Grammar, tmp_path: Path, pieces: list[tuple[str, float, float]], **ways: int) -> None:
    """A batch, and each recording by itself."""
    for name, start_s, end_s in pieces:
        cut(tmp_path / "in", name, start_s, end_s)
    make = functools.partial(Engine, threads=1, offline=True)
    spoil(tmp_path / "in")
    prepared = replace(setting(grammar), make_engine=make)
    tally = run(prepared, tmp_path / "in", tmp_path / "out", **ways)
    assert (tally.done, tally.failed) == (len(pieces), 4)
    with (tmp_path / "out" / "batch.csv").open(encoding="utf-8", newline="") as file:
        said = {row["source"]: row["error"] for row in csv.DictReader(file) if row["error"]}
    assert {source: next((why for why in WHY if why in said[source]), said[source]) for source in said} == {
        "empty.wav": "empty", "noise.mp3": "not a recording", "short.flac": "cut short", "text.wav": "not a recording",
    }  # fmt: skip
    engine = make()
    found = 0
    for path in sorted((tmp_path / "out").glob("*.exam.json")):
        exam = Examination.model_validate_json(path.read_text(encoding="utf-8"))
        alone = examine([tmp_path / "in" / exam.transcript.sources[0].name], engine=engine, grammar=grammar)
        same(exam, alone)
        found += len(exam.findings)
    assert found >= len(pieces)


def test_batch_hears_what_note_hears(grammar: Grammar, tmp_path: Path) -> None:
    """Two recordings, one after the other, and files that no decoder can read beside them."""
    compared(grammar, tmp_path, [("clinic-examination", 11, 20), ("stroke-corrections", 20, 30)])


@pytest.mark.slow
@pytest.mark.enable_socket
def test_workers_hear_what_note_hears(grammar: Grammar, tmp_path: Path) -> None:
    """Four recordings by two processes."""
    names = ["clinic-examination", "stroke-corrections", "postural-series", "noisy-queries"]
    compared(grammar, tmp_path, [(name, 15, 35) for name in names], workers=2)
