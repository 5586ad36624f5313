"""What is in force when nothing was said yet."""

from __future__ import annotations

from dictate.reading.in_force.context import Context


def test_nothing_holds_at_the_start():
    """No component, side, site, order or posture by default."""
    context = Context()
    assert (context.component, context.active, context.heading_site) == ("", (), "")
    assert (context.heading_side, context.adjective_side, context.order, context.posture) == (None, None, None, None)
