"""The tables as they are now: revisions and their content, written once; the index for finding, written anew."""

from __future__ import annotations

from sqlalchemy import Column, ForeignKey, Integer, LargeBinary, MetaData, Table, Text

TABLES = MetaData()

facts = Table(  # about the whole database: how it is locked, which key seals it
    "facts", TABLES,
    Column("name", Text, primary_key=True),
    Column("value", Text, nullable=False),
)  # fmt: skip
revisions = Table(  # one row per thing that was done, in the order in which it was done; never changed
    "revisions", TABLES,
    Column("seq", Integer, primary_key=True),  # 1, 2, 3 ... over all records
    Column("record", Text, nullable=False),
    Column("revision", Integer, nullable=False),  # 1, 2, 3 ... within its record
    Column("action", Text, nullable=False),
    Column("at", Text, nullable=False),
    Column("who", Text, nullable=False),
    Column("form", Integer, nullable=False),  # which columns the seal covers, and how
    Column("content", Text, nullable=False),  # keyed digest of its content
    Column("sounds", Text, nullable=False),  # recordings that came (name=digest) and went (-name)
    Column("previous", Text, nullable=False),  # seal of the row before
    Column("seal", Text, nullable=False),
)  # fmt: skip
contents = Table(  # what a revision holds; goes only when its record is erased
    "contents", TABLES,
    Column("seq", Integer, ForeignKey("revisions.seq"), primary_key=True),
    Column("salt", LargeBinary, nullable=False),
    Column("body", LargeBinary, nullable=False),
)  # fmt: skip
records = Table(  # index: the newest state of each record
    "records", TABLES,
    Column("record", Text, primary_key=True),
    Column("seq", Integer, ForeignKey("revisions.seq"), nullable=False),
    Column("state", Text, nullable=False),
    Column("patient", Text, nullable=False),
    Column("shown", LargeBinary, nullable=False),  # what a list shows of it
    Column("day", Text, nullable=False),  # time of examination, else of the first saving; local
    Column("open", Integer, nullable=False),  # open queries of a draft
)  # fmt: skip
findings = Table(  # index: the findings of the newest state
    "findings", TABLES,
    Column("record", Text, ForeignKey("records.record"), nullable=False),
    Column("place", Integer, nullable=False),
    Column("item", Text, nullable=False),
    Column("side", Text, nullable=False),
    Column("value", Text, nullable=False),
    Column("patient", Text, nullable=False),
    Column("day", Text, nullable=False),
)  # fmt: skip
