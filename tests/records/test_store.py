"""Save, open, find, sign, amend, withdraw, move, erase, verify."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest
from by_hand import query
from records.visits import BY, START, doubtful, everything, heard, note_of, recording, signed, visit

from dictate.errors import InputError, MovedOn, OpenQueries, RecordError
from dictate.model import Severity
from dictate.records import Records, open_records
from dictate.records.place import SOUNDS


def test_what_is_saved_comes_back(folder: Path, records: Records) -> None:
    """Also to somebody who opens the records anew."""
    one = records.save(visit(examined_at=START), who=BY, why="dictated")
    with open_records(folder) as others:
        again = others.open(one.key)
    assert again == one
    assert (one.exam, one.revision, one.state, one.who) == (visit(examined_at=START), 1, "draft", BY)
    assert one.note == ""


def test_a_further_revision_needs_the_one_that_was_seen(records: Records) -> None:
    """A key alone, or a revision alone, is refused."""
    one = records.save(visit(), who=BY, why="dictated")
    with pytest.raises(InputError, match="revision that was seen"):
        records.save(visit(), who=BY, why="more", key=one.key)
    with pytest.raises(InputError, match="revision that was seen"):
        records.save(visit(), who=BY, why="more", base=1)
    two = records.save(visit("P-2"), who=BY, why="more", key=one.key, base=1)
    assert (two.key, two.revision, two.exam.patient) == (one.key, 2, "P-2")
    assert two.head != one.head


def test_the_second_window_sees_that_the_record_moved_on(folder: Path, records: Records) -> None:
    """One line, and nothing is overwritten."""
    one = records.save(visit(), who=BY, why="dictated")
    with open_records(folder) as second:
        second.save(visit("P-2"), who="B. Other", why="corrected", key=one.key, base=1)
    with pytest.raises(MovedOn, match=r"has moved on to revision 2 \(by B\. Other, .*nothing was overwritten") as said:
        records.save(visit("P-3"), who=BY, why="corrected", key=one.key, base=1)
    assert "\n" not in str(said.value)
    assert records.open(one.key).exam.patient == "P-2"
    for act in (
        lambda: records.sign(one.key, by=BY, note=note_of, base=1),
        lambda: records.move(one.key, patient="P-3", who=BY, why="x", base=1),
        lambda: records.erase(one.key, who=BY, why="x", base=1),
    ):
        with pytest.raises(MovedOn):
            act()
    assert records.open(one.key).revision == 2


def test_an_examination_signed_elsewhere_is_not_saved(records: Records) -> None:
    """Only `sign` signs."""
    with pytest.raises(InputError, match="only `dictate sign` signs"):
        records.save(visit(signed_by="Somebody"), who=BY, why="dictated")


@pytest.mark.parametrize("said", [{"who": " "}, {"why": ""}])
def test_who_and_why_are_said(said: dict[str, str], records: Records) -> None:
    """Never empty."""
    with pytest.raises(InputError, match="is empty"):
        records.save(visit(), **{"who": BY, "why": "dictated", **said})


def test_a_record_that_does_not_exist(records: Records) -> None:
    """Said in one line."""
    with pytest.raises(RecordError, match="record zzzzzz: there is none"):
        records.open("zzzzzz")
    with pytest.raises(RecordError, match="there is none"):
        records.save(visit(), who=BY, why="more", key="zzzzzz", base=1)


def test_open_queries_keep_a_note_from_being_signed(records: Records) -> None:
    """Those to settle are named; those to look at must be passed over, each."""
    one = records.save(doubtful(Severity.LOOK, Severity.MUST), who=BY, why="dictated")
    with pytest.raises(OpenQueries, match=r"1 query must be settled before signing: \[\?2\] doubt 2\?"):
        records.sign(one.key, by=BY, note=note_of, passed=(0, 1))
    assert records.open(one.key).state == "draft"
    two = records.save(doubtful(Severity.LOOK, Severity.LOOK), who=BY, why="dictated")
    with pytest.raises(OpenQueries, match=r"1 query must be looked at before signing: \[\?2\] doubt 2\?"):
        records.sign(two.key, by=BY, note=note_of, passed=(0,))
    done = records.sign(two.key, by=BY, note=note_of, passed=(0, 1))
    assert [(one.query, one.answer) for one in done.exam.decisions] == [(0, "passed over"), (1, "passed over")]


def test_a_signature_stands_in_the_examination_and_the_note(records: Records) -> None:
    """Who, who countersigned, who examined, when; and the head at the foot."""
    one = records.save(visit(), who="C. Trainee", why="dictated")
    done = records.sign(one.key, by="C. Trainee", note=note_of, countersign=BY, examined_by="C. Trainee")
    exam = done.exam
    assert (exam.signed_by, exam.countersigned_by, exam.examined_by, exam.dictated_by) == (
        "C. Trainee", BY, "C. Trainee", "",
    )  # fmt: skip
    assert exam.signed_at is not None
    assert START < exam.signed_at < START + timedelta(hours=1)
    assert done.state == "signed"
    assert done.note.startswith("Signed by C. Trainee\n2 findings of P-1\n")
    assert done.note.endswith(f"Record {one.key}, revision 2, head {done.head}\n")


def test_what_is_signed_never_changes(records: Records) -> None:
    """Saving and signing again are refused; addenda, moving and withdrawing leave the text as it was."""
    one = signed(records)
    with pytest.raises(RecordError, match="cannot be saved again: it is signed"):
        records.save(visit(), who=BY, why="more", key=one.key, base=one.revision)
    with pytest.raises(RecordError, match="cannot be signed"):
        records.sign(one.key, by=BY, note=note_of)
    amended = records.amend(one.key, by=BY, why="forgotten", text="Jaw jerk normal.\r\nGag normal.\n")
    assert amended.note.startswith(one.note)
    assert "by A. Examiner. Reason: forgotten\n  Jaw jerk normal.\n  Gag normal.\n" in amended.note
    assert (amended.state, amended.addenda[0].text) == ("amended", "Jaw jerk normal.\nGag normal.")
    moved = records.move(one.key, patient="P-9", who=BY, why="wrong reference")
    assert moved.note.startswith("MOVED ")
    assert amended.note.rstrip() in moved.note
    assert moved.exam.patient == "P-9"
    gone = records.withdraw(one.key, by=BY, why="another patient's")
    assert "entered in error. Reason: another patient's" in gone.note.split("\n\n")[0]
    assert amended.note.rstrip() in gone.note
    with pytest.raises(RecordError, match="was withdrawn"):
        records.amend(one.key, by=BY, why="x", text="x")
    assert records.verify() == []


def test_a_draft_is_neither_amended_nor_withdrawn(records: Records) -> None:
    """There is nothing signed to add to."""
    one = records.save(visit(), who=BY, why="dictated")
    with pytest.raises(RecordError, match="it is a draft"):
        records.amend(one.key, by=BY, why="x", text="x")
    with pytest.raises(RecordError, match="it is a draft"):
        records.withdraw(one.key, by=BY, why="x")


def test_an_addendum_with_open_queries_is_refused(records: Records) -> None:
    """An addendum closes what it holds, so its doubts must be gone."""
    one = signed(records)
    with pytest.raises(OpenQueries, match="addendum to record"):
        records.amend(one.key, by=BY, why="x", text="x", exam=doubtful(Severity.MUST))


def test_recordings_are_kept_and_found_by_their_source(records: Records, tmp_path: Path) -> None:
    """Byte by byte; text and what was not kept have none."""
    first, second = recording(tmp_path), recording(tmp_path, "more.flac", b"more" * 40)
    exam = heard(first, second)
    one = records.save(exam, who=BY, why="dictated", audio=[second])
    kept = records.audio(one.key, 1)
    assert isinstance(kept, Path)
    assert kept.read_bytes() == second.read_bytes()
    assert kept.stat().st_mode & 0o777 == 0o600
    assert "more" not in kept.name
    assert records.audio(one.key, 0) is None
    assert records.audio(one.key, 2) is None
    two = records.save(exam, who=BY, why="settled", key=one.key, base=1)
    assert records.audio(two.key, 1) == kept


def test_a_recording_of_something_else_is_refused(records: Records, tmp_path: Path) -> None:
    """What is kept beside an examination is what it was dictated in; nothing is saved, nothing stays."""
    first, other = recording(tmp_path), recording(tmp_path, "other.flac", b"other")
    with pytest.raises(InputError, match="none of the recordings"):
        records.save(heard(first), who=BY, why="dictated", audio=[first, other])
    with pytest.raises(InputError, match="cannot be read"):
        records.save(heard(first), who=BY, why="dictated", audio=[tmp_path / "none.flac"])
    assert records.find() == []
    records.close()
    with open_records(records.folder):
        assert list((records.folder / SOUNDS).iterdir()) == []


def test_recordings_kept_until_signing_go_then(records: Records, tmp_path: Path) -> None:
    """Others stay; the chain says that they went."""
    first, second = recording(tmp_path), recording(tmp_path, "more.flac", b"more" * 40)
    exam = heard(first, second)
    one = records.save(exam, who=BY, why="dictated", audio=[first], keep="until-signed")
    one = records.save(exam, who=BY, why="more", audio=[second], key=one.key, base=1)
    done = records.sign(one.key, by=BY, note=note_of)
    assert records.audio(one.key, 0) is None
    assert records.audio(one.key, 1) is not None
    assert len(list((records.folder / SOUNDS).iterdir())) == 1
    assert (done.state, done.revision) == ("signed", 4)
    assert records.verify() == []


def test_an_addendum_keeps_its_recording(records: Records, tmp_path: Path) -> None:
    """Found by the addendum's own source."""
    one = signed(records)
    path = recording(tmp_path)
    records.amend(one.key, by=BY, why="more", text="as said", exam=heard(path), audio=[path])
    kept = records.audio(one.key, 0, addendum=0)
    assert isinstance(kept, Path)
    assert kept.read_bytes() == path.read_bytes()


def test_erasing_leaves_a_tombstone_and_nothing_else(records: Records, folder: Path, tmp_path: Path) -> None:
    """No byte of what was said, of the reference or of the recording is left in any file; the chain verifies."""
    path = recording(tmp_path)
    one = records.save(heard(path, patient="REF-OF-A-PATIENT"), who=BY, why="SECRET-WHY", audio=[path])
    other = signed(records)
    gone = records.erase(one.key, who=BY, why="asked for")
    assert (gone.state, gone.exam.findings, gone.exam.patient) == ("erased", (), "")
    assert gone.note.startswith("ERASED ")
    assert "by A. Examiner. Reason: asked for" in gone.note
    assert records.verify() == []
    assert records.open(other.key) == other
    with pytest.raises(RecordError, match="was erased"):
        records.move(one.key, patient="x", who=BY, why="x")
    with pytest.raises(RecordError, match="was erased"):
        records.erase(one.key, who=BY, why="again")
    records.close()
    left = everything(folder)
    assert not [word for word in (b"REF-OF-A-PATIENT", b"SECRET-WHY", b"a recording") if word in left]
    assert list((folder / SOUNDS).iterdir()) == []


def test_the_sound_alone_can_be_erased(records: Records, tmp_path: Path) -> None:
    """The note stays; a record without recordings has none to erase."""
    path = recording(tmp_path)
    one = records.save(heard(path), who=BY, why="dictated", audio=[path])
    left = records.erase(one.key, who=BY, why="asked for", sound_only=True)
    assert (left.state, left.exam, left.sounds) == ("draft", one.exam, ())
    assert records.audio(one.key, 0) is None
    with pytest.raises(RecordError, match="has no recordings"):
        records.erase(one.key, who=BY, why="again", sound_only=True)
    assert records.verify() == []


def test_moving_a_draft_may_raise_a_query(records: Records) -> None:
    """Doubts that the new reference raises must be settled like others."""
    one = records.save(visit(), who=BY, why="dictated")
    doubt = query("patient-mismatch", "whose examination is it?")
    moved = records.move(one.key, patient="P-2", who=BY, why="wrong", queries=(doubt,))
    assert (moved.exam.patient, moved.exam.open_musts) == ("P-2", (doubt,))
    saved = records.save(moved.exam, who=BY, why="more", key=one.key, base=moved.revision)
    assert saved.exam.patient == "P-2"


def test_locked_records_come_back_with_their_passphrase(folder: Path, tmp_path: Path) -> None:
    """And no file holds a word of them."""
    path = recording(tmp_path)
    with open_records(folder, passphrase="open sesame") as records:
        one = records.save(heard(path, patient="REF-OF-A-PATIENT"), who=BY, why="dictated", audio=[path])
        assert records.find(patient="REF-OF-A-PATIENT", item="reflex_biceps")[0].patient == "REF-OF-A-PATIENT"
        assert records.find(patient="REF-OF") == []
    left = everything(folder)
    assert not [word for word in (b"REF-OF-A-PATIENT", b"reflex_biceps", b"a recording") if word in left]
    with open_records(folder, passphrase="open sesame") as records:
        assert records.open(one.key) == one
        assert records.audio(one.key, 0) == path.read_bytes()
        assert records.verify() == []
