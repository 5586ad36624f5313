"""batch.csv: a line for each examination of the batch."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable

from dictate.batch.ledger import Entry

COLUMNS = (
    "source", "name", "state", "findings", "must", "look", "sound_min", "seconds", "model", "error", "same_as",
    "record",
)  # fmt: skip
FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


def batch_csv(entries: Iterable[Entry]) -> str:
    """In the order of sources."""
    return table(COLUMNS, map(_row, sorted(entries, key=lambda entry: entry.source)))


def table(columns: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> str:
    """CSV in which a spreadsheet calculates nothing."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(columns)
    writer.writerows(tuple(map(_safe, row)) for row in rows)
    return out.getvalue()


def _row(entry: Entry) -> tuple[str, ...]:
    done = entry.state == "done"
    return (
        entry.source,
        entry.name if entry.state != "same" else "",
        entry.state,
        str(entry.findings) if done else "",
        str(entry.musts) if done else "",
        str(entry.looks) if done else "",
        f"{entry.sound_s / 60:.2f}" if done else "",
        f"{entry.seconds:.2f}" if entry.state != "same" else "",
        entry.model,
        " ".join(entry.error.split()),
        entry.same_as,
        entry.record,
    )


def _safe(cell: str) -> str:
    return f"'{cell}" if cell.startswith(FORMULA_STARTS) else cell
