"""One transaction on one record."""

from __future__ import annotations

from pathlib import Path

import pytest
from records.visits import BY, heard, recording, visit

from dictate.errors import RecordError
from dictate.records import Records
from dictate.records.changing import KEY_LENGTH, LETTERS, changing, sound_digest
from dictate.records.place import SOUNDS


def test_keys_are_short_and_without_letters_that_look_alike(records: Records) -> None:
    """Six letters, none of them i, l, o, 0 or 1."""
    keys = {records.save(visit(), who=BY, why="dictated").key for _ in range(20)}
    assert len(keys) == 20
    assert {len(key) for key in keys} == {KEY_LENGTH}
    assert not set("".join(keys)) & set("ilo01")
    assert len(LETTERS) == len(set(LETTERS))


def test_a_recording_is_kept_once(records: Records, folder: Path, tmp_path: Path) -> None:
    """However often it is handed in."""
    path = recording(tmp_path)
    one = records.save(heard(path), who=BY, why="dictated", audio=[path, path])
    records.save(heard(path), who=BY, why="again", audio=[path], key=one.key, base=1)
    assert len(list((folder / SOUNDS).iterdir())) == 1


def test_a_change_that_adds_nothing_to_nothing_is_refused(records: Records) -> None:
    """A record begins with an examination."""
    with pytest.raises(RecordError, match="save it first"), changing(records._ledger, "", None) as change:
        change.drop(change.one.sounds, BY, "x")


def test_a_digest_of_sound_is_bound_to_its_name() -> None:
    """Two recordings cannot change places."""
    assert sound_digest(b"k", "a", b"x") != sound_digest(b"k", "b", b"x")
