"""Numbers as a recogniser writes them: "one forty two over eighty four" → "142 over 84", "T ten" → "T10"."""

from __future__ import annotations

SMALL = {
    word: number
    for number, word in enumerate(
        "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
        "seventeen eighteen nineteen".split()
    )
}
TENS = {
    word: 10 * number for number, word in enumerate("twenty thirty forty fifty sixty seventy eighty ninety".split(), 2)
}
NAMES = {number: word for word, number in (SMALL | TENS).items()}
SMALL["nought"] = 0
LEVELS = {"T", "C", "L", "S", "V"}  # "T ten" is T10
ONE_AS_A_WORD = {"the", "this", "that", "no", "other", "each", "any", "every", "another"}
OF_ONE = {
    "of",
    "side",
    "hand",
    "eye",
    "arm",
    "leg",
    "foot",
    "would",
    "can",
    "could",
    "sided",
    "word",
    "step",
    "sentence",
}
EYES = ("acuity", "acuities", "vision", "snellen", "chart", "corrected")
STOPS = ".,;:?!"


def spoken(number: int) -> str:
    """The plain English name of 0 to 999: "one hundred and forty two"."""
    if number < 20 or number in NAMES:
        return NAMES[number]
    if number < 100:
        return f"{NAMES[number - number % 10]} {NAMES[number % 10]}"
    rest = f" and {spoken(number % 100)}" if number % 100 else ""
    return f"{NAMES[number // 100]} hundred{rest}"


def clinical(number: int, way: int) -> str:
    """How pressures and rates are said: "one forty two", "one oh four", "one hundred and four", by `way` 0 to 3."""
    hundreds, rest = divmod(number, 100)
    if not hundreds or not rest or way == 3:
        return spoken(number)
    if way == 2:
        return f"{NAMES[hundreds]} hundred {spoken(rest)}"
    return f"{NAMES[hundreds]} {'oh ' if rest < 10 else ''}{spoken(rest)}"


def written(text: str) -> str:
    """The text with its number words as digits; everything else as it is."""
    words = text.split()
    eyes = any(word in text.lower() for word in EYES)
    out: list[str] = []
    i = 0
    while i < len(words):
        found = _number(words, i, eyes)
        if found is None:
            out.append(words[i])
            i += 1
            continue
        digits, end = found
        stop = words[end - 1][len(words[end - 1].rstrip(STOPS)) :]
        if out and out[-1] in LEVELS and "." not in digits:
            digits = out.pop() + digits
        out.append(digits + stop)
        i = end
    return " ".join(out)


def _bare(words: list[str], i: int) -> str:
    """The word at i in lower case without the mark after it; empty past the end."""
    return words[i].rstrip(STOPS).lower() if i < len(words) else ""


def _ends(words: list[str], i: int) -> bool:
    """Whether a mark follows the word before i, so that a number cannot go on."""
    return words[i - 1][-1] in STOPS


def _number(words: list[str], i: int, eyes: bool) -> tuple[str, int] | None:
    """Digits and end of the number that starts at i."""
    found = _cardinal(words, i)
    if found is None or _is_pronoun(words, i, found[1]):
        return None
    number, end = found
    if not _ends(words, end) and _bare(words, end) == "point":
        decimals = ""
        after = end + 1
        while _bare(words, after) in SMALL and SMALL[_bare(words, after)] < 10:
            decimals += str(SMALL[_bare(words, after)])
            after += 1
            if _ends(words, after):
                break
        if decimals:
            return f"{number}.{decimals}", after
    line = None if _ends(words, end) else _cardinal(words, end)
    if line and ((number == 20 and line[0] >= 10) or (eyes and number == 6 and line[0] >= 4)):
        return f"{number}/{line[0]}", line[1]
    return str(number), end


def _is_pronoun(words: list[str], i: int, end: int) -> bool:
    before = _bare(words, i - 1) if i else ""
    return end == i + 1 and _bare(words, i) == "one" and (before in ONE_AS_A_WORD or _bare(words, end) in OF_ONE)


def _cardinal(words: list[str], i: int) -> tuple[int, int] | None:
    """Number and end: "four", "forty two", "one forty two", "one oh four", "one hundred and four"."""
    below = _below_hundred(words, i)
    if below is None:
        return None
    number, end = below
    if number > 9 or number == 0 or _ends(words, end):
        return below
    if _bare(words, end) == "hundred":
        if _ends(words, end + 1):
            return 100 * number, end + 1
        after = end + 2 if _bare(words, end + 1) == "and" else end + 1
        rest = _below_hundred(words, after)
        return (100 * number + rest[0], rest[1]) if rest else (100 * number, end + 1)
    if number <= 2:
        if _bare(words, end) == "oh" and 0 < SMALL.get(_bare(words, end + 1), 0) < 10:
            return 100 * number + SMALL[_bare(words, end + 1)], end + 2
        rest = _below_hundred(words, end)
        if rest and rest[0] >= 10:
            return 100 * number + rest[0], rest[1]
    return below


def _below_hundred(words: list[str], i: int) -> tuple[int, int] | None:
    word = _bare(words, i)
    if word in SMALL:
        return SMALL[word], i + 1
    if word in TENS:
        unit = 0 if words[i][-1] in STOPS else SMALL.get(_bare(words, i + 1), 0)
        return (TENS[word] + unit, i + 2) if 0 < unit < 10 else (TENS[word], i + 1)
    return None
