"""Said controls are whole sentences, and never a part of a finding."""

from __future__ import annotations

from collections.abc import Callable
from typing import get_args

import pytest

from dictate.grammar import Control, Grammar
from dictate.live.spoken import CONFIRMED, controls_help, find_orders, fitting_order
from dictate.model import Word


def words(text: str) -> list[Word]:
    """A phrase as heard."""
    return [Word(text=part) for part in text.split()]


@pytest.mark.parametrize(
    ("said", "control"),
    [
        ("Pause dictation.", "pause"),
        ("resume dictation", "resume"),
        ("End of dictation.", "end"),
        ("Read that back.", "read_back"),
        ("What's still open?", "still_open"),
        ("What is still open?", "still_open"),
        ("Start the clock.", "start_clock"),
    ],
)
def test_control_by_itself(said: str, control: str, grammar: Grammar) -> None:
    """In any capitals, with or without a stop."""
    assert [order.control for order in find_orders(words(said), grammar)] == [control]


@pytest.mark.parametrize(
    "said",
    [
        "He was able to start the clock drawing.",
        "Clock drawing, could not start the clock",
        "The patient is standing now, blood pressure 120 over 80.",
        "There was a pause, dictation of months backwards fair.",
        "Read that back to me was his request.",
        "At the end of dictation task, writing was micrographic.",
        "Strike that.",
        "Reads back 3 of 3 words.",
    ],
)
def test_never_inside_a_finding(said: str, grammar: Grammar) -> None:
    """Words of a control in a longer sentence are dictation."""
    assert find_orders(words(said), grammar) == []


def test_sentence_of_its_own_in_a_phrase(grammar: Grammar) -> None:
    """A finding before it stays a finding."""
    said = words("Gait normal. Pause dictation.")
    (order,) = find_orders(said, grammar)
    assert (order.first, order.last) == (2, 3)


@pytest.mark.parametrize(
    ("said", "control"),
    [
        ("Red that back.", "read_back"), ("End of vacation.", "end"), ("Positation.", "pause"),
        ("resumed dictation", "resume"), ("Start the clog.", "start_clock"), ("What is still hoping?", "still_open"),
    ],
)  # fmt: skip
def test_a_control_misheard(grammar: Grammar, said: str, control: str) -> None:
    """As recognisers wrote it, when it is all of the phrase; beside other words it is dictation."""
    (order,) = find_orders(words(said), grammar)
    assert order.control == control
    assert find_orders(words(f"Gait normal. {said}"), grammar) == []


@pytest.mark.parametrize(
    "said", ["Patient is standing.", "Writing to dictation.", "Mastication.", "Position.", "Low back.", "Palpitation.",
             "Hesitation.", "Strike that.", "What is 5 over 5?"],
)  # fmt: skip
def test_what_sounds_a_little_like_a_control_is_dictation(grammar: Grammar, said: str) -> None:
    """Words of the trade, and a position above all."""
    assert find_orders(words(said), grammar) == []


def test_no_control_is_a_phrase_of_the_trade(grammar: Grammar) -> None:
    """No way of saying a control gives a finding when it is read as dictation."""
    from dictate.reading import read, transcript_of_text

    for phrases in grammar.controls.values():
        for phrase in phrases:
            assert read(transcript_of_text(f"{phrase}."), grammar).findings == ()


def test_every_control_can_be_said_and_is_confirmed(grammar: Grammar) -> None:
    """And stands in the help."""
    assert set(grammar.controls) == set(get_args(Control)) == set(CONFIRMED)
    assert len(controls_help(grammar).splitlines()) == len(get_args(Control))


def fits(**nats: float) -> Callable[[list[str]], list[float]]:
    """A weighing that knows some texts, by their first word."""
    return lambda texts: [nats.get(text.split()[0].strip(".").lower(), -50.0) for text in texts]


ORDERS = ("pause dictation", "resume dictation")


def test_an_order_that_fits_the_sound_better_than_its_words() -> None:
    """As "Positiation", 10 nats behind "Pause dictation"; not when it fits less well, or cannot be told."""
    assert fitting_order(words("Positiation."), ORDERS, fits(positiation=-20.0, pause=-10.0)) == "pause dictation"
    assert fitting_order(words("Positiation."), ORDERS, fits(positiation=-20.0, pause=-29.0)) == ""
    assert fitting_order(words("Positiation."), ORDERS, lambda texts: []) is None
    assert fitting_order([], ORDERS, fits()) == ""


def test_the_further_an_order_is_the_better_it_has_to_fit() -> None:
    """ "Positive dictation" is pause dictation at 3 nats less; "Pupil dilatation", further off, not even at 3 more."""
    orders = ("pause dictation", "pause the dictation")
    assert fitting_order(words("Positive dictation."), orders, lambda texts: [-20.0, -29.0, -23.0]) == "pause dictation"
    assert fitting_order(words("Positive dictation."), orders, lambda texts: [-20.0, -32.0, -29.0]) == ""
    assert fitting_order(words("Pupil dilatation."), orders, lambda texts: [-20.0, -17.0, -25.0]) == ""


def test_a_shorter_order_does_not_win_over_a_much_nearer_one() -> None:
    """As "Resumed dictation", whose sound fits "End dictation" better only because that has fewer words."""
    orders = ("resume dictation", "end dictation")
    assert fitting_order(words("Resumed dictation."), orders, fits(resumed=-20.0, resume=-18.0, end=-5.0)) == orders[0]


def test_a_name_of_the_trade_is_no_order_from_afar(grammar: Grammar) -> None:
    """Whatever the sound says: five of twelve times "Pupil dilatation" fitted "Pause dictation"."""
    assert find_orders(words("Pupil dilatation."), grammar, fitting="pause dictation") == []
    (order,) = find_orders(words("Positive dictation."), grammar, fitting="pause dictation")
    assert order.control == "pause"


def test_what_sounds_like_an_order_and_fits_the_sound_far_better_is_dictation() -> None:
    """As "Continue the medication", 20 nats before "Continue dictation"; a misheard order is at most 9 before it."""
    orders = ("continue dictation", "pause dictation")
    assert fitting_order(words("Continue medication."), orders, lambda texts: [-4.0, -24.0, -60.0][: len(texts)]) == ""
    assert fitting_order(words("Post dictation."), orders, fits(post=-4.0, pause=-12.0)) == "pause dictation"


def test_what_sounds_quite_different_is_not_even_weighed() -> None:
    """Whatever the sound would say."""
    assert fitting_order(words("No nystagmus."), ORDERS, fits(no=-90.0, pause=-1.0)) == ""


def test_what_fits_the_sound_decides_unless_there_is_a_number_or_a_position(grammar: Grammar) -> None:
    """It is the whole phrase; numbers and positions are dictated."""
    (order,) = find_orders(words("Positiation."), grammar, fitting="pause dictation")
    assert (order.control, order.first, order.last) == ("pause", 0, 0)
    assert find_orders(words("Continue medication."), grammar, fitting="") == []
    assert find_orders(words("Positiation 3."), grammar, fitting="pause dictation") == []
    assert find_orders(words("Patient is standing."), grammar, fitting="pause dictation") == []
