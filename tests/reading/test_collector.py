import gc

import pytest

from dictate.grammar import load_grammar
from dictate.reading import read, transcript_of_text
from dictate.reading.collector import at_rest


def test_is_off_inside_and_on_again_behind_it():
    with at_rest():
        assert not gc.isenabled()
    assert gc.isenabled()


def test_is_on_again_when_something_fails_inside():
    with pytest.raises(ValueError, match="inside"), at_rest():
        raise ValueError("inside")
    assert gc.isenabled()


def test_stays_off_where_it_was_off():
    gc.disable()
    try:
        with at_rest():
            pass
        assert not gc.isenabled()
    finally:
        gc.enable()


def test_a_reading_leaves_no_cycles_behind():
    grammar = load_grammar()
    transcript = transcript_of_text("Gait normal. Left biceps 4. Right knee jerk 2 plus. No ankle clonus.")
    read(transcript, grammar)  # what is built once
    gc.collect()
    gc.disable()
    try:
        read(transcript, grammar)
        assert gc.collect() == 0
    finally:
        gc.enable()
