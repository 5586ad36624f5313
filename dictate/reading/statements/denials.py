"""How far a "no" reaches: over a list, up to a value of its own."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace

from dictate.reading.marks import Role
from dictate.reading.nodes import Node
from dictate.reading.statements.lists import THERE, told_apart
from dictate.reading.statements.weights import Statement, Weigher

_DENYING = ("no ", "without ")
_LISTED = ("comma", "conj", "filler", "qualifier")
_VERBS = frozenset({"is", "are", "was", "were"})
_OR = ("or", "nor")
_LONGEST = 30  # names of a list


class Denials:
    """Passes a negation on to the further names of its list."""

    def __init__(self, weights: Weigher) -> None:
        self.weights = weights

    def spread(self, statements: list[Statement], nodes: Sequence[Node]) -> None:
        """ "no oedema, clubbing or cyanosis": the negation holds for the whole list, up to a value of its own.

        nodes: those of the sentence.
        """
        ends = {id(n) for i, n in enumerate(nodes) if told_apart(nodes, i) or _behind_or(nodes, i)}
        for place, statement in enumerate(statements):
            negation = next((n for n in statement.before if n.main == "negation"), None)
            if negation is None or any(self.weights.is_value(n) and not _is_loss(n) for n in statement.after):
                rest = statements[place + 1 : place + _LONGEST]
                negation = self._open_negation(statement, rest) or self._denying_value(statement, rest)
            if negation is None:
                continue
            chain, linked = self._chain(statement, statements[place + 1 : place + _LONGEST], negation, ends)
            for following in chain if linked else ():
                following.before.insert(0, negation)

    def spread_back(self, statements: Sequence[Statement]) -> None:
        """ "Tremor and rigidity absent": what ends the list is said of each of its signs.

        Not of one that has a side or another word of its own in front of it ("left ptosis and nystagmus absent").
        """
        for place in range(len(statements) - 1, 0, -1):
            last = statements[place]
            own = [n for n in last.after if n.main != "filler"]
            absent = own[0] if own and own[0].main == "value" and own[0].mark.role("absent", "") else None
            where = list(itertools.takewhile(lambda n: n.main in ("side", "site"), own[1:]))
            behind = own[1 + len(where) : 2 + len(where)]
            if absent is None or (behind and not behind[0].is_break):
                continue
            linked = False
            for one, two in zip(statements[place - 1 :: -1], statements[place:0:-1], strict=True):
                link = [n for n in (*one.after, *two.before) if n.main != "filler" and n.text != "s"]
                linked = linked or any(n.main == "conj" for n in link)
                plain = bool(link) and all(n.main in ("comma", "conj") for n in link)
                if not plain or not linked or one.excepted or not self.weights.satisfied_alone(one):
                    break
                own_words = any(n.main not in ("filler", "comma", "conj") for n in one.before)
                if own_words or any(n.mark.has("alone") and not n.sign for n in one.names):
                    break
                one.after[:0] = [absent, *where]

    def close_lists(self, statements: Sequence[Statement]) -> None:
        """ "No drift, tremor or ataxia; left arm slightly slow": what follows a denied list is of none of its names."""
        for statement in statements:
            denied = any(n.main == "negation" for n in statement.before)
            end = next((i for i, n in enumerate(statement.after) if n.main == "semicolon"), None)
            if denied and end is not None and len({n.candidates for n in statement.names}) > 1:
                del statement.after[end:]

    def tell_modalities(self, statements: list[Statement]) -> None:
        """ "No sensory loss to pinprick, light touch or vibration": it is said of each of them, and of nothing else."""
        for one, two in itertools.pairwise(list(statements)):
            loss = one.names[-1:] if [n.text for n in one.after] == ["to"] and len(one.names) == 1 else []
            whole = [self.weights.items[c] for n in loss for c in n.candidates if n.sign]
            within = bool(whole) and all(set(two.candidates) <= set(item.covers) for item in whole if item.covers)
            denied = [n for n in one.before if n.main == "negation"]
            if not within or two.before or any(self.weights.is_value(n) and n.main != "dermatome" for n in two.after):
                continue
            start = denied[0].mark.start if denied else loss[0].mark.start
            mark = replace(loss[0].mark, start=start, roles=(Role("normal" if denied else "abnormal"),))
            two.before[:0] = [*(n for n in one.before if n not in denied), Node(mark, "value"), *one.after]
            statements.remove(one)

    def _chain(
        self, statement: Statement, rest: Sequence[Statement], negation: Node, ends: set[int]
    ) -> tuple[list[Statement], bool]:
        """The statements that the negation reaches, and whether they are a list; it does not reach the `ends`."""
        chain: list[Statement] = []
        linked = False
        listed = any(len(one.names) > 1 or any(n.text in _OR for n in one.nodes) for one in rest)
        end = statement
        for following in rest:
            link = [*end.after, *following.before]
            if end is statement:
                denied = [i for i, n in enumerate(link) if n.main == "value" and n.text.startswith(_DENYING)]
                link = link[denied[-1] + 1 :] if denied else link
            if end is statement and any(n is negation for n in statement.after):
                link = link[next((i for i, n in enumerate(link) if n is negation), -1) + 1 :]
                link = [n for n in link if not self.weights.is_value(n)]
                if not any(n.main == "conj" for n in link) and statement.names:
                    break
                link = link if statement.names else [n for n in link if n.main not in ("word", "site")]
            elif end is statement:
                link = [n for n in link if n not in statement.after or not _is_loss(n)]
            if not self._goes_on(link, following, listed=listed) or id(following.names[0]) in ends:
                break
            chain.append(following)
            linked = linked or any(n.main in ("conj", "comma") for n in link) or len(following.names) > 1
            end = following
        return chain, linked

    def _goes_on(self, link: Sequence[Node], following: Statement, *, listed: bool) -> bool:
        """Whether a list that is denied goes on over the link to the next name."""
        plain = [n for i, n in enumerate(_plain(link)) if n.main != "severity" or not _led_by_or(link[: i + 1])]
        if any(n.main not in _LISTED for n in plain) or not self.weights.deniable(following):
            return False
        if any(not _VERBS.isdisjoint(n.text.split()) for n in following.names):
            return False  # "no lymph nodes, and the neck is supple": a sentence of its own
        if any(n.text in THERE for n in link):
            return False  # "no wasting, some fasciculations in the calf"
        described = any(n.main == "qualifier" for n in link) and not any(n.main == "conj" for n in link)
        if described and not listed:
            return False  # "no skew, direction changing nystagmus"
        if self._says_more(following) or any(n.main == "conj" and n.text == "with" for n in link):
            return False
        return not self.weights.says_normal(following)  # "no ankle oedema, chest clear"

    def _says_more(self, statement: Statement) -> bool:
        """ "no level, Romberg too unsteady": the name has words of its own before the next comma."""
        own = list(itertools.takewhile(lambda node: not node.is_break, statement.after))
        own = [node for node in own if node.main != "filler"]  # "no grasp, and the palmomental was present"
        said = any(self.weights.is_value(n) or n.main in ("value", "word", "reason") for n in own)
        return said if not self.weights.satisfied_alone(statement) else any(self.weights.is_value(n) for n in own[:1])

    def _denying_value(self, statement: Statement, rest: Sequence[Statement]) -> Node | None:
        """ "no deformity, scoliosis or kyphosis", "no fever, rash or ...": a phrase that denies, whose list goes on."""
        own = [n for n in statement.after if not n.is_break]
        said = own or statement.names[-1:]
        if not said or said[-1].main not in ("value", "item") or not said[-1].text.startswith(_DENYING):
            return None
        closed = any(n.text in _OR for one in rest for n in one.nodes) or any(len(one.names) > 1 for one in rest[:1])
        if not (own or closed):
            return None
        return Node(said[-1].mark.only("negation"), "negation")

    def _open_negation(self, statement: Statement, rest: Sequence[Statement]) -> Node | None:
        """ "tongue midline, no wasting or weakness": a negation whose list goes on past this statement.

        Or the list begins with what has no name here, and is closed by an "or" ("no chest pain, murmur or oedema").
        """
        after = statement.after
        unnamed = not statement.names and bool(after) and after[-1].main == "comma"
        if unnamed and any(n.text in _OR for one in rest for n in one.nodes):
            said = [n for n in after if n.main == "negation"]
            if said and not any(n.is_break or n.main in ("value", "number") for n in after[:-1]):
                return said[-1]
        for place in range(len(after) - 1, -1, -1):
            if after[place].main == "negation":
                return after[place] if any(n.main == "conj" for n in after[place:]) else None
            if after[place].is_break and after[place].main != "conj":
                return None
        return None


def _is_loss(node: Node) -> bool:
    """ "deficit", in front of whose name the "no" stands."""
    return node.main == "value" and node.mark.number is None and node.mark.has("abnormal")


def _behind_or(nodes: Sequence[Node], place: int) -> bool:
    """ "No wasting or fasciculation, weakness of the left foot": the "or" closes the list."""
    if (
        not place
        or nodes[place].main != "item"
        or [n.main for n in nodes[max(0, place - 2) : place]] != ["item", "comma"]
    ):
        return False
    said = list(itertools.takewhile(lambda n: n.main != "negation", reversed(nodes[max(0, place - _LONGEST) : place])))
    return any(n.text in _OR for n in said) and not any(n.text in _OR for n in nodes[place : place + _LONGEST])


def _led_by_or(before: Sequence[Node]) -> bool:
    """ "No wasting or mild tremor", "nor any mild diplopia": of what is denied, how much of it."""
    return any(n.text in _OR for n in before)


def _plain(link: Sequence[Node]) -> list[Node]:
    """Less the places told with the name before, and what is no name in front of an "or"."""
    last = next((i for i, n in enumerate(link) if n.text in _OR), len(link))
    closed = last + 1 == len(link)
    named = ("site", "side")
    unnamed = ("word", *named) if closed and link[0].main == "comma" else named if closed else ()
    kept = [n for i, n in enumerate(link) if n.main not in (unnamed if i < last else named)]
    return [n for n in kept if not (closed and link[0].main == "comma" and _is_loss(n))]
