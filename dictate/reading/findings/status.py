"""present, absent, normal, not examined, not assessable; stated or uncertain: cells → drafts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from dictate.grammar import Item
from dictate.model import Grade, Quantity, Side, Status, Text
from dictate.reading.cells.measures import Measurer, conditions, denied_kinds, is_named, modifier_text
from dictate.reading.cells.owners import Owners
from dictate.reading.findings.descriptors import (
    contrary,
    denied_sign,
    denied_status,
    denied_there,
    denies_behind,
    descriptor,
    equal_ahead,
    found_here,
    missed,
    named_between,
    of_faculty,
    of_signs,
    of_the_body,
    one_of_two,
    overall,
    tells_no_other,
    unseen,
)
from dictate.reading.nodes import WHOLE_LIMBS, Node, limb_of, other_limb
from dictate.reading.phrases.forms import names_kept
from dictate.reading.phrases.kinds import INABILITY, UNELICITED, Meaning
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.phrases.wording import WordReader
from dictate.reading.statements.drafts import Cell, Draft
from dictate.reading.statements.tasks import done

_UNTOLD = ("to ", "for ", "with eyes", "with the eyes", "eyes ")  # to what, and under what, but not how it was
_FALLS = ("fall", "veer", "drift", "lean", "sway")


class StatusReader:
    """What a cell says of an item."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.items = lexicon.items
        self.scales = lexicon.grammar.scales
        self.owners = Owners(lexicon)
        self.measures = Measurer(lexicon)
        self.words = WordReader(lexicon)
        self.meanings = lexicon.meanings

    def drafts(self, cell: Cell, names: Sequence[Node], fallback: Sequence[str]) -> list[Draft]:
        """Findings one cell gives; `fallback` are the items meant when no name stands in it."""
        found: list[Draft] = []
        groups = [self.owners.meant(n, cell.values) for n in names] or [tuple(fallback)]
        for candidates in groups:
            own = cell
            if len(groups) > 1 and self.owners.of_another(cell.values, candidates, groups):
                if not cell.negated or any(self.items[name].kind != "presence" for name in candidates):
                    continue
                own = replace(cell, values=[])  # "no diplopia, vertigo or dizziness": denied with the others
            for item, values in self._by_item(own, candidates):
                found.extend(self._draft(item, own, values, [n for n in names if item in n.candidates]) or ())
        return found

    def _by_item(self, cell: Cell, candidates: Sequence[str]) -> list[tuple[str, list[Node]]]:
        """The values of a cell dealt out to the items they speak of."""
        alone = [
            c for c in candidates if any(r.kind == "alone" and r.item == c for n in cell.values for r in n.mark.roles)
        ]
        named = [n for n in cell.values if any(r.kind == "alone" for r in n.mark.roles) and n.main == "item"]
        if len(alone) > 1 and named:
            shared = [
                (c, [n for n in cell.values if n.value_roles(c) or (n.mark.number is None and n not in named)])
                for c in alone
            ]
            numbers = [n for n in cell.values if n.mark.number is not None]
            return shared + ([(self.owners.owner(candidates, numbers[0]), numbers)] if numbers else [])
        dealt: dict[str, list[Node]] = {}
        for before, node in zip([None, *cell.values], cell.values, strict=False):
            if node.mark.has("equal") and not any(node.value_roles(c) for c in candidates):
                continue
            fitting = self.owners.measured_in(candidates, cell.units.get(id(node)))  # "grip 2 kg": a force, no grade
            owner = self.owners.owner(fitting, node) if node.main != "item" or len(candidates) > 1 else candidates[0]
            if node.mark.number is not None and before is not None and before.text.endswith(" of"):
                owner = self.owners.owner(candidates, before)  # "an anisocoria of 2 mm"
            dealt.setdefault(owner, []).append(node)
        if len(dealt) > 1 and all(self.items[c].blanket for c in candidates):
            graded = [c for c in dealt if any(n.mark.number is not None or n.mark.has("grade") for n in dealt[c])]
            if graded:
                return [(graded[0], dealt[graded[0]])]
        if not dealt:
            dealt[self.owners.general(candidates)] = [n for n in cell.values if n.mark.has("equal")]
        return list(dealt.items())

    def _draft(self, name: str, cell: Cell, values: list[Node], named: Sequence[Node]) -> list[Draft] | None:
        name = self.owners.of_one_side(name, cell.side, named)
        item = self.items[name]
        if of_the_body(item, cell):
            return None
        numbers, others = [n for n in values if n.mark.number], [n for n in values if not n.mark.number]
        in_words = item.kind == "choice" and bool(others)  # "positive, 8 s": the choice with its number
        in_words = in_words or missed(item, cell, numbers)
        meaning = self.measures.meaning(name, item, numbers, cell) if numbers and not in_words else None
        unread = numbers if meaning is None and not others and item.kind == "presence" else []  # "bradykinesia 2"
        if unread and not is_named(cell):
            return None  # "1. Tremor absent 2. Rigidity none": what follows is numbered
        if meaning is None:
            others += [n for n in numbers if n.mark.role("absent", "")]  # "tenderness zero"
        if meaning is None or any(n.mark.has("not_examined", "not_assessable") for n in others):
            meaning = self._word_meaning(name, item, cell, others, numbers)
        if meaning is None:
            return None
        meaning = self.measures.with_distance(item, meaning, named)
        signs = [n for n in named if not self._normal_sign(name, n)]
        plain = [n for n in others if n.main != "item"]
        meaning = found_here(name, item, named, plain, self.meanings) or of_signs(meaning, cell, named, signs, plain)
        meaning = of_faculty(item, meaning, named, plain)
        if meaning is None:
            return None
        meaning = contrary(meaning, modifier_text(name, cell), signs, item, cell) if cell.contrary else meaning
        if meaning is None:
            return None
        base = self._base(name, item, cell, meaning, [*named, *(n for n in cell.nodes if n not in unread)])
        base.detail.extend(self.measures.beside(name, item, cell, base, numbers, others))
        over = any(n.mark.number is not None and n.mark.number.op == "/" for n in numbers)
        base.whole = over and isinstance(meaning.value, Grade)
        base.maximum = next((n.mark.number.second for n in numbers if n.mark.number is not None and base.whole), "")
        if meaning.by_side and cell.side is None:
            (one, right), (two, left) = meaning.by_side
            said = {(n.mark.number.first, n.mark.number.second) for n in numbers if n.mark.number is not None}
            if str(right) == str(left) and all(a == b for a, b in said):
                base.side, base.value, base.paired = Side.BOTH, right, True
                return [base]
            second = self._base(name, item, cell, meaning, [*named, *cell.nodes])
            base.side, base.value, second.side, second.value = one, right, two, left
            base.paired = second.paired = True
            return [base, second]
        if meaning.by_side:
            base.value, left = (right := meaning.by_side[0][1]), meaning.by_side[1][1]
            if str(right) != str(left):
                base.readings = (str(right), str(left))
        return [base]

    def _normal_sign(self, name: str, node: Node) -> bool:
        """ "Blinks to threat": a phrase that says normal by itself, so that its absence is not."""
        values = self.items[name].values
        return any(r.kind == "value" and r.item == name and values[r.key].status == "normal" for r in node.mark.roles)

    def _base(self, name: str, item: Item, cell: Cell, meaning: Meaning, nodes: Sequence[Node]) -> Draft:
        site = self._site(name, item, cell)
        target = item.site_items.get(site) or item.site_items.get(limb_of(site)) or other_limb(name, site, self.items)
        if target:
            name, item = target, self.items[target]
            site = site if site in item.sites else ""  # "wrist 3, fingers 2": a part of the region
        side = cell.side or self._named_side(name, item, cell)
        amount = item.kind == "presence" and isinstance(meaning.value, Quantity)
        measured = meaning.status is Status.MEASURED or amount
        detail = [
            *names_kept(item, nodes, cell.nodes, f"{meaning.value} {'; '.join(cell.detail)}"),
            *cell.detail,
            *conditions(name, item, cell, meaning, measured=measured),
            *(denied_kinds(name, item, cell) if item.kind == "presence" and meaning.status is Status.ABSENT else ()),
        ]
        if item.opposite and side in (Side.LEFT, Side.RIGHT):
            name = name if side.value == item.of_side else item.opposite
            item, side = self.items[name], None
        if side is not None and item.sided == "never":
            if side is not Side.BOTH and meaning.status is not Status.NORMAL:
                detail.extend(n.text for n in cell.nodes if n.main == "side" and not n.mark.role("site"))
            side = None
        once = (item.kind, item.sided, item.organ, side) == ("presence", "may", "eye", Side.BOTH)
        if (once and meaning.status is Status.ABSENT) or (side is Side.MIDLINE and not item.midline):
            side = None  # "PERRL bilaterally": equal once
        spans = sorted({(n.mark.start, n.mark.end) for n in nodes})
        told = [n for n in cell.values if n.mark.number is not None and measured] or cell.values
        anchor = next((n.mark.start for n in told or filter(None, [cell.negation])), spans[0][0] if spans else 0)
        return Draft(
            item=name,
            status=meaning.status,
            spans=spans,
            side=side,
            site=site,
            value=meaning.value,
            unit=meaning.unit,
            detail=detail,
            uncertain=cell.hedged,
            excepted=cell.excepted,
            denial=cell.negated,
            corrected=list(cell.corrected),
            readings=meaning.readings,
            anchor=anchor,
        )

    def _named_side(self, name: str, item: Item, cell: Cell) -> Side | None:
        """The side that a named value says by itself."""
        for node in cell.values:
            role = node.mark.role("value", name)
            if role is not None and item.values[role.key].side:
                return Side(item.values[role.key].side)
        return None

    def _site(self, name: str, item: Item, cell: Cell) -> str:
        if cell.site_node is None or cell.site == "arm_and_leg":
            known = item.sited or cell.site in (*item.site_items, "arm_and_leg")
            return cell.site if known or other_limb(name, cell.site, self.items) else ""
        for role in cell.site_node.mark.roles:
            if role.kind == "site" and role.item == name:
                return role.key
        general = cell.site_node.mark.role("site", "")
        if general is None:
            return ""
        region = item.blanket and item.kind == "grade" and general.key not in (*WHOLE_LIMBS, "limb")
        region = region or bool(other_limb(name, general.key, self.items))
        return general.key if item.sited or region or {general.key, limb_of(general.key)} & set(item.site_items) else ""

    def _word_meaning(
        self, name: str, item: Item, cell: Cell, others: list[Node], numbers: list[Node]
    ) -> Meaning | None:
        kinds = [self.words.read(name, item, node) for node in others]
        if unseen(name, item, others, negated=cell.negated):
            return Meaning(None, Status.NOT_ASSESSABLE)
        for status in (Status.NOT_EXAMINED, Status.NOT_ASSESSABLE):
            held = next((k for k in kinds if k is not None and k[0] is status), None)
            if held is not None:
                return Meaning(None, Status.ABSENT) if denied_there(item, cell) else Meaning(held[1], status)
        said = [(k, n) for k, n in zip(kinds, others, strict=True) if k is not None]
        unable = next((i for i, (_, n) in enumerate(said) if n.text in INABILITY), len(said))
        if unable < len(said) and not item.task:
            signs = any(n.main == "item" for _, n in said[unable:])
            if signs or (item.kind == "presence" and not item.values):
                return None  # "couldn't make out any clonus", "I cannot swear to a droop": it may not be there
        if not said:
            return self._unsaid(name, item, cell, others)
        if all(n.text in INABILITY | UNELICITED for _, n in said) and any(n.main == "reason" for n in cell.nodes):
            return Meaning(None, Status.NOT_ASSESSABLE)  # "on the left he could not because of his sore hip"
        if one_of_two(item, [n for _, n in said], cell.side):
            return None
        if cell.negated and item.kind != "presence" and all(n.mark.role("present", "") for n in others):
            return self._unsaid(name, item, cell, [])  # "no Romberg sign elicited"
        if denied_sign(name, item, others):
            return Meaning(None, Status.NORMAL)
        status = overall([k[0] for k, _ in said])
        if status is Status.NORMAL and any(n.main == "direction" and n.text.startswith(_FALLS) for n in cell.modifiers):
            said = [((Status.ABNORMAL, k[1], n.text), n) for k, n in said]
            status = Status.ABNORMAL  # "steady, falls to the left": no one falls who is steady
        value = descriptor(name, item, said, status, cell, numbers)
        said_normal = (Status.ABSENT,) if item.kind == "presence" else (Status.NORMAL, Status.ABSENT)
        spared = cell.negation is not None and (
            cell.negation.mark.start > said[-1][1].mark.end
            or (cell.negation.text == "without" and said[-1][1].text in INABILITY)  # "without her arms she can't"
            or (status in said_normal and cell.negation.text != "neither" and named_between(cell, said[0][1]))
        )
        if cell.negated and not spared and status is Status.ABNORMAL and tells_no_other(item, value):
            return None  # "absent on the left, not on the right": there, but nobody said that it is normal
        if cell.negated and not spared:
            itself = said[0][1].main == "item" and not said[0][1].mark.has("normal")  # and no "full power"
            status, value = denied_status(item, status, value, itself=itself)
        return Meaning(value, status)

    def _unsaid(self, name: str, item: Item, cell: Cell, others: list[Node]) -> Meaning | None:
        """No word said how it was: a presence item is present when named, denied when negated."""
        words = modifier_text(name, cell)
        if item.kind == "presence":
            if cell.negated and item.negated != "unclear":
                return Meaning(None, Status.NORMAL if item.negated == "normal" else Status.ABSENT)
            if not item.alone or not equal_ahead(others, cell):
                return None
            return Meaning(Text(words=words) if words else None, Status.PRESENT)
        no = cell.negation is not None and cell.negation.text == "no"
        whole = item.blanket and not (item.scale == "mrc" and no and cell.site_node is not None)
        if cell.negated and (whole or item.kind in ("score", "quantity", "pressure", "acuity")):
            return None  # "no power in the left arm" is a grade
        if cell.negated:
            if item.kind == "text":
                return Meaning(None, Status.ABSENT)
            if item.kind == "grade" and "0" in self.scales[item.scale].grades:
                undone = cell.negation is not None and cell.negation.text in ("did not", "does not")  # "left didn't"
                return None if undone else Meaning(Grade(scale=item.scale, grade="0"), Status.MEASURED)
            if item.negated in ("normal", "absent") or (item.kind == "choice" and not item.negated):
                return Meaning(None, Status.ABSENT if item.negated == "absent" else Status.NORMAL)
            if item.negated == "unclear" and (no or item.kind == "choice"):
                return None  # "no tandem", "no gait": nobody can tell whether it was tried
            if denies_behind(cell) and not (item.task or cell.spared):
                return None  # "vibration reduced, not very consistent": what was denied is not known here
            return Meaning(Text(words="unable" if item.task else "absent"), Status.ABNORMAL)
        if any(n.mark.has("equal") for n in others):
            return Meaning(None, Status.NORMAL)
        if item.task and (any(done(n) for n in cell.nodes) or (cell.denying and cell.contrary)):
            return Meaning(None, Status.NORMAL)
        how = any(n.value_roles(name) and not n.text.startswith(_UNTOLD) for n in cell.modifiers)
        modified = how and not item.blanket
        if modified and item.kind in ("normality", "choice"):
            return Meaning(Text(words=words), Status.ABNORMAL)
        if modified and item.kind == "grade" and "only" in words.split():
            return Meaning(Text(words=words), Status.PRESENT)  # "ankle jerks only with reinforcement"
        return None
