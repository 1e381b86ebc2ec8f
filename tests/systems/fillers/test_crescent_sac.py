"""The crescent filler: the arc stands out of the barrel, the lock ring lies under it."""

import pytest
from systems.building import box, built, size


def test_the_arc_stands_out_and_the_lock_ring_lies_under_it():
    pen, _full, s = built("crescent-sac", barrel_length=66.0)
    x0, _, x1, high = box(pen, "crescent")
    assert x1 - x0 == pytest.approx(0.3 * 66.0)
    assert high == pytest.approx(s.outer + 0.36 * (x1 - x0))
    ring = box(pen, "lock-ring")
    assert x0 < ring[0] < ring[2] < x1
    assert ring[3] == pytest.approx(s.outer + 0.9)


def test_the_arc_does_not_grow_with_a_long_barrel():
    long, _, _ = built("crescent-sac", barrel_length=110.0)
    assert size(long, "crescent")[0] == pytest.approx(20.0)
