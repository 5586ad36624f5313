"""whose-words: a finding made of words that may be the patient's, not the examiner's."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Literal

from dictate.catalogue import queries as say
from dictate.checks.registry import Doubt, check
from dictate.checks.wording import capital, item_of, phrase
from dictate.grammar import Grammar
from dictate.model import Examination, Finding, Word

_WORD = r"[a-z0-9'+/-]+"
_TELLING = 5  # letters of a word that tells what is spoken of
_SIDES = frozenset({"right", "other", "there", "these", "those"})
_STOPS = (".", "?", "!")
Span = tuple[int, int]  # first and last word


@check("whose-words", severity="must")
def whose_words(exam: Examination, grammar: Grammar) -> Iterator[Doubt]:
    """A finding in words that the patient may have said: in another voice, on another channel, or as an answer.

    Why: what a patient answers is not what an examiner found, and the recogniser hears both alike.
    Example: "Can you see one pen or two? No double vision." asks: whose words are they?
    """
    limit = grammar.doubt.limits.get("voices")
    answers = _answers(exam, grammar)
    for finding in exam.findings:
        own = _voice(exam, finding, limit.at if limit else None)
        if own == "channel":
            yield _doubt(finding, say.OTHER_CHANNEL, grammar)
        elif own == "second":
            yield _doubt(finding, say.SECOND_VOICE, grammar)
        elif own == "" and _is_answer(exam, finding, answers, grammar):
            yield _doubt(finding, say.PERHAPS_ANSWERED, grammar)


def _doubt(finding: Finding, words: str, grammar: Grammar) -> Doubt:
    return Doubt(finding, words.format(finding=capital(phrase(finding, grammar))), (say.EXAMINERS_WORDS,))


def _voice(exam: Examination, finding: Finding, least_apart: float | None) -> str:
    """Whose voice said the finding: `channel` (the other one), `first`, `second`, or empty where it cannot be told."""
    last = finding.evidence[-1].last
    if not exam.transcript.sources or last >= len(exam.transcript.words):
        return ""
    word = exam.transcript.words[last]
    sound = exam.transcript.sources[word.source].sound
    if sound is None or word.start_s is None or word.end_s is None:
        return ""
    middle_s = (word.start_s + word.end_s) / 2
    if _within(middle_s, sound.other_channel):
        return "channel"
    if least_apart is None or sound.voices_apart <= least_apart:
        return ""
    return "second" if _within(middle_s, sound.second_voice) else "first"


def _within(moment_s: float, stretches: Sequence[tuple[float, float]]) -> bool:
    return any(start <= moment_s <= end for start, end in stretches)


def _answers(exam: Examination, grammar: Grammar) -> list[tuple[int, int, str]]:
    """Sentences behind a question that is itself no finding: the first, and more that begin as answers do.

    First and last word of each, and the words of the question.
    """
    found = [one for finding in exam.findings for one in finding.evidence]
    words, answers = exam.transcript.words, []
    asked, source, question = False, -1, ""
    for first, last in _sentences(words):
        text = _plain(words[first : last + 1])
        if asked and words[first].source == source:
            answers.append((first, last, question))
        asks = (words[last].text.endswith("?") or _begins(text, "asks", grammar)) and not any(
            one.first <= last and first <= one.last for one in found
        )
        asked, source = asks or (asked and _begins(text, "answers", grammar)), words[first].source
        question = text if asks else question
    return answers


def _is_answer(exam: Examination, finding: Finding, answers: Sequence[tuple[int, int, str]], grammar: Grammar) -> bool:
    """Whether its sentence begins as an answer does, does not name what it is about, or says again what was asked."""
    said = finding.evidence[-1]
    for first, last, question in answers:
        if first <= said.first <= last:
            text = _plain(exam.transcript.words[first : last + 1])
            again = {word for word in _plain_text(said.quote).split() if len(word) >= _TELLING} & set(question.split())
            named = _names(finding, text, grammar) and not _names(finding, question, grammar)
            return _begins(text, "answers", grammar) or not named or bool(again - _SIDES)
    return False


def _begins(text: str, part: Literal["asks", "answers"], grammar: Grammar) -> bool:
    return any(f"{text} ".startswith(f"{phrase} ") for phrase in grammar.common.dialogue.get(part, ()))


def _names(finding: Finding, text: str, grammar: Grammar) -> bool:
    """Whether the sentence names the item of the finding."""
    item = item_of(grammar, finding.item)
    if item is None:
        return True
    names = (item.name, *item.terms, *item.context_terms, *item.signs)
    return any(f" {' '.join(re.findall(_WORD, name.lower()))}" in f" {text}" for name in names)


def _sentences(words: Sequence[Word]) -> Iterator[Span]:
    first = 0
    for at, word in enumerate(words):
        ends = at == len(words) - 1 or words[at + 1].source != word.source
        if ends or word.text.rstrip("\"')").endswith(_STOPS):
            yield first, at
            first = at + 1


def _plain(words: Sequence[Word]) -> str:
    return _plain_text(" ".join(word.text for word in words))


def _plain_text(text: str) -> str:
    return " ".join(re.findall(_WORD, text.lower().replace("\u2019", "'")))
