"""The tables as the program thinks of them."""

from __future__ import annotations

from sqlalchemy import inspect

from dictate.records import Records
from dictate.records.chain import COLUMNS
from dictate.records.tables import TABLES, revisions


def test_the_migrations_make_what_the_program_thinks_of(records: Records) -> None:
    """The same tables with the same columns."""
    with records._ledger.read() as db:
        made = {name: [one["name"] for one in inspect(db).get_columns(name)] for name in inspect(db).get_table_names()}
    assert made == {name: [one.name for one in table.columns] for name, table in TABLES.tables.items()} | {
        "migrations": ["number"]
    }


def test_every_column_of_a_revision_is_sealed() -> None:
    """All but the seal itself."""
    assert [one.name for one in revisions.columns] == [*COLUMNS, "seal"]
