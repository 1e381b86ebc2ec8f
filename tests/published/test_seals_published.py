"""Single figures about seals, sacs, washers and readings that print gives, and the trade's common practice."""

import pytest
from outside import Outside

from pentools.calc.seal.bore import DIXON_95, odd_reading
from pentools.calc.seal.friction import gent_modulus_mpa, ring_friction, suction_force_n
from pentools.calc.seal.trials import Trial, next_trial_size
from pentools.calc.seal.washers import head_washer


@pytest.mark.parametrize(("shore", "modulus"), [(50, "2.5"), (60, "3.6"), (70, "5.5"), (80, "9.4")])
def test_hardness_to_modulus(shore, modulus):
    Outside("gent", "modulus of rubber from its hardness [MPa]").agree(gent_modulus_mpa(shore), modulus)


@pytest.mark.parametrize(("bore", "newton"), [(6, "2.9"), (7, "3.9"), (8, "5.1"), (9, "6.4"), (10, "8.0")])
def test_force_of_a_full_vacuum(bore, newton):
    Outside("standard-atmosphere", "pull of a full vacuum on a bore [N]").agree(suction_force_n(bore), newton)


def test_line_load_of_a_small_ring():
    check = Outside("lindley", "load and drag of 6.25 x 1.78 mm, 70 Shore, 12 % [N]")
    drag = ring_friction(6.25, 1.78, 0.12, 70, 0.2)
    check.agree(drag.contact_n, "10")
    check.agree(drag.running_n, "2")
    check.agree(drag.breakout_n, "6")
    assert "from memory" in drag.model


@pytest.mark.parametrize("outside_mm", ["7.14", "8.33", "9.92"])
def test_old_washers_lie_in_the_window_of_a_bore_just_below(outside_mm):
    check = Outside("washer-page", "old washers, hole and sheet [mm]")
    fit = head_washer(float(outside_mm) - 0.2, 25.4 / 16)
    why = "the window is 0.2 mm wide and starts on tenths"
    check.agree(fit.outside_mm, outside_mm, within=0.1, because=why)
    assert fit.outside_low_mm <= float(outside_mm) <= fit.outside_high_mm
    assert fit.hole_mm < 25.4 / 16  # preferably undersize, the page says
    check.agree(fit.thickness_mm / 25.4, "0.025")


@pytest.mark.parametrize(
    ("count", "critical"),
    [(3, "0.970"), (4, "0.829"), (5, "0.710"), (6, "0.625"), (7, "0.568"), (8, "0.526"), (9, "0.493"), (10, "0.466")],
)
def test_critical_values_of_dixon(count, critical):
    Outside("rorabacher", "critical values of Dixon's Q, two-sided 95 %").agree(DIXON_95[count], critical)


def test_the_encyclopaedias_example_is_no_outlier_at_95_per_cent():
    # ten values, 0.167 against 0.177 of 0.189: Q is 0.455, below 0.466 (at 90 % it would be one, above 0.412)
    check = Outside("rorabacher", "the worked example of an encyclopaedia")
    values = [0.189, 0.167, 0.187, 0.183, 0.186, 0.182, 0.181, 0.184, 0.181, 0.177]
    check.same(odd_reading(values, 0.0), None)
    # a hair further out it is one, and its Q is the gap over the range
    odd = odd_reading([*values[:1], 0.1655, *values[2:]], 0.0)
    assert odd.place == 2
    check.agree(odd.q * (0.189 - 0.1655), "0.0115")


def test_common_practice_a_washer_that_does_not_touch_gives_no_suction_and_one_size_up_does():
    check = Outside("trial-practice", "the size after one that slides without suction")
    sizes = head_washer(8.3, 1.6).ladder_mm
    step = next_trial_size(sizes, [Trial(8.5, "slides, no suction")])
    check.same(step.next_mm, 8.6)
    done = next_trial_size(sizes, [Trial(8.5, "slides, no suction"), Trial(8.6, "pulls back")])
    check.same(done.held_mm, 8.6)
    assert "Seal nothing before" in done.findings[0].text
