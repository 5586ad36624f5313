"""An exam.json under review: opened, saved whole, never overwritten behind somebody's back."""

from __future__ import annotations

import hashlib
import shutil
import stat
from collections.abc import Callable
from pathlib import Path

import pytest
from by_hand import DEMOS

from dictate.cli.files import write_files
from dictate.errors import InputError, MachineError, MovedOn
from dictate.grammar import Grammar
from dictate.model import Examination, Source, Transcript
from dictate.notes import exam_json
from dictate.review.shelf import FileShelf, Signing, read_examination

Exam = Callable[..., Examination]


@pytest.fixture
def stored(exam: Exam, tmp_path: Path) -> Path:
    """An examination in its file, with a note beside it."""
    path = tmp_path / "visit.exam.json"
    path.write_text(exam_json(exam("Biceps reflex two plus.")), encoding="utf-8")
    (tmp_path / "visit.note.txt").write_text("old", encoding="utf-8")
    (tmp_path / "visit.queries.csv").write_text("old", encoding="utf-8")
    return path


def shelf(path: Path, grammar: Grammar, **more: object) -> FileShelf:
    """A shelf that writes as the command line does."""
    return FileShelf(path, grammar, write=write_files, **more)  # type: ignore[arg-type]


def test_saved_as_opened(stored: Path, exam: Exam, grammar: Grammar) -> None:
    """The file is replaced, its neighbours follow, and only the owner can read them."""
    one = shelf(stored, grammar)
    assert one.open() == exam("Biceps reflex two plus.")
    one.save(exam("Gait normal."), who="A", why="-")
    assert read_examination(stored.read_bytes(), "-") == exam("Gait normal.")
    assert "Gait: normal" in (stored.parent / "visit.note.txt").read_text(encoding="utf-8")
    assert (stored.parent / "visit.queries.csv").read_text(encoding="utf-8").startswith("code,severity")
    assert {path.name for path in stored.parent.iterdir()} == {"visit.exam.json", "visit.note.txt", "visit.queries.csv"}
    assert {stat.S_IMODE(path.stat().st_mode) for path in stored.parent.iterdir()} == {0o600}


def test_second_window_sees_that_the_record_moved_on(stored: Path, exam: Exam, grammar: Grammar) -> None:
    """What the first saved stays."""
    first, second = shelf(stored, grammar), shelf(stored, grammar)
    first.open()
    second.open()
    first.save(exam("Gait normal."), who="A", why="-")
    first.save(exam("Gait normal. Romberg negative."), who="A", why="-")
    assert not first.moved_on()
    assert second.moved_on()
    with pytest.raises(MovedOn, match="nothing was overwritten"):
        second.save(exam("Tandem gait normal."), who="B", why="-")
    assert len(read_examination(stored.read_bytes(), "-").findings) == 2


def test_folder_that_cannot_be_written_changes_nothing(
    stored: Path, exam: Exam, grammar: Grammar, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What stood there stays, and nothing half-written beside it."""
    one = shelf(stored, grammar)
    before = one.open()
    monkeypatch.setattr("os.fsync", lambda _: (_ for _ in ()).throw(OSError(28, "No space left on device")))
    with pytest.raises(MachineError, match="no space left"):
        one.save(exam("Gait normal."), who="A", why="-")
    assert read_examination(stored.read_bytes(), "-") == before
    assert not list(stored.parent.glob(".*"))
    assert not one.moved_on()


def test_fresh_examination_is_kept_on_the_first_save(exam: Exam, grammar: Grammar, tmp_path: Path) -> None:
    """Opening alone leaves no file; a file that appears meanwhile is somebody else's."""
    path = tmp_path / "visit.exam.json"
    one = shelf(path, grammar, fresh=exam("Gait normal."))
    assert one.open() == exam("Gait normal.")
    assert not path.exists()
    other = shelf(path, grammar, fresh=exam("Gait normal."))
    other.open()
    one.save(exam("Gait normal."), who="A", why="-")
    with pytest.raises(MovedOn):
        other.save(exam("Romberg negative."), who="B", why="-")


def test_sound_is_found_by_name_and_content(exam: Exam, grammar: Grammar, tmp_path: Path) -> None:
    """Beside the examination or where it is said to be; another file of the same name is not it."""
    recording = DEMOS / "noisy-queries.flac"
    digest = hashlib.sha256(recording.read_bytes()).hexdigest()
    source = Source(name=recording.name, kind="recording", sha256=digest)
    typed = Source(name="typed", kind="text", sha256="0" * 64)
    before = exam("Gait normal.").model_copy(update={"transcript": Transcript(sources=(typed, source))})
    path = tmp_path / "visit.exam.json"
    path.write_text(exam_json(before), encoding="utf-8")
    one = shelf(path, grammar)
    one.open()
    assert [one.audio(at) for at in (0, 1, 2, -1)] == [None] * 4
    (tmp_path / recording.name).write_bytes(b"another")
    assert one.audio(1) is None
    shutil.copy(recording, tmp_path)
    assert one.audio(1) == tmp_path / recording.name
    other = shelf(path, grammar, recordings=[recording])
    other.open()
    assert other.audio(1) == recording


@pytest.mark.parametrize(
    "content", [b"", b"{}", b"[]", b"\xff\xfe", b'{"format": "dictate/examination", "version": 2}']
)
def test_other_files_are_refused_in_one_line(content: bytes, grammar: Grammar, tmp_path: Path) -> None:
    """No traceback, no guess."""
    path = tmp_path / "visit.exam.json"
    path.write_bytes(content)
    with pytest.raises(InputError, match=r"^visit\.exam\.json: is no examination this version can open") as fault:
        shelf(path, grammar).open()
    assert "\n" not in str(fault.value)


def test_record_that_does_not_exist(grammar: Grammar, tmp_path: Path) -> None:
    """Said plainly."""
    with pytest.raises(InputError, match="no such record"):
        shelf(tmp_path / "none.exam.json", grammar).open()


def test_file_cannot_sign(stored: Path, grammar: Grammar) -> None:
    """Only a shelf that offers it can."""
    assert not isinstance(shelf(stored, grammar), Signing)
