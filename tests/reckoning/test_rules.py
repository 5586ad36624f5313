"""Rules of computed figures, and the table of them in the manual."""

from __future__ import annotations

import pytest
from by_hand import ROOT

from dictate.reckoning import reckon
from dictate.reckoning.rules import catalogue, rule, table

MANUAL = ROOT / "docs" / "computed-figures.md"
START = "<!-- table -->\n"


def write_table() -> None:
    """Write the table of the manual anew."""
    before, _, _ = MANUAL.read_text(encoding="utf-8").partition(START)
    MANUAL.write_text(f"{before}{START}{table()}\n", encoding="utf-8")


def test_the_manual_holds_the_catalogue():
    """Every figure with formula, source, limits and what happens when parts are missing."""
    assert MANUAL.read_text(encoding="utf-8").partition(START)[2] == table() + "\n"


def test_every_rule_says_all_it_has_to():
    """No empty cell, and a source for each."""
    assert reckon(()) == ()
    assert len(catalogue()) >= 20
    for one in catalogue():
        assert all((one.name, one.formula, one.source, one.limits, one.missing)), one.name


def test_a_name_is_taken_once():
    """Two figures of one name could not be told apart."""
    with pytest.raises(ValueError, match="mean arterial pressure"):
        rule("mean arterial pressure", formula="-", source="-", limits="-", missing="-")


def test_a_figure_carries_its_rule():
    """Name, formula and source come from the rule; another source may be named."""
    one = next(one for one in catalogue() if one.name == "postural change")
    figure = one.figure("text", (1, 2), value=3.0, unit="mm[Hg]", source="another")
    assert (figure.name, figure.formula, figure.source) == (one.name, one.formula, "another")
    assert one.figure("text", ()).source == one.source


if __name__ == "__main__":
    write_table()
