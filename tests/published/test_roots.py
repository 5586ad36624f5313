"""Roots and nerves of muscles and reflexes in the packaged grammar.

Sources: Guarantors of Brain, Aids to the Examination of the Peripheral Nervous System, 4th ed. 2000, and innervation
tables (looked up, secondary, where not said otherwise; legs below the knee and chief roots from memory) · teaching
tables of reflex pathways (looked up, secondary). Books differ by a segment: a row passes when every listed root is
within one segment.
"""

from __future__ import annotations

import re

import pytest

from dictate.reckoning.levels import SEGMENTS


@pytest.mark.parametrize(
    ("item", "nerve", "roots"),
    [
        ("strength_deltoid", "axillary", "C5 C6"),
        ("strength_infraspinatus", "suprascapular", "C5 C6"),
        ("strength_biceps", "musculocutaneous", "C5 C6"),
        ("strength_brachioradialis", "radial", "C5 C6"),
        ("strength_triceps", "radial", "C6 C7 C8"),
        ("strength_wrist_extensors", "radial", "C6 C7"),
        ("strength_finger_extensors", "posterior interosseous", "C7 C8"),
        ("strength_wrist_flexors", "median", "C6 C7 C8"),
        ("strength_finger_flexors", "median", "C7 C8 T1"),
        ("strength_abductor_pollicis_brevis", "median", "C8 T1"),
        ("strength_first_dorsal_interosseous", "ulnar", "C8 T1"),
        ("strength_iliopsoas", "femoral", "L1 L2 L3"),
        ("strength_hip_adductors", "obturator", "L2 L3 L4"),
        ("strength_quadriceps", "femoral", "L2 L3 L4"),
        ("strength_hip_abductors", "superior gluteal", "L4 L5 S1"),
        ("strength_gluteus_maximus", "inferior gluteal", "L5 S1 S2"),
        ("strength_hamstrings", "sciatic", "L5 S1 S2"),
        ("strength_tibialis_anterior", "deep peroneal", "L4 L5"),
        ("strength_extensor_hallucis_longus", "deep peroneal", "L5 S1"),
        ("strength_peronei", "superficial peroneal", "L5 S1"),
        ("strength_tibialis_posterior", "tibial", "L4 L5"),
        ("strength_gastrocnemius", "tibial", "S1 S2"),
        ("strength_toe_flexors", "tibial", "L5 S1 S2"),
        ("reflex_biceps", "", "C5 C6"),
        ("reflex_brachioradialis", "", "C5 C6"),
        ("reflex_triceps", "", "C6 C7 C8"),
        ("reflex_finger_flexor", "", "C7 C8 T1"),
        ("reflex_patellar", "", "L2 L3 L4"),
        ("reflex_adductor", "", "L2 L3 L4"),
        ("reflex_achilles", "", "S1 S2"),
    ],
)
def test_roots_and_nerves(grammar, item, nerve, roots):
    """Nerve as listed, roots within one segment. Source: Aids 2000 and tables, see above."""
    supply = grammar.item(item).supply
    assert supply is not None
    assert nerve in supply.nerve
    listed = [SEGMENTS.index(root) for root in roots.split()]
    for root in supply.roots:
        assert min(abs(SEGMENTS.index(root) - one) for one in listed) <= 1
    assert set(supply.chief) <= set(supply.roots)


def test_every_supply_is_well_formed(grammar):
    """Valid segments from above down, a nerve, a source. Source: anatomy (C2 to S5)."""
    supplies = [item.supply for item in grammar.items.values() if item.supply]
    assert len(supplies) >= 45
    for supply in supplies:
        assert all(re.fullmatch(r"[CTLS]\d{1,2}", root) and root in SEGMENTS for root in supply.roots)
        assert sorted(supply.roots, key=SEGMENTS.index) == list(supply.roots)
        assert supply.nerve
        assert supply.source
