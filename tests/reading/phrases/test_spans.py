"""Phrases → marks in order: the longest win, numbers join what they count."""

from __future__ import annotations

import pytest

from dictate.reading.marks import Mark, Number, Role
from dictate.reading.phrases.spans import dermatomes, fill, longest_first


@pytest.mark.parametrize(
    ("phrase", "key"),
    [
        ("level at T10", "t10"),
        ("level at T ten", "t10"),
        ("level at t-10", "t10"),
        ("level at T four", "t4"),
        ("reduced at C7", "c7"),
        ("reduced at C seven", "c7"),
        ("reduced at L5", "l5"),
        ("reduced at S1", "s1"),
        ("reduced below L one", "l1"),
    ],
)
def test_a_dermatome_however_it_is_written(cut, phrase, key):
    """Letter and number together, apart, hyphenated or spoken."""
    (mark,) = dermatomes(cut(phrase))
    assert mark.role("dermatome").key == key
    assert mark.role("site").key == key


@pytest.mark.parametrize("phrase", ["T13", "C9", "L6", "S6", "T zero", "heart sounds s one s two", "E4", "T 2+"])
def test_what_is_no_dermatome(cut, phrase):
    """No such segment, a heart sound, another scale, a grade."""
    assert list(dermatomes(cut(phrase))) == []


def test_the_longest_phrase_wins():
    """ "right upper limb" before "right" and "limb"; what it leaves stays."""
    long, short, other = Mark(0, 3, (Role("a"),)), Mark(0, 1, (Role("b"),)), Mark(3, 4, (Role("c"),))
    assert longest_first([short, other, long], 4) == [long, other]


def test_of_equal_phrases_the_earlier_wins():
    """Two overlapping phrases of the same length."""
    one, two = Mark(0, 2, (Role("a"),)), Mark(1, 3, (Role("b"),))
    assert longest_first([two, one], 3) == [one]


def test_two_meanings_of_the_same_words_are_one_mark():
    """Roles add up."""
    one, two = Mark(0, 1, (Role("a"),)), Mark(0, 1, (Role("b"),), Number(a=1))
    (mark,) = longest_first([one, two], 1)
    assert [role.kind for role in mark.roles] == ["a", "b"]
    assert mark.number == Number(a=1)


def test_every_token_gets_a_mark(cut):
    """Words that no phrase took are words, punctuation is punctuation."""
    tokens = cut("zebra, gait; stripes.")
    filled = fill([Mark(2, 3, (Role("item", "gait"),))], tokens)
    assert [(mark.text, mark.roles[0].kind) for mark in filled] == [
        ("zebra", "word"),
        (",", "comma"),
        ("gait", "item"),
        (";", "semicolon"),
        ("stripes", "word"),
        (".", "stop"),
    ]


@pytest.mark.parametrize(
    ("phrase", "kind", "value"),
    [
        ("three minutes", "minutes", 3),
        ("1 min", "minutes", 1),
        ("one and a half minutes", "minutes", 1.5),
        ("six weeks", "time_span", 6),
        ("two hours", "time_span", 2),
    ],
)
def test_a_number_joins_the_time_it_counts(marks, phrase, kind, value):
    """Minutes are minutes; longer spans are no standing time."""
    (mark,) = marks(phrase)
    assert (mark.has(kind), mark.number.a) == (True, value)


@pytest.mark.parametrize(
    ("phrase", "item"),
    [
        ("cranial nerves two to twelve", "cranial_nerves_2_12"),
        ("cranial nerves two through twelve", "cranial_nerves_2_12"),
        ("cranial nerves 2-12", "cranial_nerves_2_12"),
        ("cranial nerves II to XII", "cranial_nerves_2_12"),
        ("CN II-XII", "cranial_nerves_2_12"),
        ("cranial nerves three to six", "cranial_nerves_3_6"),
    ],
)
def test_a_range_of_cranial_nerves_is_one_blanket(marks, phrase, item):
    """Spoken, in digits, in Roman numbers."""
    (mark,) = marks(phrase)
    assert mark.role("item").item == item


@pytest.mark.parametrize("phrase", ["cranial nerves five and seven", "cranial nerves V and VII"])
def test_some_nerves_are_not_all(marks, phrase):
    """Two nerves by name are no blanket over the component."""
    (mark,) = marks(phrase)
    assert not mark.has("item", "heading")


def test_an_impossible_range_is_no_blanket(marks):
    """There is no thirteenth nerve."""
    assert not any(
        role.item.startswith("cranial_nerves_2")
        for mark in marks("cranial nerves two to thirteen")
        for role in mark.roles
    )
