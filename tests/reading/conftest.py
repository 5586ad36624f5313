"""The packaged grammar read once, and a dictated phrase taken through each step of the reader."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import pytest

from dictate.grammar import Grammar, load_grammar
from dictate.model import Certainty, Finding
from dictate.reading.cells.cells import CellBuilder
from dictate.reading.in_force.context import Context
from dictate.reading.marks import Mark, Number
from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.phrases.numbers import find_numbers
from dictate.reading.read import Reading, lexicon_of, read
from dictate.reading.senses.naming import Labeller
from dictate.reading.statements.drafts import Cell
from dictate.reading.statements.statements import Divider
from dictate.reading.statements.weights import Statement
from dictate.reading.tokens import Token, tokenize, transcript_of_text


@pytest.fixture(scope="session")
def grammar() -> Grammar:
    """The packaged grammar, loaded once."""
    return load_grammar()


@pytest.fixture(scope="session")
def lexicon(grammar: Grammar) -> Lexicon:
    """Its phrases."""
    return lexicon_of(grammar)


@pytest.fixture(scope="session")
def cut() -> Callable[[str], list[Token]]:
    """Phrase → tokens."""
    return lambda phrase: tokenize(transcript_of_text(phrase))


@pytest.fixture(scope="session")
def number(cut: Callable[[str], list[Token]]) -> Callable[[str], Number]:
    """Phrase → the one number in it."""

    def one(phrase: str) -> Number:
        (mark,) = find_numbers(cut(phrase))
        assert mark.number is not None
        return mark.number

    return one


@pytest.fixture(scope="session")
def marks(lexicon: Lexicon, cut: Callable[[str], list[Token]]) -> Callable[[str], list[Mark]]:
    """Phrase → marks."""
    return lambda phrase: lexicon.find(cut(phrase))


@pytest.fixture(scope="session")
def nodes(lexicon: Lexicon, marks: Callable[[str], list[Mark]]) -> Callable[..., list[Node]]:
    """Phrase → nodes, under a component's heading when one is given."""
    return lambda phrase, under="": Labeller(lexicon).label(marks(phrase), Context(component=under))


@pytest.fixture(scope="session")
def after(nodes: Callable[..., list[Node]]) -> Callable[[str, str], tuple[Node, list[Node]]]:
    """Phrase and one of its words → the node of that word, and the nodes after it."""

    def split(phrase: str, word: str) -> tuple[Node, list[Node]]:
        found = nodes(phrase)
        place = next(place for place, node in enumerate(found) if node.text == word)
        return found[place], found[place + 1 :]

    return split


@pytest.fixture(scope="session")
def statements(lexicon: Lexicon, nodes: Callable[..., list[Node]]) -> Callable[..., list[Statement]]:
    """Phrase → statements."""
    return lambda phrase, under="": Divider(lexicon).divide(nodes(phrase, under), ())


@pytest.fixture(scope="session")
def cells(lexicon: Lexicon, statements: Callable[..., list[Statement]]) -> Callable[..., list[Cell]]:
    """Phrase of one statement → its cells."""

    def build(phrase: str, under: str = "") -> list[Cell]:
        (statement,) = statements(phrase, under)
        return CellBuilder(lexicon).build(statement, statement.candidates)

    return build


@pytest.fixture(scope="session")
def reading(grammar: Grammar) -> Callable[[str], Reading]:
    """Phrase → what is read from it."""
    return lambda phrase: read(transcript_of_text(phrase), grammar)


@pytest.fixture(scope="session")
def rows(reading: Callable[[str], Reading]) -> Callable[[str], list[str]]:
    """Phrase → one line a finding: item, side, site, position, minutes, status, value; a `?` where it is hedged."""
    return lambda phrase: [row(finding) for finding in reading(phrase).findings]


@pytest.fixture(scope="session")
def remarks(reading: Callable[[str], Reading]) -> Callable[[str], list[str]]:
    """Phrase → one line a remark: kind and words."""
    return lambda phrase: [f"{one.kind}: {one.evidence.quote}" for one in reading(phrase).remarks]


@pytest.fixture(scope="session")
def texts() -> Callable[[Sequence[Node]], list[str]]:
    """Nodes → their words."""
    return lambda nodes: [node.text for node in nodes]


def row(finding: Finding) -> str:
    """A finding in one line."""
    parts = [
        finding.item,
        finding.side or "",
        finding.site,
        finding.position or "",
        "" if finding.minutes is None else f"{finding.minutes:g} min",
        finding.status,
        "" if finding.value is None else str(finding.value),
        "?" if finding.certainty is Certainty.UNCERTAIN else "",
    ]
    return " ".join(part for part in parts if part)
