"""How hard a ring drags and a vacuum pulls."""

import math

import pytest
from ranges import refuses, takes_only

from pentools.calc.seal.friction import gent_modulus_mpa, ring_friction, suction_force_n


def test_drag_grows_with_squeeze_and_hardness_and_is_nothing_without_touch():
    drags = [ring_friction(6.25, 1.78, s).running_n for s in (0.05, 0.1, 0.2)]
    assert drags == sorted(drags)
    assert ring_friction(6.25, 1.78, -0.03).running_n == 0
    assert ring_friction(6.25, 1.78, 0.1, 80).running_n > ring_friction(6.25, 1.78, 0.1, 60).running_n
    assert suction_force_n(8, rod_mm=3) < suction_force_n(8)


def test_drag_by_hand():
    # pi · 6 · 2 · E · (1.25 · 0.2^1.5 + 50 · 0.2^6), E of 70 Shore 5.54 MPa; 0.2 of it runs, three times that breaks out
    modulus = 0.0981 * (56 + 7.66 * 70) / (0.1375 * (254 - 2.54 * 70))
    drag = ring_friction(6.0, 2.0, 0.2)
    assert drag.contact_n == pytest.approx(math.pi * 12 * modulus * (1.25 * 0.2**1.5 + 50 * 0.2**6))
    assert drag.running_n == pytest.approx(0.2 * drag.contact_n)
    assert drag.breakout_n == pytest.approx(0.6 * drag.contact_n)
    assert suction_force_n(8, 50, 3) == pytest.approx(math.pi / 4 * 55 * 0.05)


def test_ranges():
    takes_only(gent_modulus_mpa, 20, 90)
    takes_only(lambda vacuum: suction_force_n(8, vacuum), 0, 110)
    assert ring_friction(6, 1.78, 0.5).running_n > 0
    refuses(lambda squeeze: ring_friction(6, 1.78, squeeze), 0.5001)
    refuses(lambda size: ring_friction(size, 1, 0.1), 0, -1)
    refuses(lambda size: ring_friction(6, size, 0.1), 0, -1)
    refuses(lambda rod: suction_force_n(2, rod_mm=rod), 2, 3, -0.1)
    assert suction_force_n(8, 100) == pytest.approx(5.0265, abs=1e-4)  # π/4 · 64 mm² · 0.1 MPa
