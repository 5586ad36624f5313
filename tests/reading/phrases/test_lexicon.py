"""Phrases of the grammar, found in a text."""

from __future__ import annotations

import pytest

from dictate.reading.phrases.lexicon import is_preposition


@pytest.mark.parametrize(
    "phrase",
    [
        "Biceps reflex 2+ on the right, 3+ on the left.",
        "Zebra crossing; gait (normal) - 142/84?",
        "cranial nerves II-XII intact, T4 level, right upper extremity 4-/5",
        "no carotid, orbital or temporal bruits",
    ],
)
def test_every_token_is_in_exactly_one_mark(cut, lexicon, phrase):
    """Nothing is lost and nothing is taken twice."""
    tokens = cut(phrase)
    found = lexicon.find(tokens)
    places = [place for mark in found for place in range(mark.start, mark.end)]
    assert places == list(range(len(tokens)))


@pytest.mark.parametrize(
    ("phrase", "kind", "item", "key"),
    [
        ("biceps reflex", "item", "reflex_biceps", ""),
        ("BICEPS REFLEX", "item", "reflex_biceps", ""),
        ("knee jerks", "item", "reflex_patellar", ""),
        ("facial droop", "sign", "facial_strength", ""),
        ("on the left", "side", "", "left"),
        ("bilaterally", "side", "", "both"),
        ("great toe", "site", "", "great_toe"),
        ("lying down", "position", "", "supine"),
        ("cranial nerves", "heading", "", "cranial_nerves"),
        ("strike that", "strike", "", ""),
        ("correction", "correction", "", ""),
        ("no, make that", "correction", "", ""),
        ("the other way round", "swap", "", ""),
        ("possibly", "hedge", "", ""),
        ("except for", "except", "", ""),
        ("not examined", "not_examined", "", ""),
        ("could not be assessed", "not_assessable", "", ""),
        ("no evidence of", "negation", "", ""),
        ("on left gaze", "direction", "", ""),
        ("history of present illness", "section", "", "history"),
    ],
)
def test_a_phrase_is_found_with_its_role(marks, phrase, kind, item, key):
    """Names, sides, sites, positions and the words of every day, in any case."""
    (mark,) = marks(phrase)
    assert any((role.kind, role.item, role.key) == (kind, item, key) for role in mark.roles)


def test_capitals_tell_abbreviations_apart(marks):
    """ "LT" is light touch, "lt" is left."""
    (capitals,), (small,) = marks("LT"), marks("lt")
    assert capitals.role("item").item == "light_touch"
    assert not capitals.has("side")
    assert small.role("side").key == "left"
    assert not small.has("item")


def test_the_longer_phrase_wins(marks):
    """ "Ankle clonus" is clonus, not the ankle jerk."""
    (mark,) = marks("ankle clonus")
    assert {role.item for role in mark.roles if role.kind == "item"} == {"clonus"}


def test_a_phrase_does_not_reach_over_a_full_stop(marks):
    """ "Biceps. Reflex" is not the biceps reflex."""
    assert not any(mark.text == "biceps reflex" or mark.end - mark.start > 2 for mark in marks("Biceps. Reflex"))


def test_words_of_a_list_share_the_noun_at_its_end(marks):
    """ "Carotid or orbital bruits" names both bruits."""
    named = [{role.item for role in mark.roles if role.item} for mark in marks("carotid or orbital bruits")]
    assert "carotid_bruit" in named[0]
    assert "orbital_bruit" in named[-1]


def test_a_name_may_hold_a_site_or_a_position(lexicon):
    """ "Ankle clonus" says where, "symptoms on standing" says in which position."""
    assert lexicon.site_in("ankle clonus") == "ankle"
    assert lexicon.site_in("clonus") == ""
    assert lexicon.position_in("symptoms on standing") == "standing"
    assert lexicon.position_in("symptoms") == ""


def test_prepositions_are_told_from_other_words(marks):
    """ "in" leads to a place, "and" does not."""
    assert [is_preposition(mark) for mark in marks("in zebra and")] == [True, False, False]
