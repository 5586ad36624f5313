"""Visual fields by quadrant; only what the words say without doubt is shaded."""

from __future__ import annotations

import pytest
from by_hand import examination, finding

from dictate.grammar import Grammar
from dictate.model import Certainty, Component, Finding, Side, Status, Text
from dictate.notes.field_picture import field_picture, is_homonymous, lost_quadrants

L, R = Side.LEFT, Side.RIGHT
LEFT_HALVES = {(eye, L, level) for eye in (L, R) for level in ("upper", "lower")}


def field(words: str, side: Side | None = None, **more: object) -> Finding:
    """A defect."""
    more.setdefault("status", Status.ABNORMAL)
    return finding(
        Component.CRANIAL_NERVES, "visual_fields", value=Text(words=words) if words else None, side=side, **more
    )  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("words", "side", "lost"),
    [
        ("homonymous hemianopia", L, LEFT_HALVES),
        ("superior homonymous quadrantanopia", L, {(L, L, "upper"), (R, L, "upper")}),
        ("inferior homonymous quadrantanopia", R, {(L, R, "lower"), (R, R, "lower")}),
        ("bitemporal hemianopia", None, {(e, e, level) for e in (L, R) for level in ("upper", "lower")}),
        ("binasal hemianopia", None, {(L, R, "upper"), (L, R, "lower"), (R, L, "upper"), (R, L, "lower")}),
        ("temporal hemianopia", R, {(R, R, "upper"), (R, R, "lower")}),
        ("nasal hemianopia", R, {(R, L, "upper"), (R, L, "lower")}),
        ("superior altitudinal defect", R, {(R, L, "upper"), (R, R, "upper")}),
        ("homonymous hemianopia", None, set()),
        ("superior quadrantanopia", L, set()),
        ("hemianopia", L, set()),
        ("altitudinal defect", R, set()),
        ("central scotoma", R, set()),
        ("", L, set()),
    ],
)  # fmt: skip
def test_lost_quadrants(words: str, side: Side | None, lost: set[object]) -> None:
    """Eye, half as the patient sees it, level. Left open is left white. Source: definitions of the defects."""
    assert lost_quadrants(field(words, side)) == lost


def test_homonymous_is_said_of_both_eyes() -> None:
    """Its side is the half of the field, not the eye."""
    assert is_homonymous(field("homonymous hemianopia", L))
    assert not is_homonymous(field("homonymous hemianopia"))
    assert not is_homonymous(field("temporal hemianopia", L))


def test_doubt_is_not_shaded() -> None:
    """Nor is a denial."""
    assert not lost_quadrants(field("homonymous hemianopia", L, certainty=Certainty.UNCERTAIN))
    assert not lost_quadrants(field("homonymous hemianopia", L, status=Status.NORMAL))


def test_an_eye_not_spoken_of_is_dashed(grammar: Grammar) -> None:
    """And labelled so."""
    picture = field_picture(examination(field("temporal hemianopia", R)), grammar)
    assert picture
    assert picture.svg.count("stroke-dasharray") == 1
    assert picture.svg.count(">not said<") == 1
    assert picture.rows == (("right temporal hemianopia",),)


def test_nothing_to_draw_is_no_picture(grammar: Grammar) -> None:
    """Fields full without a side say nothing of each eye."""
    assert field_picture(examination(field("", None, status=Status.NORMAL)), grammar) is None
    assert field_picture(examination(field("", Side.BOTH, status=Status.NORMAL)), grammar) is not None
