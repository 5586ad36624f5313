"""Marks → sentences of the examination, and the stretches kept verbatim: history, impression, plan."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from dictate.model import RemarkKind
from dictate.reading.marks import Mark, Role
from dictate.reading.tokens import Token

EXAMINATION = "examination"
_AGES = ("y", "year", "m", "f", "month")  # "63 yo", "82F"
_FIRST_LINES = 4  # where it is said who comes
_COMPLAINT = "complaint"
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
_LEAST_PRESSURE = 30  # mmHg, of the lower number
_HEADING_REACH = 7  # marks in which a typed heading ends
_DURATIONS = (7, 12, 52)  # "3/7", "2/12": so many days, weeks or months of a history
Kept = tuple[RemarkKind, int, int]  # kind, first token, token after the last


def sentences_of(marks: Sequence[Mark], tokens: Sequence[Token]) -> list[list[Mark]]:
    """Marks cut where a sentence ends."""
    sentences: list[list[Mark]] = []
    current: list[Mark] = []
    marks = list(marks)
    for place, mark in enumerate(marks):
        if _opens_side(marks, place, current):
            marks[place + 1] = replace(marks[place + 1].only("colon"), text=":")
            if len(current) == 2 and current[0].role("site", ""):
                current[1] = current[1].only("comma")  # "UL: R: tone N": the arm of that side
            elif current:
                sentences.extend(_rest_apart(current))
                current = []
        current.append(mark)
        if tokens[mark.end - 1].ends_sentence:
            sentences.extend(_rest_apart(current))
            current = []
    if current:
        sentences.extend(_rest_apart(current))
    return sentences


def _opens_side(marks: Sequence[Mark], place: int, before: Sequence[Mark]) -> bool:
    """ "R: HF 4, KE 5; L - HF 5, KE 5": a side with a colon, behind a break and in front of a name, is a title."""
    if place + 2 >= len(marks) or marks[place].role("side", "") is None or marks[place + 1].text not in (":", "-"):
        return False
    parted = not before or before[-1].has("comma", "semicolon", "colon") or before[-1].text == "-"
    named = marks[place + 2].has("item", "context", "sign") and not marks[place + 2].has("side")
    return parted and named and not (before and marks[place].has("site"))


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
    sentences = sentences_of(marks, tokens)
    for place, sentence in enumerate(sentences):
        opened = _section_of(sentence) or _titled(sentence)
        if opened == _COMPLAINT and section is None and not _examines(sentence):
            kept.append((RemarkKind.HISTORY, sentence[0].start, sentence[-1].end))
            continue
        if place < _FIRST_LINES and section is None and _introduces(sentence, sentences[place + 1 :], tokens):
            kept.append((RemarkKind.HISTORY, sentence[0].start, sentence[-1].end))
            continue
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


def _introduces(sentence: Sequence[Mark], later: Sequence[Sequence[Mark]], tokens: Sequence[Token]) -> bool:
    """ "63 yo M, back pain + foot drop", on a line above "O/E:": who comes and why."""
    opens = sentence[0].start == 0 or tokens[sentence[0].start - 1].ends_line
    aged = opens and len(sentence) > 2 and sentence[0].number is not None and sentence[1].text.startswith(_AGES)
    if not aged or not tokens[sentence[-1].end - 1].ends_line or _examines(sentence):
        return False
    return any(_section_of(one) == EXAMINATION for one in later)


def _examines(sentence: Sequence[Mark]) -> bool:
    """Whether something measured, or the word for the examination, stands behind what was complained of."""
    at = range(1, len(sentence))
    return any(sentence[i].has("section", "closed_section") or found_in(sentence[i : i + 2], measured=True) for i in at)


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
    ends = (":", "-") if first.has("item", "alone") else (":", ".", "-")  # "RRR. CTA. Abdomen soft."
    if closed is not None and (after is None or after.text in ends):
        return "" if _only_acuities(sentence[2:]) else closed.key
    on_it = first.role("section") or (after is not None and (after.has("item", "alone") or _is_pressure(after)))
    if closed is not None and closed.key == EXAMINATION and on_it:
        return closed.key  # "O/E alert, GCS 15", "Obs BP 140/80", "VS 134/82"
    timed = [mark.text for mark in sentence[1:_HEADING_REACH] if mark.number is None]
    at_a_time = closed is not None and closed.key in ("investigations", EXAMINATION)
    if closed is not None and at_a_time and timed[:1] == [":"]:
        return closed.key  # "CT 14:31: ...", "Obs 08:30: ..."
    spoken = first.role("section")
    if spoken is None or after is None:
        return ""
    lasting = after.number is not None and after.number.op == "/" and after.number.b in _DURATIONS
    if lasting or after.text in (",", "is") or not after.has("normal", "abnormal", "number", "not_examined"):
        return spoken.key
    return ""


def _is_pressure(mark: Mark) -> bool:
    number = mark.number
    return number is not None and number.op == "/" and number.b is not None and _LEAST_PRESSURE <= number.b < number.a


def _only_acuities(told: Sequence[Mark]) -> bool:
    """ "cc: 6/9, 6/6": with glasses, and no chief complaint."""
    said = [mark for mark in told if not mark.has("comma", "side", "stop")]
    return bool(said) and all(mark.number is not None and mark.number.op == "/" for mark in said)


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
