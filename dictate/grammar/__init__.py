"""The trade's knowledge: grammar files and their models."""

from dictate.grammar.load import load_grammar
from dictate.grammar.named import better_way, conditions_of, name_detail, scale_named
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
    NamedScale,
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
    "NamedScale",
    "NamedValue",
    "Scale",
    "Scope",
    "ScopeItem",
    "Supply",
    "better_way",
    "conditions_of",
    "has_rule",
    "is_noteworthy",
    "load_grammar",
    "name_detail",
    "scale_named",
]
