"""What a statement excludes: how sides and sites overlap, what counts as abnormal."""

from __future__ import annotations

import re
from collections.abc import Sequence

from dictate.checks.wording import item_of
from dictate.grammar import Grammar, Item
from dictate.model import Finding, Grade, Side, Status, Text

# Site → the sites within it.
_WITHIN: dict[str, frozenset[str]] = {
    "upper_limb": frozenset(
        (
            "arm",
            "forearm",
            "elbow",
            "wrist",
            "hand",
            "palm",
            "thumb",
            "finger",
            "fingertips",
            "index_finger",
            "middle_finger",
            "ring_finger",
            "little_finger",
            "knuckle",
            "shoulder",
        )
    ),
    "lower_limb": frozenset(
        (
            "leg",
            "hip",
            "thigh",
            "mid_thigh",
            "knee",
            "shin",
            "mid_shin",
            "calf",
            "mid_calf",
            "ankle",
            "malleolus",
            "heel",
            "foot",
            "sole",
            "toe",
            "great_toe",
        )
    ),
    "hand": frozenset(
        (
            "thumb",
            "finger",
            "fingertips",
            "index_finger",
            "middle_finger",
            "ring_finger",
            "little_finger",
            "palm",
            "knuckle",
        )
    ),
    "foot": frozenset(("toe", "great_toe", "heel", "sole")),
    "finger": frozenset(("thumb", "fingertips", "index_finger", "middle_finger", "ring_finger", "little_finger")),
    "toe": frozenset({"great_toe"}),
    "face": frozenset({"v1", "v2", "v3", "forehead", "eyelid", "chin"}),
}
_WITHIN["arm"] = _WITHIN["upper_limb"] - {"arm"} | {"upper_limb"}
_WITHIN["leg"] = _WITHIN["lower_limb"] - {"leg"} | {"lower_limb"}
_WITHIN["limb"] = _WITHIN["upper_limb"] | _WITHIN["lower_limb"] | {"upper_limb", "lower_limb"}
# Circumstances that make two statements about one item compatible ("with reinforcement", "on medication").
_CONDITION = re.compile(r"(with|without|after|before|on|off|when|while|during|at|to|under|for|of|in)\b", re.IGNORECASE)
_SMALL = frozenset(
    ("a", "an", "and", "the", "of", "to", "in", "on", "at", "with", "for", "by", "is", "was", "no", "not")
)


def covers_side(whole: Side | None, part: Side | None) -> bool:
    """Whether a statement about `whole` speaks of `part`; None speaks of every side, but is part of none."""
    if whole is None:
        return True
    return whole is part or (whole is Side.BOTH and part is not Side.MIDLINE)


def sides_meet(one: Side | None, other: Side | None) -> bool:
    """Whether both speak of one side that was said."""
    if one is None or other is None:
        return one is other
    return one is other or (Side.BOTH in (one, other) and Side.MIDLINE not in (one, other))


def is_plural(finding: Finding, grammar: Grammar) -> bool:
    """Whether the name was said in the plural, so both sides are meant; a muscle group is plural on one side too."""
    said = re.findall(r"[a-z]+", finding.quote.lower())
    item = item_of(grammar, finding.item)
    return (item is None or item.scale != "mrc") and not set(said).isdisjoint(grammar.common.plurals)


def covers_site(whole: str, part: str) -> bool:
    """Whether a statement about the site `whole` speaks of `part`; an empty one speaks of every site."""
    return not whole or whole == part or part in _WITHIN.get(whole, frozenset())


def same_circumstances(one: Finding, other: Finding) -> bool:
    """Same position, same minutes, and no condition that only one of them names."""
    return (one.position, one.minutes) == (other.position, other.minutes) and conditions_of(one) == conditions_of(other)


def conditions_of(finding: Finding) -> frozenset[str]:
    """The circumstances it was found under, of its details."""
    return frozenset(detail.lower() for detail in finding.detail if _CONDITION.match(detail))


def same_part(reassuring: Finding, found: Finding, item: Item) -> bool:
    """Whether what was normal reaches the part that was not: strong eye closure says nothing of the mouth.

    "Horizontal saccades normal" and vertical ones slow are told apart too; where no part is said all is meant.
    """
    normal, other = _parts_of(reassuring, item.parts), _parts_of(found, item.parts)
    if normal and normal.isdisjoint(other):
        return False
    kinds, found_kinds = (_parts_of(one, item.qualifiers) for one in (reassuring, found))
    return not kinds or not found_kinds or not kinds.isdisjoint(found_kinds)


def denies_only(reassuring: Finding, found: Finding) -> bool:
    """ "No delusions", and hallucinations: all that was said is that another thing is not there."""
    denied = [text.removeprefix("no ") for text in reassuring.detail if text.startswith("no ")]
    said = " ".join((str(found.value or ""), found.quote, *found.detail)).lower()
    return len(denied) == len(reassuring.detail) > 0 and not any(_holds(said, text.rstrip("s")) for text in denied)


def _parts_of(finding: Finding, known: Sequence[str]) -> frozenset[str]:
    """Which of the known words it was said of, by its details and its descriptor."""
    said = [text.lower() for text in finding.detail]
    if isinstance(finding.value, Text):
        said.append(finding.value.words.lower())
    return frozenset(
        part for part in (word.lower().rstrip("s") for word in known) for text in said if _holds(text, part)
    )


def _holds(text: str, part: str) -> bool:
    words = " ".join(re.findall(r"[\w'-]+", text))
    return any(f" {part}{plural} " in f" {words} " for plural in ("", "s"))


def about_the_same(denied: Finding, found: Finding) -> bool:
    """A denial that names a kind ("no rest tremor") speaks of that kind only."""
    if not isinstance(denied.value, Text):
        return True
    kinds = _words(denied.value.words)
    said = _words(" ".join((str(found.value or ""), found.quote, *found.detail)))
    return not kinds or bool(kinds & said)


def _words(text: str) -> set[str]:
    return set(re.findall(r"[a-z]+", text.lower())) - _SMALL


def is_abnormal(finding: Finding, item: Item, grammar: Grammar) -> bool:
    """Whether the statement cannot stand beside a plain "normal" of the same thing."""
    status = finding.status
    if status is Status.ABNORMAL:
        return True
    if status is Status.MEASURED:
        return _is_low_or_high_grade(finding, item, grammar)
    if status not in (Status.PRESENT, Status.ABSENT) or item.kind != "presence":
        return False
    if item.noteworthy is not None and item.noteworthy.statuses:
        return status.value in item.noteworthy.statuses
    return status is (Status.PRESENT if item.alone else Status.ABSENT)


def is_reassuring(finding: Finding, item: Item, grammar: Grammar) -> bool:
    """Whether the statement says that nothing is wrong."""
    if finding.status is Status.NORMAL:
        return True
    if finding.status in (Status.PRESENT, Status.ABSENT) and item.kind == "presence":
        return not is_abnormal(finding, item, grammar)
    return finding.status is Status.ABSENT


def _is_low_or_high_grade(finding: Finding, item: Item, grammar: Grammar) -> bool:
    """A grade outside the normal ones of its scale; a scale that names none is not judged."""
    if not isinstance(finding.value, Grade):
        return False
    scale = grammar.scales.get(finding.value.scale or item.scale)
    return scale is not None and bool(scale.normal) and finding.value.grade not in scale.normal
