"""A tokenizer that has lost its first merge."""

from __future__ import annotations

import json

from tokenizers import Tokenizer, models

from dictate.hearing.spelling import SPACE, mended


def pieces(*merges: tuple[str, str]) -> Tokenizer:
    """A tokenizer of four pieces."""
    return Tokenizer(models.BPE(vocab={SPACE: 0, "t": 1, SPACE + "t": 2, "o": 3}, merges=list(merges)))


def test_the_lost_merge_is_put_first() -> None:
    """Space and "t" become one piece again."""
    found = json.loads(mended(pieces()).to_str())["model"]["merges"]
    assert found[0] == [SPACE, "t"]


def test_a_whole_tokenizer_stays_as_it_is() -> None:
    """Nothing to mend."""
    whole = pieces((SPACE, "t"))
    assert mended(whole) is whole
