"""Age and height as dictated: "seventy two year old man", "aged 19"; an option given by the user wins."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from dictate.grammar.number_words import BELOW_TWENTY, TENS
from dictate.grammar.units import convert
from dictate.model import Evidence, Finding, Person, Quantity, Status, Text, Transcript, Value

OLDEST_YEARS = 130
PERIODS = {"year": 1.0, "years": 1.0, "yr": 1.0, "yrs": 1.0, "y": 1.0, "yo": 1.0, "month": 12.0, "months": 12.0}
PEOPLE = frozenset(
    "man woman gentleman lady male female boy girl patient person child infant teenager he she adult f m".split()
)
KIN = frozenset(
    "mother father sister brother wife husband son daughter partner grandmother grandfather uncle aunt cousin twin "
    "children kids grandson granddaughter niece nephew dog cat".split()
)
# "at the age of forty", "since age twelve": another time, not the patient's age.
OTHER_TIME = frozenset("at since from until till by before after around about onset when of".split())
LINKS = frozenset("in of on at with from to and for by".split())
OF_PATIENT = frozenset("is his her their s the current".split())  # in front of "age" or "aged"
SENTENCE_END = re.compile(r"[.;!?]$")
OPENING = frozenset("a an the this is".split())
THINGS = frozenset("scar scars injury fracture lesion stroke wound burn amputation history record scan images".split())
REACH = 5  # words around an age in which its subject is looked for


@dataclass(frozen=True, slots=True)
class _Token:
    """One part of a word, small, and the word's place."""

    text: str
    word: int


def person_of(
    transcript: Transcript, findings: tuple[Finding, ...], *, age: float | None = None, height: float | None = None
) -> Person:
    """Age in years and height in cm: the options, else as dictated; two different ages are both left open."""
    said = tuple(_ages(transcript))
    ages = tuple(dict.fromkeys(years for years, _ in said))
    spoken = ages[0] if len(ages) == 1 else None
    tall = _height(findings)
    return Person(
        age_years=spoken if age is None else age,
        age_from="option" if age is not None else "spoken" if spoken is not None else "",
        height_cm=tall if height is None else height,
        height_from="option" if height is not None else "spoken" if tall is not None else "",
        evidence=tuple(evidence for _, evidence in said),
        dictated_ages=ages,
    )


def _ages(transcript: Transcript) -> Iterator[tuple[float, Evidence]]:
    """Every age said of the patient, in years, with its words."""
    for number, tokens in enumerate(_sentences(transcript)):
        texts = [token.text for token in tokens]
        for at, text in enumerate(texts):
            found = _before_period(texts, at) if text in PERIODS else _behind_age(texts, at)
            if found is None:
                continue
            years, first, last = found
            opens = number == 0 and texts[last] == "old" and not set(texts[:first]) - OPENING
            if 0 < years <= OLDEST_YEARS and (_is_of_patient(texts, first, last) or (opens and _opens(texts, last))):
                while last + 1 < len(texts) and texts[last + 1] in (*PEOPLE, "old", "of", "age"):
                    last += 1
                yield years, _evidence(transcript, tokens[first].word, tokens[last].word)


def _sentences(transcript: Transcript) -> Iterator[list[_Token]]:
    tokens: list[_Token] = []
    for place, word in enumerate(transcript.words):
        if "\n" in word.lead and tokens:
            yield tokens
            tokens = []
        tokens += [_Token(part, place) for part in re.findall(r"[a-z]+|\d+(?:\.\d+)?", word.text.lower())]
        if SENTENCE_END.search(word.text):
            yield tokens
            tokens = []
    yield tokens


def _before_period(texts: list[str], at: int) -> tuple[float, int, int] | None:
    """`seventy two year old`, `72 y o`, `45 years of age`, with first and last token; None: no age."""
    tail = texts[at + 1 : at + 3]
    last = at
    if texts[at] != "yo":
        if tail[:1] not in (["old"], ["o"]) and tail != ["of", "age"] and not _aged(texts, at):
            return None
        last = at + len(tail) if tail == ["of", "age"] else at + (tail[:1] in (["old"], ["o"]))
    number = _number_before(texts, at)
    if number is None:
        return None
    value, first = number
    return value / PERIODS[texts[at]], first - _aged(texts, at), last


def _aged(texts: list[str], at: int) -> bool:
    """Whether `aged` or `age` stands before the number."""
    number = _number_before(texts, at)
    return number is not None and number[1] > 0 and texts[number[1] - 1] in ("aged", "age")


def _behind_age(texts: list[str], at: int) -> tuple[float, int, int] | None:
    """`aged nineteen`, `age 72`, `age is 72`; with a unit the other form takes it."""
    if texts[at] not in ("age", "aged") or (at and texts[at - 1] in OTHER_TIME):
        return None
    start = at + 2 if texts[at + 1 : at + 2] == ["is"] else at + 1
    for end in range(min(len(texts), start + 5), start, -1):
        value = _cardinal(texts[start:end])
        if value is not None:
            followed = texts[end] if end < len(texts) else ""
            return None if followed in PERIODS else (value, at, end - 1)
    return None


def _number_before(texts: list[str], at: int) -> tuple[float, int] | None:
    """The longest number that ends before this place, and where it starts."""
    for first in range(max(0, at - 5), at):
        value = _cardinal(texts[first:at])
        if value is not None:
            cut = first and (texts[first - 1] == "hundred" or _cardinal(texts[first - 1 : first]) is not None)
            return None if cut else (value, first)
    return None


def _cardinal(words: list[str]) -> float | None:
    """`seventy two`, `72`, `a hundred and two`; None when it is no number."""
    if len(words) == 1 and re.fullmatch(r"\d+(\.\d+)?", words[0]):
        return float(words[0])
    total = 0
    if "hundred" in words:
        before, behind = words[: words.index("hundred")], words[words.index("hundred") + 1 :]
        if before not in ([], ["a"], ["one"]):
            return None
        total, words = 100, behind[1:] if behind[:1] == ["and"] else behind
        if not words:
            return float(total)
    if len(words) == 1 and words[0] in BELOW_TWENTY | TENS:
        return float(total + (BELOW_TWENTY | TENS)[words[0]])
    if len(words) == 2 and words[0] in TENS and 0 < BELOW_TWENTY.get(words[1], 0) < 10:
        return float(total + TENS[words[0]] + BELOW_TWENTY[words[1]])
    return None


def _is_of_patient(texts: list[str], first: int, last: int) -> bool:
    """Whether the patient is the subject: a person near and no relative, or nothing else in the sentence."""
    around = {*texts[max(0, first - REACH) : first], *texts[last + 1 : last + 1 + REACH]}
    if around & KIN or "when" in around or (first and texts[first - 1] in OTHER_TIME):
        return False
    if texts[first] in ("age", "aged"):
        return not first or texts[first - 1] in (*PEOPLE, *OF_PATIENT)
    after = texts[last + 1 : last + 1 + REACH]
    named = next((place for place, text in enumerate(after) if text in PEOPLE), None)
    if named is not None and not LINKS & set(after[:named]):
        return True  # "72 year old right handed man", and not "20 year old scar in this patient"
    before = [text for text in texts[max(0, first - 4) : first] if text not in ("a", "an", "the")]
    told = before[-1:] in (["is"], ["s"], ["was"]) and bool(set(before) & PEOPLE)
    alone = not first or texts[max(0, first - 2) : first] in (["the"], ["a"], ["an"], ["this", "is"])
    return told or (alone and last + 1 == len(texts))


def _opens(texts: list[str], last: int) -> bool:
    """ "Nineteen year old student, faints": how a dictation begins is of the patient, whatever it calls him."""
    after = texts[last + 1 : last + 1 + REACH]
    return not set(after) & (KIN | {"when"}) and not LINKS & set(after[:2]) and not set(after[:2]) & THINGS


def _evidence(transcript: Transcript, first: int, last: int) -> Evidence:
    words = transcript.words
    return Evidence(
        first=first,
        last=last,
        quote=transcript.quote(first, last),
        start_s=words[first].start_s,
        end_s=words[last].end_s,
    )


def _height(findings: tuple[Finding, ...]) -> float | None:
    """Dictated height in cm; None when it was not said, without its unit, or twice with different numbers."""
    heights = {
        _centimetres(finding.value, finding.unit)
        for finding in findings
        if finding.item == "height" and finding.status is Status.MEASURED
    }
    return heights.pop() if len(heights) == 1 else None


def _centimetres(value: Value | None, unit: str) -> float | None:
    if isinstance(value, Quantity) and value.then is None and value.upto is None and not value.note:
        return convert(value.number, unit, "cm") if unit else None
    parts = re.fullmatch(r"(\d+)'(\d+(?:\.\d+)?)\"?", value.words) if isinstance(value, Text) else None
    if parts is None:
        return None
    feet, inches = convert(float(parts[1]), "[ft_i]", "cm"), convert(float(parts[2]), "[in_i]", "cm")
    return None if feet is None or inches is None else round(feet + inches, 2)
