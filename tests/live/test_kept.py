"""A dictation's folder: locked while held, found when interrupted, deleted when old."""

from __future__ import annotations

import stat
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from dictate.errors import InputError, MachineError
from dictate.live.kept import Facts, Kept, Mute, Said, length_s, remove_old
from dictate.live.safe_sound import header
from dictate.model import Word

NOW = datetime(2026, 3, 4, 14, 30)
SAID = Said(words=(Word(text="Reflexes.", start_s=1.0, end_s=2.0),), start_s=1.0, end_s=2.0, done=40_000)


def begun(place: Path, **more: object) -> Kept:
    """A dictation with half a second of sound."""
    kept = Kept.begin(place, Facts(started_at=NOW, **more))  # type: ignore[arg-type]
    kept.next_piece().write_bytes(header(0) + bytes(16_000))
    return kept


def test_folder_is_its_owners_alone(tmp_path: Path) -> None:
    """And its name says nothing of the patient."""
    kept = begun(tmp_path / "new", patient="P-17")
    assert stat.S_IMODE(kept.folder.stat().st_mode) == 0o700
    assert "P-17" not in str(kept.folder)
    assert {stat.S_IMODE(path.stat().st_mode) for path in kept.folder.glob("*.json")} == {0o600}


def test_held_one_is_not_interrupted(tmp_path: Path) -> None:
    """Until its process lets it go; then the sound is made whole and the facts are known."""
    kept = begun(tmp_path, scope="screening")
    assert Kept.interrupted(tmp_path) == []
    with pytest.raises(InputError, match="another `dictate listen`"):
        Kept.reopen(kept.folder)
    kept.log(SAID)
    kept.close()
    again = Kept.resume(tmp_path)
    assert again.facts == kept.facts
    assert list(again.entries()) == [SAID]
    assert again.samples() == 8_000
    assert length_s(again.folder) == 0.5
    assert (again.folder / "dictation-001.wav").read_bytes()[:44] == header(16_000)


def test_torn_last_line_is_passed_over(tmp_path: Path) -> None:
    """What was heard before it stays."""
    kept = begun(tmp_path)
    mute = Mute(start_s=3.0, end_s=4.0, why="paused")
    kept.log(SAID)
    kept.log(mute)
    with (kept.folder / "phrases.jsonl").open("ab") as file:
        file.write(SAID.model_dump_json().encode()[:30])
    assert list(kept.entries()) == [SAID, mute]


def test_finished_one_waits_for_nobody(tmp_path: Path) -> None:
    """Its note is written."""
    begun(tmp_path).finish()
    assert Kept.interrupted(tmp_path) == []
    with pytest.raises(InputError, match="no interrupted dictation"):
        Kept.resume(tmp_path)


def test_two_of_one_second(tmp_path: Path) -> None:
    """Each has its own folder; the later is taken up first."""
    first, second = begun(tmp_path), begun(tmp_path)
    assert first.folder != second.folder
    first.close()
    second.close()
    assert Kept.resume(tmp_path).folder == second.folder


def test_old_ones_are_deleted(tmp_path: Path) -> None:
    """Not the one in use, not one kept for good, not a young one."""
    old, held, good = begun(tmp_path), begun(tmp_path), begun(tmp_path)
    old.close()
    good.finish()
    good.keep_for_good()
    assert remove_old(tmp_path, days=14, now=NOW + timedelta(days=13)) == 0
    assert remove_old(tmp_path, days=14, now=NOW + timedelta(days=15)) == 1
    assert not old.folder.exists()
    assert held.folder.exists()
    assert good.folder.exists()


def test_no_place(tmp_path: Path) -> None:
    """A file where the folder should be."""
    (tmp_path / "file").write_text("")
    with pytest.raises(MachineError, match="DICTATE_SOUND"):
        begun(tmp_path / "file" / "in")


def test_damaged_facts(tmp_path: Path) -> None:
    """The sound is named, so that it is not lost."""
    kept = begun(tmp_path)
    kept.close()
    (kept.folder / "dictation.json").write_text("{")
    with pytest.raises(InputError, match=r"play its \.wav files"):
        Kept.resume(tmp_path)
