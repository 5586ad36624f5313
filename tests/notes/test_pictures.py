"""The pictures of an examination."""

from __future__ import annotations

from by_hand import examination, reflex
from hypothesis import HealthCheck, given, settings
from notes.exams import examinations

from dictate.grammar import Grammar, load_grammar
from dictate.model import Component, Examination, Side
from dictate.notes.pictures import pictures_of


def test_picture_stands_with_its_component(grammar: Grammar) -> None:
    """And only where something was dictated."""
    drawn = pictures_of(examination(reflex("reflex_biceps", "2+", side=Side.LEFT)), grammar)
    assert [(component, len(pictures)) for component, pictures in drawn.items()] == [(Component.REFLEXES, 1)]
    assert pictures_of(examination(), grammar) == {}


@settings(max_examples=12, deadline=None, suppress_health_check=(HealthCheck.too_slow, HealthCheck.data_too_large))
@given(exam=examinations(load_grammar(), most=10))
def test_any_examination_can_be_drawn(exam: Examination) -> None:
    """With as many cells in every row as there are columns."""
    for pictures in pictures_of(exam, load_grammar()).values():
        for picture in pictures:
            assert picture.description
            assert {len(row) for row in picture.rows} == {len(picture.columns)}
