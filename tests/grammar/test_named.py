"""Named scales, conditions and which way is better."""

from __future__ import annotations

import pytest
from by_hand import finding

from dictate.grammar import Grammar, better_way, conditions_of, name_detail, scale_named
from dictate.model import Finding, Grade, Score, Status


def score(item: str, grammar: Grammar, *detail: str) -> Finding:
    """A score with that said of it."""
    return finding(grammar.component_of(item), item, Status.MEASURED, value=Score(points=2), detail=detail)


def test_scale_by_its_name(grammar: Grammar) -> None:
    """The note's name, the detail that said it; another item names none."""
    one = score("named_score", grammar, "with help", "Hoehn & Yahr")
    assert (scale_named(one, grammar), name_detail(one, grammar)) == ("Hoehn and Yahr stage", "Hoehn & Yahr")
    assert scale_named(score("recall", grammar, "MMSE"), grammar) == ""


@pytest.mark.parametrize(
    ("item", "detail", "way"),
    [("recall", (), 1), ("nihss_total", (), -1), ("heart_rate", (), 0), ("named_score", ("mRS score",), -1),
     ("named_score", (), 0), ("cognitive_total", ("MoCA",), 1), ("cognitive_total", ("total",), 0)],
)  # fmt: skip
def test_which_way_is_better(item: str, detail: tuple[str, ...], way: int, grammar: Grammar) -> None:
    """Of the item, or of the scale it names; 0 where nothing says so."""
    assert better_way(score(item, grammar, *detail), grammar) == way


@pytest.mark.parametrize(("scale", "way"), [("mrc", 1), ("ashworth", -1), ("tendon_reflex", 0), ("levine", 0)])
def test_which_grades_are_better(scale: str, way: int, grammar: Grammar) -> None:
    """A grade follows its scale: more reflex is neither."""
    one = finding(grammar.component_of("tone"), "tone", Status.MEASURED, value=Grade(scale=scale, grade="1"))
    assert better_way(one, grammar) == way


def test_conditions(grammar: Grammar) -> None:
    """By the grammar's names, in its order; other words are none."""
    assert conditions_of(score("visual_acuity", grammar, "near", "tired", "with glasses"), grammar) == (
        "corrected",
        "near",
    )


def test_no_phrase_means_two_conditions(grammar: Grammar) -> None:
    """A phrase stands in one list, and a term in one scale."""
    said = [phrase for phrases in grammar.common.conditions.values() for phrase in phrases]
    assert len(said) == len(set(said))
    for item in grammar.items.values():
        terms = [term.lower() for scale in item.named.values() for term in scale.terms]
        assert len(set(terms)) >= len(terms) - 1  # MOCA and MoCA: as it is heard and as it is written
