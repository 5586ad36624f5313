"""Singular, plural and capitals of the phrases of the grammar."""

from __future__ import annotations

import pytest

from dictate.reading.phrases.forms import variants


@pytest.mark.parametrize(
    ("words", "forms"),
    [
        (("knee", "jerk"), {("knee", "jerk"), ("knee", "jerks")}),
        (("knee", "jerks"), {("knee", "jerks"), ("knee", "jerk")}),
        (("reflex",), {("reflex",), ("reflexes",)}),
        (("body",), {("body",), ("bodies",)}),
        (("ptosis",), {("ptosis",)}),
        (("clonus",), {("clonus",)}),
        (("weakness",), {("weakness",)}),
        (("c7",), {("c7",)}),
    ],
)
def test_a_phrase_is_known_in_both_numbers(words, forms):
    """One more or one less at the end; words that only look like plurals stay as they are."""
    assert set(variants(words)) >= forms
    if len(forms) == 1:
        assert set(variants(words)) == forms
