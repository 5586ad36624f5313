"""The notes room: examination → note and tables."""

from dictate.notes.tables import FILES, exam_json, findings_csv, queries_csv, transcript_json
from dictate.notes.text import Line, note_lines, write_note

__all__ = [
    "FILES",
    "Line",
    "exam_json",
    "findings_csv",
    "note_lines",
    "queries_csv",
    "transcript_json",
    "write_note",
]
