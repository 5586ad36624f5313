"""Words → tokens of a spaCy Doc, each knowing the word it came from."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from dictate.model import Evidence, Source, Transcript, Word

if TYPE_CHECKING:
    from spacy.language import Language
    from spacy.tokens import Doc

_PIECES = re.compile(r"(?P<num>\d+(?:\.\d+)?)|(?P<arrow>->|→|=>)|(?P<let>[^\W\d_]+)|(?P<mark>\S)")
_LEVEL = re.compile(r"(?:C[1-8]|T(?:1[0-2]|[1-9])|L[1-5]|S[1-5]|V[1-3])(?!\d|\.\d|%)", re.IGNORECASE)
_SPEECH = re.compile(r"s[1-4]s[1-4]", re.IGNORECASE)
_ARROWS = re.compile(r"[↑⬆⇧]+|[↓⬇⇩]+")
_ORDINALS = "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth".split()
_ROMAN = "i ii iii iv v vi vii viii ix x xi xii".split()
_ORDINAL = re.compile(r"\b(1[0-2]|[1-9]|[iI]{1,3}|[iI]?[vV]|[vV][iI]{1,3}|[iI]?[xX]|[xX][iI]{1,2})(?:st|nd|rd|th)\b")
_COMA = re.compile(r"(?<![^\W\d_])(E[1-4])V[Tt](M[1-6])")  # "E1VTM4": a letter that is points
_NEVER_LAST = frozenset("but and or nor the an his their my than because although which".split())
_DROPPED = {"'", "’", "`", '"', "“", "”", "_", "*", "•", "‘"}
_IN_FULL = {
    "decr": "decreased",
    "incr": "increased",
    "dimin": "diminished",
    "dec": "decreased",
    "symm": "symmetric",
    "dev": "deviates",
    "wkness": "weakness",
    "decd": "decreased",
}
_CLOSING = frozenset({"symm", "dimin", "decr", "incr", "palp"})  # said of what stands in front of them
_ABBREVIATIONS = frozenset(
    "wt ht temp approx vs resp ext bilat abd inf sup exam fl ext flex ant post lat med dr mr mrs no pt hr rr sat sats "
    "rt lt bil diff max min sec secs mins exc excl e i g incl resp refl "
    "dev symm mod sev prob poss dec decr incr dimin palp".split()
)


@dataclass(frozen=True, slots=True)
class Token:
    """One token: `lower` is what is matched, `text` what stood there."""

    text: str
    lower: str
    word: int  # place in Transcript.words
    glued: bool  # nothing stood between it and the token before
    ends_sentence: bool = False  # a full stop, a line break or a long silence follows
    ends_line: bool = False
    hyphened: bool = False  # a hyphen stood between it and the token before
    heard: str = ""  # what the recogniser wrote, where it was read as another word


@lru_cache(maxsize=1)
def pipeline() -> Language:
    """The blank English pipeline every Doc of the reader is made with."""
    import spacy
    from spacy.tokens import Token as SpacyToken

    if not SpacyToken.has_extension("word"):
        SpacyToken.set_extension("word", default=-1)
    return spacy.blank("en")


def transcript_of_text(text: str, *, name: str = "text", source: int = 0) -> Transcript:
    """A typed transcript as a Transcript; words carry no times.

    Source numbers start at `source`; line breaks are kept in `Word.lead`.
    """
    words = tuple(
        Word(text=found.group(2), lead=found.group(1), source=source) for found in re.finditer(r"(\s*)(\S+)", text)
    )
    digest = hashlib.sha256(text.encode()).hexdigest()
    return Transcript(words=words, sources=(Source(name=name, kind="text", sha256=digest),))


@dataclass(frozen=True, slots=True)
class _Piece:
    """A part of a word, and how it hangs on the part before it."""

    text: str
    glued: bool = False
    hyphened: bool = False


def _pieces(text: str) -> list[_Piece]:
    """Cut one word at hyphens, signs, and where letters and digits meet."""
    text = _ARROWS.sub(lambda arrows: _in_words(arrows.group(0)), text)
    text = _ORDINAL.sub(_ordinal, text)
    if "VT" in text or "Vt" in text:
        text = _COMA.sub(r"\1 VT \2", text)
    text = _without_contractions(text)
    pieces: list[_Piece] = []
    place = 0
    glued = hyphened = False
    while place < len(text):
        if text[place].isspace():
            place, glued = place + 1, False
            continue
        at_start = place == 0 or not text[place - 1].isalnum()
        found = (_LEVEL.match(text, place) or _SPEECH.match(text, place)) if at_start else None
        if found is not None:
            piece = found.group(0)
            heart = piece[2:3].lower() == "s"
            pieces += [_Piece(piece[:2], glued), _Piece(piece[2:])] if heart else [_Piece(piece, glued)]
            place = found.end()
        else:
            plain = _PIECES.match(text, place)
            if plain is None:
                place += 1
                continue
            place = plain.end()
            piece = plain.group(0)
            inner_hyphen = (
                piece in "-–‐"
                and place - 1 > 0
                and text[place - 2].isalnum()
                and place < len(text)
                and text[place].isalpha()
            )
            if piece in _DROPPED and not (pieces and pieces[-1].text.isdigit() and piece in "'\"’”"):
                glued = False
                continue
            if inner_hyphen:
                glued, hyphened = False, True
                continue
            written = piece.replace("→", "->").replace("=>", "->").replace("–", "-").replace("−", "-")
            pieces.append(_Piece(written, glued, hyphened))
            hyphened = False
        glued = True
    return pieces


def _without_contractions(text: str) -> str:
    """ "w/o", "o/w", "he's", "can't" in full; "patient's" without its ending."""
    if text[:2] in ("w/", "W/"):
        text = re.sub(r"^w/(?=o\b)o", "without ", text, flags=re.IGNORECASE)
        text = re.sub(r"^w/(?=$|\w)", "with ", text, flags=re.IGNORECASE)
    if text[:3].lower() == "o/w":
        text = re.sub(r"^o/w\b", "otherwise", text, flags=re.IGNORECASE)
    if "'" in text or "’" in text:
        text = re.sub(r"^(he|she|it|one|there|that)['’]s\b", r"\1 is", text, flags=re.IGNORECASE)
        text = re.sub(r"^(they|we|you)['’]re\b", r"\1 are", text, flags=re.IGNORECASE)
        text = re.sub(r"^(i|he|she|they|we|you)['’]d\b", r"\1 would", text, flags=re.IGNORECASE)
        text = re.sub(r"^i['’]m\b", "i am", text, flags=re.IGNORECASE)
        text = re.sub(r"(?<=\w)['’]ll\b", " will", text, flags=re.IGNORECASE)  # and no lower limb
        text = re.sub(r"(?<=\w)['’]s\b", "", text)
        text = re.sub(r"(?<=ca)n['’]t\b", "n not", text, flags=re.IGNORECASE)
        text = re.sub(r"(?<=\w)n['’]t\b", " not", text)
    return text


def _ordinal(written: re.Match[str]) -> str:
    """ "7th", "VIIth": seventh."""
    number = written.group(1).lower()
    return _ORDINALS[(int(number) if number.isdigit() else _ROMAN.index(number) + 1) - 1]


def _in_words(arrows: str) -> str:
    """ "↑" increased, "↓↓" markedly reduced."""
    degree = "markedly " if len(arrows) > 1 else ""
    return f" {degree}{'increased' if arrows[0] in '↑⬆⇧' else 'reduced'} "


def tokenize(
    transcript: Transcript, *, long_silence_s: float = 1.5, misheard: Mapping[str, str] | None = None
) -> list[Token]:
    """All words cut to tokens, with sentence ends marked.

    A sentence ends at a full stop, question or exclamation mark, a line break that looks like one, or a silence
    longer than `long_silence_s` before a word (recogniser's punctuation is kept where it gave any).
    misheard: what a recogniser wrote → what was meant; only words of a recording are read so, and they say it.
    """
    words = transcript.words
    punctuated = sum(w.text.endswith((".", ";", ":")) for w in words) * 40 >= len(words)
    tokens: list[Token] = []
    line_length = 0
    for place, word in enumerate(words):
        line_length = 0 if "\n" in word.lead else line_length
        line_length += len(word.text) + 1
        after = words[place + 1] if place + 1 < len(words) else None
        line = _ends_line(word, after, line_length, punctuated=punctuated)
        pause = (
            after is not None
            and after.start_s is not None
            and word.end_s is not None
            and (after.start_s - word.end_s > long_silence_s or after.source != word.source)
        )
        pieces = _pieces(word.text)
        meant = misheard or {} if word.start_s is not None else {}
        for number, piece in enumerate(pieces):
            last = number == len(pieces) - 1
            stop = last and piece.text in ".?!" and _is_stop(pieces, after)
            before = pieces[number - 1].text.lower() if number else ""
            if piece.text == "." and not stop and (before in _IN_FULL or before in _NEVER_LAST or before == "out"):
                continue  # "decr." ends nothing
            said = piece.text.lower()
            if place and not (said == "dec" and _is_month(words, place)):
                said = _IN_FULL.get(said, said)
            tokens.append(
                Token(
                    text=piece.text,
                    lower=meant.get(said, said),
                    heard=piece.text if said in meant else "",
                    word=place,
                    glued=piece.glued and number > 0,
                    hyphened=piece.hyphened,
                    ends_sentence=stop or (last and (line or pause)),
                    ends_line=last and line,
                )
            )
    return [token for at, token in enumerate(tokens) if not _parts_pressure(tokens, at)]


def _parts_pressure(tokens: Sequence[Token], at: int) -> bool:
    """ "142, over 80": a comma that a recogniser put inside a pressure."""
    if tokens[at].lower != "," or not at:
        return False
    around = [token.lower for token in (tokens[at - 1], *tokens[at + 1 : at + 3])]
    return len(around) == 3 and around[1] == "over" and around[0].isdigit() and around[2].isdigit()


def _is_month(words: Sequence[Word], place: int) -> bool:
    """ "In Dec", "Dec 2025", "12 Dec"."""
    beside = (words[place - 1].text, *(word.text for word in words[place + 1 : place + 2]))
    return any(text[:1].isdigit() for text in beside) or beside[0].lower() in (
        "in",
        "since",
        "last",
        "of",
        "until",
        "by",
    )


def _ends_line(word: Word, after: Word | None, length: int, *, punctuated: bool) -> bool:
    """A line break that ends what is said, not one that only keeps lines short."""
    if after is None:
        return True
    return "\n" in after.lead and (
        "\n\n" in after.lead.replace(" ", "")
        or not punctuated
        or length < 80
        or word.text[-1:] in ".:;?!"
        or after.text[:1].isupper()
    )


def _is_stop(pieces: list[_Piece], after: Word | None) -> bool:
    """A full stop that ends a sentence, not an abbreviation."""
    if after is None or pieces[-1].text in "?!":
        return after is None or len(pieces) > 1 or not after.text[:1].islower()  # "tone ? increased": a doubt
    before = pieces[-2].text.lower() if len(pieces) > 1 else ""
    runs_on = before in _NEVER_LAST or (before == "out" and after.text.lower() == "of")  # "two out. Of three"
    if runs_on and "\n" not in after.lead:
        return False  # "knows his name but. Not where he is": a recogniser's stop
    if len(pieces) > 2 and pieces[-2].text == "." and pieces[-3].text == ".":
        return False  # an ellipsis: the speaker goes on
    if before == "no" and not after.text[:1].isdigit() and after.text[:1].isupper():
        return True  # "on listening again no. Carotids": an answer; "no. 5" is a number
    if before == "l" and (after.text in ("R", "L") or after.text[-2:-1] == "/" or after.text.endswith("+")):
        return True  # "2+ R, 3+ L. R Hoffmann present", "4/5 L. 5/5 knee extension"
    if before in _CLOSING and len(after.text) > 1 and after.text[0].isupper():
        return True  # "2+ symm. Knees 3+"
    if before in _ABBREVIATIONS or (len(before) == 1 and before.isalpha() and before not in "ra"):
        return "\n" in after.lead or (len(after.text) > 1 and after.text[0].isupper() and before not in _ABBREVIATIONS)
    return True


def make_doc(tokens: list[Token]) -> Doc:
    """The tokens as a spaCy Doc; each token's `_.word` is its place in Transcript.words."""
    from spacy.tokens import Doc

    doc = Doc(pipeline().vocab, words=[token.lower for token in tokens])
    for spacy_token, token in zip(doc, tokens, strict=True):
        spacy_token._.word = token.word
    return doc


def evidence(transcript: Transcript, tokens: list[Token], first: int, last: int) -> Evidence:
    """Evidence for the tokens first..last (both included)."""
    a, b = tokens[first].word, tokens[last].word
    return Evidence(
        first=a,
        last=b,
        quote=transcript.quote(a, b),
        start_s=transcript.words[a].start_s,
        end_s=transcript.words[b].end_s,
    )
