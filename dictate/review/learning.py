"""'Always read it so for me': a settled repair or phrase goes into the user's own grammar folder, and out again.

Never for a number, a side or a negation: those are asked about every time. A phrase is offered only when the whole
dictation, read again with it, gives the very findings that were settled and changes no other. What was learnt stands
in files of its own (`learnt/` in the user's folder), so that files written by hand are never rewritten.
"""

from __future__ import annotations

import hashlib
import os
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from dictate.checks.heard import REPAIRED
from dictate.errors import MachineError
from dictate.grammar import Grammar, Item
from dictate.grammar.load import LEARNT
from dictate.model import Decision, Examination, Finding, Status, Transcript
from dictate.reading import read, transcript_of_text
from dictate.reading.marks import Mark
from dictate.reading.read import lexicon_of
from dictate.reading.tokens import tokenize

HEAD = "# Written by `dictate review`: phrases that are always read so. `dictate grammar check` checks them.\n"
NEVER = ("side", "negation", "absent", "normal", "abnormal", "present", "not_examined", "not_assessable", "unchanged")
MOST_TRIES = 6


@dataclass(frozen=True, slots=True)
class Lesson:
    """One line of a grammar file: where it goes, what is said, and how it will be read."""

    file: str  # reflexes.yaml
    path: tuple[str, ...]  # keys down to the list of phrases
    phrase: str
    reads: str  # in words, for the examiner

    @property
    def line(self) -> str:
        """As it will stand in the file, on one line."""
        return f"{self.file}: {' > '.join(self.path)}: {self.phrase}"


def lessons_of(exam: Examination, decision: Decision, grammar: Grammar) -> tuple[Lesson, ...]:
    """What the decision just carried out could teach; empty when it is nothing safe. exam: after the decision."""
    if decision.asked is None:
        return ()
    if decision.asked.code == "repaired-hearing":
        return tuple(_repairs(exam, decision, grammar))
    if decision.asked.code == "not-placed" and decision.typed:
        return tuple(_phrases(exam, decision, grammar))
    return ()


def learn(lesson: Lesson, folder: Path) -> None:
    """Put the lesson's line into the user's folder. Raises MachineError."""
    content = _content(folder, lesson.file)
    place: Any = content
    for key in lesson.path[:-1]:
        place = place.setdefault(key, {})
    phrases = place.setdefault(lesson.path[-1], [])
    if lesson.phrase not in phrases:
        phrases.append(lesson.phrase)
    _write(folder, lesson.file, content)


def forget(lesson: Lesson, folder: Path) -> None:
    """Take the lesson's line out again; what becomes empty goes with it. Raises MachineError."""
    content = _content(folder, lesson.file)
    _prune(content, lesson.path, lesson.phrase)
    _write(folder, lesson.file, content)


def learnt(folder: Path) -> tuple[Lesson, ...]:
    """Everything that was learnt."""
    found: list[Lesson] = []
    for path in sorted((folder / LEARNT).glob("*.yaml")):
        for keys, phrase in _leaves(_content(folder, path.name), ()):
            found.append(Lesson(path.name, keys, phrase, _in_words(keys)))
    return tuple(found)


def _repairs(exam: Examination, decision: Decision, grammar: Grammar) -> Iterator[Lesson]:
    if not decision.key:  # it was not confirmed as mended
        return
    meant = lexicon_of(grammar).misheard
    for at in decision.asked.findings[:1] if decision.asked else ():
        if at >= len(exam.findings):
            return
        for detail in exam.findings[at].detail:
            heard = detail.removeprefix(REPAIRED).lower() if detail.startswith(REPAIRED) else ""
            right = meant.get(heard, "")
            if right and _is_safe(heard, grammar) and _is_safe(right, grammar):
                yield Lesson("common.yaml", ("trusted", right), heard, f'"{heard}" is read as "{right}"')


def _phrases(exam: Examination, decision: Decision, grammar: Grammar) -> Iterator[Lesson]:
    found = [change.finding for change in decision.changes if change.finding is not None]
    if len(found) != 1 or exam.as_read is None or decision.asked is None or found[0].status is Status.ABSENT:
        return
    wanted, tries = found[0], 0
    heard = Transcript(
        words=exam.transcript.words[: exam.as_read.words], sources=exam.transcript.sources[: exam.as_read.sources]
    )
    before = read(heard, grammar).findings
    for phrase in _candidates(decision.asked.quote, grammar):
        for field in _fields(wanted, grammar.items[wanted.item]):
            tries += 1
            if tries > MOST_TRIES:
                return
            if _teaches(phrase, field, wanted, heard, before, grammar):
                name = grammar.items[wanted.item].name
                reads = f'"{phrase}" names {name}' if field.endswith("terms") else f'"{phrase}" is said of {name}'
                yield Lesson(f"{wanted.component.value}.yaml", ("items", wanted.item, field), phrase, reads)
                return


def _fields(wanted: Finding, item: Item) -> tuple[str, ...]:
    """Lists of the item that the phrase may belong to, the likeliest first."""
    if wanted.status in (Status.NORMAL, Status.ABNORMAL) and wanted.value is None:
        return ("terms", "normal" if wanted.status is Status.NORMAL else "abnormal", "signs")
    return ("terms",)


def _candidates(quote: str, grammar: Grammar) -> Iterator[str]:
    """Runs of the words that hold no number, side or negation, the longest first."""
    tokens = tokenize(transcript_of_text(quote))
    runs: list[list[str]] = [[]]
    for mark in lexicon_of(grammar).find(tokens):
        if _is_never(mark) or not mark.text.strip(" ,.;:"):
            runs.append([])
        else:
            runs[-1] += [token.lower for token in tokens[mark.start : mark.end] if token.lower.isalpha()]
    for run in sorted(filter(None, runs), key=len, reverse=True):
        yield " ".join(run)


def _is_never(mark: Mark) -> bool:
    return (
        mark.number is not None or any(role.kind in NEVER and not role.item for role in mark.roles) or mark.has("grade")
    )


def _is_safe(phrase: str, grammar: Grammar) -> bool:
    """Whether the words hold no number, side or negation."""
    return bool(phrase) and not any(map(_is_never, lexicon_of(grammar).find(tokenize(transcript_of_text(phrase)))))


def _teaches(
    phrase: str, field: str, wanted: Finding, heard: Transcript, before: tuple[Finding, ...], grammar: Grammar
) -> bool:
    """Whether the dictation read with the phrase gives the finding wanted beside those there were, and no other."""
    taught = read(heard, _with(phrase, field, wanted, grammar)).findings
    rows = [_row(finding) for finding in taught]
    for finding in before:
        if _row(finding) not in rows:
            return False
        rows.remove(_row(finding))
    return rows == [_row(wanted)]


def _row(finding: Finding) -> tuple[object, ...]:
    return (
        finding.item, finding.side, finding.site, finding.position, finding.minutes, finding.status, finding.value,
        finding.unit, finding.certainty,
    )  # fmt: skip


def _with(phrase: str, field: str, wanted: Finding, grammar: Grammar) -> Grammar:
    """The grammar with one phrase more."""
    part = grammar.components[wanted.component]
    item = part.items[wanted.item]
    item = item.model_copy(update={field: (*getattr(item, field), phrase)})
    part = part.model_copy(update={"items": {**part.items, wanted.item: item}})
    digest = hashlib.sha256(f"{grammar.sha256} {wanted.item} {field} {phrase}".encode()).hexdigest()
    components = {**grammar.components, wanted.component: part}
    return grammar.model_copy(update={"components": components, "sha256": digest})


def _content(folder: Path, name: str) -> dict[str, Any]:
    path = folder / LEARNT / name
    if not path.is_file():
        return {}
    content = yaml.safe_load(path.read_text(encoding="utf-8"))
    return content if isinstance(content, dict) else {}


def _leaves(place: Any, keys: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], str]]:
    if isinstance(place, dict):
        for key, content in place.items():
            yield from _leaves(content, (*keys, str(key)))
    elif isinstance(place, list):
        yield from ((keys, str(phrase)) for phrase in place)


def _in_words(keys: tuple[str, ...]) -> str:
    return f'read as "{keys[1]}"' if keys[0] == "trusted" else f"{keys[1].replace('_', ' ')} ({keys[-1]})"


def _prune(place: Any, keys: tuple[str, ...], phrase: str) -> None:
    if not keys or keys[0] not in place:
        return
    inner = place[keys[0]]
    if isinstance(inner, list):
        place[keys[0]] = [one for one in inner if one != phrase]
    else:
        _prune(inner, keys[1:], phrase)
    if not place[keys[0]]:
        del place[keys[0]]


def _write(folder: Path, name: str, content: dict[str, Any]) -> None:
    """Whole or not at all, readable by the user alone; a file that would be empty is removed."""
    path = folder / LEARNT / name
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        if not content:
            path.unlink(missing_ok=True)
            return
        handle, aside = tempfile.mkstemp(prefix=".", suffix=".part", dir=path.parent)
        with open(handle, "w", encoding="utf-8") as file:
            file.write(HEAD + yaml.safe_dump(content, allow_unicode=True, sort_keys=True))
            file.flush()
            os.fsync(file.fileno())
        Path(aside).replace(path)
    except OSError as fault:
        reason = (fault.strerror or str(fault)).lower()
        raise MachineError(
            f"{path}: cannot be written: {reason}: make room, or give another --grammar folder"
        ) from fault
