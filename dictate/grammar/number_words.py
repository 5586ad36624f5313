"""The words of whole numbers below a hundred, as they are spoken."""

from __future__ import annotations

DIGITS = {word: at for at, word in enumerate("zero one two three four five six seven eight nine".split())}
TEENS = {
    word: at
    for at, word in enumerate(
        "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(), start=10
    )
}
TENS = {
    word: 10 * at
    for at, word in enumerate("twenty thirty forty fifty sixty seventy eighty ninety".split(), start=2)
}  # fmt: skip
BELOW_TWENTY = DIGITS | TEENS
_WORDS = BELOW_TWENTY | TENS


def whole_number(word: str) -> int | None:
    """The number that one word says, in digits or spelt out ("12", "twelve", "thirty"); None for any other word."""
    return int(word) if word.isdigit() else _WORDS.get(word)
