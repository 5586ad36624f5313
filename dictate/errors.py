"""The tree of errors: every message is one line that says where, what is wrong and what to do.

DictateError
├── InputError     the recording, transcript or option value is at fault
├── MachineError   the machine is at fault: no model, no space, a missing extra
│   └── BrokenOff    somebody, or the system, ends what is going on at once
├── GrammarError   one or more grammar files are at fault; one line per fault
└── RecordError    the record cannot be used so
    ├── MovedOn      it has newer revisions than the one that was seen
    ├── OpenQueries  queries keep it from being signed
    ├── Locked       it needs a passphrase, and none was given
    └── Damaged      it was changed behind the program's back, or its key is lost
"""

from __future__ import annotations


class DictateError(Exception):
    """Something the user can mend; shown as one line, exit status 1."""


class InputError(DictateError):
    """The recording, transcript or option value cannot be used."""


class MachineError(DictateError):
    """The machine lacks something: a model, space, permission, an extra."""


class BrokenOff(MachineError):
    """Ended from outside: nothing more is made of what was begun; it can be taken up."""


class GrammarError(DictateError):
    """Faults of grammar files, each one line `file:line: what is wrong`."""

    def __init__(self, faults: tuple[str, ...]) -> None:
        super().__init__("\n".join(faults))
        self.faults = faults


class RecordError(DictateError):
    """A record is not there, or is in a state that does not allow it."""


class MovedOn(RecordError):
    """Somebody saved a newer revision meanwhile; nothing was overwritten."""


class OpenQueries(RecordError):
    """Queries are open that keep the note from being signed."""


class Locked(RecordError):
    """The records are encrypted, and no passphrase was given."""


class Damaged(RecordError):
    """What is stored is not what was saved, or the key that proves it is lost."""
