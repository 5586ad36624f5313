"""The trade's knowledge: grammar files and their models."""

from dictate.grammar.load import load_grammar
from dictate.grammar.schema import (
    CommonFile,
    ComponentFile,
    Example,
    Expected,
    Grammar,
    Item,
    NamedValue,
    Scale,
    Scope,
    ScopeItem,
)

__all__ = [
    "CommonFile",
    "ComponentFile",
    "Example",
    "Expected",
    "Grammar",
    "Item",
    "NamedValue",
    "Scale",
    "Scope",
    "ScopeItem",
    "load_grammar",
]
