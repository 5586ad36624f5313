"""Sentence after sentence: nodes → statements → cells → drafts, with what carries over from one to the next."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from dictate.model import RemarkKind
from dictate.reading.cells.cells import CellBuilder
from dictate.reading.cells.corrections import amend, corrects_earlier, keep_place, moved, narrowed, of_last
from dictate.reading.cells.whole_sides import WholeSides
from dictate.reading.findings.carrying import SideCarrier, end_of_grades, go_on, going_on, told_of
from dictate.reading.findings.merging import as_said_before, but_for, in_order, merge_readings, merge_sentence
from dictate.reading.findings.postures import PostureGiver
from dictate.reading.findings.status import StatusReader
from dictate.reading.in_force.context import Context
from dictate.reading.in_force.headings import HeadingReader
from dictate.reading.in_force.limb_heads import two_limbs
from dictate.reading.in_force.posture_changes import events
from dictate.reading.in_force.restated import take_back
from dictate.reading.in_force.undone_lists import undone_list
from dictate.reading.layout.talk import silence_talk
from dictate.reading.marks import Mark
from dictate.reading.nodes import Node
from dictate.reading.phrases.lexicon import Lexicon
from dictate.reading.phrases.nerves import by_nerve
from dictate.reading.senses.bare_nerves import NerveNumbers
from dictate.reading.senses.both_named import names_of_both
from dictate.reading.senses.going_on import GoingOn, give_side_behind, of_other_side, spared
from dictate.reading.senses.naming import Labeller
from dictate.reading.senses.orientation import Orientation
from dictate.reading.senses.settling import titles
from dictate.reading.statements.drafts import AS_OTHER, Cell, Draft, Said, entitle
from dictate.reading.statements.lists import perhaps_denied
from dictate.reading.statements.statements import Divider
from dictate.reading.statements.weights import Statement
from dictate.reading.tokens import Token

_SPEAKING = frozenset(
    "word talk value number unit qualifier site side minutes time_span position manoeuvre negation dermatome "
    "reason_word at_once".split()
)


class SentenceReader:
    """Reads sentences in order; `drafts` grow in the order said."""

    def __init__(self, lexicon: Lexicon, tokens: Sequence[Token]) -> None:
        self.lexicon = lexicon
        self.items = lexicon.items
        self.tokens = tokens
        self.labeller = Labeller(lexicon)
        self.divider = Divider(lexicon)
        self.cells = CellBuilder(lexicon)
        self.status = StatusReader(lexicon)
        self.postures = PostureGiver(lexicon)
        self.declared = HeadingReader(lexicon)
        self.orientation = Orientation(lexicon)
        self.going_on = GoingOn(lexicon)
        self.whole_sides = WholeSides(lexicon)
        self.carrier = SideCarrier(lexicon, self.divider.weights)
        self.nerves = NerveNumbers(lexicon, tokens)
        self.context = Context()
        self.drafts: list[Draft] = []
        self.remarks: list[tuple[RemarkKind, int, int]] = []
        self.covered: set[int] = set()
        self.said: Said | None = None
        self.before_sentence: list[Draft] = []

    def read(self, marks: Sequence[Mark]) -> None:
        """Read one sentence."""
        sentence, talk = silence_talk(marks)
        self.remarks.extend((RemarkKind.TALK, start, end) for start, end in talk)
        self.remarks.extend((RemarkKind.NEXT_PATIENT, m.start, m.end) for m in sentence if m.has("next_patient"))
        named = self.nerves.named(self.orientation.told(sentence, self.tokens), self.context)
        sentence = list(two_limbs(undone_list(by_nerve(named, self.tokens, self.items))))
        if (numbered := sentence[0].role("heading_part")) is not None:
            self.context.component, self.said = numbered.key, None
        self.context.left = self.said is not None and self.said.is_left(self.context.limb)
        nodes = self.labeller.label(sentence, self.context)
        if not nodes:
            return
        self.remarks.extend((RemarkKind.CORRECTED, start, end) for start, end in take_back(nodes))
        self._cover_nodes([*self.declared.headings(nodes, self.context), *self.declared.orders(nodes, self.context)])
        if self.declared.unbounded_rest(nodes):
            self.remarks.append((RemarkKind.BLANKET_UNBOUNDED, nodes[0].mark.start, nodes[-1].mark.end))
            return
        self.context.adjective_side = None
        self.remarks.extend((RemarkKind.NOT_PLACED, start, end) for start, end in perhaps_denied(nodes))
        told, other_side = self.whole_sides.part(nodes, self.context.place_side or self.context.heading_side)
        statements = self.divider.divide(told, self.context.active)
        earlier = self.drafts[-64:]  # more than a correction, which may take some of the last of them out, can reach
        before: Statement | None = None
        for statement in statements:
            self._statement(statement)
            if self.said is not None and self.said.statement is statement:
                entitle(self.said.drafts, titles(before, statement, self.items))
            before = statement
        if other_side:
            self._orphan(Statement(after=other_side))
        standing = {id(draft) for draft in earlier}
        first_draft = next((at for at in range(len(self.drafts), 0, -1) if id(self.drafts[at - 1]) in standing), 0)
        said = merge_sentence(statements, self.drafts[first_draft:], self.items, self.lexicon.grammar)
        self._cover_nodes(self.postures.give(nodes, said, self.context))
        self.drafts[first_draft:] = said
        if len(self.drafts) > first_draft:
            self.before_sentence = self.drafts[first_draft:]
            self.context.placed, self.context.told_side = told_of(self.before_sentence, self.context.told_side)
        end_of_grades(nodes, self.context)
        if self.tokens[nodes[-1].mark.end - 1].ends_line:
            self.carrier.over_lines(sentence, said, self.context)

    # --- one statement ------------------------------------------------------------------------------------------

    def _statement(self, statement: Statement) -> None:
        if not statement.names:
            self._orphan(statement)
            return
        candidates = statement.candidates
        self.context.active = candidates
        self.carrier.adjective(statement, self.context)
        cells = self.cells.build(statement, candidates, self.context.order)
        gone = self._withdraw(statement, cells) if corrects_earlier(statement.before) else []
        for struck in [n for n in statement.nodes if n.main == "strike"][-1:]:
            self.remarks.append((RemarkKind.CORRECTED, statement.nodes[0].mark.start, struck.mark.end))
        drafts = self._drafts(cells, statement, candidates)
        keep_place(drafts, gone)
        drafts = drafts or moved(gone, cells)
        if not drafts and not statement.excepted and self._adds_side(cells, candidates):
            self._cover_all(statement)
            return
        if self.said is not None:
            go_on(drafts, statement, self.said, self.drafts, self.items)
        self.said = Said(statement, cells, candidates, drafts, self.context.limb)
        self.drafts.extend(drafts)

    def _drafts(self, cells: list[Cell], statement: Statement, candidates: tuple[str, ...]) -> list[Draft]:
        drafts: list[Draft] = []
        for cell in cells:
            if any(n.mark.has("same") and not n.mark.has("normal") for n in cell.values):
                drafts.extend(self._same(cell, statement, drafts))
            else:
                drafts.extend(self.status.drafts(cell, statement.names, candidates))
        drafts = in_order(merge_readings(drafts, self.items), self.context.order, self.items)
        rest = any(n.main == "rest" or n.mark.has("rest") for n in statement.nodes)
        drafts = but_for(drafts, self.drafts[-12:]) if rest else drafts
        excepting = [(n.mark.start, n.mark.end) for n in statement.before if n.main in ("except", "rest")]
        for draft in drafts:
            draft.spans.extend(excepting)
            draft.excepted = draft.excepted or statement.excepted or rest
            self.carrier.carry(draft, statement, self.context, beside=drafts)
            self._cover_all(statement)
        return drafts

    def _adds_side(self, cells: list[Cell], candidates: tuple[str, ...]) -> bool:
        """ "temporal pallor of the right disc": the name after the finding only says whose it was."""
        last = self.said.drafts[-1] if self.said is not None and self.said.drafts else None
        side = next((cell.side for cell in cells if cell.side is not None), None)
        if last is None or side is None or last.side is not None or last.item not in candidates:
            return False
        last.side = side
        last.spans.extend((n.mark.start, n.mark.end) for cell in cells for n in cell.nodes)
        return True

    def _orphan(self, statement: Statement) -> None:
        """Words that go on about the last statement: a further side, a correction, "strike that"."""
        nodes = statement.after
        if self.said is None or not self.said.candidates or self.said.is_left(self.context.limb):
            return
        if self.said.drafts and (other := of_other_side(self.said.drafts[-1], nodes)) is not None:
            self.drafts.append(other)
            return
        nodes = give_side_behind(self.said.drafts, nodes, self.items)
        if link := of_last(nodes):
            self._amend_last(statement, link)
            return
        first = next((i for i, n in enumerate(nodes) if n.main in ("value", "number", "negation")), None)
        if first is None or not self.going_on.speaks_of(self.said.candidates, nodes, first):
            return
        if names := self.whole_sides.items_of(nodes, self.said.candidates, self.drafts):
            side, whole = self.context.heading_side, Statement(after=nodes)  # "Left: all 5."
            cells = [cell for cell in self.cells.build(whole, names) if self._says_something(cell)]
            found = [draft for cell in cells for draft in self.status.drafts(cell, [], names)]
            self.drafts.extend(replace(draft, side=draft.side or side) for draft in found)
            self._cover_all(whole)
            return
        titled = self.going_on.leaves_undone(nodes) and not self.said.drafts  # "Sensation. Not tested."
        if not (titled or self.going_on.may_be_of(self.said.candidates, nodes, self.said.places)):
            return
        pair, whole = names_of_both(nodes, self.drafts, self.context.heading_side), Statement(after=nodes)
        cells = self.cells.build(whole, self.said.candidates, self.context.order)
        if any(n.mark.has("same") and not n.mark.has("normal") for c in cells for n in c.values):
            self.drafts.extend(d for c in cells for d in self._same(c, whole, []))
            self._cover_all(whole)
            return
        named = pair or ([n.candidates for n in self.said.statement.names] if titled else [self.said.candidates])
        told = spared([cell for cell in cells if self._says_something(cell)], self.said.drafts)
        drafts = [d for cell in told for names in named for d in self._orphan_drafts(cell, names)]
        self._cover_all(whole)
        if not self.said.drafts:  # "Pupils. Right three, left five.", "Right deltoid. Four."
            entitle(drafts, [n for n in self.said.statement.nodes if n.main in ("item", "side")])
            sides = [cell.side for cell in self.said.cells if cell.side is not None]
            for draft in drafts if len(sides) == 1 else ():
                draft.side = draft.side or sides[0]
        self.drafts.extend(drafts)
        self.said.drafts.extend(drafts)

    def _says_something(self, cell: Cell) -> bool:
        return bool(cell.values) or (cell.negated and cell.side is not None)

    def _orphan_drafts(self, cell: Cell, names: tuple[str, ...]) -> list[Draft]:
        """Findings for the named items of the last statement; not for signs, whose name was the finding."""
        if self.said is None:
            return []
        drafts = self.status.drafts(cell, [], names)
        site = sites.pop() if len(sites := {d.site for d in self.said.drafts if d.site}) == 1 else ""
        going_on(drafts, self.said, self.drafts)
        for draft in drafts:
            if not draft.site and draft.side is not None and site and cell.site_node is None:
                draft.site = site
            self.carrier.carry(draft, Statement(after=cell.nodes), self.context)
        return drafts

    def _amend_last(self, statement: Statement, link: str) -> None:
        """A correction at the start of a sentence changes the last statement's cells."""
        if self.said is None:
            return
        place = next(i for i, n in enumerate(statement.after) if n.main == link)
        rest = statement.after[place + 1 :]
        new = self.cells.build(Statement(after=rest), self.said.candidates)
        cells = amend(self.said.cells, new, link)
        drafts = [d for c in cells for d in self.status.drafts(c, self.said.statement.names, self.said.candidates)]
        if new and not drafts:
            return
        gone = self.said.drafts
        self.drafts = [d for d in self.drafts if not any(d is g for g in gone)]
        self._cover_all(statement)
        if link == "strike" and not new:
            for draft in gone:
                self.remarks.append(
                    (RemarkKind.CORRECTED, min(s for s, _ in draft.spans), max(e for _, e in draft.spans))
                )
            self.said = Said(self.said.statement, [], self.said.candidates)
            return
        anew = [posture for _, posture in events(rest, self.context.posture)][-1:]
        for old in gone:
            for draft in drafts:
                if draft.item == old.item:
                    draft.stand_for(old)
                    for posture in anew if self.items[draft.item].positions else ():
                        draft.position, draft.minutes = posture.position, posture.minutes
                        draft.spans.extend((n.mark.start, n.mark.end) for n in posture.nodes)
        self.said = Said(self.said.statement, cells, self.said.candidates, drafts)
        self.drafts.extend(drafts)

    def _withdraw(self, statement: Statement, cells: list[Cell]) -> list[Draft]:
        """A corrected item: what was said of it before is struck; another item named instead strikes the last."""
        sides = {c.side for c in cells}
        items = set(statement.candidates)
        if narrowed(self.drafts[-12:], items, cells):
            return []
        same = [
            d for d in self.drafts[-12:] if d.item in items and (d.side in sides or None in sides or d.side is None)
        ]
        gone = same[-len(cells) :] if same else (self.said.drafts[-1:] if self.said else [])
        ends = [(min(s for s, _ in draft.spans), max(e for _, e in draft.spans)) for draft in gone]
        self.remarks.extend((RemarkKind.CORRECTED, *end) for end in ends)
        self.drafts = [d for d in self.drafts if not any(d is g for g in gone)]
        return gone

    def _same(self, cell: Cell, statement: Statement, now: list[Draft]) -> list[Draft]:
        """ "the same on the left", "same for deltoid": the other side's finding, with this side."""
        names = {c for n in statement.names for c in n.candidates}
        side = cell.side or self.context.heading_side
        earlier: list[Draft] = []
        pool = [*self.drafts, *now] if names else (self.before_sentence or (self.said.drafts if self.said else []))
        here = [d for d in now if d.item in names and d.side is not side]
        for draft in reversed(here or pool):
            again = any(e.item == draft.item and not (here and e.site != draft.site) for e in earlier)
            if (not names or draft.item in names) and draft.side is not side and not again:
                earlier.append(draft)
            if names and not here and earlier and {e.item for e in earlier} >= names:
                break
        spans = [(n.mark.start, n.mark.end) for n in statement.nodes if n.main not in ("filler", "comma")]
        if names and not earlier and side is None:
            said = [d for d in self.said.drafts if d.item not in names] if self.said is not None else []
            return as_said_before(said, statement.candidates[0], self.items, spans)
        return [
            replace(draft, spans=spans, side=side, anchor=spans[0][0], detail=[AS_OTHER], corrected=[])
            for draft in reversed(earlier)
            if side is not None
        ]

    def _cover_nodes(self, nodes: Iterable[Node]) -> None:
        self.covered.update(at for node in nodes for at in range(node.mark.start, node.mark.end))

    def _cover_all(self, statement: Statement) -> None:
        """Words that only carry a statement: what speaks for itself is in a finding, or not placed."""
        self._cover_nodes(node for node in statement.nodes if node.main not in _SPEAKING)
