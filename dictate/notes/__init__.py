"""The notes room: examination → note, page, PDF, tables, FHIR document; visits → comparison."""

from dictate.notes.compare import Comparison, Difference, compare
from dictate.notes.compared import Visits, compare_visits, comparison_csv, comparison_json, comparison_text
from dictate.notes.fhir import examination_of, note_fhir
from dictate.notes.html import comparison_html, note_html
from dictate.notes.layout import Line, note_lines
from dictate.notes.pdf import note_pdf
from dictate.notes.tables import FILES, exam_json, findings_csv, queries_csv, transcript_json
from dictate.notes.text import write_note

__all__ = [
    "FILES",
    "Comparison",
    "Difference",
    "Line",
    "Visits",
    "compare",
    "compare_visits",
    "comparison_csv",
    "comparison_html",
    "comparison_json",
    "comparison_text",
    "exam_json",
    "examination_of",
    "findings_csv",
    "note_fhir",
    "note_html",
    "note_lines",
    "note_pdf",
    "queries_csv",
    "transcript_json",
    "write_note",
]
