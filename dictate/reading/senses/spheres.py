"""Orientation told by its spheres: "oriented in person and place but not in time"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from dictate.reading.marks import Mark, Role
from dictate.reading.phrases.forms import words_of
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.tokens import Token

_HEADS = {"oriented": True, "orientated": True, "disoriented": False, "disorientated": False}
_KNOWS = {"knows": True, "knew": True, "know": True}  # "know" behind a denial only
_WORDS = _HEADS | _KNOWS
_LINKS = frozenset({",", "/", "&", "and", "or", "as", "well", "also", "but", ";"})
_FILLERS = frozenset("to in for the his her their own current only exact about a be he she is was got".split())
DENIALS = frozenset({"not", "nor", "neither", "isn't", "wasn't"})
_MISTAKEN = frozenset({"wrong", "mistaken", "unsure", "uncertain", "vague"})  # "about the year"
_EXCEPTIONS = (
    ("to", "everything", "but"),
    ("everything", "but"),
    ("in", "all", "respects", "but"),
    ("except", "for"),
    ("apart", "from"),
    ("aside", "from"),
    ("other", "than"),
    ("except",),
    ("bar",),
)
_PARTLY = frozenset({"partially", "partly", "vaguely", "incompletely", "inconsistently", "variably", "intermittently"})
_WRONG = frozenset("wrong incorrect incorrectly off missed impaired poor no not partial partially".split())
_GIVEN = {"wrong": False, "incorrect": False, "incorrectly": False, "right": True, "correct": True, "correctly": True}
_TELLS_ON = frozenset("he she they i we was is were are not could did would has had".split())
_WHOLLY = frozenset({"fully", "completely", "entirely", "well", "quite", "wholly"})


@dataclass(slots=True)
class Run:
    """Spheres said in one go, all well or all badly known."""

    known: bool
    start: int
    end: int = 0
    items: list[str] = field(default_factory=list)


class Spheres:
    """Reads what somebody is oriented to; the words for each sphere are the grammar's (`spheres` of an item)."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.words = {tuple(words_of(word)): name for name, item in lexicon.items.items() for word in item.spheres}
        self.items = list(dict.fromkeys(self.words.values()))
        self.longest = max(map(len, self.words), default=0)
        self.meanings = lexicon.meanings
        self.values = {name: lexicon.items[name].values for name in self.items}

    def told(self, marks: Sequence[Mark], tokens: Sequence[Token]) -> Sequence[Mark]:
        """The marks of a sentence with each run of spheres as one mark; unchanged where none is named."""
        place = 0
        while place < len(marks):
            mark = marks[place]
            head = next((i for i in range(mark.start, mark.end) if _is_head(tokens, i)), None)
            place += 1
            if head is None:
                continue
            read = self._read(tokens, head, marks[-1].end)
            over = next((m.start for m in marks if read is not None and m.start < read[1] < m.end), None)
            read = read if over is None else self._read(tokens, head, over)  # up to a phrase of its own
            if read is None:
                continue
            new, end = read
            start = new[0].start
            kept = [m for m in marks if m.end <= start], [m for m in marks if m.start >= end]
            if any(m.start < start < m.end or m.start < end < m.end for m in marks):
                continue  # a phrase of its own reaches over the edge
            marks = [*kept[0], *new, *kept[1]]
            place = len(kept[0]) + len(new)
        return marks

    def _read(self, tokens: Sequence[Token], head: int, end: int) -> tuple[list[Mark], int] | None:
        lower = [token.lower for token in tokens[:end]]
        known, start, lead = _WORDS[lower[head]], head, []
        half = 2 if head > 1 and lower[head - 1] in _WHOLLY and lower[head - 2] in DENIALS else 0
        half = half or (1 if head and lower[head - 1] in _PARTLY else 0)
        if half:
            lead = [Mark(head - half, head, (Role("abnormal"),), text=" ".join(lower[head - half : head]))]
        elif head and lower[head - 1] in DENIALS:
            known, start = not known, head - 1
        elif head and lower[head - 1] in _WHOLLY:
            start = head - 1
        runs = self.runs(lower, head + 1, Run(known, start, head + 1))
        if runs is None and lead and lower[head] in _HEADS:
            words = " ".join(lower[lead[0].start : head + 1])
            return [
                Mark(lead[0].start, head + 1, (Role("word"),), text=words)
            ], head + 1  # "not fully oriented": to what?
        if runs is None:
            return None
        marks = [self.mark(run, lower) for run in runs]
        return [*lead, *marks], marks[-1].end

    def runs(self, lower: Sequence[str], place: int, first: Run) -> list[Run] | None:
        """Runs of spheres from that place on; None where none is named."""
        runs, known, excepted, opened, last = [first], first.known, False, None, place
        while place < len(lower):
            word = lower[place]
            exception = exception_at(lower, place)
            sphere = self.sphere_at(lower, place, behind=runs[-1].end if runs[-1].items else None)
            if word == ":" and runs[-1].items and place + 1 < len(lower) and lower[place + 1] in _WRONG:
                runs.append(Run(False, last, place + 2, [runs[-1].items.pop()]))  # "person, place; time: wrong month"
                runs[-2].end, known, place = last, False, place + 2
                continue
            if sphere:
                last = place
                behind = place + sphere
                given = _GIVEN.get(lower[behind]) if behind < len(lower) else None  # "the month wrong"
                how = known if given is None else given
                if how is not runs[-1].known:
                    runs.append(Run(how, place if opened is None else opened))
                runs[-1].items.append(self.words[tuple(lower[place : place + sphere])])
                runs[-1].end = place = behind + (given is not None)
                opened = None
                continue
            if exception:
                known, excepted, opened = not first.known, not runs[0].items, place
                place += exception
                continue
            if word in DENIALS or (word in _MISTAKEN and "about" in lower[place + 1 : place + 2]):
                known, opened = not first.known, place if opened is None else opened
            elif word in _HEADS:
                denied = lower[place - 1] in DENIALS  # "knows his name; not oriented to place"
                known, opened = _HEADS[word] is not denied, place if opened is None else opened
            elif word == "but":  # "not oriented to time but to place"
                known, opened = known or not first.known, place
                excepted = excepted or not runs[0].items  # "oriented but got the year wrong"
            elif word not in _LINKS and word not in _FILLERS:
                break
            place += 1
        if excepted and len(runs) > 1:
            runs[0].items = [name for name in self.items if name not in runs[1].items]
        badly = {name for run in runs if not run.known for name in run.items}
        for run in runs:
            if run.known:  # "to the year but not the date"
                run.items = [name for name in run.items if name not in badly]
        said = [run for run in runs if run.items]
        if not said or not (first.items or excepted or first.end > first.start + 2):
            return None
        if lower[first.end - 1] in _KNOWS and place < len(lower) and lower[place] in ("of", "when", "how", "that"):
            return None  # "knew the day of her wedding"
        said[0].start = first.start
        return said

    def sphere_at(self, lower: Sequence[str], place: int, *, behind: int | None = None) -> int:
        """How many words from that place on name a sphere. behind: where the list before it ends."""
        longest = min(self.longest, len(lower) - place)
        found = next((n for n in range(longest, 0, -1) if tuple(lower[place : place + n]) in self.words), 0)
        return 0 if _told_by_itself(lower, place if behind is None else behind, place, place + found) else found

    def known_by(self, text: str) -> bool | None:
        """Whether these words say that a sphere is known, or that it is not; None where they say neither."""
        roles = self.meanings(text)
        own = [self.values[r.item][r.key].status for r in roles if r.kind == "value" and r.item in self.values]
        if own or not any(role.kind in ("normal", "abnormal") and not role.item for role in roles):
            return own[0] == "normal" if own and own[0] in ("normal", "abnormal") else None
        return any(role.kind == "normal" and not role.item for role in roles)

    def is_degree(self, word: str) -> bool:
        """A word for how much ("mildly")."""
        return any(role.kind == "severity" for role in self.meanings(word))

    def mark(self, run: Run, lower: Sequence[str]) -> Mark:
        """The run as one mark that says how each of its spheres is known."""
        key = "oriented" if run.known else "disoriented"
        roles = [Role(kind, name, key) for name in dict.fromkeys(run.items) for kind in ("value", "alone")]
        return Mark(run.start, run.end, tuple(roles), text=" ".join(lower[run.start : run.end]))


def _told_by_itself(lower: Sequence[str], last: int, start: int, end: int) -> bool:
    """ "In place and person, the date he got wrong": behind a comma or a but, and the sentence goes on about it."""
    return not {",", "but"}.isdisjoint(lower[last:start]) and not _TELLS_ON.isdisjoint(lower[end : end + 1])


def exception_at(lower: Sequence[str], place: int) -> int:
    """How many words from that place on say that what follows is excepted ("apart from")."""
    return next((len(e) for e in _EXCEPTIONS if tuple(lower[place : place + len(e)]) == e), 0)


def _is_head(tokens: Sequence[Token], place: int) -> bool:
    """ "Oriented", "knows", "did not know"; and no "I know"."""
    word = tokens[place].lower
    return word in _WORDS and (word != "know" or (place > 0 and tokens[place - 1].lower in DENIALS))
