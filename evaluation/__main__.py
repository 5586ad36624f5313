"""`python -m evaluation speak | run | ablate | cut`: spoken variants of dictations, and how well they are heard.

speak FOLDER    every text of evaluation/dictations (or of --texts) in --voices and --conditions
run FOLDER      hear every recording of the folder and print a table; a department's own recordings too: NAME.wav beside
                NAME.gold.csv (columns of findings.csv) or NAME.txt
ablate FOLDER   the same, with each mechanism off by itself
cut FOLDER      how often words cut out of what was heard are noticed as lost, and how often a loss is seen without one
"""

from __future__ import annotations

import argparse
import shutil
import sys
from pathlib import Path

from evaluation.sound import CONDITIONS, write_wave
from evaluation.voices import REPORTING, SETTING, dictation

DICTATIONS = Path(__file__).parent / "dictations"


def main() -> int:
    """Do what the first word says."""
    parser = argparse.ArgumentParser(prog="python -m evaluation", description=(__doc__ or "").split("\n", 1)[0])
    parser.add_argument("action", choices=("speak", "run", "ablate", "cut"))
    parser.add_argument("folder", type=Path)
    parser.add_argument("--texts", type=Path, default=DICTATIONS, help="folder of NAME.txt, one statement a line")
    parser.add_argument(
        "--voices", default="reporting", help="setting, reporting, or names like flite:slt,espeak:en-us"
    )
    parser.add_argument("--conditions", default="clean", help=", ".join(CONDITIONS))
    parser.add_argument("--pace", type=float, default=1.0)
    parser.add_argument("--model", help="name or folder of a model")
    parser.add_argument("--faults", action="store_true", help="name every finding that is wrong without a query")
    given = parser.parse_args()
    if given.action == "speak":
        return speak(given)
    if given.action == "cut":
        from dictate.hearing import Engine
        from evaluation import cuts

        print(cuts.table(cuts.measure(given.folder, Engine(given.model, offline=True))))
        return 0
    from evaluation.run import WAYS, evaluate, table

    found = evaluate(given.folder, model=given.model, ways=tuple(WAYS) if given.action == "ablate" else ("all",))
    print(table(found["all"]))
    if given.action == "ablate":
        print("\n" + table({way: groups["all"] for way, groups in found.items() if groups}))
    if given.faults and found["all"]:
        print("\n".join(found["all"]["all"].faults))
    return 0


def speak(given: argparse.Namespace) -> int:
    """Write NAME__VOICE__CONDITION.wav for each, and NAME.txt beside them."""
    voices = {"setting": SETTING, "reporting": REPORTING}.get(given.voices) or given.voices.split(",")
    given.folder.mkdir(parents=True, exist_ok=True)
    for text in sorted(given.texts.glob("*.txt")):
        shutil.copyfile(text, given.folder / text.name)
        statements = [line for line in text.read_text(encoding="utf-8").splitlines() if line.strip()]
        for voice in voices:
            for condition in given.conditions.split(","):
                name = f"{text.stem}__{voice.replace(':', '-')}__{condition}"
                path = given.folder / f"{name}.wav"
                try:
                    write_wave(path, dictation(statements, voice, pace=given.pace, condition=condition))
                except ModuleNotFoundError as fault:
                    print(f"{voice}: {fault.name} is not installed: left out", file=sys.stderr)
                    continue
                print(path.name)
    return 0


if __name__ == "__main__":
    sys.exit(main())
