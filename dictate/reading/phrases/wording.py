"""What one word beside an item says of it: its status, a value, the descriptor as said."""

from __future__ import annotations

from dictate.grammar import Item
from dictate.model import Grade, Status, Text, Value
from dictate.reading.nodes import Node
from dictate.reading.phrases.kinds import choice_value
from dictate.reading.phrases.lexicon import Lexicon

_HOW = ("fully", "normally", "perfectly")  # of a verb in the name of a sign
_NOT_THERE = frozenset({"not seen today", "not noted today"})  # of a sign; of a test, that it was not done
_SIGNED = ("positive", "negative", "pos", "neg", "- ve", "-")
_NUMERIC = ("score", "quantity", "pressure", "acuity")
_NOTICED = frozenset({"seen", "found", "noted", "observed", "detected"})
_MANNERS = frozenset("slow slowed sluggish tired quiet hesitant slowly delayed".split())


class WordReader:
    """Reads words; numbers are read elsewhere."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.items = lexicon.items
        self.scales = lexicon.grammar.scales

    def read(self, name: str, item: Item, node: Node) -> tuple[Status, Value | None, str] | None:
        """Status, fixed value and descriptor words that one node gives the item."""
        for role in node.mark.roles:
            if role.kind == "value" and role.item == name:
                named = item.values[role.key]
                return Status(named.status), choice_value(role.key, named.value, item.kind), ""
        if item.kind == "grade":
            for role in node.mark.roles:
                if role.kind == "grade" and role.item == item.scale:
                    return Status.MEASURED, Grade(scale=item.scale, grade=role.key), ""
        for role in node.mark.roles:
            if role.item == name and role.kind in ("normal", "abnormal"):
                if role.kind == "normal":
                    return (Status.PRESENT if item.kind == "presence" else Status.NORMAL), None, ""
                return (Status.PRESENT if item.kind == "presence" else Status.ABNORMAL), None, node.text
        if any(r.kind == "sign" and r.item == name for r in node.mark.roles):
            words = _without_name(node.text, item) if item.kind == "grade" else node.text
            return Status.ABNORMAL, None, words
        own = any(role.item == name for role in node.mark.roles)
        if node.text == "fine" and item.kind == "presence" and item.alone and own:
            return Status.PRESENT, None, "fine"  # a fine tremor is no normal one
        return self._general(item, node)

    def _general(self, item: Item, node: Node) -> tuple[Status, Value | None, str] | None:
        mark = node.mark
        if item.spheres and node.text in _MANNERS:
            return None  # "oriented but a bit slow": how somebody answers is no sphere
        if node.main == "dermatome":
            return Status.MEASURED, Text(words=node.key("dermatome").upper()), ""
        if item.kind == "presence" and item.alone and node.text in _NOT_THERE:
            return Status.ABSENT, None, ""
        if mark.role("not_examined", "") or mark.role("not_assessable", ""):
            return Status.NOT_EXAMINED if mark.role("not_examined", "") else Status.NOT_ASSESSABLE, None, ""
        signed = item.kind in ("choice", "presence") and node.text.startswith("+")  # "Babinski +"
        if signed or node.text in _SIGNED:
            positive = signed or node.text.startswith("pos")
            if not _has_signs(item) and (positive or item.kind == "choice"):
                return None  # "HR +ve", "pupils +ve"
            if item.kind == "presence":
                return (Status.PRESENT if positive else Status.ABSENT), None, ""
            if item.negated == "abnormal":  # "SVP +ve": what is there is normal
                return (Status.NORMAL, None, "") if positive else (Status.ABNORMAL, Text(words="absent"), "")
            return (Status.ABNORMAL, None, "positive") if positive else (Status.NORMAL, None, "")
        if node.text in _HOW and item.kind == "presence" and item.alone:
            return Status.PRESENT, None, ""  # "fails to abduct fully" fails all the same
        if mark.has("ability"):
            return (Status.NORMAL, None, "") if item.task else None
        if mark.role("normal", ""):
            if item.kind != "presence":
                return Status.NORMAL, None, ""
            return (Status.PRESENT if _should_be_there(item) else Status.ABSENT), None, ""
        if mark.role("absent", ""):
            if item.kind in ("presence", "text"):
                return Status.ABSENT, None, ""
            if item.kind == "grade" and "0" in self.scales[item.scale].grades:
                return Status.MEASURED, Grade(scale=item.scale, grade="0"), ""
            return Status.ABNORMAL, Text(words="absent"), ""
        if mark.role("present", ""):
            if item.kind == "grade":
                return Status.PRESENT, None, ""
            noticed = node.text in _NOTICED and item.negated != "abnormal"
            if item.kind != "presence" and (noticed or item.kind in _NUMERIC):
                return None  # "gait seen", "tone noted": looked at, and not how it was
            return (Status.PRESENT if item.kind == "presence" else Status.NORMAL), None, ""
        if mark.role("abnormal", ""):
            if item.kind != "presence" or _should_be_there(item):
                return Status.ABNORMAL, None, node.text
            return (Status.PRESENT, None, node.text) if item.alone else None  # "pupils abnormal" does not say unequal
        return (Status.UNCHANGED, None, "") if mark.role("unchanged", "") else None


def _should_be_there(item: Item) -> bool:
    """Whether a normal one is present (a gag), and not absent: "pupils normal" denies that they are unequal."""
    found = item.noteworthy is not None and Status.PRESENT.value in item.noteworthy.statuses
    return not item.alone and not found


def _has_signs(item: Item) -> bool:
    """Whether it can be positive: a test, a sign named by itself or one that should be there, and no rhythm."""
    if item.kind == "presence":
        return item.alone or _should_be_there(item)
    told = any("positive" in words for value in item.values.values() for words in value.say)
    return item.kind != "choice" or told or item.negated == "abnormal"


def _without_name(sign: str, item: Item) -> str:
    """ "Supinator muscle weakness" and "weakness of the supinator", said of the supinator, are weakness."""
    for name in sorted((*item.terms, *item.context_terms), key=len, reverse=True):
        if sign.startswith(f"{name.lower()} "):
            return sign[len(name) + 1 :]
        if sign.endswith(f" of {name.lower()}"):
            return sign[: -len(name) - 4]
    return sign
