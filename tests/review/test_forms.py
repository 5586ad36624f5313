"""What a form says, and what it cannot."""

from __future__ import annotations

import pytest

from dictate.model import Action, Component, Decision
from dictate.review.forms import decision_of, leads_to, place_of, typed_in


def test_decision_of_a_form() -> None:
    """Empty fields are none; what is not said is an answer."""
    assert decision_of({"query": "3", "finding": "", "answer": "left"}) == Decision(query=3, answer="left")
    added = decision_of({"action": "add", "answer": "gait normal", "under": "reflexes"})
    assert added == Decision(action=Action.ADD, answer="gait normal", component=Component.REFLEXES)


@pytest.mark.parametrize("form", [{"query": "x"}, {"finding": "1e9"}, {"action": "explode"}, {"under": "knee"}])
def test_no_decision(form: dict[str, str]) -> None:
    """Nonsense is none."""
    with pytest.raises(ValueError, match=r"x|1e9|explode|knee"):
        decision_of(form)


@pytest.mark.parametrize("path", ["/", "/note", "/read-so", "/finding/12", "/?q=3"])
def test_own_addresses(path: str) -> None:
    """A form leads there."""
    assert leads_to(path) == path


@pytest.mark.parametrize(
    "path",
    [
        "http://example.org/",
        "//example.org",
        "/\\example.org",
        "javascript:x",
        "/finding/x",
        "/finding/1\n",
        "/?q=1&x",
        "",
    ],
)
def test_other_addresses(path: str) -> None:
    """A form never does."""
    assert leads_to(path) == "/"


@pytest.mark.parametrize("text", ["-1", "x", "\u00b2", "9" * 5000, "", " 1"])
def test_no_place(text: str) -> None:
    """What int() takes or breaks on, too."""
    assert place_of(text) == -1
    assert place_of("12") == 12


def test_what_was_typed_is_told_from_keys() -> None:
    """An answer counts as typed only where its form says so."""
    form = {"answer": "left", "by": "Dr A", "revision": "1"}
    assert typed_in(form) == {"by": "Dr A"}
    assert typed_in({**form, "typed": "yes"}) == {"by": "Dr A", "answer": "left"}
