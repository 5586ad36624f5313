"""The tree of errors."""

from __future__ import annotations

import pytest

from dictate import errors


@pytest.mark.parametrize("kind", [errors.InputError, errors.MachineError, errors.GrammarError, errors.RecordError])
def test_one_root(kind: type[Exception]) -> None:
    """Whatever the user can mend is caught in one place."""
    assert issubclass(kind, errors.DictateError)


def test_grammar_error_shows_one_line_per_fault() -> None:
    """All faults at once."""
    error = errors.GrammarError(("a:1: x", "b:2: y"))
    assert str(error).splitlines() == list(error.faults)


def test_the_docstring_draws_the_whole_tree() -> None:
    """A new class is drawn, too."""
    classes = [name for name, thing in vars(errors).items() if isinstance(thing, type) and issubclass(thing, Exception)]
    assert all(name in (errors.__doc__ or "") for name in classes)
