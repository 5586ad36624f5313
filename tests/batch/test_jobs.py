"""What travels between a batch and its workers: Candidate, Job, Setting, Outcome."""

from __future__ import annotations

import pickle
from dataclasses import replace

import pytest
from sleepers import setting

from dictate.batch import Asked
from dictate.batch.jobs import Candidate, Job, printable
from dictate.cli.files import file_name
from dictate.grammar import Grammar


@pytest.mark.parametrize(
    "two",
    [("a.wav", "b.wav"), ("a b.wav", "a-b.wav"), ("a/x.wav", "b/x.wav"), ("x.wav", "x.flac"), ("X.wav", "x.wav")],
)
def test_two_sources_never_share_a_name(two: tuple[str, str]) -> None:
    """Whatever their folders, endings, blanks, and on file systems that know no capitals."""
    first, second = (Candidate(source, ()).name.lower() for source in two)
    assert first != second


def test_name_is_of_the_source_and_fit_for_a_file() -> None:
    """Its stem and a code; nothing of folders, and no longer than file systems take."""
    name = Candidate("ward 3/day.two/visit 7.flac", ()).name
    assert name.startswith("visit-7-")
    assert file_name(name) == name
    long = Candidate("x" * 300 + ".wav", ()).name
    assert file_name(long) == long
    assert Candidate("/../..wav", ()).name.strip(".-").count("/") == 0


def test_key_changes_with_all_that_changes_a_note(small: Grammar) -> None:
    """Contents, model, grammar, program, options: another key each; where it runs changes none."""
    one = setting(small)
    others = [
        replace(one, program="other"),
        replace(one, grammar=small.model_copy(update={"sha256": "2" * 64})),
        replace(one, asked=Asked(scope="dizziness")),
        replace(one, asked=Asked(brief=True)),
        replace(one, conventions=one.conventions.model_copy(update={"vibration_norms": True})),
    ]
    keys = [one.key_of(("a",), "m"), one.key_of(("b",), "m"), one.key_of(("a",), "n"), one.key_of(("a", "b"), "m")]
    keys += [other.key_of(("a",), "m") for other in others]
    assert len(set(keys)) == len(keys)
    assert replace(one, make_engine=dict, run="other").key == one.key  # type: ignore[arg-type]


def test_job_tells_a_log_nothing() -> None:
    """Schedulers write arguments into their logs."""
    job = Job("Jane Roe.wav", "Jane-Roe-1", ("/x/Jane Roe.wav",), ("0",))
    assert "Roe" not in f"{job} {job!r}"
    assert pickle.loads(pickle.dumps(job)) == job


def test_names_that_no_text_can_hold() -> None:
    """Bytes that are no UTF-8 are written out."""
    assert printable("a\udcff.wav") == "a\\xff.wav"
