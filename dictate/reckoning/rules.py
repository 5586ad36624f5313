"""Rule: what a computed figure is, its formula, source and limits; every rule registers where it stands."""

from __future__ import annotations

from dataclasses import dataclass

from dictate.model import Figure

HEAD = ("figure", "formula", "source", "limits", "when parts are missing")


@dataclass(frozen=True, slots=True)
class Rule:
    """One kind of figure; the texts are its row in the table of figures."""

    name: str
    formula: str
    source: str
    limits: str  # what the figure judges by, and what it does not say
    missing: str  # what it does when a part was not dictated

    def figure(
        self, text: str, inputs: tuple[int, ...], *, value: float | None = None, unit: str = "", source: str = ""
    ) -> Figure:
        """A figure of this kind. inputs: places among the findings; unit: UCUM; source: instead of the rule's own."""
        return Figure(
            name=self.name,
            text=text,
            formula=self.formula,
            source=source or self.source,
            inputs=inputs,
            value=value,
            unit=unit,
        )


_RULES: dict[str, Rule] = {}


def rule(name: str, *, formula: str, source: str, limits: str, missing: str) -> Rule:
    """Register a kind of figure. Raises ValueError when the name is taken."""
    if name in _RULES:
        raise ValueError(f"two figures have the name {name}: give one of them another")
    _RULES[name] = Rule(name, formula, source, limits, missing)
    return _RULES[name]


def catalogue() -> tuple[Rule, ...]:
    """All kinds of figures, by name."""
    return tuple(_RULES[name] for name in sorted(_RULES))


def table() -> str:
    """The catalogue as a Markdown table."""
    rows = [HEAD, ("---",) * len(HEAD)]
    rows += [(one.name, f"`{one.formula}`", one.source, one.limits, one.missing) for one in catalogue()]
    return "\n".join(f"| {' | '.join(cell.replace('|', '/') for cell in row)} |" for row in rows)
