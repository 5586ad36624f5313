"""A record as it stands: its revisions folded into one state, and its note printed from stored text."""

from __future__ import annotations

from collections.abc import Container, Sequence
from datetime import datetime

from dictate.catalogue import note as words
from dictate.model import Around, Examination, Transcript
from dictate.records.chain import ERASED, Row, state_of
from dictate.records.kept import Addendum, Leaf, Sound, State, Stored

WHOLE = ("save", "sign")  # actions whose leaf holds the whole examination
NOTHING = Examination(program="", grammar_sha256="", transcript=Transcript())  # all that an erased record has


def needed(rows: Sequence[Row]) -> list[Row]:
    """Revisions whose content tells how the record stands: from the last whole one on."""
    if state_of(rows) == ERASED:
        return [row for row in rows if row["action"] == "erase"][-1:]
    last = max(at for at, row in enumerate(rows) if row["action"] in WHOLE)
    return list(rows[last:])


def stand(rows: Sequence[Row], leaves: Sequence[Leaf]) -> Stored:
    """rows: all revisions of the record; leaves: content of those that are `needed`."""
    pairs = list(zip(needed(rows), leaves, strict=True))
    state: State = state_of(rows)  # type: ignore[assignment]  # the five words of `State`
    exam, sounds = NOTHING, dict[str, Sound]()
    for row, leaf in pairs:
        if row["action"] in WHOLE and leaf.exam is not None:
            exam = leaf.exam
        if row["action"] == "move" and leaf.patient is not None:
            exam = exam.model_copy(update={"patient": leaf.patient})
        if row["action"] == "countersign":
            exam = exam.model_copy(update={"countersigned_by": row["who"]})
        sounds |= {sound.file: sound for sound in leaf.sounds}
        for gone in row.went:
            sounds.pop(gone, None)
    newest = rows[-1]
    return Stored(
        key=newest["record"],
        revision=newest.revision,
        exam=exam,
        state=state,
        saved_at=datetime.fromisoformat(newest["at"]),
        who=newest["who"],
        head=newest.seal.decode(),
        note="" if state == "draft" else _note(pairs),
        around=Around() if state == "draft" else _around(pairs),
        addenda=tuple(_addendum(row, leaf) for row, leaf in pairs if row["action"] == "amend"),
        sounds=tuple(sounds.values()),
    )


def _addendum(row: Row, leaf: Leaf) -> Addendum:
    at = datetime.fromisoformat(row["at"])
    return Addendum(at=at, by=row["who"], why=leaf.why, text=leaf.text, exam=leaf.exam)


def _note(pairs: Sequence[tuple[Row, Leaf]]) -> str:
    """Banners first, then what was signed, then what was added; each part with the head it was sealed with."""
    around = _around(pairs)
    parts = ["\n".join(around.banners)] if around.banners else []
    parts += [f"{leaf.text.rstrip()}\n{around.foot}" for row, leaf in pairs if row["action"] == "sign"]
    parts += around.additions
    last = pairs[-1][0]
    if last["action"] not in ("sign", "amend", "countersign", "erase-sound"):
        parts.append(_foot(last))
    return "\n\n".join(parts) + "\n"


def _around(pairs: Sequence[tuple[Row, Leaf]]) -> Around:
    """What stands above and below the signed text."""
    forms = {"withdraw": words.WITHDRAWN, "move": words.MOVED, "erase": words.ERASED_NOTE}
    back = _dated_backward([row for row, _ in pairs])
    banners = [_said(forms[row["action"]], row, leaf, back) for row, leaf in pairs if row["action"] in forms]
    foot, parts = "", []
    for row, leaf in pairs:
        if row["action"] == "sign":
            foot = _foot(row)
        if row["action"] == "amend":
            parts.append(f"{_said(words.ADDENDUM, row, leaf, back)}\n{_indented(leaf.text)}\n{_foot(row)}")
        if row["action"] == "countersign":
            parts.append(f"{_said(words.COUNTERSIGNED, row, leaf, back)}\n{_foot(row)}")
        if row["action"] == "erase-sound":
            parts.append(_said(words.SOUND_ERASED, row, leaf, back))
    return Around(banners=tuple(banners), foot=foot, additions=tuple(parts))


def _dated_backward(rows: Sequence[Row]) -> set[int]:
    """Places in the chain of revisions whose time lies before that of one they follow."""
    times = [datetime.fromisoformat(row["at"]).astimezone().replace(second=0) for row in rows]  # printed by the minute
    return {row.seq for at, row in enumerate(rows) if any(times[at] < before for before in times[:at])}


def _said(form: str, row: Row, leaf: Leaf, back: Container[int]) -> str:
    at = datetime.fromisoformat(row["at"]).isoformat(sep=" ", timespec="minutes")
    said = form.format(at=at, who=_one_line(row["who"]), why=_one_line(leaf.why), patient=_one_line(leaf.patient or ""))
    return words.BACKWARD.format(said=said) if row.seq in back else said


def _foot(row: Row) -> str:
    return words.FOOT.format(key=row["record"], revision=row.revision, head=row.seal.decode())


def _indented(text: str) -> str:
    return "\n".join(f"  {line}".rstrip() for line in text.strip().splitlines())


def _one_line(text: str) -> str:
    return " ".join(text.split())
