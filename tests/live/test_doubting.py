"""Slower doubts: asked beside the dictation, answered after the finding."""

from __future__ import annotations

import queue
from typing import Any

from dictate.grammar import Grammar
from dictate.live.doubting import AskedWeigher, Doubted, Doubter
from dictate.live.recogniser import Answer, Knows, Weigh
from dictate.live.taken import Taker
from dictate.model import Word


def evenly(question: Weigh | Knows) -> Answer:
    """A recogniser to which every text fits as well."""
    if isinstance(question, Knows):
        return Answer(question, known=True)
    return Answer(question, tuple(-1.0 for _ in question.texts))


def test_asked_once() -> None:
    """What was told is remembered; no answer is no word about anything, and asked again."""
    asked: list[Weigh | Knows] = []

    def ask(question: Weigh | Knows) -> Answer:
        asked.append(question)
        return evenly(question) if len(asked) > 1 else Answer()

    weigher = AskedWeigher(ask)
    assert weigher.weigh("", 0.0, 1.0, ["a", "b"]) == []
    assert weigher.weigh("", 0.0, 1.0, ["a", "b"]) == [-1.0, -1.0]
    assert weigher.weigh("", 0.0, 1.0, ["a", "b"]) == [-1.0, -1.0]
    assert len(asked) == 2


def test_many_texts_are_asked_about_in_small_parts() -> None:
    """A phrase waits for one part at most; a part without an answer is no answer at all."""
    asked: list[Weigh | Knows] = []

    def ask(question: Weigh | Knows) -> Answer:
        asked.append(question)
        return evenly(question)

    weigher = AskedWeigher(ask)
    assert weigher.weigh("", 0.0, 1.0, list("abcdefgh")) == [-1.0] * 8
    assert [len(question.texts) for question in asked if isinstance(question, Weigh)] == [3, 3, 2]
    assert AskedWeigher(lambda _: Answer()).weigh("", 0.0, 1.0, list("abcdefgh")) == []


def test_doubt_follows_the_finding(grammar: Grammar) -> None:
    """A grade that the sound does not tell from another is asked about, after it was taken."""
    taker, events = Taker(grammar), queue.SimpleQueue[Any]()
    words = [
        Word(text=text, start_s=at / 2, end_s=at / 2 + 0.4, probability=0.9)
        for at, text in enumerate("Knee jerk two plus on the right.".split())
    ]
    assert not any(query.code == "unsure-hearing" for query in taker.take(words).queries)
    doubter = Doubter(taker, evenly, events)
    doubter.start()
    doubter.add(taker.phrase(0.0))
    event = events.get(timeout=30)
    doubter.end()
    assert isinstance(event, Doubted)
    assert "unsure-hearing" in {query.code for query in event.taken.queries}


def test_phrases_that_wait_are_weighed_with_the_latest(grammar: Grammar) -> None:
    """One weighing for all of them, from the first that waits; however long it lasts, one waits, not a row of them."""
    taker, events = Taker(grammar), queue.SimpleQueue[Any]()
    doubter = Doubter(taker, evenly, events)
    for at, text in enumerate(["Knee jerk two plus on the right.", "Gait normal.", "Romberg negative."]):
        taker.take([
            Word(text=word, start_s=10.0 * at + place / 2, end_s=10.0 * at + place / 2 + 0.4, probability=0.9)
            for place, word in enumerate(text.split())
        ])  # fmt: skip
        doubter.add(taker.phrase(10.0 * at))
    doubter.start()
    event = events.get(timeout=30)
    doubter.end()
    doubter.join(30)
    assert event.start_s == 0.0
    assert "reflex_patellar" in {query.item for query in event.taken.queries}
    assert events.empty()


def test_ends_in_the_midst_of_a_phrase(grammar: Grammar) -> None:
    """What is not asked yet is not asked any more: hearing the whole is not held up."""
    taker, events, asked = Taker(grammar), queue.SimpleQueue[Any](), []

    def ask(question: Weigh | Knows) -> Answer:
        asked.append(question)
        doubter.end()
        return evenly(question)

    words = [
        Word(text=text, start_s=at / 2, end_s=at / 2 + 0.4, probability=0.5)
        for at, text in enumerate("Knee jerk two plus on the right, three plus on the left.".split())
    ]
    taker.take(words)
    doubter = Doubter(taker, ask, events)
    doubter.start()
    doubter.add(taker.phrase(0.0))
    doubter.join(30)
    assert len(asked) == 1
    assert events.empty()
