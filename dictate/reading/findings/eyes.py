"""What is said of eyes beside a number: by how much pupils differ, what they react to, on which scale acuity was read.

"One millimetre larger" is no size, "larger, five millimetres" is one, and a near response is no light reaction.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import replace

from dictate.model import Acuity, Quantity, Side, Status, Text
from dictate.reading.phrases.numbers import find_numbers
from dictate.reading.statements.drafts import Draft
from dictate.reading.tokens import Token

_SIZE, _DIFFERENCE = "pupil_size", "anisocoria"
_LARGER = frozenset({"larger", "bigger", "wider"})
_SMALLER = frozenset({"smaller", "narrower"})
_UNITS = frozenset({"mm", "millimetre", "millimetres", "millimeter", "millimeters"})
_ACUITY, _DECIMAL = "visual_acuity", re.compile(r"\d\.\d+")
_REACTION = "pupil_reaction"
_NEAR = re.compile(r"\b(near|accommodation)\b")
_TO_LIGHT = re.compile(r"\blight\b")
_BOTH_REACTIONS = re.compile(r"\blight and (?:to )?(?:near|accommodation)\b")
_SIDES = (Side.LEFT, Side.RIGHT)


def tell_sizes_from_differences(drafts: list[Draft], tokens: Sequence[Token]) -> None:
    """Change, in place, sizes that were said as differences, and differences that are sizes."""
    for draft in [one for one in drafts if one.item in (_SIZE, _DIFFERENCE)]:
        number = _place_of(draft, tokens)
        if number is None:
            continue
        first, end = number
        after = tokens[end].lower if end < len(tokens) else ""
        before = [token.lower for token in tokens[max(0, first - 6) : first]]
        compared = next((word for word in reversed(before) if word in _LARGER | _SMALLER), "")
        if draft.item == _SIZE and after in _LARGER | _SMALLER:
            _make_difference(draft, after, drafts)
        elif draft.item == _SIZE and ">" in before and before[-1:] == ["by"]:
            _make_difference(draft, "larger", drafts)  # "R>L by 1 mm"
        elif draft.item == _SIZE and compared and before[-1:] == ["by"]:
            _make_difference(draft, compared, drafts)  # "the right bigger than the left by one millimetre"
        elif draft.item == _DIFFERENCE and before[-1:] != ["by"] and _behind_size_of_other(draft, drafts):
            draft.item, draft.status, draft.detail = _SIZE, Status.MEASURED, []  # "2 mm against 4 mm on the right"
        elif draft.item == _DIFFERENCE and after in _SMALLER | _LARGER:
            _say_smaller(draft, after)
        elif (
            draft.item == _DIFFERENCE
            and tokens[first - 1].lower == ","
            and tokens[first - 2].lower in _LARGER | _SMALLER
        ):
            _make_size(draft, tokens[first - 2].lower, drafts)
        elif draft.item == _DIFFERENCE and any(token.lower in _SMALLER for token in tokens[max(0, first - 5) : first]):
            _say_smaller(draft, "smaller")
    _sizes_of_both(drafts)
    _side_of_both_lights(drafts)


def _behind_size_of_other(draft: Draft, drafts: Sequence[Draft]) -> bool:
    """Whether the draft right before it is the size of the other pupil."""
    at = next(place for place, one in enumerate(drafts) if one is draft)
    last = drafts[at - 1] if at else None
    return last is not None and last.item == _SIZE and {last.side, draft.side} == {*_SIDES}


def _place_of(draft: Draft, tokens: Sequence[Token]) -> tuple[int, int] | None:
    """Where the draft's millimetres start, and where their unit ends; None when it has no plain number of them."""
    value = draft.value
    if not isinstance(value, Quantity) or value.then is not None or value.upto is not None or draft.unit != "mm":
        return None
    start, end = min(s for s, _ in draft.spans), max(e for _, e in draft.spans)
    for mark in find_numbers(tokens[start:end]):
        if mark.number is not None and mark.number.a == value.number:
            last = start + mark.end
            return start + mark.start, last + (last < len(tokens) and tokens[last].lower in _UNITS)
    return None


def _make_difference(draft: Draft, word: str, drafts: list[Draft]) -> None:
    """ "The right pupil is one millimetre larger": no size; the bare "larger" beside it says no more."""
    draft.item, draft.status = _DIFFERENCE, Status.PRESENT
    draft.detail = [text for text in draft.detail if not text.startswith((*_LARGER, *_SMALLER))]
    _say_smaller(draft, word)
    for other in [one for one in drafts if one.item == _DIFFERENCE and one is not draft and _overlap(one, draft)]:
        draft.spans = sorted({*draft.spans, *other.spans})
        draft.side = draft.side or other.side
        del drafts[next(at for at, one in enumerate(drafts) if one is other)]


def _say_smaller(draft: Draft, word: str) -> None:
    """The side of a difference is the larger pupil, unless it says smaller."""
    if word in _SMALLER and "smaller" not in draft.detail:
        draft.detail.append("smaller")


def _make_size(draft: Draft, word: str, drafts: list[Draft]) -> None:
    """ "Right pupil larger, five millimetres": a size, and a difference without a number."""
    place = next(at for at, one in enumerate(drafts) if one is draft)
    drafts.insert(place + 1, replace(draft, item=_SIZE, status=Status.MEASURED, detail=[], corrected=[]))
    draft.value, draft.unit, draft.status = Text(words="smaller" if word in _SMALLER else "larger"), "", Status.PRESENT


def _sizes_of_both(drafts: list[Draft]) -> None:
    """ "Anisocoria, right five, left three millimetres": two numbers of two sides are the sizes."""
    for at, draft in enumerate(drafts):
        before = [one for one in drafts[max(0, at - 2) : at] if one.item in (_SIZE, _DIFFERENCE)]
        both = [one for one in before if isinstance(one.value, Quantity) and {one.side, draft.side} == {*_SIDES}]
        if draft.item == _DIFFERENCE and isinstance(draft.value, Quantity) and both and not draft.detail:
            draft.item, draft.status = _SIZE, Status.MEASURED
            if both[-1].item == _DIFFERENCE:
                first = both[-1]
                drafts.insert(at - 1, replace(first, side=None, value=None, unit="", detail=[], corrected=[]))
                first.item, first.status = _SIZE, Status.MEASURED
                return


def _side_of_both_lights(drafts: list[Draft]) -> None:
    """ "One millimetre in the light, two in the dark, larger on the right": the same side in both."""
    for one, two in itertools.pairwise(drafts):
        if one.item == two.item == _DIFFERENCE and one.side is None and one.detail != two.detail and two.value:
            one.side = two.side


def tell_near_from_light(drafts: Sequence[Draft], tokens: Sequence[Token]) -> None:
    """ "Brisk to light, near response absent": two reactions, so the one to near says so, in place."""
    for draft in drafts:
        if draft.item != _REACTION or "dissociation" in str(draft.value):
            continue
        said = " ".join(token.lower for start, end in draft.spans for token in tokens[start:end])
        if _BOTH_REACTIONS.search(said):
            draft.detail.append("to light and near")
        elif _NEAR.search(said) and not _TO_LIGHT.search(said):
            draft.detail.append("to near")
            if isinstance(draft.value, Text) and draft.value.words.endswith(" to near"):
                draft.value = Text(words=draft.value.words.removesuffix(" to near"))
            if str(draft.value) == "fixed":
                draft.value = Text(words="absent")


def tell_logmar_from_decimals(drafts: Sequence[Draft], tokens: Sequence[Token]) -> None:
    """ "LogMAR acuity 0.1 right, 0.4 left": what was named once holds for the sentence, in place."""
    for draft in drafts:
        if draft.item != _ACUITY or not isinstance(draft.value, Acuity) or not _DECIMAL.fullmatch(draft.value.text):
            continue
        first = next((at + 1 for at in range(draft.anchor - 1, -1, -1) if tokens[at].ends_sentence), 0)
        last = next((at for at in range(draft.anchor, len(tokens)) if tokens[at].ends_sentence), len(tokens))
        said = [at for at in range(first, min(last + 1, len(tokens))) if tokens[at].lower == "logmar"]
        if any(_is_of_one_number(at, tokens) for at in said):
            draft.readings = (draft.value.text, f"logMAR {draft.value.text}")  # "right 0.8, left logMAR 0.4"
        elif said:
            draft.value = Acuity(text=f"logMAR {draft.value.text}")
            draft.detail = [text for text in draft.detail if text != "logmar"]


def _is_of_one_number(at: int, tokens: Sequence[Token]) -> bool:
    """Whether the word stands at a number, rather than over all of the sentence."""
    start = max(0, at - 3)
    return any(mark.number is not None and mark.number.op == "logmar" for mark in find_numbers(tokens[start : at + 4]))


def _overlap(one: Draft, other: Draft) -> bool:
    return any(start < last and first < end for start, end in one.spans for first, last in other.spans)
