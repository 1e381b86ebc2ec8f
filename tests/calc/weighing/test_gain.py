"""Capacity from the gain on a tared balance: the budget by hand, the rise over the dips, and refusals."""

import math
import random

import pytest

from pentools.calc.weighing.balance import BALANCES, Balance
from pentools.calc.weighing.capacity import capacity_from_weight
from pentools.calc.weighing.gain import capacity_from_gain
from pentools.calc.weighing.setting import Handling, Setting
from pentools.errors import InputError

BLOTTED = Setting(BALANCES["0.01 g"], handling=Handling(0.0, 0.0))


def topic_of(result):
    return [f.topic for f in result.drawn.findings if "dip" in f.topic]


def test_the_whole_budget_by_hand():
    # the tare's rounding and the reading's, √2·0.01/√12; two placings √2·0.01; linearity √2·0.02/√3; eccentric √2·0.01/√3
    drawn = capacity_from_gain([1.20], BLOTTED).drawn
    found = [c.contribution / drawn.z_ml_per_g for c in drawn.budget.components[:4]]
    assert found == pytest.approx([0.0040825, 0.0141421, 0.0163299, 0.0081650], abs=5e-8)
    assert drawn.volume_ml == pytest.approx(1.20 * drawn.z_ml_per_g)


def test_the_gain_is_what_two_masses_give_with_two_roundings_less():
    two = capacity_from_weight([15.00], [16.20], BLOTTED.balance, handling=BLOTTED.handling)
    tared = capacity_from_gain([1.20], BLOTTED).drawn
    assert tared.volume_ml == pytest.approx(two.volume_ml)
    less = 2 * (0.01 / math.sqrt(12) * tared.z_ml_per_g) ** 2
    assert two.budget.standard_uncertainty**2 - tared.budget.standard_uncertainty**2 == pytest.approx(less)


def test_the_last_dip_counts_and_the_mean_drop_is_taken_off_every_one():
    dipped = capacity_from_gain([0.18, 0.31, 1.20], Setting(handling=Handling(0.05, 0.0)))
    assert dipped.drawn.volume_ml == pytest.approx(1.18 * dipped.drawn.z_ml_per_g)
    assert dipped.volumes_ml == pytest.approx([g * dipped.drawn.z_ml_per_g for g in (0.16, 0.29, 1.18)])


@pytest.mark.parametrize(
    ("gains", "said"),
    [
        ([1.20], "one-dip"),
        ([0.18, 0.31, 1.20], "dip-rising"),
        ([0.18, 1.19, 1.20], "dip-full"),
        ([0.18, 1.20, 1.05], "dip-fell"),
        ([1.20, 0.18, 1.20, 1.20], "dip-fell"),
        ([1.20, 1.19, 1.20], "dip-full"),
    ],
)
def test_what_the_dips_say(gains, said):
    assert topic_of(capacity_from_gain(gains, BLOTTED)) == [said]


@pytest.mark.parametrize(("gains", "dip"), [([0.18, 1.20, 1.05], 3), ([1.20, 0.18, 1.20, 1.20], 2)])
def test_the_dip_that_fell_is_named_with_what_it_lost(gains, dip):
    dipped = capacity_from_gain(gains, BLOTTED)
    [fell] = [one for one in dipped.drawn.findings if one.key == "weighing.dip-fell"]
    lost = (gains[dip - 2] - gains[dip - 1]) * dipped.drawn.z_ml_per_g
    assert (fell.values["dip"], fell.values["lost"]) == (dip, pytest.approx(lost))


def test_a_step_is_told_from_1645_of_its_own_doubt():
    # √2·√(0.01²/12 + 0.01²) = 0.014720 g, times 1.6449: 0.02421 g
    assert topic_of(capacity_from_gain([1.000, 1.025], BLOTTED)) == ["dip-rising"]
    assert topic_of(capacity_from_gain([1.000, 1.024], BLOTTED)) == ["dip-full"]
    assert topic_of(capacity_from_gain([1.025, 1.000], BLOTTED)) == ["dip-fell"]


@pytest.mark.parametrize("digit", [0.1, 0.01, 0.001])
def test_the_stated_95_hold_between_93_and_99(digit):
    """Simulated: a balance with its own rounding, scatter and limits, a pen tared and read once."""
    rng = random.Random(4711)
    balance = BALANCES[f"{digit:g} g"]
    handling = Handling(0.04, 0.0)
    held = 0
    for _ in range(2000):
        truth = rng.uniform(0.6, 1.6)
        limit = [rng.uniform(-1, 1) * half for half in (balance.linearity_g, balance.eccentricity_g) for _ in range(2)]
        drop = max(0.0, rng.choice((0.0, 1.0, 1.0, 1.0))) * rng.uniform(0, 0.04)
        tare = round(rng.gauss(15.0 + limit[0] + limit[2], balance.repeatability_g) / digit) * digit
        shown = rng.gauss(15.0 + truth + drop + limit[1] + limit[3], balance.repeatability_g) - tare
        drawn = capacity_from_gain([max(round(shown / digit) * digit, 0.0)], Setting(balance, handling=handling)).drawn
        held += abs(drawn.volume_ml - truth * drawn.z_ml_per_g) <= drawn.budget.expanded_uncertainty
    assert 0.93 <= held / 2000 <= 0.99


@pytest.mark.parametrize("gains", [[], [20.1], [-0.01], [1.2, 21.0]])
def test_what_cannot_be_a_gain_is_refused(gains):
    with pytest.raises(InputError, match="gain"):
        capacity_from_gain(gains, BLOTTED)


def test_less_than_the_mean_drop_is_nothing_drawn():
    assert capacity_from_gain([0.01], Setting()).drawn.volume_ml == 0.0


def test_a_gain_that_cannot_be_told_from_nothing_says_so():
    drawn = capacity_from_gain([0.02], Setting(Balance(0.1, 0.1, 0.2, 0.1))).drawn
    assert not drawn.told
    assert "gain-not-told" in {f.topic for f in drawn.findings}
