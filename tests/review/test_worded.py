"""Words typed at review: every part of them tells, and nothing is told that was not typed."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from dictate.grammar import Grammar
from dictate.model import Examination
from dictate.review.worded import in_words

Exam = Callable[..., Examination]


@pytest.mark.parametrize(
    ("words", "line", "status", "value"),
    [
        ("Gait normal.", "wide based", "abnormal", "wide based"),
        ("No cardiac murmur.", "2/6", "present", "2/6"),
        ("Cardiac murmur.", "no", "absent", "None"),
        ("Gait normal.", "slow and wide based", "abnormal", "slow and wide based"),
    ],
)
def test_words_behind_the_name(exam: Exam, grammar: Grammar, words: str, line: str, status: str, value: str) -> None:
    """They become the status and value of the same item."""
    before = exam(words).findings[0]
    after = in_words(before, line, grammar.items[before.item], grammar)
    assert after is not None
    assert (after.item, after.status.value, str(after.value)) == (before.item, status, value)


@pytest.mark.parametrize(
    ("words", "line"),
    [
        ("Pulse 70.", "5-"),  # "tachycardic" is a name of the pulse, and nobody typed it
        ("Able to heel walk.", "2+"),
        ("No cardiac murmur.", "?"),
        ("No cardiac murmur.", "blowing 7"),
        ("Deltoid 4 on the left.", "no"),  # 0, or not examined?
        ("Weight 71 kilos.", "-3"),
        ("Weight 71 kilos.", "72 mmHg"),
    ],
)
def test_what_tells_nothing_is_not_taken(exam: Exam, grammar: Grammar, words: str, line: str) -> None:
    """The name alone says nothing new, and no part of the line may be passed over."""
    before = exam(words).findings[0]
    assert in_words(before, line, grammar.items[before.item], grammar) is None


@pytest.mark.parametrize("line", ["?", "7", "5-", "-3"])
def test_items_take_nothing_that_means_nothing(exam: Exam, grammar: Grammar, line: str) -> None:
    """No sign becomes present, and no task normal, of a number or of a question mark."""
    plain = 0
    for name, item in list(grammar.items.items())[::12]:
        said = next((one.say for one in item.examples if one.find and one.find[0].status in ("absent", "abnormal")), "")
        heading = grammar.components[grammar.component_of(name)].headings[0]
        found = [one for one in exam(f"{heading}. {said}").findings if one.item == name] if said else []
        for finding in found[:1]:
            after = in_words(finding, line, item, grammar)
            assert after is None or after.value is not None, f"{name}: {line}"
            plain += 1
    assert plain > 8
