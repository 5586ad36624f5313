"""What is denied where its word stands in the clause before. No source: from memory."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Rows = Callable[[str], list[str]]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Heel walking is impaired, toe walking isn't.", ["heel_walk abnormal impaired", "toe_walk normal"]),
        ("Stance is normal, gait isn't.", ["stance normal", "gait abnormal not normal"]),
        ("Light touch was tested, pin was not.", ["pinprick not_examined"]),
        ("It's not aphasia, it's dysarthria.", ["language normal", "speech abnormal dysarthria"]),
        (
            "The bruit is not on the left but on the right.",
            ["carotid_bruit left absent", "carotid_bruit right present"],
        ),
        ("The left deltoid is not as strong as the right.", ["strength_deltoid left abnormal not normal"]),
        ("The left deltoid has gone down from five to four.", ["strength_deltoid left measured 4"]),
        ("The tremor is not symmetrical.", ["tremor present"]),
        ("No tremor on the right, only on the left.", ["tremor right absent", "tremor left present"]),
        ("Naming isn't impaired and neither is repetition.", ["naming normal", "repetition normal"]),
        ("There's no edema but on the left.", ["edema absent", "edema left present"]),
        ("Pin is normal everywhere but the left foot.", ["pinprick normal", "pinprick left foot abnormal not normal"]),
        (
            "Right hip flexion is four, the rest of the leg is five.",
            ["strength_iliopsoas right measured 4", "strength_lower_limb right measured 5"],
        ),
    ],
)
def test_the_unsaid_word_is_that_of_the_clause_before(rows: Rows, text: str, wanted: list[str]) -> None:
    assert rows(text) == wanted
