"""Text → tokens as the decoder knows them: a tokenizer that has lost a merge is mended."""

from __future__ import annotations

import json
from typing import Any

SPACE = "\u0120"  # how the tokenizer writes the white space before a word


def mended(pieces: Any) -> Any:
    """The tokenizer with its very first merge, space and "t", which some conversions have lost.

    Without it " tone" and " tongue" in a list of terms come apart into pieces that the decoder never saw in a row.
    """
    from tokenizers import Tokenizer

    parts = json.loads(pieces.to_str())
    merges = parts["model"]["merges"]
    if [SPACE, "t"] in merges or SPACE + "t" not in parts["model"]["vocab"]:
        return pieces
    parts["model"]["merges"] = [[SPACE, "t"], *merges]
    return Tokenizer.from_str(json.dumps(parts))
