"""What each phrase gives, read together with what was said before it."""

from __future__ import annotations

import pytest

from dictate.grammar import Grammar
from dictate.live.taken import MOST_WORDS, Taken, Taker, describe, differences
from dictate.model import Word


def words(text: str, start_s: float) -> tuple[Word, ...]:
    """Half a second each."""
    return tuple(
        Word(text=part, start_s=start_s + at / 2, end_s=start_s + at / 2 + 0.4, probability=0.9)
        for at, part in enumerate(text.split())
    )


def said(grammar: Grammar, *phrases: str) -> list[Taken]:
    """What each of the phrases gave."""
    taker = Taker(grammar)
    return [taker.take(words(phrase, 10.0 * at)) for at, phrase in enumerate(phrases)]


def lines(taken: Taken, grammar: Grammar) -> list[str]:
    """Its findings."""
    return [describe(finding, grammar) for finding in taken.findings]


def test_each_phrase_gives_its_own_findings(grammar: Grammar) -> None:
    """Once, with the heading said before."""
    got = said(grammar, "Reflexes.", "Biceps two plus on the right.", "Three plus on the left.")
    assert [lines(taken, grammar) for taken in got] == [
        [], ["Biceps reflex right: 2+"], ["Biceps reflex left: 3+"],
    ]  # fmt: skip


def test_correction_takes_the_earlier_finding_back(grammar: Grammar) -> None:
    """What is no longer so is said."""
    _, second = said(grammar, "Knee jerk two plus on the right.", "Correction, three plus.")
    assert [describe(finding, grammar) for finding in second.gone] == ["Knee jerk right: 2+"]
    assert lines(second, grammar)[0].startswith("Knee jerk right: 3+")


def test_struck(grammar: Grammar) -> None:
    """Nothing takes its place."""
    _, second = said(grammar, "Knee jerk two plus on the right.", "Strike that.")
    assert [describe(finding, grammar) for finding in second.gone] == ["Knee jerk right: 2+"]
    assert second.findings == ()


def test_doubt_comes_with_its_phrase(grammar: Grammar) -> None:
    """A side that was not said; the next phrase does not ask again."""
    first, second = said(grammar, "Knee jerk three plus.", "Gait normal.")
    assert [query.code for query in first.queries] == ["side-missing"]
    assert second.queries == ()


def test_words_without_a_place(grammar: Grammar) -> None:
    """Shown, not dropped."""
    (only,) = said(grammar, "Juggler veins not extended.")
    assert only.not_placed
    assert not only.empty
    assert Taken().empty


def test_long_dictation_is_not_read_from_its_start(grammar: Grammar) -> None:
    """The time a phrase takes does not grow, its findings come out all the same, and earlier ones do not come again."""
    taker, seen = Taker(grammar), []
    for at in range(60):
        taken = taker.take(words("Reflexes. Knee jerk two plus right, three plus left.", 10.0 * at))
        seen.append(len(taken.findings) or len(taken.queries))
    fresh = taker.take(words("Tone normal in both arms.", 1000.0))
    assert len(taker.words) - taker._first <= MOST_WORDS + 10
    assert lines(fresh, grammar) == ["Tone arm both sides: normal"]
    assert not fresh.gone


TALK = [
    "Can you look over here, please.",
    "It's weaker on the left.",
    "No pain.",
    "Does that hurt?",
    "Squeeze my fingers.",
    "Close your eyes and tell me when you feel it.",
    "Yes, I can feel that.",
    "It feels a bit numb on this side.",
    "And push against me, good.",
    "Follow my finger with your eyes.",
    "I can't lift it any higher.",
    "Thank you, you can sit up now.",
]


@pytest.mark.parametrize("phrase", TALK)
def test_talk_gives_no_finding_without_a_query(phrase: str, grammar: Grammar) -> None:
    """What is said to the patient, or by the patient, in the middle of an examination."""
    _, _, talk = said(grammar, "Motor examination.", "Power normal in both arms.", phrase)
    for finding in talk.findings:
        assert talk.queries, f"{describe(finding, grammar)} without a query"


def test_differences_of_two_hearings(grammar: Grammar) -> None:
    """Gone and new; what is the same is not named."""
    one, two = Taker(grammar), Taker(grammar)
    one.take(words("Gait normal. Knee jerk two plus right.", 0.0))
    two.take(words("Gait normal. Knee jerk three plus right.", 0.4))
    assert differences(one.whole(), two.whole(), grammar) == ["- Knee jerk right: 2+", "+ Knee jerk right: 3+"]
    assert differences(one.whole(), one.whole(), grammar) == []
