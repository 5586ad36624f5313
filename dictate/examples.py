"""Every `examples:` entry of a grammar through read() and run_checks(); `python -m dictate.examples [FILE...]`."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from dictate.errors import DictateError
from dictate.grammar import Example, Expected, Grammar, load_grammar
from dictate.model import Component, Examination, Finding, number_text

KEYS = ("item", "side", "site", "position", "minutes")  # must agree, empty or not
LOOSE = ("status", "value", "unit", "certainty")  # must agree where the example gives them
Row = dict[str, str | None]


@dataclass(frozen=True)
class Outcome:
    """What became of one example."""

    component: Component
    item: str
    example: Example
    faults: tuple[str, ...]  # empty: as expected

    def __str__(self) -> str:
        under = f" (under {self.example.under.value})" if self.example.under else ""
        return f'{self.component.value}.yaml: {self.item}: "{self.example.say}"{under}: {"; ".join(self.faults)}'


def run_examples(grammar: Grammar, components: Iterable[Component] | None = None) -> Iterator[Outcome]:
    """Run the examples of the components (all when None), in the order of the files."""
    for component in Component if components is None else components:
        for item, content in grammar.components[component].items.items():
            for example in content.examples:
                yield Outcome(component, item, example, tuple(_faults(example, item, grammar)))


def main(arguments: Sequence[str]) -> int:
    """Print each failure in one line and a count per file; 1 when an example failed."""
    try:
        grammar = load_grammar()
        components = [Component(Path(name).stem) for name in arguments if Path(name).stem in set(Component)]
        unknown = [name for name in arguments if Path(name).stem not in set(Component)]
    except DictateError as error:
        print(error, file=sys.stderr)
        return 1
    for name in unknown:
        print(f"{name}: no component's grammar file, so it holds no examples", file=sys.stderr)
    if unknown and not components:
        return 1
    return report(run_examples(grammar, components or None))


def report(outcomes: Iterable[Outcome]) -> int:
    """Print failures and counts; 1 when an example failed."""
    ran: Counter[Component] = Counter()
    failed: Counter[Component] = Counter()
    for outcome in outcomes:
        ran[outcome.component] += 1
        if outcome.faults:
            failed[outcome.component] += 1
            print(outcome)
    for component, count in ran.items():
        print(f"{component.value}.yaml: {count - failed[component]} of {count} examples as expected")
    return 1 if failed else 0


def _faults(example: Example, item: str, grammar: Grammar) -> Iterator[str]:
    exam = _exam(example, grammar)
    wanted = [_wanted(expected, item) for expected in example.find]
    got = [_got(finding) for finding in exam.findings]
    for row in wanted:
        match = next((other for other in got if _agree(row, other)), None)
        if match is None:
            yield f"missing {_short(row)}"
        else:
            got.remove(match)
    for row in got:
        yield f"unexpected {_short(row)}"
    for code in example.ask:
        if code not in {query.code for query in exam.queries}:
            yield f"not asked: {code}"


def _exam(example: Example, grammar: Grammar) -> Examination:
    from dictate.checks import run_checks
    from dictate.reading import read, transcript_of_text

    heading = f"{grammar.components[example.under].headings[0]}.\n" if example.under else ""
    transcript = transcript_of_text(heading + example.say)
    reading = read(transcript, grammar)
    exam = Examination(
        program="",
        grammar_sha256=grammar.sha256,
        transcript=transcript,
        findings=reading.findings,
        remarks=reading.remarks,
    )
    return exam.model_copy(update={"queries": run_checks(exam, grammar)})


def _wanted(expected: Expected, item: str) -> Row:
    return {
        "item": expected.item or item,
        "side": expected.side,
        "site": expected.site,
        "position": expected.position,
        "minutes": "" if expected.minutes is None else number_text(expected.minutes),
        "status": expected.status or None,
        "value": expected.value,
        "unit": expected.unit,
        "certainty": expected.certainty or None,
    }


def _got(finding: Finding) -> Row:
    return {
        "item": finding.item,
        "side": finding.side.value if finding.side else "",
        "site": finding.site,
        "position": finding.position.value if finding.position else "",
        "minutes": "" if finding.minutes is None else number_text(finding.minutes),
        "status": finding.status.value,
        "value": "" if finding.value is None else str(finding.value),
        "unit": finding.unit,
        "certainty": finding.certainty.value,
    }


def _agree(wanted: Row, got: Row) -> bool:
    return all(wanted[key] == got[key] for key in KEYS) and all(
        wanted[key] is None or wanted[key] == got[key] for key in LOOSE
    )


def _short(row: Row) -> str:
    return " ".join(f"{key}={content}" for key, content in row.items() if content and content != "stated")


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
