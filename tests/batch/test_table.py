"""batch.csv: a line for each examination of the batch."""

from __future__ import annotations

import csv
import io

from dictate.batch.ledger import Entry
from dictate.batch.table import COLUMNS, batch_csv

DONE = Entry(source="b.wav", name="b-1", key="k", state="done", findings=3, musts=1, looks=2, sound_s=90, seconds=4.5)


def rows(*entries: Entry) -> list[dict[str, str]]:
    """As a program reads them."""
    return list(csv.DictReader(io.StringIO(batch_csv(entries))))


def test_a_line_each_in_the_order_of_sources() -> None:
    """Findings, queries, minutes of sound, seconds, model."""
    failed = Entry(source="a.wav", name="a-1", key="", state="failed", error="a.wav: damaged\nat 3 s")
    first, second = rows(DONE.model_copy(update={"model": "base+trade"}), failed)
    assert tuple(first) == COLUMNS
    assert (first["state"], first["error"], first["findings"], first["must"]) == (
        "failed", "a.wav: damaged at 3 s", "", "",
    )  # fmt: skip
    assert list(second.values()) == ["b.wav", "b-1", "done", "3", "1", "2", "1.50", "4.50", "base+trade", "", "", ""]


def test_a_copy_has_no_results_of_its_own() -> None:
    """It says whose it shares."""
    (row,) = rows(Entry(source="c.wav", name="c-1", key="k", state="same", same_as="b.wav"))
    assert (row["name"], row["same_as"], row["findings"]) == ("", "b.wav", "")


def test_a_spreadsheet_calculates_nothing() -> None:
    """A name that looks like a formula is text."""
    assert rows(DONE.model_copy(update={"source": "=1+1.wav"}))[0]["source"] == "'=1+1.wav"
