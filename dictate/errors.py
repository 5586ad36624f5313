"""The tree of errors: every message is one line that says where, what is wrong and what to do.

DictateError
├── InputError     the recording, transcript or option value is at fault
├── MachineError   the machine is at fault: no model, no space, a missing extra
└── GrammarError   one or more grammar files are at fault; one line per fault
"""

from __future__ import annotations


class DictateError(Exception):
    """Something the user can mend; shown as one line, exit status 1."""


class InputError(DictateError):
    """The recording, transcript or option value cannot be used."""


class MachineError(DictateError):
    """The machine lacks something: a model, space, permission, an extra."""


class GrammarError(DictateError):
    """Faults of grammar files, each one line `file:line: what is wrong`."""

    def __init__(self, faults: tuple[str, ...]) -> None:
        super().__init__("\n".join(faults))
        self.faults = faults
