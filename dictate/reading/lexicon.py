"""Grammar → phrases, and their places in a text as marks that do not overlap."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from dictate.grammar import Grammar, Item
from dictate.reading.kinds import LENGTHS
from dictate.reading.marks import Mark, Role
from dictate.reading.numbers import ROMAN, find_numbers
from dictate.reading.tokens import Token, make_doc, pipeline, tokenize, transcript_of_text

if TYPE_CHECKING:
    from spacy.matcher import PhraseMatcher

_PUNCTUATION = {",": "comma", ";": "semicolon", ":": "colon", "(": "comma", ")": "comma", "-": "comma", ".": "stop", "?": "stop", "!": "stop",
                "=": "filler", "&": "conj", "/": "conj", "@": "filler", ">": "word", "<": "word", "%": "word", "+": "word"}  # fmt: skip
_CONJUNCTIONS = {"and", "or", "nor"}
_CONTRASTS = {"but", "while", "whereas", "though", "although", "however"}
_PREPOSITIONS = {"in", "on", "at", "of", "to", "over", "below", "above", "from", "around", "behind", "across", "within", "up", "down", "under", "for", "through"}
_MINUTES = {"minute", "minutes", "min", "mins"}
_SPANS = {"hour", "hours", "year", "years", "day", "days", "week", "weeks", "month", "months", "yrs", "yr", "hrs"}
_WORD_KINDS = {
    "normal": "normal", "abnormal": "abnormal", "present": "present", "absent": "absent", "not_examined": "not_examined",
    "not_assessable": "not_assessable", "unchanged": "unchanged", "negation": "negation", "severity": "severity",
    "hedges": "hedge", "exceptions": "except", "corrections": "correction", "strikes": "strike", "swaps": "swap", "same": "same",
    "reasons": "reason", "rest": "rest", "throughout": "throughout", "equal": "equal", "fillers": "filler", "talk": "talk",
    "next_patient": "next_patient", "comparisons": "comparison", "other_side": "other_side", "right_then_left": "right_then_left", "left_then_right": "left_then_right",
}  # fmt: skip
_HALTS = {"no", "sorry", "wait", "or"}
_PLAIN = re.compile(r"[a-z]+(?:[ -][a-z]+)*")
_DERMATOME_LIMIT = {"c": 8, "t": 12, "l": 5, "s": 5}


def variants(words: tuple[str, ...]) -> Iterable[tuple[str, ...]]:
    """The phrase, and its last word in the other number ("knee jerk" ↔ "knee jerks")."""
    yield words
    last = words[-1]
    if not last.isalpha() or len(last) < 3:
        return
    if last.endswith(("sis", "ss", "us", "is")):
        return
    if last.endswith("ies") and len(last) > 4:
        yield (*words[:-1], last[:-3] + "y")
    elif last.endswith("s"):
        yield (*words[:-1], last[:-1])
    elif last.endswith(("ch", "sh", "x")):
        yield (*words[:-1], last + "es")
    elif last.endswith("y") and last[-2] not in "aeiou":
        yield (*words[:-1], last[:-1] + "ies")
    else:
        yield (*words[:-1], last + "s")


def _words(phrase: str) -> tuple[str, ...]:
    """The phrase as it is matched; plain lower-case words need no tokenizer."""
    if _PLAIN.fullmatch(phrase):
        return tuple(phrase.replace("-", " ").split())
    return tuple(token.lower for token in tokenize(transcript_of_text(phrase)))


def _forms(words: tuple[str, ...], *, inflect: bool, shout: bool, short: bool) -> Iterable[tuple[str, ...]]:
    """The phrase in both numbers; capitals only ever gain an s ("RAM" → RAMs, never "VAS" → VA)."""
    if shout:
        return (words,) if short or not inflect else (words, (words[0] + "s",))
    return variants(words) if inflect else (words,)


class Lexicon:
    """All phrases of a grammar, ready to be found in a text."""

    def __init__(self, grammar: Grammar) -> None:
        self.grammar = grammar
        self.items: dict[str, Item] = grammar.items
        self.component = {name: c for c, part in grammar.components.items() for name in part.items}
        self._phrases: dict[tuple[str, ...], list[tuple[Role, bool]]] = defaultdict(list)
        self._add_common()
        for component, part in grammar.components.items():
            self._add(part.headings, Role("heading", key=component.value))
            for name, item in part.items.items():
                self._add_item(name, item)

    def _add(self, phrases: Iterable[str], role: Role, *, inflect: bool = True) -> None:
        for phrase in phrases:
            words = _words(phrase)
            if not words:
                continue
            shout = len(words) == 1 and phrase.isupper() and len(phrase) <= 3
            for form in _forms(words, inflect=inflect, shout=shout, short=len(phrase) < 3):
                entry = (role, shout)
                if entry not in self._phrases[form]:
                    self._phrases[form].append(entry)

    def _add_common(self) -> None:
        common = self.grammar.common
        for side, phrases in common.sides.items():
            self._add(phrases, Role("side", key=side), inflect=False)
        for position, phrases in common.positions.items():
            self._add(phrases, Role("position", key=position), inflect=False)
        for site, phrases in common.sites.items():
            self._add(phrases, Role("site", key=site))
        for limb, phrases in common.limbs.items():
            side, _, site = limb.partition(" ")
            self._add(phrases, Role("side", key=side), inflect=False)
            self._add(phrases, Role("site", key=site), inflect=False)
        for manoeuvre, phrases in common.manoeuvres.items():
            self._add(phrases, Role("manoeuvre", key=manoeuvre), inflect=False)
        self._add(common.at_once, Role("at_once"), inflect=False)
        self._add(common.directions, Role("direction"), inflect=False)
        for section, phrases in common.sections.items():
            self._add(phrases, Role("section", key=section), inflect=False)
        for field, kind in _WORD_KINDS.items():
            phrases = getattr(common.words, field)
            self._add(phrases, Role(kind), inflect=False)
            if kind in ("correction", "strike", "swap"):  # "no, make that left"
                self._add([p.replace(" ", " , ", 1) for p in phrases if p.split()[0] in _HALTS], Role(kind), inflect=False)
        for word in _CONJUNCTIONS:
            self._add([word], Role("conj"), inflect=False)
        for word in _CONTRASTS:
            self._add([word], Role("contrast"), inflect=False)
        for name, scale in self.grammar.scales.items():
            for grade, phrases in scale.say.items():
                self._add(phrases, Role("grade", item=name, key=grade), inflect=False)
            for grade in scale.grades:
                if grade.isalpha():
                    self._add([grade], Role("grade", item=name, key=grade), inflect=False)

    def _add_item(self, name: str, item: Item) -> None:
        self._add(item.terms, Role("item", name))
        self._add(item.context_terms, Role("context", name))
        self._add(item.signs, Role("sign", name))
        self._add(item.normal, Role("normal", name), inflect=False)
        self._add(item.abnormal, Role("abnormal", name), inflect=False)
        self._add(item.qualifiers, Role("qualifier", name), inflect=False)
        for key, value in item.values.items():
            self._add(value.say, Role("value", name, key), inflect=False)
            if value.alone:
                self._add(value.say, Role("alone", name, key), inflect=False)
        for unit, phrases in item.units.items():
            self._add(phrases, Role("unit", name, unit))
        for site, phrases in item.sites.items():
            self._add((*phrases, site.replace("_", " ")), Role("site", name, site))

    def _matcher(self, tokens: Sequence[Token]) -> PhraseMatcher:
        """A matcher of the phrases whose words all occur in this text: making one Doc a phrase is what costs time."""
        from spacy.matcher import PhraseMatcher
        from spacy.tokens import Doc

        vocab = pipeline().vocab
        said = {token.lower for token in tokens}
        matcher = PhraseMatcher(vocab, attr="ORTH")
        docs = [Doc(vocab, words=list(words)) for words in self._phrases if said.issuperset(words)]
        if docs:
            matcher.add("phrase", docs)
        return matcher

    def site_in(self, text: str) -> str:
        """The body site a name holds ("ankle clonus" → ankle), or empty."""
        for word in text.split():
            for role, _ in self._phrases.get((word,), ()):
                if role.kind == "site" and not role.item:
                    return role.key
        return ""

    def find(self, tokens: Sequence[Token]) -> list[Mark]:
        """The text as marks in order, every token in exactly one of them."""
        spans: list[Mark] = find_numbers(tokens)
        for _, start, end in self._matcher(tokens)(make_doc(list(tokens))):
            roles = self._roles(tokens, start, end)
            if roles and not any(token.ends_sentence for token in tokens[start : end - 1]):
                spans.append(Mark(start, end, roles))
        spans.extend(_dermatomes(tokens))
        chosen = _longest_first(spans, len(tokens))
        marks = [_with_inner(mark, spans, tokens) for mark in _fill(chosen, tokens)]
        return list(_join(marks, tokens, self))

    def _roles(self, tokens: Sequence[Token], start: int, end: int) -> tuple[Role, ...]:
        words = tuple(token.lower for token in tokens[start:end])
        entries = self._phrases.get(words, ())
        if tokens[start].text.removesuffix("s").isupper() and any(shout for _, shout in entries) and end - start == 1:
            return tuple(role for role, shout in entries if shout)  # "LT" is light touch, "lt" is left
        return tuple(role for role, shout in entries if not shout)


def _dermatomes(tokens: Sequence[Token]) -> Iterable[Mark]:
    """ "T8", "t eight", "T-10" as sites and levels."""
    numbers = {mark.start: mark for mark in find_numbers(tokens)}
    for place, token in enumerate(tokens):
        letter, rest = token.lower[:1], token.lower[1:]
        if letter in _DERMATOME_LIMIT and rest.isdigit() and 1 <= int(rest) <= _DERMATOME_LIMIT[letter]:
            yield Mark(place, place + 1, (Role("dermatome", key=token.lower), Role("site", key=token.lower)))
        elif token.lower in _DERMATOME_LIMIT and place + 1 < len(tokens):
            after = place + 2 if tokens[place + 1].lower == "-" else place + 1
            mark = numbers.get(after)
            before = tokens[place - 1].lower if place else ""
            fits = letter == "t" or letter == "c" or before in {"at", "to", "below", "level", "above", "through", "from", "and", "of"}
            if mark and mark.number and fits and not mark.number.op and not mark.number.a_sign and not mark.number.mark:
                number = mark.number.a
                if number == int(number) and 1 <= number <= _DERMATOME_LIMIT[letter] and (letter != "s" or before != "s"):
                    key = f"{letter}{int(number)}"
                    yield Mark(place, mark.end, (Role("dermatome", key=key), Role("site", key=key)))


def _with_inner(mark: Mark, spans: list[Mark], tokens: Sequence[Token]) -> Mark:
    """A phrase that means something of certain items only, together with what it falls into elsewhere."""
    if mark.end - mark.start < 2 or mark.number is not None:
        return mark
    if any(not role.item or role.kind in ("item", "sign", "alone", "grade") for role in mark.roles):
        return mark
    inside = [s for s in spans if mark.start <= s.start and s.end <= mark.end and s.end - s.start < mark.end - mark.start]
    moved = [Mark(s.start - mark.start, s.end - mark.start, s.roles, s.number, s.text) for s in inside]
    filled = _fill(_longest_first(moved, mark.end - mark.start), tokens[mark.start : mark.end])
    inner = tuple(
        _with_inner(Mark(m.start + mark.start, m.end + mark.start, m.roles, m.number, m.text), inside, tokens) for m in filled
    )
    return Mark(mark.start, mark.end, mark.roles, mark.number, mark.text, inner)


def _longest_first(spans: list[Mark], length: int) -> list[Mark]:
    """Marks that do not overlap: the longest first, then the earliest; equal spans are one mark."""
    by_span: dict[tuple[int, int], Mark] = {}
    for mark in spans:
        key = (mark.start, mark.end)
        old = by_span.get(key)
        by_span[key] = (
            mark if old is None else Mark(mark.start, mark.end, (*old.roles, *mark.roles), old.number or mark.number)
        )
    taken = [False] * length
    chosen = []
    for mark in sorted(by_span.values(), key=lambda m: (m.start - m.end, m.start)):
        if not any(taken[mark.start : mark.end]):
            taken[mark.start : mark.end] = [True] * (mark.end - mark.start)
            chosen.append(mark)
    return sorted(chosen, key=lambda m: m.start)


def _fill(chosen: list[Mark], tokens: Sequence[Token]) -> list[Mark]:
    """Add a mark for every token that no phrase took; give each mark its text."""
    marks: list[Mark] = []
    place = 0
    for mark in [*chosen, Mark(len(tokens), len(tokens), ())]:
        while place < mark.start:
            lower = tokens[place].lower
            kind = _PUNCTUATION.get(lower, "word" if lower.isalnum() else "filler")
            marks.append(Mark(place, place + 1, (Role(kind),), text=lower))
            place += 1
        if mark.start < mark.end:
            text = " ".join(token.lower for token in tokens[mark.start : mark.end])
            marks.append(Mark(mark.start, mark.end, mark.roles, mark.number, text))
            place = mark.end
    return marks


def _join(marks: list[Mark], tokens: Sequence[Token], lexicon: Lexicon) -> Iterable[Mark]:
    """Join numbers to what makes them minutes, time spans or a range of cranial nerves."""
    place = 0
    while place < len(marks):
        mark = marks[place]
        after = marks[place + 1] if place + 1 < len(marks) else None
        if mark.number is not None and after is not None and not tokens[mark.end - 1].ends_sentence:
            kind = "minutes" if after.text in _MINUTES else "time_span" if after.text in _SPANS else ""
            if kind and not mark.number.op:
                yield Mark(mark.start, after.end, (Role(kind),), mark.number, f"{mark.text} {after.text}")
                place += 2
                continue
        if mark.number is not None and after is not None and after.has("item") and after.text.split()[0] in LENGTHS:
            yield Mark(mark.start, after.end, after.roles, None, f"{mark.text} {after.text}")
            place += 2
            continue
        if mark.role("heading") and (joined := _nerve_range(marks, place, tokens, lexicon)):
            yield joined[0]
            place = joined[1]
            continue
        yield mark
        place += 1


def _nerve_range(marks: list[Mark], place: int, tokens: Sequence[Token], lexicon: Lexicon) -> tuple[Mark, int] | None:
    """ "cranial nerves two to twelve", "CN II-XII" as the blanket of that range."""
    mark = marks[place]
    if not any(r.kind == "heading" and r.key == "cranial_nerves" for r in mark.roles):
        return None
    after = place + 1
    pair: tuple[int, int] | None = None
    if after < len(marks) and (number := marks[after].number) and number.b is not None and number.op in {"to", "-", "->"}:
        pair, end = (int(number.a), int(number.b)), after + 1
    else:
        found: list[int] = []
        end = after
        while end < len(marks) and len(found) < 2:
            text, own = marks[end].text, marks[end].number
            if own is not None and not own.op:
                found.append(int(own.a))
            elif text in ROMAN and tokens[marks[end].start].text.isupper():
                found.append(ROMAN[text])
            elif not (text in {"-", "through", "thru", "to"} and len(found) == 1):
                break
            end += 1
        pair = (found[0], found[1]) if len(found) == 2 else None
    if pair is None:
        return _nerve_list(marks, place, tokens)
    if not 1 <= pair[0] < pair[1] <= 12:
        return None
    name = f"cranial_nerves_{pair[0]}_{pair[1]}"
    role = Role("item", name) if name in lexicon.items else Role("heading_part", key="cranial_nerves")
    text = " ".join(token.lower for token in tokens[mark.start : marks[end - 1].end])
    if role.kind == "heading_part":
        return Mark(mark.start, marks[end - 1].end, (role,), text=text), end
    return Mark(mark.start, marks[end - 1].end, (role, *(r for r in mark.roles if r.kind == "heading")), text=text), end


def _nerve_list(marks: list[Mark], place: int, tokens: Sequence[Token]) -> tuple[Mark, int] | None:
    """ "cranial nerves V and VII": some nerves are not the whole component."""
    end, last = place + 1, place
    while end < len(marks):
        mark = marks[end]
        roman = mark.text in ROMAN and tokens[mark.start].text.isupper()
        if roman or (mark.number is not None and not mark.number.op and 1 <= mark.number.a <= 12):
            last = end
        elif mark.text not in {",", "and", "/", "&"}:
            break
        end += 1
    if last == place:
        return None
    text = " ".join(token.lower for token in tokens[marks[place].start : marks[last].end])
    return Mark(marks[place].start, marks[last].end, (Role("heading_part", key="cranial_nerves"),), text=text), last + 1


def is_preposition(mark: Mark) -> bool:
    """Whether the mark is a word like in, at, over."""
    return mark.text in _PREPOSITIONS
