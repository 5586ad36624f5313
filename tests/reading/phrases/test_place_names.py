"""A place that is the subject of a sentence, or only where something else was found."""

from __future__ import annotations

import pytest


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Pinprick on the face is symmetric.", ["pinprick both face normal"]),
        ("Face is symmetric to pinprick.", ["pinprick both face normal"]),
        ("Face is symmetric.", ["facial_strength normal"]),
    ],
)
def test_places_and_subjects(rows, text, wanted):
    """Behind a preposition a place is no subject; English grammar, no source."""
    assert rows(text) == wanted
