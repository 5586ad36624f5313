"""Examination → the lines of its note, before they become text or a page."""

from __future__ import annotations

from by_hand import examination, figure, finding, query, reflex

from dictate.grammar import Grammar
from dictate.model import Component, Side, Status
from dictate.notes.layout import lay_out


def test_every_component_has_its_lines(small: Grammar) -> None:
    """All seven in their order, empty where nothing was dictated."""
    layout = lay_out(examination(reflex("reflex_biceps", "2+")), small)
    assert [(component, len(lines)) for component, lines in layout.components.items()] == [
        (component, int(component is Component.REFLEXES)) for component in Component
    ]


def test_every_finding_stands_once(small: Grammar) -> None:
    """None lost and none doubled, brief or not."""
    exam = examination(
        reflex("reflex_biceps", "2+", side=Side.LEFT), finding(Component.GENERAL, "lungs", Status.NORMAL),
        finding(Component.GENERAL, "lungs", Status.ABNORMAL),
        finding(Component.SENSORY, "vibration", Status.NOT_EXAMINED),
    )  # fmt: skip
    for brief in (True, False):
        lines = [line for lines in lay_out(exam, small, brief=brief).components.values() for line in lines]
        assert sorted(at for line in lines for at in line.findings) == [0, 1, 2, 3]


def test_marks_stand_with_their_finding(small: Grammar) -> None:
    """The number of the query."""
    exam = examination(reflex("reflex_biceps", "2+"), queries=(query(findings=(0,)),))
    assert lay_out(exam, small).components[Component.REFLEXES][0].parts[0].marks == (1,)


def test_figures_without_a_line_are_kept(small: Grammar) -> None:
    """Apart from every component."""
    assert lay_out(examination(figures=(figure("sum 4"),)), small).loose == ("sum 4",)


def test_brief_says_what_was_not_examined(small: Grammar) -> None:
    """Shorter, and nothing hidden."""
    exam = examination(
        finding(Component.GENERAL, "lungs", Status.NOT_EXAMINED),
        finding(Component.GENERAL, "cyanosis", Status.NOT_EXAMINED),
    )
    line = lay_out(exam, small, brief=True).components[Component.GENERAL][0]
    assert (line.label, [part.text for part in line.parts]) == ("Not examined:", ["lungs", "cyanosis"])


def test_brief_keeps_apart_what_stands_out(grammar: Grammar) -> None:
    """An absent reflex is no plain denial: it has its own line, not a place among what was denied."""
    exam = examination(
        finding(Component.CRANIAL_NERVES, "gag", Status.ABSENT),
        finding(Component.CRANIAL_NERVES, "ptosis", Status.ABSENT),
    )
    lines = lay_out(exam, grammar, brief=True).components[Component.CRANIAL_NERVES]
    assert [line.text for line in lines] == ["IX/X Gag reflex: absent", "Absent: ptosis"]
