"""Full stops that a recogniser writes where a speaker only paused: taken out where no sentence can end or begin,
and in a list told of one side ("right deltoid 5. Biceps 5.").

Of recordings only, and never between two of them: who types a full stop means it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from dictate.grammar.number_words import TEENS, TENS
from dictate.model import Word
from dictate.reading.phrases.cardinals import UNITS
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.tokens import Token

_NUMBERS = frozenset({*UNITS, *TEENS, *TENS, "hundred", "half", "oh"})
_SIGNS = frozenset({"plus", "minus", "+", "-"})
_JOINTS = frozenset({"over", "slash", "point", "/"})  # between the parts of a number
_OPEN = frozenset({"the", "a", "an", "of", "with", "without", "and"})  # no sentence ends so
_NO = frozenset({("is", "no"), ("was", "no"), ("are", "no"), ("has", "no"), ("had", "no")})  # nor so
_LINKS = frozenset({"on", "in", "at", "the", "of", "for", "to", "is", "are", "was", "were", ":", "a"})
_NAMES = frozenset({"item", "context", "sign", "alone", "heading", "section", "closed_section", "next_patient"})
_TITLES = frozenset({"item", "context", "heading"})
_TELLS = frozenset(
    "normal abnormal present absent not_examined not_assessable unchanged severity grade value unit negation".split()
)
_PLACES = frozenset({"side", "site", "direction"})
_MINUTES = frozenset({"minute", "minutes"})
_GRADED = frozenset({"number", "grade", "value", "correction"})
_LONGEST = 5  # words of a phrase
_LISTING_S = 1.5  # a longer silence may end a list; common practice, no source


@dataclass(frozen=True, slots=True)
class _Phrase:
    """Words of a sentence and what they can be; a number, a comma and a link are kinds of their own."""

    text: str
    kinds: frozenset[str]
    sides: frozenset[str]

    def is_any(self, kinds: frozenset[str]) -> bool:
        return bool(self.kinds & kinds)


def without_pauses(tokens: Sequence[Token], words: Sequence[Word], lexicon: Lexicon) -> list[Token]:
    """The tokens without the stops that split a number from its parts, or a value from the name in front of it."""
    sentences = _sentences(_bridged(tokens, words))
    result: list[Token] = []
    held: list[Token] = []
    for place, sentence in enumerate(sentences):
        after = sentences[place + 1] if place + 1 < len(sentences) else []
        if (
            held
            and _one_recording(held, sentence, words)
            and (_go_on(result, held, sentence, after, lexicon) or _list_on(held, sentence, words, lexicon))
        ):
            held = _joined(held, sentence)
            continue
        result += held
        held = list(sentence)
    return result + held


def _bridged(tokens: Sequence[Token], words: Sequence[Word]) -> list[Token]:
    """Less what a recogniser writes for a pause inside a number: "140 over, 80", "140 over- 80"."""
    return [
        token
        for at, token in enumerate(tokens)
        if not (
            token.text in ("-", ",")
            and words[token.word].start_s is not None
            and at > 1
            and tokens[at - 1].lower in _JOINTS
            and _is_number(tokens[at - 2].lower)
            and at + 1 < len(tokens)
            and _is_number(tokens[at + 1].lower)
        )
    ]


def _sentences(tokens: Sequence[Token]) -> list[list[Token]]:
    """Cut at every end of a sentence, behind an ellipsis, and behind "no."."""
    found: list[list[Token]] = [[]]
    for at, token in enumerate(tokens):
        found[-1].append(token)
        before, after = tokens[at - 1].lower if at else "", tokens[at + 1].text if at + 1 < len(tokens) else ""
        trails = token.text == "." and (before == "no" or (before == "." and after != "."))  # "no." is a number typed
        if token.ends_sentence or trails:
            found.append([])
    return found if found[-1] else found[:-1]


def _one_recording(before: Sequence[Token], after: Sequence[Token], words: Sequence[Word]) -> bool:
    one, two = words[before[-1].word], words[after[0].word]
    return one.start_s is not None and one.source == two.source and before[-1].text not in ("?", "!")


def _joined(before: Sequence[Token], after: Sequence[Token]) -> list[Token]:
    """One sentence; a sign of its own belongs to the number before it."""
    kept = _said(before)
    first = after[0]
    if first.lower in _SIGNS:
        first = replace(first, glued=True)
    return [*kept[:-1], replace(kept[-1], ends_sentence=False, ends_line=False), first, *after[1:]]


def _said(sentence: Sequence[Token]) -> list[Token]:
    """Less its full stop, ellipsis or last comma."""
    said = list(sentence)
    while len(said) > 1 and said[-1].text in ".,":
        said.pop()
    return said


def _go_on(
    earlier: Sequence[Token], before: Sequence[Token], after: Sequence[Token], then: Sequence[Token], lexicon: Lexicon
) -> bool:
    """Whether what follows belongs to the sentence before."""
    one, two = [token.lower for token in _said(before)], [token.lower for token in _said(after)]
    if _open_number(one, two) or (len(one) > 1 and (one[-1] in _OPEN or tuple(one[-2:]) in _NO)):
        return True
    head, tail = _phrases(one, lexicon), _phrases(two, lexicon)
    if _is_number(one[-1]) and tail[0].text == "minus" and len(tail) > 1 and tail[1].is_any(_TITLES):
        return True  # "Knee flexion 5. Minus ankle dorsiflexion 4."
    measured = "unit" in tail[0].kinds or tail[0].text in _MINUTES
    if _is_number(one[-1]) and measured and not tail[0].is_any(_NAMES | _PLACES):
        return True
    if _only(head, _PLACES) and _tells_first(tail):
        return _other_side(head, earlier, lexicon)
    if not _names_only(head) or (_sides(head) and _sides(tail[:2])):
        return False
    if _only(tail, _PLACES):
        return bool(then) and _tells_first(_phrases([token.lower for token in _said(then)], lexicon))
    return _tells_first(tail)


def _list_on(before: Sequence[Token], after: Sequence[Token], words: Sequence[Word], lexicon: Lexicon) -> bool:
    """Whether one more grade of the side spoken of follows at once: "right deltoid 5. Biceps 5." """
    ends_s, begins_s = words[before[-1].word].end_s, words[after[0].word].start_s
    if ends_s is None or begins_s is None or begins_s - ends_s > _LISTING_S:
        return False
    head, tail = (_phrases([token.lower for token in _said(one)], lexicon) for one in (before, after))
    one_sided = len(_sides(head)) == 1 and not _sides(tail) and any("side" in phrase.kinds for phrase in head[:2])
    return one_sided and _grades_names(head) and _grades_names(tail)


def _grades_names(phrases: Sequence[_Phrase]) -> bool:
    """Names, each with its grade, and nothing else: "left deltoid 5, biceps 4 plus, correction, 4 minus"."""
    said = [phrase for phrase in phrases if not phrase.kinds & {"comma", "side", "link"}]
    opens = bool(said) and said[0].is_any(_TITLES | {"correction"})
    graded = all(phrase.is_any(_TITLES | _GRADED) and "normal" not in phrase.kinds for phrase in said)
    return opens and graded and said[-1].is_any(_GRADED)


def _open_number(one: Sequence[str], two: Sequence[str]) -> bool:
    """ "140 over. 80", "140. Over 80", "28. Out of 30", "37. Point 5", "four. Minus"."""
    if len(one) > 1 and one[-1] in _JOINTS and _is_number(one[-2]) and _is_number(two[0]):
        return True
    if not _is_number(one[-1]):
        return False
    if two[0] in _JOINTS and len(two) > 1 and _is_number(two[1]):
        return True
    if list(two[:2]) == ["out", "of"] and len(two) > 2 and _is_number(two[2]):
        return True
    behind = " ".join(two[1:3])
    return two[0] in _SIGNS and (not behind or behind.startswith((",", "left", "right", "on the", "on both")))


def _is_number(word: str) -> bool:
    return word[:1].isdigit() or word in _NUMBERS


def _phrases(words: Sequence[str], lexicon: Lexicon) -> list[_Phrase]:
    """The longest phrases of the grammar, one behind the other; other words by themselves."""
    found: list[_Phrase] = []
    place = 0
    while place < len(words):
        length = next((n for n in range(_LONGEST, 1, -1) if lexicon.meanings(" ".join(words[place : place + n]))), 1)
        text = " ".join(words[place : place + length])
        roles = lexicon.meanings(text)
        kinds = {role.kind for role in roles}
        if length == 1 and (_is_number(text) or text in _SIGNS):
            kinds = {"number"}
        elif text in (",", "and", "but"):
            kinds = {"comma"}
        elif text in _LINKS:
            kinds = {"link"}
        found.append(_Phrase(text, frozenset(kinds), frozenset(role.key for role in roles if role.kind == "side")))
        place += length
    return found


def _only(phrases: Sequence[_Phrase], kinds: frozenset[str]) -> bool:
    """Whether there is nothing else but links: "left", "on the right"."""
    said = [phrase for phrase in phrases if "link" not in phrase.kinds]
    return bool(said) and all(phrase.is_any(kinds) and not phrase.is_any(_NAMES) for phrase in said)


def _names_only(phrases: Sequence[_Phrase]) -> bool:
    """ "Left deltoid", "blood pressure": what is spoken of and where, and nothing that was found."""
    said = [phrase for phrase in phrases if "link" not in phrase.kinds]
    named = any(phrase.is_any(_TITLES) for phrase in said)
    return named and all(phrase.is_any(_TITLES | _PLACES | {"position"}) for phrase in said)


def _tells_first(phrases: Sequence[_Phrase]) -> bool:
    """Whether it begins with what was found, and that is of no name behind it: "four minus, right deltoid five"."""
    told = False
    for phrase in phrases:
        if "comma" in phrase.kinds:
            return told
        if phrase.is_any(_NAMES) and not phrase.is_any(_TELLS):
            return False
        told = told or (phrase.is_any(_TELLS | {"number"}) and "side" not in phrase.kinds)  # a hand is right, too
        if not told and not phrase.is_any(_PLACES | {"link", "filler"}):
            return False
    return told


def _sides(phrases: Sequence[_Phrase]) -> set[str]:
    return {side for phrase in phrases for side in phrase.sides}


def _other_side(head: Sequence[_Phrase], earlier: Sequence[Token], lexicon: Lexicon) -> bool:
    """Whether the sentence before was of the other side: "right" is no mere word of assent then."""
    last = _sentences(earlier)[-1] if earlier else []
    there = {token.lower for token in last} & {"left", "right"}
    return bool(there) and there.isdisjoint(_sides(head) or there)
