"""Wordings written in one become the phrases they stand for."""

import pytest

from dictate.grammar.wordings import spelled_out, wordings


@pytest.mark.parametrize(
    ("phrase", "said"),
    [
        ("not seen", ["not seen"]),
        ("(did|could) not see", ["did not see", "could not see"]),
        ("no (sign of|) (a|)", ["no sign of a", "no sign of", "no a", "no"]),
        ("mean (arterial) pressure", ["mean (arterial) pressure"]),
    ],
)
def test_wordings(phrase: str, said: list[str]) -> None:
    assert wordings(phrase) == said


def test_a_list_is_spelled_out_and_what_is_no_list_is_left() -> None:
    assert spelled_out(["(a|b) c", "d"]) == ("a c", "b c", "d")
    assert spelled_out("a|b") == "a|b"
