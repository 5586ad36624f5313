"""Grammar → phrases, and their places in a text as marks that do not overlap."""

from __future__ import annotations

import itertools
from collections import defaultdict
from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from dictate.grammar import Grammar, Item
from dictate.reading.marks import Mark, Role
from dictate.reading.phrases.codes import PREPOSITIONS, without_codes
from dictate.reading.phrases.forms import as_sentences, forms, with_signs, words_of
from dictate.reading.phrases.inner_sides import inner_sides
from dictate.reading.phrases.joints import shared_joints, shortened
from dictate.reading.phrases.kinds import LENGTHS
from dictate.reading.phrases.named_on import named_on
from dictate.reading.phrases.numbers import find_numbers
from dictate.reading.phrases.pairs import part_sides
from dictate.reading.phrases.place_names import is_only_a_place
from dictate.reading.phrases.spans import deny_by_minus, dermatomes, fill, join, longest_first, with_inner
from dictate.reading.phrases.unsaid_heads import unsaid_heads
from dictate.reading.tokens import Token, make_doc, pipeline

if TYPE_CHECKING:
    from spacy.matcher import PhraseMatcher

_CONJUNCTIONS = {"and", "or", "nor"}
_CONTRASTS = {"but", "while", "whereas", "though", "although", "however"}
_WORD_KINDS = {
    "normal": "normal",
    "abnormal": "abnormal",
    "present": "present",
    "absent": "absent",
    "not_examined": "not_examined",
    "not_assessable": "not_assessable",
    "unchanged": "unchanged",
    "negation": "negation",
    "severity": "severity",
    "hedges": "hedge",
    "exceptions": "except",
    "corrections": "correction",
    "strikes": "strike",
    "swaps": "swap",
    "same": "same",
    "reasons": "reason",
    "rest": "rest",
    "throughout": "throughout",
    "equal": "equal",
    "fillers": "filler",
    "ability": "ability",
    "losses": "loss",
    "talk": "talk",
    "next_patient": "next_patient",
    "reference": "reference",
    "comparisons": "comparison",
    "other_side": "other_side",
    "same_side": "same_side",
    "right_then_left": "right_then_left",
    "left_then_right": "left_then_right",
}
_HALTS = {"no", "sorry", "wait", "or"}
_HEADED = ("item", "sign", "context", "site")
_LIST_LINKS = {",", "and", "or", "/", "&", "+"}
_PREFERRED = (Role("shared_head"),)


class Lexicon:
    """All phrases of a grammar, ready to be found in a text."""

    def __init__(self, grammar: Grammar) -> None:
        self.grammar = grammar
        self.items: dict[str, Item] = grammar.items
        self.component = {name: c for c, part in grammar.components.items() for name in part.items}
        common = grammar.common
        self.trusted = {wrong: right for right, many in common.trusted.items() for wrong in many}
        self.misheard = {wrong: right for right, many in common.misheard.items() for wrong in many} | self.trusted
        words = (*common.words.normal, *common.words.abnormal, *common.words.absent)
        self._plain = frozenset(word for word in words if word.isalpha())
        self._phrases: dict[tuple[str, ...], list[tuple[Role, bool]]] = defaultdict(list)
        self._add_common()
        for component, part in grammar.components.items():
            self._add(part.headings, Role("heading", key=component.value))
            for name, item in part.items.items():
                self._add_item(name, item)
        self._add_names()
        self._by_first = self._index()
        self._words = {word for words in self._phrases for word in words}

    def _add_names(self) -> None:
        """An item's name as the note writes it, where it is no phrase yet: the note can be read again."""
        for name, item in self.items.items():
            if words_of(item.name) not in self._phrases:
                self._add([item.name], Role("item", name), inflect=False)

    def _index(self) -> dict[str, list[tuple[str, ...]]]:
        """Phrases by their first word."""
        by_first: dict[str, list[tuple[str, ...]]] = defaultdict(list)
        for words in self._phrases:
            by_first[words[0]].append(words)
        return by_first

    def _add(self, phrases: Iterable[str], role: Role, *, inflect: bool = True) -> None:
        for phrase in with_signs(phrases, role):
            words = words_of(phrase)
            if not words:
                continue
            shout = len(words) == 1 and phrase.isupper() and len(phrase) <= 3
            for form in forms(words, inflect=inflect, shout=shout, short=len(phrase) < 3):
                if (role, shout) not in self._phrases[form]:
                    self._phrases[form].append((role, shout))

    def _add_common(self) -> None:
        common = self.grammar.common
        for side, phrases in common.sides.items():
            self._add(phrases, Role("side", key=side), inflect=False)
        for position, phrases in common.positions.items():
            self._add(phrases, Role("position", key=position), inflect=False)
        for site, phrases in common.sites.items():
            self._add(phrases, Role("site", key=site))
        for limb, phrases in common.limbs.items():
            limb_side, _, site = limb.partition(" ")
            self._add(phrases, Role("side", key=limb_side), inflect=False)
            self._add(phrases, Role("site", key=site), inflect=False)
        for manoeuvre, phrases in common.manoeuvres.items():
            self._add(phrases, Role("manoeuvre", key=manoeuvre), inflect=False)
        self._add(common.at_once, Role("at_once"), inflect=False)
        self._add(common.directions, Role("direction"), inflect=False)
        for section, phrases in common.sections.items():
            self._add((p for p in phrases if p[-1] != ":"), Role("section", key=section), inflect=False)
            self._add((p[:-1] for p in phrases if p[-1] == ":"), Role("closed_section", key=section), inflect=False)
        for field, kind in _WORD_KINDS.items():
            phrases = getattr(common.words, field)
            self._add(phrases, Role(kind), inflect=False)
            if kind in ("correction", "strike", "swap"):  # "no, make that left"
                self._add(
                    [p.replace(" ", " , ", 1) for p in phrases if p.split()[0] in _HALTS or kind == "strike"],
                    Role(kind),
                    inflect=False,
                )
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
        short = self.grammar.common.shortened
        self._add((*item.terms, *shortened(item.terms, short)), Role("item", name))
        self._add((*item.context_terms, *shortened(item.context_terms, short)), Role("context", name))
        self._add(item.signs, Role("sign", name))
        self._add(item.normal, Role("normal", name), inflect=False)
        self._add(item.abnormal, Role("abnormal", name), inflect=False)
        self._add(item.qualifiers, Role("qualifier", name), inflect=False)
        for key, value in item.values.items():
            said = [*value.say, *as_sentences(value.say, self._plain)] if value.alone else value.say
            self._add(said, Role("value", name, key), inflect=False)
            if value.alone:
                self._add(said, Role("alone", name, key), inflect=False)
        for unit, phrases in item.units.items():
            self._add(phrases, Role("unit", name, unit))
        for site, phrases in item.sites.items():
            self._add((*phrases, site.replace("_", " ")), Role("site", name, site))

    def knows(self, word: str) -> bool:
        """Whether the word is part of any phrase."""
        return word in self._words

    def terms(self, kinds: Sequence[str], *, longest: int) -> set[str]:
        """Phrases of plain words that can be any of these, up to so many words."""
        return {
            " ".join(words)
            for words, roles in self._phrases.items()
            if len(words) <= longest and all(word.isalpha() for word in words)
            if any(role.kind in kinds and not shout for role, shout in roles)
        }

    def meanings(self, phrase: str) -> set[Role]:
        """Everything the phrase can be."""
        return {role for role, _ in self._phrases.get(tuple(phrase.split()), ())}

    def _matcher(self, tokens: Sequence[Token]) -> PhraseMatcher:
        """A matcher of the phrases whose words all occur in this text: making one Doc a phrase is what costs time."""
        from spacy.matcher import PhraseMatcher
        from spacy.tokens import Doc

        vocab = pipeline().vocab
        said = {token.lower for token in tokens}
        matcher = PhraseMatcher(vocab, attr="ORTH")
        phrases = (words for first in said for words in self._by_first.get(first, ()) if said.issuperset(words))
        docs = [Doc(vocab, words=list(words)) for words in phrases]
        if docs:
            matcher.add("phrase", docs)
        return matcher

    def site_in(self, text: str, items: Sequence[str] = ()) -> str:
        """The body site a name holds ("ankle clonus" → ankle, in the words of these items too), or empty."""
        return self._key_in(text, "site", ("", *items), self.grammar.common.sites)

    def position_in(self, text: str) -> str:
        """The position a name holds ("no symptoms on standing" → standing), or empty."""
        return self._key_in(text, "position", ("",), self.grammar.common.positions)

    def _key_in(self, text: str, kind: str, items: Sequence[str], known: Collection[str]) -> str:
        """The first known key that the first two words, or else one word, have with any of the items."""
        words = text.split()
        said = [*itertools.pairwise(words), *((word,) for word in words)]
        roles = (role for phrase in said for role, _ in self._phrases.get(phrase, ()))
        return next(
            (
                role.key
                for role in roles
                if role.kind == kind and role.item in items and (role.item or role.key in known)
            ),
            "",
        )

    def find(self, tokens: Sequence[Token]) -> list[Mark]:
        """The text as marks in order, every token in exactly one of them."""
        spans: list[Mark] = find_numbers(tokens)
        for _, start, end in self._matcher(tokens)(make_doc(list(tokens))):
            roles = self._roles(tokens, start, end)
            if roles and not any(token.ends_sentence for token in tokens[start : end - 1]):
                spans.append(Mark(start, end, roles))
        spans.extend([*dermatomes(tokens), *inner_sides(tokens, self.meanings), *unsaid_heads(tokens, self.meanings)])
        spans = self._with_shared_heads(tokens, spans)
        spans = sorted([*spans, *shared_joints(tokens, spans, self.meanings)], key=lambda span: span.start)
        chosen = longest_first(named_on(spans), len(tokens))
        marks = [with_inner(mark, spans, tokens, self.items) for mark in fill(chosen, tokens)]
        marks = deny_by_minus(without_codes(marks, tokens), tokens, self.items, self.meanings("negative"))
        joined = part_sides(list(join(marks, tokens, self.items)), tokens)
        return [replace(mark, hyphened=True) if tokens[mark.start].hyphened else mark for mark in joined]

    def _with_shared_heads(self, tokens: Sequence[Token], spans: Sequence[Mark]) -> list[Mark]:
        """ "carotid, orbital or temporal bruits": each word of the list together with the noun at its end.

        A phrase that ends between that noun and its own first word ("upper and lower | limbs") is none then.
        """
        found: list[Mark] = []
        parted: set[tuple[int, int]] = set()  # from the first word of a list to the first of its last name
        for mark in spans:
            if mark.end - mark.start != 2 or not mark.has("item", "sign", "context"):
                continue
            place = mark.start
            if place and tokens[place - 1].lower == ",":
                continue  # "in the left leg, hip flexion": no list
            while place >= 2 and (tokens[place - 1].lower in _LIST_LINKS or tokens[place].hyphened):
                before = place - 2 if tokens[place - 2].lower not in _LIST_LINKS else place - 3
                before = place - 1 if tokens[place].hyphened else before
                if before < 0 or tokens[before].lower in LENGTHS or not tokens[before].lower.isalpha():
                    break  # "six foot walk", "5/5 b/l"
                entries = self._phrases.get((tokens[before].lower, tokens[mark.end - 1].lower), ())
                roles = tuple(role for role, shout in entries if not shout and role.kind in _HEADED)
                if not roles or any(role.kind == "side" for role, _ in entries):
                    break
                found.append(Mark(before, before + 1, (*roles, *_PREFERRED)))
                parted.add((before, mark.start))
                place = before
        ends = {m.end for m in found}  # "right arm and leg weakness": no part of a stroke scale
        spans = [s for s in spans if s.end not in ends or s.end - s.start == 1 or s.has(*_HEADED[:2], "side", "site")]
        kept = (s for s in spans if s.has("side") or not any(s.start <= a < b == s.end - 1 for a, b in parted))
        return [*kept, *found]  # "right and left" stays one

    def _roles(self, tokens: Sequence[Token], start: int, end: int) -> tuple[Role, ...]:
        said = tuple(token.lower for token in tokens[start:end])
        entries = () if is_only_a_place(tokens, start, end, self.meanings) else self._phrases.get(said, ())
        if tokens[start].text.removesuffix("s").isupper() and any(shout for _, shout in entries) and end - start == 1:
            # "LT" is light touch, "lt" is left; "CTA - R M1" are pictures
            return tuple(role for role, shout in entries if shout or role.kind == "closed_section")
        return tuple(role for role, shout in entries if not shout)


def is_preposition(mark: Mark) -> bool:
    """Whether the mark is a word like in, at, over."""
    return mark.text in PREPOSITIONS


def leads_on(mark: Mark) -> bool:
    """Whether the mark ties what stands before it to the name behind it ("errors in", "trouble with")."""
    return is_preposition(mark) or mark.text == "with"
