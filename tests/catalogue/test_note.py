"""The catalogue of the note's words."""

from __future__ import annotations

from dictate.catalogue import note as words
from dictate.model import Component, Position, RemarkKind, Side, Status


def test_every_kind_has_its_word() -> None:
    """No component, side, position or status can reach the note without a word."""
    assert list(words.COMPONENTS) == list(Component)
    assert set(words.SIDES) == set(Side)
    assert set(words.POSITIONS) == set(Position)
    assert set(words.STATUSES) == set(Status)


def test_statuses_are_told_apart() -> None:
    """No two statuses read alike."""
    assert len(set(words.STATUSES.values())) == len(Status)


def test_only_spoken_sections_are_kept_outside() -> None:
    """Talk and words not placed are no section of a note."""
    assert set(words.SECTIONS) == {RemarkKind.KEPT, RemarkKind.HISTORY, RemarkKind.IMPRESSION, RemarkKind.PLAN}
