"""How well texts fit a stretch of sound: log-probabilities by the decoder, in batches of bounded size."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from dictate.hearing.kept import Encoded

if TYPE_CHECKING:
    from faster_whisper import WhisperModel

WEIGH_BATCH = 2  # bounds memory: of 4 and 8, weighing was the peak of the whole way to the note, and no quicker
LEAST_PROBABILITY = 1e-9


def log_probabilities(
    whisper: WhisperModel, begin: Sequence[int], view: Encoded, tokens: Sequence[list[int]]
) -> list[float]:
    """Sum of the log-probabilities of each text's tokens, in nats.

    view: frames of the stretch alone. begin: what the decoder is told before the text.
    """
    found: list[float] = []
    for start in range(0, len(tokens), WEIGH_BATCH):
        batch = list(tokens[start : start + WEIGH_BATCH])
        results = whisper.model.align(storage([view] * len(batch)), list(begin), batch, [2 * len(view)] * len(batch))
        found += [float(np.sum(np.log(np.maximum(each.text_token_probs, LEAST_PROBABILITY)))) for each in results]
    return found


def storage(views: Sequence[Encoded]) -> Any:
    """Views of one length as the library takes them."""
    import ctranslate2

    return ctranslate2.StorageView.from_array(np.ascontiguousarray(np.stack(views)))


def as_array(view: Any) -> Encoded:
    """The one view that the library gives back, on this side: a graphics card keeps it in its own memory."""
    import ctranslate2

    held = view if view.device == "cpu" else view.to_device(ctranslate2.Device.cpu)
    found: Encoded = np.array(held, dtype=np.float32)[0]
    return found
