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


@pytest.mark.parametrize(
    ("phrases", "found"),
    [
        (("Blood pressure 140 over.", "80."), "Blood pressure: 140/80 mmHg"),
        (("Left deltoid four.", "Minus."), "Deltoid left: 4-"),
        (("Left deltoid.", "Four minus."), "Deltoid left: 4-"),
    ],
)
def test_a_value_said_in_two_phrases(grammar: Grammar, phrases: tuple[str, str], found: str) -> None:
    """The second puts it together; what the first one gave is taken back."""
    first, second = said(grammar, *phrases)
    assert lines(second, grammar) == [found]
    assert second.gone == first.findings
    assert second.queries == second.not_placed == ()


def test_a_side_said_in_a_phrase_before_is_asked_for(grammar: Grammar) -> None:
    """ "Right" may be assent: the side is not taken from it, and not forgotten."""
    _, second = said(grammar, "Right.", "Biceps reflex three plus.")
    assert [query.code for query in second.queries if query.severity.value == "must"] == ["side-missing"]


def test_an_answer_is_asked_about_at_once(grammar: Grammar) -> None:
    """Behind the question, while the patient is there."""
    *_, last = said(grammar, "Eye movements full.", "Can you see one pen or two?", "No double vision.")
    assert [query.code for query in last.queries] == ["whose-words"]


def test_taken_up_as_if_it_had_been_followed(grammar: Grammar) -> None:
    """What an interrupted dictation said, read at once, and what comes after it."""
    texts = ["Reflexes.", *["Knee jerk two plus on the right."] * 60, "Biceps two plus on the right."]
    followed, again = Taker(grammar, scope="dizziness"), Taker(grammar, scope="dizziness")
    phrases = [words(text, 10.0 * at) for at, text in enumerate(texts)]
    for phrase in phrases:
        followed.take(phrase)
    found = again.take_up([word for phrase in phrases for word in phrase])
    assert [finding.item for finding in found] == [finding.item for finding in followed.whole().findings]
    more = words("Three plus on the left.", 10.0 * len(texts))
    assert lines(again.take(more), grammar) == lines(followed.take(more), grammar) == ["Biceps reflex left: 3+"]
    assert again.missing() == followed.missing()
    assert Taker(grammar).take_up([]) == ()


def test_what_is_missing_is_told_without_reading_again(grammar: Grammar) -> None:
    """As reading the whole tells it, however much was said since."""
    taker = Taker(grammar, scope="dizziness")
    taker.take(words("Romberg negative.", 0.0))
    for at in range(1, 2 * MOST_WORDS // 6):
        taker.take(words("Knee jerk two plus right. Lying, pressure 120 over 80.", 20.0 * at))
    whole = [query for query in taker.whole().queries if query.code == "scope-item-missing"]
    missing = taker.missing()
    assert [query.component for query in whole] == list(missing) != []
    assert all(", ".join(names) in query.message for query, names in zip(whole, missing.values(), strict=True))
    assert "omberg" not in str(missing)


def test_a_second_part_that_gives_nothing_is_shown(grammar: Grammar) -> None:
    """Words that went to others without a place: no phrase is swallowed without a sign."""
    _, second = said(grammar, "Left altoid four.", "Minus.")
    assert second.not_placed == ("Left altoid four. Minus.",)


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
