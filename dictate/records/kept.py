"""What is kept and what comes back: Leaf, Sound, Stored, Listed, Addendum, Fault."""

from __future__ import annotations

from datetime import datetime
from typing import Literal

from dictate.model import Around, Examination, Frozen

Keep = Literal["until-signed", "always"]
State = Literal["draft", "signed", "amended", "withdrawn", "erased"]


class Sound(Frozen):
    """One recording that is kept."""

    sha256: str  # of the recording, as the transcript's source has it
    file: str  # its name in the folder of recordings: random, says nothing
    keep: Keep


class Leaf(Frozen):
    """The content of one revision."""

    why: str
    exam: Examination | None = None  # save, sign: the whole; amend: what a further dictation gave
    text: str = ""  # sign: the note; amend: the addendum; never written anew
    sounds: tuple[Sound, ...] = ()  # save, sign, amend: all recordings of the record so far
    patient: str | None = None  # move: the reference from here on


class Addendum(Frozen):
    """What was added to a signed note."""

    at: datetime
    by: str
    why: str
    text: str
    exam: Examination | None = None  # None: it was typed


class Stored(Frozen):
    """One record as it is now."""

    key: str
    revision: int  # hand it back as `base` when saving
    exam: Examination  # of a signed record: what was signed, with the reference it was moved to
    state: State
    saved_at: datetime
    who: str
    head: str  # seal of its newest revision
    note: str = ""  # of a signed record: the stored text with all that was added; empty for a draft
    around: Around = Around()  # of a signed record: what stands above and below that text
    addenda: tuple[Addendum, ...] = ()
    sounds: tuple[Sound, ...] = ()


class Listed(Frozen):
    """One line of a list of records."""

    key: str
    revision: int
    state: State
    patient: str
    examined_at: datetime | None
    saved_at: datetime
    who: str
    open_musts: int
    open_looks: int


class Fault(Frozen):
    """Something that is not as it was written."""

    where: str
    what: str

    def __str__(self) -> str:
        return f"{self.where}: {self.what}"
