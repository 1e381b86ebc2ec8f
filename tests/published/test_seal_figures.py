"""Single figures about seals, sacs and washers that print gives, and the trade's common practice."""

import pytest

from pentools import tables
from pentools.calc.seal.friction import gent_modulus_mpa, ring_friction, suction_force_n
from pentools.calc.seal.sac import sac_outside_mm
from pentools.calc.seal.trials import Trial, next_trial_size
from pentools.calc.seal.washers import head_washer


@pytest.mark.parametrize(("shore", "modulus"), [(50, 2.5), (60, 3.6), (70, 5.5), (80, 9.4)])
def test_hardness_to_modulus(shore, modulus):
    # Gent's relation as an encyclopaedia prints it; values to 0.1 MPa
    assert gent_modulus_mpa(shore) == pytest.approx(modulus, abs=0.05)


@pytest.mark.parametrize(("bore", "newton"), [(6, 2.9), (7, 3.9), (8, 5.1), (9, 6.4), (10, 8.0)])
def test_force_of_a_full_vacuum(bore, newton):
    # pi/4 B² at 0.1013 MPa, to 0.1 N
    assert suction_force_n(bore) == pytest.approx(newton, abs=0.05)


def test_line_load_of_a_small_ring():
    # line load after Lindley, from memory: 6.25 x 1.78 mm, 70 Shore, 12 % gives about 10 N, 2 N running at 0.2
    drag = ring_friction(6.25, 1.78, 0.12, 70, 0.2)
    assert drag.contact_n == pytest.approx(10, abs=0.5)
    assert drag.running_n == pytest.approx(2, abs=0.05)
    assert drag.breakout_n == pytest.approx(6, abs=0.1)
    assert "from memory" in drag.model


@pytest.mark.parametrize(("number", "mm"), [(14, 5.56), (16, 6.35), (18, 7.14), (20, 7.94), (22, 8.73)])
def test_sac_numbers(number, mm):
    # n/64 in, as a repairer's page and a hobby page count; to 0.01 mm
    assert sac_outside_mm(number) == pytest.approx(mm, abs=0.0051)
    row = next(row for row in tables.rows("sac_sizes") if row["number"] == str(number))
    assert float(row["nominal_mm"]) == pytest.approx(mm, abs=0.0051)


@pytest.mark.parametrize(("outside_in", "outside_mm"), [(9 / 32, 7.14), (21 / 64, 8.33), (25 / 64, 9.92)])
def test_old_washers_lie_in_the_window_of_a_bore_just_below(outside_in, outside_mm):
    # a repairer's page: old washers of 9/32, 21/64 and 25/64 in on a hole of 1/16 in, sheet about 0.025 in
    assert 25.4 * outside_in == pytest.approx(outside_mm, abs=0.0051)
    fit = head_washer(outside_mm - 0.2, 25.4 / 16)
    assert fit.outside_low_mm <= outside_mm <= fit.outside_high_mm
    assert fit.hole_mm < 25.4 / 16  # preferably undersize, the page says
    assert fit.thickness_mm == pytest.approx(25.4 * 0.025, abs=0.01)


def test_common_practice_a_washer_that_does_not_touch_gives_no_suction_and_one_size_up_does():
    # common practice, no source; test before sealing
    sizes = head_washer(8.3, 1.6).ladder_mm
    step = next_trial_size(sizes, [Trial(sizes[2], "slides, no suction")])
    assert step.next_mm is not None
    assert step.next_mm > sizes[2]
    assert step.next_mm == sizes[3]
    done = next_trial_size(sizes, [Trial(sizes[2], "slides, no suction"), Trial(sizes[3], "pulls back")])
    assert done.held_mm == sizes[3]
    assert "Seal nothing before" in done.findings[0].text
