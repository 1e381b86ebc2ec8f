"""What is stated holds in simulation, with a seed: the ± of a filling, and the decisions of the leak test."""

import pytest
import simulated


@pytest.mark.parametrize("case", simulated.CASES[:3], ids=lambda case: case[0])
@pytest.mark.parametrize("weighings", [1, 3])
@pytest.mark.parametrize("balance", simulated.NAMES)
def test_the_stated_95_percent_hold(balance, weighings, case):
    assert 0.93 <= simulated.coverage(balance, weighings, case) <= 0.99


@pytest.mark.parametrize("hours", [hours for _, hours in simulated.SCHEDULES], ids=str)
@pytest.mark.parametrize("balance", simulated.NAMES)
def test_false_alarms_and_misses_of_the_leak_test(balance, hours):
    alarms, found = simulated.leak_errors(balance, hours)
    assert alarms <= 0.06
    assert 1 - found <= 0.06


def test_the_page_of_methods_shows_these_figures():
    assert simulated.between_marks(simulated.METHODS.read_text(encoding="utf-8"))[1] == simulated.tables()
