"""Words in front of a name that are the name's: a count, a grade, what is denied of it."""

from __future__ import annotations

from dictate.reading.marks import Mark, Role
from dictate.reading.nodes import Node
from dictate.reading.statements.fronts import (
    belong_together,
    counted_of,
    denied,
    graded_at,
    joins,
    of_name,
    opens_clause,
    place_alone,
    wants_task,
)


def nodes(*words: tuple[str, str]) -> list[Node]:
    return [Node(Mark(place, place + 1, (Role(main),), text=text), main) for place, (text, main) in enumerate(words)]


def test_a_count_with_of_is_of_what_is_named_behind_it() -> None:
    assert counted_of(nodes(("four", "number"), ("beats", "unit"), ("of", "filler")))
    assert not counted_of(nodes(("four", "number"), ("beats", "unit"), ("on", "filler")))


def test_a_grade_that_is_equal_at_is_of_what_is_named_behind_it() -> None:
    assert graded_at(nodes(("two", "number"), ("equal", "equal"), ("at", "filler"), ("the", "filler")))
    assert not graded_at(nodes(("two", "number"), ("weak", "value"), ("at", "filler")))


def test_trouble_with_is_of_what_is_named_behind_it() -> None:
    assert of_name(nodes(("trouble", "value"), ("with", "filler")))
    assert not of_name(nodes(("trouble", "value"), (",", "comma")))


def test_a_link_inside_a_list_of_things_denied() -> None:
    listed = nodes(("no", "negation"), ("wasting", "item"), ("or", "conj"))
    assert denied(listed, 2)
    assert not denied(listed[1:], 1)


def test_a_side_with_its_body_part_alone() -> None:
    assert place_alone(nodes(("left", "side"), ("arm", "site"), (",", "comma")), 2)
    assert not place_alone(nodes(("weak", "value"), ("left", "side"), ("arm", "site"), (",", "comma")), 3)


def test_a_link_joins_two_of_a_kind() -> None:
    """ "Slow and irregular" is one description, two sides are one, a value and a side are not."""
    assert joins(nodes(("slow", "value"), ("and", "conj"), ("irregular", "value")), 1)
    assert joins(nodes(("right", "side"), ("and", "conj"), ("left", "side")), 1)
    assert not joins(nodes(("slow", "value"), ("and", "conj"), ("left", "side")), 1)


def test_what_could_not_be_done_is_named_behind_it() -> None:
    """ "I could not really do heel shin": the words are no value of what was named before."""
    assert wants_task(
        nodes(("fine", "value"), ("could not", "value"), ("really", "filler"), ("do", "filler")), tight=False
    )
    assert not wants_task(nodes(("fine", "value"), ("slow", "value"), ("really", "filler")), tight=True)
    one, two = nodes(("could not", "value"), ("really", "filler"))
    assert belong_together(one, two)


def test_a_bare_side_behind_a_comma_is_of_the_next_name() -> None:
    """ "Ankle is two, the left toe is up": and not of the ankle."""
    assert opens_clause(nodes(("two", "number"), (",", "comma"), ("the", "filler"), ("left", "side")))
    assert not opens_clause(nodes(("two", "number"), ("on the left", "side")))
