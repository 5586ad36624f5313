"""Every `examples:` entry through read() and run_checks()."""

from __future__ import annotations

import pytest

from dictate.examples import Outcome, main, report, run_examples
from dictate.grammar import ComponentFile, Example, Expected, Grammar
from dictate.model import Component


def with_example(grammar: Grammar, example: Example) -> list[Outcome]:
    """Run one example at the biceps reflex."""
    part = grammar.components[Component.REFLEXES]
    item = part.items["reflex_biceps"].model_copy(update={"examples": (example,)})
    alone = ComponentFile(component=part.component, headings=part.headings, items={**part.items, "reflex_biceps": item})
    changed = grammar.model_copy(update={"components": {**grammar.components, Component.REFLEXES: alone}})
    return [one for one in run_examples(changed, [Component.REFLEXES]) if one.item == "reflex_biceps"]


SAY = "biceps reflex two plus on the right"


@pytest.mark.parametrize(
    ("example", "faults"),
    [
        (Example(say=SAY, find=(Expected(side="right", value="2+"),)), ()),
        (Example(say=SAY, find=(Expected(side="right"),)), ()),
        (
            Example(say=SAY, find=(Expected(side="left", value="2+"),)),
            ("missing item=reflex_biceps side=left value=2+",
             "unexpected item=reflex_biceps side=right status=measured value=2+"),
        ),
        (Example(say=SAY), ("unexpected item=reflex_biceps side=right status=measured value=2+",)),
        (
            Example(say=SAY, find=(Expected(side="right", value="2+"),), ask=("contradiction",)),
            ("not asked: contradiction",),
        ),
        (Example(say="biceps two plus", under=Component.REFLEXES, find=(Expected(value="2+"),), ask=("side-missing",)),
         ()),
    ],
)  # fmt: skip
def test_example(grammar: Grammar, example: Example, faults: tuple[str, ...]) -> None:
    """Missing, unexpected and not asked are each told."""
    assert [one.faults for one in with_example(grammar, example)] == [faults]


def test_report_counts_per_file(capsys: pytest.CaptureFixture[str]) -> None:
    """Failures first, one line each; then a count per file."""
    good = Outcome(Component.MOTOR, "tone", Example(say="tone normal"), ())
    bad = Outcome(Component.MOTOR, "tone", Example(say="tone up", under=Component.MOTOR), ("missing item=tone",))
    assert report([good, bad]) == 1
    assert capsys.readouterr().out.splitlines() == [
        'motor.yaml: tone: "tone up" (under motor): missing item=tone',
        "motor.yaml: 1 of 2 examples as expected",
    ]
    assert report([good]) == 0


def test_a_file_without_examples(capsys: pytest.CaptureFixture[str]) -> None:
    """A name that is no component's file is told."""
    assert main(["nonsense.yaml"]) == 1
    assert "nonsense.yaml: no component's grammar file" in capsys.readouterr().err


@pytest.mark.parametrize("component", Component)
def test_every_example_of_the_grammar(grammar: Grammar, component: Component) -> None:
    """What the files promise is what the reader does."""
    failed = [str(outcome) for outcome in run_examples(grammar, [component]) if outcome.faults]
    assert not failed, "\n".join(failed)
