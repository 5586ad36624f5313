"""The records room: examinations and their recordings, saved, signed, found again, and kept from change."""

from dictate.records.kept import Addendum, Fault, Keep, Listed, Sound, State, Stored
from dictate.records.signing import RETYPE, REVIEW, must_be_settled, open_looks, pass_over
from dictate.records.store import Records, open_records

__all__ = [
    "RETYPE",
    "REVIEW",
    "Addendum",
    "Fault",
    "Keep",
    "Listed",
    "Records",
    "Sound",
    "State",
    "Stored",
    "must_be_settled",
    "open_looks",
    "open_records",
    "pass_over",
]
