"""An eye or an ear as the title of the sentences behind it ("Left eye. Acuity 6/12. Disc pale. Right eye. ...")."""

from __future__ import annotations

from collections.abc import Sequence

from dictate.model import Side
from dictate.reading.lexicon import Lexicon
from dictate.reading.limb_titles import NAMING, LimbTitle, says_nothing
from dictate.reading.marks import Mark
from dictate.reading.tokens import Token


def organs_in_force(
    sentences: Sequence[Sequence[Mark]], tokens: Sequence[Token], lexicon: Lexicon
) -> list[LimbTitle | None]:
    """For each sentence the eye or ear whose title it stands under; the findings of that organ are of its side.

    It ends with a sentence that names something else, or both ("pupils"), or another side, and with its line. Nobody
    says where the last one ends: there, behind the first sentence, only what was told of the organ before.
    """
    titles = [_title_of(sentence, lexicon) for sentence in sentences]
    last = max((at for at, title in enumerate(titles) if title is not None), default=-1)
    found: list[LimbTitle | None] = []
    current: LimbTitle | None = None
    of_organ: dict[str, set[str]] = {}  # items found under the titles of each organ
    told: set[str] = set()
    first = False  # the sentence right behind the title
    alone = False
    for at, sentence in enumerate(sentences):
        before = sentences[at - 1] if at else ()
        title = titles[at]
        if title is not None and (current is not None or not _lacks_side(before, title, tokens, lexicon)):
            told = of_organ.setdefault(title.organ, set())
            current, first = title, not _says_more(sentence)
            found.append(None)
            told.update(name for names in _named(sentence, title, lexicon) for name in names)
        else:
            names = _named(sentence, current, lexicon) if current is not None else []
            if current is not None and _of_another(sentence, current, lexicon):
                current = None
            open_end = at > last and not first and not all(one & told for one in names)
            found.append(current if any(names) and not open_end else None)
            told.update(name for one in names for name in one if current is not None and not open_end)
            goes_on = all(names) or (at < last and any(names))  # "disc swollen, one haemorrhage"
            current, first = (current if goes_on else None), False
        if sentence and tokens[sentence[-1].end - 1].ends_line:
            alone = title is not None or alone  # the title stood alone on its line, and holds for those below it
            current = current if alone else None
        alone = alone and current is not None
    return found


def _title_of(sentence: Sequence[Mark], lexicon: Lexicon) -> LimbTitle | None:
    """ "Left eye." alone, or "Left eye:" in front of what was found in it."""
    said = [mark for mark in sentence if not mark.has("filler", "comma", "stop")]
    organ = _organ(said[0], lexicon) if said else ""
    if not organ or not all(mark.has("colon") for mark in said[1:2]) or not said[0].has("side"):
        return None
    role = said[0].role("side")
    side = Side(role.key) if role is not None else None
    return LimbTitle(side, "", (said[0].start, said[0].end), organ) if side in (Side.LEFT, Side.RIGHT) else None


def _organ(mark: Mark, lexicon: Lexicon) -> str:
    words = mark.text.lower()
    return next((organ for organ, said in lexicon.grammar.common.organs.items() if words in said), "")


def _says_more(sentence: Sequence[Mark]) -> bool:
    return any(not says_nothing(mark) and not mark.has("side") for mark in sentence)


def _named(sentence: Sequence[Mark], title: LimbTitle, lexicon: Lexicon) -> list[set[str]]:
    """For each name in the sentence the items of the organ that it may be."""
    named = [{r.item for r in mark.roles if r.kind in NAMING} for mark in sentence if mark.has(*NAMING)]
    return [{name for name in names if lexicon.items[name].organ == title.organ} for names in named]


def _lacks_side(before: Sequence[Mark], title: LimbTitle, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """ "Disc pale. Left eye.": the organ may belong to what was found before it."""
    if not before or tokens[before[-1].end - 1].ends_line or any(mark.has("side") for mark in before):
        return False
    return any(_named(before, title, lexicon)) and not _plural(before, lexicon)


def _plural(sentence: Sequence[Mark], lexicon: Lexicon) -> bool:
    """ "Pupils", "discs": of both; not what is a plural in one eye already ("venous pulsations")."""
    for mark in (mark for mark in sentence if mark.has(*NAMING)):
        names = [lexicon.items[role.item].name.split() for role in mark.roles if role.kind in NAMING]
        own = {word for name in names if len(name) > 1 for word in name}
        if any(word in lexicon.grammar.common.plurals and word not in own for word in mark.text.lower().split()):
            return True
    return False


def _of_another(sentence: Sequence[Mark], title: LimbTitle, lexicon: Lexicon) -> bool:
    """Both eyes, or the other one."""
    sides = [role.key for mark in sentence if (role := mark.role("side")) is not None]
    return _plural(sentence, lexicon) or any(side != title.side for side in sides if side != "midline")
