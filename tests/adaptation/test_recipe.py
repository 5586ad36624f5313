"""The text of the adapter's recipe: numbers as written, statements of every item, nothing kept for measuring."""

from __future__ import annotations

import importlib
import random
import re
from collections import Counter
from types import ModuleType

import numpy as np
import pytest
from by_hand import ROOT

from dictate.grammar import Grammar


@pytest.fixture
def recipe(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """The generator, found beside its own modules as when it is run."""
    monkeypatch.syspath_prepend(str(ROOT / "adaptation"))
    return importlib.import_module("dictations")


def test_numbers_come_back_as_they_were(recipe: ModuleType) -> None:
    """Every way of saying a number of a pressure is written as that number."""
    numerals = importlib.import_module("numerals")
    for number in range(300):
        for way in range(4):
            assert numerals.written(f"pulse {numerals.clinical(number, way)}, regular") == f"pulse {number}, regular"


@pytest.mark.parametrize(
    ("said", "written"),
    [
        ("one forty two over eighty four", "142 over 84"),
        ("twenty thirty right, twenty forty left", "20/30 right, 20/40 left"),
        ("sensory level at T ten", "sensory level at T10"),
        ("thirty six point six degrees", "36.6 degrees"),
        ("four minus right, three plus left", "4 minus right, 3 plus left"),
        ("the other one is weak on one side", "the other one is weak on one side"),
    ],
)
def test_numbers_are_written_as_heard(recipe: ModuleType, said: str, written: str) -> None:
    """Pressures, acuities, levels, decimals, grades; a pronoun stays a word."""
    assert importlib.import_module("numerals").written(said) == written


def test_every_item_is_spoken_of(recipe: ModuleType, grammar: Grammar) -> None:
    """There is something to say of each item, in words alone, and a list of terms."""
    maker = recipe.Dictator(grammar, random.Random(5))
    for name in grammar.items:
        statement = recipe.said(maker.about(name))
        assert len(statement.speech) > 3
        assert not re.search(r"\d", statement.speech)
    assert len(maker.wanted(20)) == 20


def test_what_is_kept_for_measuring_is_not_learnt(recipe: ModuleType, grammar: Grammar) -> None:
    """Examples of the grammar that stand in the table of ways of saying are left out; the same seed says the same."""
    withheld = recipe.withheld_from(ROOT / "tests" / "reading" / "ways_of_saying.csv")
    everything = recipe.Dictator(grammar, random.Random(5))
    maker = recipe.Dictator(grammar, random.Random(5), withheld)
    known = {recipe.bare(each) for part in everything._examples.values() for each in part}
    assert known & withheld
    assert not {recipe.bare(each) for part in maker._examples.values() for each in part} & withheld
    again = recipe.Dictator(grammar, random.Random(5), withheld)
    assert [maker.dictation(3) for _ in range(20)] == [again.dictation(3) for _ in range(20)]


def test_drills_hold_what_is_heard_wrong(recipe: ModuleType, grammar: Grammar) -> None:
    """Numbers, denials, corrections, the short words that get lost; a nought is said as a word and written as 0."""
    maker = recipe.Dictator(grammar, random.Random(5))
    drills = maker.drill(400)
    texts = " ".join(each.text.lower() for each in drills)
    assert all(word in texts for word in ("jaw jerk", "fully", "no ", "abduct", "adduct", "correction", "minus"))
    assert not any(re.search(r"\d", each.speech) for each in drills)
    noughts = [each for each in drills if re.search(r"\bnought\b", each.speech)]
    assert noughts
    assert all(re.search(r"\b0\b", each.text) and "nought" not in each.text.lower() for each in noughts)


@pytest.mark.parametrize("share", [0.0, 0.4, 1.0])
def test_ordinary_clips_are_marked_and_as_many_as_asked_for(recipe: ModuleType, grammar: Grammar, share: float) -> None:
    """The penalty that keeps ordinary talk near the base reads the mark; the same seed gives the same clips."""
    clips = importlib.import_module("clips")
    maker = recipe.Dictator(grammar, random.Random(5))
    lister = importlib.import_module("lists").Lister(maker)
    made = [clips.clip_texts(maker, lister, ["The cat sat on the mat."], Counter(), share) for _ in range(600)]
    assert abs(sum(ordinary for _, _, ordinary in made) / 600 - share) < 0.08  # four standard deviations of a coin


def test_mixed_adapters_add_their_shares(monkeypatch: pytest.MonkeyPatch) -> None:
    """The program adds half of what it finds, so a share of 0.3 and one of 0.2 are 0.3 and 0.2 of each change."""
    monkeypatch.syspath_prepend(str(ROOT / "adaptation"))
    mix = importlib.import_module("mix")
    one = {"m|A": np.array([[1.0, 2.0]]), "m|B": np.array([[1.0], [0.0]])}
    two = {"m|A": np.array([[0.0, 4.0]]), "m|B": np.array([[0.0], [1.0]])}
    result = mix.mixed([(one, 0.3), (two, 0.2)])
    change = 0.5 * result["m|B"].astype(float) @ result["m|A"].astype(float)
    assert np.allclose(change, [[0.3, 0.6], [0.0, 0.8]], atol=1e-3)
    whole = mix.cut(result, 2)
    assert np.allclose(whole["m|B"].astype(float) @ whole["m|A"].astype(float), 2 * change, atol=4e-3)
    nearest = mix.cut(result, 1)
    assert nearest["m|A"].shape == (1, 2)
    left = 2 * change - nearest["m|B"].astype(float) @ nearest["m|A"].astype(float)
    assert np.linalg.norm(left) == pytest.approx(np.linalg.svd(2 * change)[1][1], abs=4e-3)


@pytest.fixture
def lists(recipe: ModuleType) -> ModuleType:
    """The generator of runs of findings."""
    return importlib.import_module("lists")


def test_a_run_under_one_side_is_joined_by_commas(lists: ModuleType) -> None:
    """However it is spoken, the text is one sentence; marks and pauses of the speech differ."""
    chance = random.Random(2)
    runs = [
        lists.joined(["deltoid five", "biceps four plus", "triceps nought"], chance, lead="right") for _ in range(60)
    ]
    texts = {re.sub("^Right,", "Right", run.text) for run in runs}
    assert texts == {"Right deltoid 5, biceps 4 plus, triceps 0."}
    speech = [run.speech for run in runs]
    assert any("five, biceps" in each for each in speech)
    assert any("five biceps" in each for each in speech)
    assert any("five. | biceps" in each for each in speech)
    assert any("five, | biceps" in each for each in speech)


def test_a_full_stop_stands_where_the_side_changes(lists: ModuleType, recipe: ModuleType, grammar: Grammar) -> None:
    """No run of grades names both sides of a list in one sentence, and none has a stop inside it."""
    lister = lists.Lister(recipe.Dictator(grammar, random.Random(5)))
    runs = [lister._side() for _ in range(200)]
    for run in runs:
        sentences = [each.text for each in run]
        assert all(each.endswith(".") and ". " not in each for each in sentences)
        assert not any(re.search(r"\bright\b", each, re.I) and re.search(r"\bleft\b", each, re.I) for each in sentences)
    assert any(len(run) > 1 for run in runs)


def test_pauses_are_spoken_and_not_written(lists: ModuleType, recipe: ModuleType, grammar: Grammar) -> None:
    """A pause parts no number, stands in no text, and each has its seconds; a run cut off goes on behind its comma."""
    chance = random.Random(7)
    lister = lists.Lister(recipe.Dictator(grammar, chance))
    for _ in range(300):
        run = [lists.rested(each, chance) for each in lister.run()]
        speech = lists.together(run, chance)
        assert not re.search(r"[|]|\d", "".join(re.sub(r"\d", "", each.text) for each in run))
        assert len(lists.pauses_in(speech, chance)) == speech.count("|")
        assert not re.search(r"\b(?:four|three|two) \| (?:plus|minus|hundred)\b|\bone \| (?:\w+ty|oh)\b", speech)
    whole = lists.joined(["knee jerk two", "ankle jerk one"], chance)
    assert lists.cut_off(whole).text == whole.text[:-1] + ","
