"""What is typed at review in words of the trade, read behind the name of its item; every part of it has to tell."""

from __future__ import annotations

import re
from collections.abc import Iterator

from dictate.grammar import Grammar, Item
from dictate.model import Component, Finding, Quantity, RemarkKind
from dictate.reading import read, transcript_of_text

NAMES_TRIED = 4
BELOW_ZERO = re.compile(r"[-\N{EN DASH}\N{MINUS SIGN}]\s*\d")  # the reader takes such a sign for a dash
NUMBER = re.compile(r"(\d+(?:\.\d+)?)(?:([-+])(?!\d))?")
TOLD = ("status", "value", "unit", "certainty", "detail", "side", "site", "position", "minutes")


def in_words(finding: Finding, line: str, item: Item, grammar: Grammar) -> Finding | None:
    """The finding with what the line says of the item; None when a part of the line says nothing of it."""
    if not _may_tell(line, item, grammar):
        return None
    for name, phrase in _phrases(line, item):
        got = _read(phrase, finding, grammar)
        if got is None or got.readings or _lost_unit(got, line, item) or not _are_told(line, got):
            continue
        alone = _read(name, finding, grammar)
        if alone is not None and all(getattr(alone, field) == getattr(got, field) for field in TOLD):
            continue  # the name said it, what was typed added nothing
        update: dict[str, object] = {
            "status": got.status,
            "value": got.value,
            "unit": got.unit,
            "certainty": got.certainty,
        }
        update |= {name: at for name in ("side", "site", "position", "minutes") if (at := getattr(got, name))}
        if got.detail:
            update["detail"] = got.detail
        return finding.model_copy(update=update)
    return None


def _may_tell(line: str, item: Item, grammar: Grammar) -> bool:
    """Whether the line may be read: signs alone, and numbers below zero, mean nothing to the reader.

    A bare "no" says of a sign that it is absent; of a muscle, a reflex or a state it leaves open what was found.
    """
    if BELOW_ZERO.match(line) or not any(letter.isalnum() or letter in "+-" for letter in line):
        return False
    denies = line.lower().strip(".") in grammar.common.words.negation
    return not denies or item.kind == "presence" or item.negated not in ("", "unclear")


def _read(phrase: str, finding: Finding, grammar: Grammar) -> Finding | None:
    """The one finding of that item which the phrase gives under its component, nothing left over."""
    heading = _heading(finding.component, grammar)
    reading = read(transcript_of_text(f"{heading}.\n{phrase}"), grammar)
    if len(reading.findings) != 1 or any(remark.kind is RemarkKind.NOT_PLACED for remark in reading.remarks):
        return None
    return reading.findings[0] if reading.findings[0].item == finding.item else None


def _heading(component: Component, grammar: Grammar) -> str:
    return grammar.components[component].headings[0]


def _phrases(line: str, item: Item) -> Iterator[tuple[str, str]]:
    """Each name of the item, and the line with that name before and behind.

    Names that say something themselves ("tachycardic") are left out: nobody typed that.
    """
    telling = {*item.normal, *item.abnormal, *item.signs, *(word for one in item.values.values() for word in one.say)}
    context = [name for name in item.context_terms if name not in telling]
    for name in dict.fromkeys((item.name, *item.terms[:NAMES_TRIED], *context[:NAMES_TRIED])):
        yield name, f"{name} {line}"
        yield name, f"{line} {name}"


def _are_told(line: str, got: Finding) -> bool:
    """Whether the finding keeps, somewhere, every number of the line, with its plus or minus."""
    told = NUMBER.findall(" ".join(map(str, (got.value, got.unit, got.minutes, got.site, *got.detail))))
    kept = {(float(number), sign) for number, sign in told} | {(float(number), "") for number, _ in told}
    return all((float(number), sign) in kept for number, sign in NUMBER.findall(line))


def _lost_unit(got: Finding, line: str, item: Item) -> bool:
    """A number whose unit the item does not know ("72 mmHg" of a weight) is not that number."""
    plain = isinstance(got.value, Quantity) and not got.unit and bool(item.unit)
    return plain and re.search(r"\d\s*[a-zA-Z%°]", line) is not None
