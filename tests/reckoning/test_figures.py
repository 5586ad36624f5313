"""The front door of reckoning."""

from __future__ import annotations

from reckoning.series import coma, muscles, series

from dictate.reckoning import reckon


def test_figures_come_in_fixed_order_with_a_source():
    """Pressures, posture, scales; every figure but a refusal names its source and its findings."""
    findings = (*coma(4, 5, 6), *muscles("5 5 5 5 5 5", "5 5 5 5 5 5"), *series("supine 150/85, 65 > 3 min 106/66, 73"))
    figures = reckon(findings)
    assert [figure.name for figure in figures] == [
        "mean arterial pressure",
        "mean arterial pressure",
        "postural change",
        "orthostatic hypotension criterion",
        "fall of 30 systolic",
        "postural heart-rate criterion",
        "rate to pressure ratio",
        "coma scale sum",
        "muscle sum score",
    ]
    assert all(figure.source and figure.inputs for figure in figures)


def test_nothing_said_nothing_computed():
    """No findings, no figures."""
    assert reckon(()) == ()


def test_the_postural_demonstration_is_written_in_lines_that_survive_pasting():
    """Every figure of the series is one line of the note; joined to one text, each still says what it speaks of."""
    from by_hand import DEMOS

    from dictate.grammar import load_grammar
    from dictate.notes import write_note
    from dictate.notes.text import WIDTH
    from dictate.pipeline import examine

    grammar = load_grammar()
    exam = examine([DEMOS / "postural-series.txt"], engine=None, grammar=grammar)
    lines = write_note(exam, grammar).splitlines()
    computed = [line.strip().removeprefix("Computed: ") for line in lines if "Computed: " in line]
    assert computed == [figure.text for figure in sorted(exam.figures, key=lambda one: computed.index(one.text))]
    assert len(computed) == len(exam.figures)
    assert all(len(line) <= WIDTH for line in lines)
    assert "Standing at 3 min: from supine -34/-18 mmHg, +17/min; sitting -28/-16 mmHg, +13/min" in computed
    assert "Orthostatic hypotension (fall 20/10): met at 1, 3 and 5 min, most at 1 min (40/20)" in computed
    assert not any(word in " ".join(computed).lower() for word in ("diagnos", "neurogenic", "failure", "syndrome"))


def test_every_figure_has_its_rule():
    """A figure without a row in the table of figures cannot be written."""
    from dictate.reckoning.rules import catalogue

    names = {one.name for one in catalogue()}
    readings = series("supine 150/85, 65 > 10 s 100/60, 80 > 3 min 106/66, 73")
    assert {figure.name for figure in reckon(readings, scope="dizziness")} <= names
