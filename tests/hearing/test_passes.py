"""Passes over chunks, and the guards."""

from __future__ import annotations

import numpy as np
import pytest
from hearing.ears import FakeEars, heard

from dictate.hearing.audio import RATE_HZ, Block
from dictate.hearing.chunks import Chunk, Span
from dictate.hearing.engine import Decoded, Timed
from dictate.hearing.passes import Memory, hear_chunks, heard_components, is_doubtful, to_words
from dictate.model import Hints

HINTS = Hints(
    first=("pulse", "clonus"),
    by_component={"general": ("pulse", "oedema"), "reflexes": ("clonus", "Hoffmann")},
    headings={"general": ("general examination",), "reflexes": ("reflexes",)},
)
BLOCK = Block(0.0, np.zeros(40 * RATE_HZ, np.float32))
CHUNKS = [Chunk(0.0, (Span(0, 10 * RATE_HZ),)), Chunk(0.0, (Span(20 * RATE_HZ, 35 * RATE_HZ),))]
LOOP = "grip thirty two right, twenty eight left " * 8


def texts(ears: FakeEars, hints: Hints = HINTS, memory: Memory | None = None) -> str:
    """All words heard in the two chunks."""
    return " ".join(word.text for word in hear_chunks(ears, BLOCK, CHUNKS, hints, memory or Memory()))


def test_a_model_that_knows_the_trade_gets_no_list() -> None:
    """One pass, and no list of terms that it could hear where nobody said them."""
    ears = FakeEars(lambda *_: heard("reflexes two plus"))
    texts(ears)
    assert ears.prompts == [(), ()]


def test_any_other_model_hears_again_with_the_terms_of_the_component() -> None:
    """The heading of the first chunk names the list, and holds for the chunk after it."""

    def say(length_s: float, terms: tuple[str, ...], window_s: int | None) -> Decoded:
        if terms == HINTS.first:
            return heard("Reflexes. Hofman positive" if length_s < 12 else "no clones")
        return heard("Reflexes. Hoffmann positive" if length_s < 12 else "no clonus")

    ears = FakeEars(say, knows_trade=False)
    assert texts(ears) == "Reflexes. Hoffmann positive no clonus"
    assert all(set(terms) == {"clonus", "Hoffmann"} for terms in ears.prompts[2:])


def test_the_component_is_carried_into_the_next_block() -> None:
    """A block without a heading goes on with the component of the one before."""
    ears = FakeEars(lambda *_: heard("absent on the left"), knows_trade=False)
    texts(ears, memory=Memory(components=("general",)))
    assert all(set(terms) == {"pulse", "oedema"} for terms in ears.prompts[2:])


def test_a_loop_is_heard_again_in_the_full_window_without_terms() -> None:
    """The second hearing stands."""
    ears = FakeEars(lambda _, __, window_s: heard("grip thirty two right" if window_s else LOOP))
    assert texts(ears) == "grip thirty two right grip thirty two right"


def test_what_stays_a_loop_is_dropped() -> None:
    """Better no words, which is reported, than words nobody said."""
    assert texts(FakeEars(lambda *_: heard(LOOP))) == ""


@pytest.mark.parametrize(
    ("text", "doubtful"),
    [
        (heard("Pulse seventy two."), False),
        (heard("Pulse seventy two.", no_speech=0.7), True),
        (heard("Pulse seventy two.", mean_logprob=-1.3), True),
        (heard(LOOP), True),
        (heard("a quick brown fox jumps over every lazy dog and then some more of them"), True),
        (heard(""), False),
    ],
)
def test_doubtful_text(text: Decoded, doubtful: bool) -> None:
    """Loops, text from no speech and more words than two seconds hold are doubted."""
    assert is_doubtful(text, 2.0) is doubtful


def test_components_are_named_by_their_headings_in_order() -> None:
    """Whole words only; capitals and stops do not matter."""
    assert heard_components("Reflexes. Then the General examination,", HINTS) == ("reflexes", "general")
    assert heard_components("areflexes", HINTS) == ()


def test_parts_without_white_space_are_one_word() -> None:
    """ "142" and "/84" are one word with the less sure part's probability."""
    chunk = Chunk(5.0, (Span(0, 4 * RATE_HZ),))
    (word, after) = to_words([Timed(" 142", 0, 1, 0.9), Timed("/84", 1, 2, 0.4), Timed(" now", 2, 3, 1.0)], chunk)
    assert (word.text, word.start_s, word.end_s, word.probability) == ("142/84", 5.0, 7.0, 0.4)
    assert after.text == "now"


def test_no_chunk_asks_nothing() -> None:
    """Silence is never decoded: a decoder would hear terms in it."""
    ears = FakeEars(lambda *_: heard("never"))
    assert hear_chunks(ears, BLOCK, [], HINTS, Memory()) == []
    assert ears.prompts == []


def test_before_any_heading_the_first_hearing_stands() -> None:
    """No component is in force, so there is no list to hear again with."""
    ears = FakeEars(lambda *_: heard("good morning"), knows_trade=False)
    assert texts(ears) == "good morning good morning"
    assert ears.prompts == [(), ()]


def test_a_list_of_terms_never_changes_a_number() -> None:
    """Where the hearing with terms gives another number, the one without stands."""

    def say(length_s: float, terms: tuple[str, ...], window_s: int | None) -> Decoded:
        if length_s < 12:
            return heard("Reflexes. pulse 115 clonus" if terms else "Reflexes. pulse 150 clones")
        return heard("no clonus, 2 beats" if terms else "no clones, 2 beats")

    assert texts(FakeEars(say, knows_trade=False)) == "Reflexes. pulse 150 clones no clonus, 2 beats"


def test_without_lists_there_is_one_hearing() -> None:
    """The best one at once."""
    ears = FakeEars(lambda *_: heard("reflexes"), knows_trade=False)
    texts(ears, hints=Hints())
    assert ears.prompts == [(), ()]


def test_one_doubtful_chunk_leaves_the_others_alone() -> None:
    """Only the looping chunk is heard again, and only its words are dropped."""
    ears = FakeEars(lambda length_s, *_: heard(LOOP if length_s < 12 else "gait normal"))
    assert texts(ears) == "gait normal"
    assert len(ears.prompts) == 3


@pytest.mark.parametrize(
    ("text", "seconds", "doubtful"),
    [
        (heard("one two three four five six seven eight nine ten"), 2.0, True),
        (heard("one two three four five six seven eight nine ten"), 2.2, False),
        (heard("gait normal", no_speech=0.61), 2.0, True),
        (heard("gait normal", no_speech=0.59), 2.0, False),
        (heard(LOOP), 60.0, True),
        (heard("no no no no"), 2.0, False),
        (heard("Blood pressure sitting 142 over 84, pulse 66, lungs clear, no murmur, no oedema."), 6.0, False),
    ],
)
def test_limits_of_doubt(text: Decoded, seconds: float, doubtful: bool) -> None:
    """Just below and just above them; a short text says nothing about loops."""
    assert is_doubtful(text, seconds) is doubtful


def test_times_of_words_skip_the_pauses_that_were_cut_out() -> None:
    """A word after a pause has the time it was said at; at a join it ends with the earlier piece."""
    chunk = Chunk(100.0, (Span(RATE_HZ, 3 * RATE_HZ), Span(10 * RATE_HZ, 12 * RATE_HZ)))
    first, second = to_words([Timed(" pulse", 1.0, 2.0, 0.9), Timed(" regular", 2.2, 2.6, 0.8)], chunk)
    assert (first.start_s, first.end_s) == (102.0, 103.0)
    assert (second.start_s, second.end_s) == (110.2, 110.6)


def test_a_word_never_ends_before_it_starts() -> None:
    """Not even one without length at a join."""
    chunk = Chunk(0.0, (Span(0, 2 * RATE_HZ), Span(10 * RATE_HZ, 12 * RATE_HZ)))
    (word,) = to_words([Timed(" gait", 2.0, 2.0, 0.9)], chunk)
    assert (word.start_s, word.end_s) == (10.0, 10.0)
