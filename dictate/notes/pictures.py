"""The pictures of an examination: what was said, drawn; each with its words and a table."""

from __future__ import annotations

from dictate.grammar import Grammar
from dictate.model import Component, Examination
from dictate.notes.body_picture import reflex_picture, strength_picture
from dictate.notes.drawing import Picture
from dictate.notes.field_picture import field_picture
from dictate.notes.series_picture import series_picture


def pictures_of(exam: Examination, grammar: Grammar) -> dict[Component, tuple[Picture, ...]]:
    """Pictures by the component they stand with; only what was dictated is drawn."""
    drawn = {
        Component.GENERAL: series_picture(exam, grammar),
        Component.CRANIAL_NERVES: field_picture(exam, grammar),
        Component.MOTOR: strength_picture(exam, grammar),
        Component.REFLEXES: reflex_picture(exam, grammar),
    }
    return {component: (picture,) for component, picture in drawn.items() if picture is not None}
