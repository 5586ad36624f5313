"""The trade's knowledge: grammar files and their models."""

from dictate.grammar.load import load_grammar
from dictate.grammar.noteworthy import has_rule, is_noteworthy
from dictate.grammar.schema import (
    CommonFile,
    ComponentFile,
    Control,
    ControlsFile,
    DoubtFile,
    Example,
    Expected,
    Grammar,
    Item,
    Limit,
    NamedValue,
    Scale,
    Scope,
    ScopeItem,
    Supply,
)

__all__ = [
    "CommonFile",
    "ComponentFile",
    "Control",
    "ControlsFile",
    "DoubtFile",
    "Example",
    "Expected",
    "Grammar",
    "Item",
    "Limit",
    "NamedValue",
    "Scale",
    "Scope",
    "ScopeItem",
    "Supply",
    "has_rule",
    "is_noteworthy",
    "load_grammar",
]
