"""One finding in the trade's wording and units."""

from __future__ import annotations

import re

from dictate.catalogue import note as words
from dictate.grammar import Grammar, Item, is_noteworthy, name_detail, scale_named
from dictate.grammar.blankets import ROMAN
from dictate.grammar.rough import rough_word
from dictate.model import (
    BOUNDS,
    SEGMENT,
    Certainty,
    Component,
    Earlier,
    Finding,
    Person,
    Quantity,
    Side,
    Status,
    Text,
    Value,
    number_text,
)

STAY = "\N{NO-BREAK SPACE}"  # keeps a number with its unit on one line; becomes a blank at the end
TURNING_ROUND = "".join(  # change the order of what is read: 4- would look like -4
    map(chr, (0x061C, 0x200E, 0x200F, *range(0x202A, 0x202F), *range(0x2066, 0x206A)))
)
STEERING = dict.fromkeys((*range(9), *range(11, 32), *range(127, 160), *map(ord, TURNING_ROUND)))
_STOPS = ",;:."


def item_of(grammar: Grammar, name: str) -> Item | None:
    """The item of that id; None for one the grammar does not hold (an older examination, another range)."""
    return next((part.items[name] for part in grammar.components.values() if name in part.items), None)


def item_name(grammar: Grammar, name: str) -> str:
    """The item's name as the grammar writes it, else made from its id."""
    item = item_of(grammar, name)
    if item is not None:
        return item.name
    return " ".join(part.upper() if part in words.ABBREVIATIONS else part for part in name.split("_"))


def title(finding: Finding, grammar: Grammar) -> str:
    """The name under which a finding is written: of its scale, where its item stands for many, else of its item."""
    return scale_named(finding, grammar) or item_name(grammar, finding.item)


def short_title(finding: Finding, grammar: Grammar) -> str:
    """The name where its position stands beside it."""
    return words.SHORT_NAMES.get(finding.item) or title(finding, grammar)


def nerve_label(grammar: Grammar, name: str) -> str:
    """Roman numerals of the item's nerves, as `III/IV/VI`; empty when the grammar names none."""
    item = item_of(grammar, name)
    return "/".join(part for part in re.findall(r"[A-Za-z]+", item.nerve if item else "") if part in ROMAN)


def nerve_order(nerve: str) -> int:
    """Place of the first nerve named among the twelve; 0 when none is named."""
    first = re.match(r"[IVX]+", nerve)
    return ROMAN.index(first.group()) + 1 if first and first.group() in ROMAN else 0


def is_blanket(grammar: Grammar, finding: Finding) -> bool:
    """Whether the finding speaks of many items at once."""
    item = item_of(grammar, finding.item)
    if item is not None:
        return item.blanket
    return finding.item.endswith("_all") or re.fullmatch(r"cranial_nerves_\d+_\d+", finding.item) is not None


def capital(text: str) -> str:
    """First letter in capitals, the others as they are."""
    return text[:1].upper() + text[1:]


def one_line(text: str) -> str:
    """White space of any kind becomes one blank."""
    return " ".join(text.split())


def visible(text: str) -> str:
    """Text without signs that steer a terminal; they say nothing."""
    return text.translate(STEERING)


def circumstances(finding: Finding) -> str:
    """Position and time since standing, as `standing at 3 min`; empty when neither was said."""
    parts = [] if finding.position is None else [words.POSITIONS[finding.position]]
    if finding.minutes is not None:
        minutes = finding.minutes
        if minutes == 0:
            parts.append(words.AT_ONCE)
        elif minutes < 1:
            parts.append(words.SECONDS_AFTER_STANDING.format(seconds=number_text(round(minutes * 60))))
        else:
            parts.append(words.AFTER_STANDING.format(minutes=number_text(minutes)))
    return " ".join(parts)


def years(age: float) -> str:
    """`72 years`; below two years in months."""
    if age < 2:
        return words.MONTHS.format(count=round(age * 12))
    return words.YEARS.format(count=number_text(round(age, 1)))


def age_line(person: Person) -> str:
    """The age, and the words it was dictated in; empty when it is not known."""
    if person.age_years is None:
        return ""
    quote = one_line(person.evidence[0].quote).strip(" ,.;:") if person.evidence else ""
    return words.AGE.format(age=years(person.age_years), origin=words.AGE_FROM[person.age_from].format(quote=quote))


def place(finding: Finding) -> str:
    """Side and site, as `right great toe`; empty when neither was said."""
    site = _site(finding)
    side = words.SIDES[finding.side] if finding.side else ""
    pair = (site, side) if finding.side is Side.BOTH else (side, site)
    return " ".join(filter(None, pair))


def _site(finding: Finding) -> str:
    if SEGMENT.fullmatch(finding.site):
        return finding.site.upper()
    return words.PLACE_NAMES.get(finding.site, finding.site.replace("_", " "))


def reach(finding: Finding) -> str:
    """How far a disturbance of sensation goes, as said: `to mid calf`, `below the knee`; empty: it is at its site."""
    if finding.component is not Component.SENSORY or finding.status not in (Status.NORMAL, Status.ABNORMAL):
        return ""
    site = re.escape(_site(finding).lower())
    form = rf"(?<!\w)(?:{'|'.join(words.REACHES)}) (?:the )?(?:(?:left|right|both) )?{site}s?(?!\w)"
    said = re.search(form, one_line(finding.quote).lower().replace("-", " ")) if site else None
    told = "" if said is None else re.sub(r" (?:left|right|both)\b", "", said.group())
    return told.removesuffix(site) + _site(finding) if told.endswith(site) else told


def where_of(finding: Finding, grammar: Grammar) -> str:
    """Where a sign is present or absent, behind the word: `at the left ankle`, `in the hand, both sides`."""
    if not finding.site or finding.site in grammar.common.manoeuvres:
        return place(finding)
    one_side = words.SIDES[finding.side] if finding.side in (Side.LEFT, Side.RIGHT) else ""
    form = words.IN_PLACE if finding.site in words.INSIDE else words.AT_PLACE
    if SEGMENT.fullmatch(finding.site):
        form = words.AT_SEGMENT
    text = form.format(place=" ".join(filter(None, (one_side, _site(finding)))))
    return text if one_side or finding.side is None else f"{text}, {words.SIDES[finding.side]}"


def amount(value: Value, unit: str) -> str:
    """A value with its unit."""
    behind = words.UNITS.get(unit, f" {unit.strip('{}')}" if unit else "")
    if not isinstance(value, Quantity):
        return f"{value}{behind}"
    text = number_text(value.number)
    other = value.then if value.then is not None else value.upto
    if other is not None:
        text = words.SPAN.format(first=text, last=number_text(other))
    if value.note.endswith(" in"):
        return f"{value.note} {text}{behind}"
    return f"{text}{behind} {value.note}".rstrip()


def rough(finding: Finding) -> str:
    """The word in front of a number that makes it about so much; a doubt or a limit says so by itself."""
    return rough_word(finding) if finding.certainty is Certainty.STATED and not bound(finding) else ""


def statement(finding: Finding, grammar: Grammar, *, where: str = "") -> str:
    """What was said of the item, without title and place: `2+`, `absent`, `not examined (painful hip)`.

    where: the place, for those who want it directly behind the word.
    """
    value = "" if finding.value is None else amount(finding.value, finding.unit)
    value = _as_spoken(value, finding) if isinstance(finding.value, Text) else value.replace(" ", STAY)
    limit = bound(finding) if value else ""
    value = f"{limit or rough(finding)} {value}".lstrip()
    said = words.STATUSES[finding.status]
    name = name_detail(finding, grammar)
    detail = [one_line(part) for part in finding.detail if part not in (name, limit)]
    named = value.replace(STAY, " ").lower(), *title(finding, grammar).lower().split()
    detail = [part for part in detail if part.lower() not in named]
    if finding.status in (Status.MEASURED, Status.NORMAL, Status.ABNORMAL):
        said = value or said
    elif value:
        detail.insert(0, value)
    if finding.status is Status.PRESENT and finding.item in words.TOLD and detail:
        return f"{'; '.join(detail)} {where}".rstrip()
    said = f"{said} {where}".rstrip()
    return f"{said} ({'; '.join(detail)})" if detail else said


def _as_spoken(text: str, finding: Finding) -> str:
    """A descriptor with the commas and joining words that stood in front of its words: `ataxic with intention tremor`.

    Descriptors hold what was said and not what joined it; words that are not found in the quote stand as they are.
    """
    said = one_line(finding.quote).lower().split()
    written: list[str] = []
    start = 0
    for word in text.split():
        at = next((at for at in range(start, len(said)) if said[at].strip(_STOPS) == word.lower()), None)
        if at is not None:
            if written and at and said[at - 1][-1:] in _STOPS:
                written[-1] = written[-1].rstrip(_STOPS) + ","
            elif written and at > start and said[at - 1] in words.JOINING:
                written.append(said[at - 1])
            start = at + 1
        written.append(word)
    return " ".join(written)


def bound(finding: Finding) -> str:
    """The word that makes its number a bound ("at least"), as said; empty: it is a number."""
    return next((part for part in finding.detail if part in BOUNDS), "")


def hedge(finding: Finding, grammar: Grammar) -> str:
    """The word of doubt as it was said, in front of an uncertain finding; else empty."""
    if finding.certainty is not Certainty.UNCERTAIN:
        return ""
    quote = one_line(finding.quote).lower()
    said = [doubt for doubt in grammar.common.words.hedges if re.search(rf"(?<!\w){re.escape(doubt)}(?!\w)", quote)]
    doubt = max(said, key=len) if said else words.UNCERTAIN
    if finding.status in (Status.PRESENT, Status.ABSENT):
        doubt = words.ADVERBS.get(doubt, doubt)
    return re.sub(r"\bi\b", "I", doubt)


def stands_out(finding: Finding, grammar: Grammar) -> bool:
    """Whether the grammar calls the finding noteworthy; what was said to be abnormal always is."""
    return finding.status is Status.ABNORMAL or is_noteworthy(finding, grammar)


def phrase(finding: Finding, grammar: Grammar, *, with_circumstances: bool = True) -> str:
    """Place, circumstances, doubt and statement of one finding, as `right possible 3+`."""
    around = circumstances(finding) if with_circumstances else ""
    before, behind = place(finding), ""
    if finding.status in (Status.PRESENT, Status.ABSENT):
        if finding.site and finding.site not in grammar.common.manoeuvres:
            before, behind = "", where_of(finding, grammar)
        around, behind = "", f"{behind} {around}".strip()
    elif deviates(finding):
        before, behind = "", words.TO_SIDE.format(side=place(finding))
    elif far := reach(finding):  # of which its site is the end
        before, behind = words.SIDES[finding.side] if finding.side else "", far
        finding = finding.model_copy(update={"detail": tuple(one for one in finding.detail if one.lower() != far)})
    said = statement(finding, grammar, where=behind)
    if is_midline(finding):
        before, said = "", place(finding) + said.removeprefix(words.STATUSES[Status.NORMAL])
    text = " ".join(filter(None, (before, around, hedge(finding, grammar), said)))
    if is_blanket(grammar, finding):
        if finding.excepted:
            text = words.OTHERWISE.format(said=text)
        text += f", {words.AS_SAID.format(quote=one_line(finding.quote).strip(' ,.;:'))}"
    return text if finding.earlier is None else f"{text} ({earlier_text(finding.earlier)})"


def earlier_text(earlier: Earlier) -> str:
    """What "unchanged" is tied to: `2026-03-04, record k7: left 4-`."""
    form = words.EARLIER if earlier.day else words.EARLIER_UNDATED
    return form.format(day=earlier.day, record=earlier.record, said=earlier.said)


def deviates(finding: Finding) -> bool:
    """Whether the side is the one it turns to: `deviates to the left`."""
    return finding.side in (Side.LEFT, Side.RIGHT) and str(finding.value).endswith(words.TURNING)


def is_midline(finding: Finding) -> bool:
    """Whether lying in the midline is the whole of what is normal: `Tongue: midline`."""
    return finding.side is Side.MIDLINE and finding.status is Status.NORMAL and finding.value is None


def nerve_sorted(component: Component) -> bool:
    """Whether the component's items are written by nerve instead of in the order dictated."""
    return component is Component.CRANIAL_NERVES
