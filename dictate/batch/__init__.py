"""Many examinations: found in a folder, heard on one machine or many, never twice."""

from dictate.batch.crew import Crew, open_crew
from dictate.batch.found import Found, Watched, find
from dictate.batch.jobs import Asked, Setting
from dictate.batch.keeping import Keeping
from dictate.batch.ledger import Ledger
from dictate.batch.report import report_csv, report_of, report_text
from dictate.batch.run import Batch, Tally

__all__ = [
    "Asked",
    "Batch",
    "Crew",
    "Found",
    "Keeping",
    "Ledger",
    "Setting",
    "Tally",
    "Watched",
    "find",
    "open_crew",
    "report_csv",
    "report_of",
    "report_text",
]
