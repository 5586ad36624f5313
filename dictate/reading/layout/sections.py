"""Marks → sentences of the examination, and the stretches kept verbatim: history, impression, plan."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from dictate.model import RemarkKind
from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

EXAMINATION = "examination"
_KINDS = {
    "history": RemarkKind.HISTORY,
    "impression": RemarkKind.IMPRESSION,
    "plan": RemarkKind.PLAN,
    "investigations": RemarkKind.TALK,
}
_OTHER_STUDIES = ("investigations", "history", "plan", "impression")
EXAMINATIONS = ("exam", "examination")
_VITAL = frozenset({"blood_pressure", "heart_rate"})
_OF_BEFORE = frozenset({"was", "were", "had", "initially", "then"})
_HEADING_REACH = 7  # marks in which a typed heading ends
Kept = tuple[RemarkKind, int, int]  # kind, first token, token after the last


def sentences_of(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[list[Mark]]:
    """Marks cut where a sentence ends."""
    sentences: list[list[Mark]] = []
    current: list[Mark] = []
    for mark in marks:
        current.append(mark)
        if tokens[mark.end - 1].ends_sentence:
            sentences.extend(_rest_apart(current))
            current = []
    if current:
        sentences.extend(_rest_apart(current))
    return sentences


def _rest_apart(sentence: list[Mark]) -> Iterator[list[Mark]]:
    """The sentence, and by itself "otherwise normal examination" at its end, which is of no item named before."""
    at = next((i for i in range(len(sentence) - 1, 0, -1) if sentence[i].has("rest")), 0)
    told = [mark for mark in sentence[at + 1 :] if not mark.has("stop", "filler") or mark.text.endswith(EXAMINATIONS)]
    normal = [mark.role("normal", "") is not None for mark in told]
    if at and sorted(normal) == [False, True] and told[normal.index(False)].text.endswith(EXAMINATIONS):
        yield sentence[:at]
        sentence = sentence[at:]
    yield sentence


def titles_on_lines(marks: Sequence[Mark], tokens: Sequence[Token], meanings: Callable[[str], set[Role]]) -> list[Mark]:
    """The marks, a word alone on its line a heading where it is one in front of a colon ("GENERAL").

    meanings: everything that a phrase can be.
    """
    result = list(marks)
    for place, mark in enumerate(marks):
        opens = not mark.start or tokens[mark.start - 1].ends_line
        if not (mark.has("word") and opens and tokens[mark.end - 1].ends_line):
            continue
        roles = tuple(role for role in meanings(f"{mark.text} :") if role.kind == "heading")
        result[place] = replace(mark, roles=roles or mark.roles)
    return result


def split(marks: Sequence[Mark], tokens: Sequence[Token]) -> tuple[list[list[Mark]], list[Kept]]:
    """Sentences of the examination in order, and the spans of spoken sections that are not examination.

    A section starts with its heading at the start of a sentence and holds until a component's heading, or that of the
    examination, starts one. A history also ends where a new line begins with something measured ("BP 106/64"), and
    where a sentence tells of nothing but vital signs.
    """
    inside: list[list[Mark]] = []
    kept: list[Kept] = []
    section: RemarkKind | None = None
    for sentence in sentences_of(marks, tokens):
        opened = _section_of(sentence) or _titled(sentence)
        if opened == "plan" and not inside and not kept and _is_title(sentence):
            opened = ""  # "Follow-up." in front of everything says which visit it is
        if opened in _KINDS:
            section = _KINDS[opened]
        elif section is not None and (
            opened == EXAMINATION
            or _opens_component(sentence)
            or (section is RemarkKind.HISTORY and _measures(sentence, tokens))
        ):
            section = None
        if section is None:
            inside.append(sentence)
        elif kept and kept[-1][0] is section and kept[-1][2] == sentence[0].start:
            kept[-1] = (section, kept[-1][1], sentence[-1].end)
        else:
            kept.append((section, sentence[0].start, sentence[-1].end))
    return inside, kept


def _measures(sentence: Sequence[Mark], tokens: Sequence[Token]) -> bool:
    return _measures_on_a_new_line(sentence, tokens) or _only_measures(sentence)


def _measures_on_a_new_line(sentence: Sequence[Mark], tokens: Sequence[Token]) -> bool:
    first = sentence[0]
    opens = first.start > 0 and tokens[first.start - 1].ends_line
    return opens and first.has("item") and bool(found_in(sentence[:3], measured=True))


def _only_measures(sentence: Sequence[Mark]) -> bool:
    """ "FHx: nil. BP 120/80, pulse 70, sats 98%.": no word of another time or place, and more than one measured."""
    plain = all(not mark.has("word", "talk", "section") and mark.text not in _OF_BEFORE for mark in sentence)
    told = found_in(sentence, measured=True)
    return plain and sentence[0].has("item") and len(told) > 1 and not _VITAL.isdisjoint(told)


def _section_of(sentence: Sequence[Mark]) -> str:
    """The section whose heading starts the sentence, or empty."""
    first = sentence[0]
    after = sentence[1] if len(sentence) > 1 else None
    closed = first.role("closed_section") or first.role("section")
    if closed is not None and (after is None or after.text in (":", ".", "-")):
        return closed.key
    on_it = first.role("section") or (after is not None and after.has("item", "alone"))
    if closed is not None and closed.key == EXAMINATION and on_it:
        return closed.key  # "O/E alert, GCS 15", "Obs BP 140/80"
    timed = [mark.text for mark in sentence[1:_HEADING_REACH] if mark.number is None]
    at_a_time = closed is not None and closed.key in ("investigations", EXAMINATION)
    if closed is not None and at_a_time and timed[:1] == [":"]:
        return closed.key  # "CT 14:31: ...", "Obs 08:30: ..."
    spoken = first.role("section")
    if spoken is None or after is None:
        return ""
    if after.text in (",", "is") or not after.has("normal", "abnormal", "number", "not_examined"):
        return spoken.key
    return ""


def _is_title(sentence: Sequence[Mark]) -> bool:
    """Whether it names the visit, in a sentence of its own: what is planned stands behind a colon."""
    return len(sentence) == 2 and sentence[0].text.startswith("follow") and sentence[1].text == "."


def _titled(sentence: Sequence[Mark]) -> str:
    """Examination, where a typed title says so in other words ("Focused bedside exam:"), or names a scale alone."""
    ends = next((i for i, mark in enumerate(sentence[:_HEADING_REACH]) if mark.text == ":"), 0)
    title = sentence[:ends]
    words = {word for mark in title for word in mark.text.split()}
    told = any(
        role.kind in ("section", "closed_section") and role.key in _OTHER_STUDIES
        for mark in title
        for role in mark.roles
    )
    if words & {*EXAMINATIONS} and not told:
        return EXAMINATION
    alone = [mark for mark in sentence if not mark.has("colon", "stop")]
    return EXAMINATION if len(alone) == 1 and alone[0].number is None and _is_total(alone[0]) else ""


def _is_total(mark: Mark) -> bool:
    return any(role.kind == "item" and role.item.endswith("_total") for role in mark.roles)


def found_in(marks: Sequence[Mark], *, measured: bool = False) -> tuple[str, ...]:
    """Items named with a number behind them, or unless `measured` a word for what was found, each once."""
    spoken = [mark for mark in marks if not mark.has("filler")]
    names = []
    for mark, after in itertools.pairwise(spoken):
        role = mark.role("item") or mark.role("context")
        told = not measured and (mark.has("item") and after.has("normal", "abnormal", "value"))
        if role is not None and (after.number is not None or told):
            names.append(role.item)
    return tuple(dict.fromkeys(names))


def _opens_component(sentence: Sequence[Mark]) -> bool:
    """A component's heading at the start, closed by a colon or full stop, or with something found behind it."""
    if sentence[0].role("heading") is None:
        return False
    after = next((mark for mark in sentence[1:] if not mark.has("filler")), None)
    if after is None or after.text in (":", ".", "-"):
        return True
    return after.number is not None or after.has(
        "normal", "abnormal", "absent", "not_examined", "item", "sign", "alone"
    )
