"""Properties of sums: never from missing parts, the same in any order, and a dictated total is held against them."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st
from reckoning.series import finding

from dictate.checks import run_checks
from dictate.grammar import Grammar
from dictate.grammar.sums import SIDES, SUMS, Sum
from dictate.model import Examination, Finding, Score, Side, Transcript, Word
from dictate.reckoning import reckon

WORDS = Transcript(words=(Word(text="said"),))


def part(grammar: Grammar, item: str, points: float, side: Side | None = None) -> Finding:
    """One part, or one side of it."""
    return finding(item, Score(points=points), component=grammar.component_of(item), side=side)


@st.composite
def one_scale(draw: st.DrawFn, grammar: Grammar) -> tuple[Sum, list[Finding], float]:
    """A scale, all of its parts, and their sum; parts of both sides count their mean."""
    one = draw(st.sampled_from(SUMS))
    parts: list[Finding] = []
    total = 0.0
    for item, (low, high) in one.parts.items():
        sides = SIDES if item in one.sided else (None,)
        points = [float(draw(st.integers(low, high))) for _ in sides]
        parts += [part(grammar, item, number, side) for number, side in zip(points, sides, strict=True)]
        total += sum(points) / len(points)
    return one, parts, total


def sums(one: Sum, findings: list[Finding]) -> list[float]:
    """The sums of that scale; what only says why there is none is no sum."""
    return [f.value for f in reckon(findings) if f.name == one.name and f.value is not None]


def mismatches(findings: list[Finding], grammar: Grammar) -> int:
    """How often a total is asked about."""
    exam = Examination(program="0", grammar_sha256=grammar.sha256, transcript=WORDS, findings=tuple(findings))
    return sum(query.code == "total-mismatch" for query in run_checks(exam, grammar))


def test_a_sum_is_of_all_parts_in_any_order(grammar):
    """And of none when one is missing, whichever it is."""

    @settings(max_examples=40, deadline=None)
    @given(one_scale(grammar), st.randoms(use_true_random=False), st.data())
    def check(scale: tuple[Sum, list[Finding], float], random, data: st.DataObject) -> None:
        one, parts, total = scale
        random.shuffle(parts)
        assert sums(one, parts) == [total]
        gone = data.draw(st.integers(0, len(parts) - 1))
        assert sums(one, [*parts[:gone], *parts[gone + 1 :]]) == []

    check()


def test_a_dictated_total_is_held_against_its_parts(grammar):
    """Equal: nothing asked, nothing repeated. Another: asked. With a part missing: asked only where it cannot be."""

    @settings(max_examples=25, deadline=None)
    @given(one_scale(grammar), st.integers(1, 5), st.data())
    def check(scale: tuple[Sum, list[Finding], float], off: int, data: st.DataObject) -> None:
        one, parts, total = scale
        right, wrong = part(grammar, one.total, total), part(grammar, one.total, total + off)
        assert mismatches([*parts, right], grammar) == 0
        assert sums(one, [*parts, right]) == []
        assert mismatches([*parts, wrong], grammar) == 1
        gone = data.draw(st.integers(0, len(parts) - 1))
        rest = [*parts[:gone], *parts[gone + 1 :]]
        assert mismatches([*rest, right], grammar) == 0
        assert sums(one, [*rest, right]) == []
        assert mismatches([*rest, part(grammar, one.total, float(one.highest + 10))], grammar) == 1

    check()
