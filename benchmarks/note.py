"""Time and memory of a recording's way to its note, against the plain default of the library underneath.

Use: python benchmarks/note.py [RECORDING] [--rounds N]

Both ways run in processes of their own, in turn, with the same model, the same number type and the same number of
threads; loading is not counted. The ratio holds on any machine, the seconds only on the one they were taken on.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from typing import Any

RECORDING = Path(__file__).parent.parent / "demo_audio" / "clinic-examination.flac"
MOST_RATIO = 1.2  # with every check on
MOST_BIASED = 0.8  # hearing with what the decoder knows of the trade, the second hearing and mending; no other check
MOST_OUTSIDE = 0.05  # share of the time that may go to anything but recognition
ENGINE = {
    "find speech": "spans", "encode": "encode", "decode": "decode", "align": "align", "weigh values": "weigh",
    "language": "language",
}  # fmt: skip
AGAIN, MENDING = "hear again", "weigh mended"  # parts of those stages that are told apart
RECOGNITION = (*ENGINE, AGAIN, MENDING)
OUTSIDE = ("decode audio", "read", "reckon and check", "write note")
BYTES = 1 if sys.platform == "darwin" else 1024  # unit of ru_maxrss


def main() -> int:
    """Run both ways in turn, print what they took; 1 when a limit is broken."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("recording", nargs="?", type=Path, default=RECORDING)
    parser.add_argument("--rounds", type=int, default=1, help="runs of each way; the quickest of each counts")
    parser.add_argument("--way", choices=sorted(WAYS), help=argparse.SUPPRESS)
    given = parser.parse_args()
    if given.way:
        print(json.dumps(WAYS[given.way](given.recording)))
        return 0
    runs = [{way: _apart(way, given.recording) for way in WAYS} for _ in range(given.rounds)]
    own, plain = (min((run[way] for run in runs), key=lambda run: run["total_s"]) for way in ("note", "library"))
    return report(given.recording, own, plain)


def report(recording: Path, own: dict[str, Any], plain: dict[str, Any]) -> int:
    """Print one line per figure; 1 when a limit is broken."""
    ratio = own["total_s"] / plain["total_s"]
    outside = sum(own["stages"].get(stage, 0.0) for stage in OUTSIDE) / own["total_s"]
    print(f"recording           {recording.name}, {own['length_s']:.0f} s")
    print(f"model               {own['model']}, int8, {own['threads']} threads")
    print(f"note                {own['total_s']:.1f} s, real-time factor {own['total_s'] / own['length_s']:.3f}")
    print(f"library's default   {plain['total_s']:.1f} s, real-time factor {plain['total_s'] / own['length_s']:.3f}")
    print(f"ratio               {ratio:.2f} (at most {MOST_RATIO})")
    biased = own["biased_s"] / plain["total_s"]
    print(f"biased decode       {own['biased_s']:.1f} s with mending, ratio {biased:.2f} (at most {MOST_BIASED})")
    print(f"peak memory         note {own['peak_mb']:.0f} MB, library's default {plain['peak_mb']:.0f} MB")
    for stage in ("decode audio", *RECOGNITION, *OUTSIDE[1:]):
        seconds = own["stages"].get(stage, 0.0)
        print(f"  {stage:18}{seconds:7.2f} s {seconds / own['total_s']:6.1%}")
    print(f"outside recognition {outside:.1%} (at most {MOST_OUTSIDE:.0%})")
    return int(ratio > MOST_RATIO or biased > MOST_BIASED or outside > MOST_OUTSIDE)


def note(recording: Path) -> dict[str, Any]:
    """Hear, read, check and write the note; time of every stage."""
    from dictate.checks import run_checks
    from dictate.grammar import load_grammar
    from dictate.hearing import Engine
    from dictate.notes import write_note
    from dictate.pipeline import examine_transcript, hints_of
    from dictate.reading import read, transcript_of_text

    stages: Counter[str] = Counter()
    mending = _parts_told_apart(stages)
    grammar = load_grammar()
    engine = _watched(Engine(offline=True), stages)
    engine.load()
    examine_transcript(transcript_of_text("Gait normal."), grammar=grammar)  # what is loaded once
    stages.clear()
    mending.clear()
    begin = time.perf_counter()
    transcript = engine.hear(recording, hints=hints_of(grammar))
    heard = time.perf_counter()
    stages["decode audio"] = heard - begin - sum(stages.values())  # and what is left of hearing: cutting, joining
    exam = examine_transcript(transcript, grammar=grammar, weigher=engine)
    examined = time.perf_counter()
    write_note(exam, grammar)
    end = time.perf_counter()
    stages["write note"] = end - examined
    stages["reckon and check"] = _took(lambda: run_checks(exam, grammar))
    weighed = stages["weigh values"] + stages[MENDING]
    stages["read"] = max(
        examined - heard - weighed - stages["reckon and check"], _took(lambda: read(transcript, grammar))
    )
    return {
        "total_s": end - begin,
        "biased_s": heard - begin + sum(mending),
        "length_s": transcript.sources[0].duration_s,
        "model": engine.identity.name,
        "threads": engine.threads,
        "peak_mb": _peak_mb(),
        "stages": dict(stages),
    }


def library(recording: Path) -> dict[str, Any]:
    """What the library makes of the recording when nothing is set but the times of words."""
    from faster_whisper import WhisperModel

    from dictate.hearing import Engine

    engine = Engine(offline=True)
    whisper = WhisperModel(
        str(engine.model.folder), device="cpu", compute_type="int8", cpu_threads=engine.threads, local_files_only=True
    )
    begin = time.perf_counter()
    segments, _ = whisper.transcribe(str(recording), word_timestamps=True)
    words = sum(len(segment.words or ()) for segment in segments)
    return {"total_s": time.perf_counter() - begin, "words": words, "peak_mb": _peak_mb()}


WAYS: dict[str, Callable[[Path], dict[str, Any]]] = {"note": note, "library": library}


def _apart(way: str, recording: Path) -> dict[str, Any]:
    """One way in a process of its own, so that its memory can be told."""
    run = subprocess.run(
        [sys.executable, __file__, str(recording), "--way", way], stdout=subprocess.PIPE, text=True, check=True,
        env={**os.environ, "PYTHONWARNINGS": "ignore"},
    )  # fmt: skip
    found: dict[str, Any] = json.loads(run.stdout.splitlines()[-1])
    return found


def _watched(engine: Any, stages: Counter[str]) -> Any:
    """The engine, with the time of each of its stages added up."""
    for stage, name in ENGINE.items():
        setattr(engine, name, _timed(getattr(engine, name), stage, stages))
    return engine


def _timed(work: Callable[..., Any], stage: str, stages: Counter[str]) -> Callable[..., Any]:
    def timed(*given: Any, **options: Any) -> Any:
        begin = time.perf_counter()
        try:
            return work(*given, **options)
        finally:
            stages[stage] += time.perf_counter() - begin

    return timed


def _parts_told_apart(stages: Counter[str]) -> list[float]:
    """Tell the second hearing and the weighing of mended words from the first of either; the seconds of mending."""
    took: list[float] = []
    hearing, reading = import_module("dictate.hearing.hear"), import_module("dictate.reading.read")
    hearing.fill_gaps = _moved(hearing.fill_gaps, AGAIN, stages, [])  # type: ignore[attr-defined]
    reading.mend = _moved(reading.mend, MENDING, stages, took)  # type: ignore[attr-defined]
    return took


def _moved(work: Callable[..., Any], stage: str, stages: Counter[str], took: list[float]) -> Callable[..., Any]:
    """The work, with what it adds to the engine's stages moved to a stage of its own."""

    def moved(*given: Any, **options: Any) -> Any:
        before, begin = Counter(stages), time.perf_counter()
        result = work(*given, **options)
        took.append(time.perf_counter() - begin)
        for name in ENGINE:
            stages[stage] += stages[name] - before[name]
            stages[name] = before[name]
        return result

    return moved


def _took(work: Callable[[], object]) -> float:
    begin = time.perf_counter()
    work()
    return time.perf_counter() - begin


def _peak_mb() -> float:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * BYTES / 1e6


if __name__ == "__main__":
    sys.exit(main())
