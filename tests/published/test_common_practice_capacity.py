"""Capacity against what restorers commonly read: common practice, no source."""

import pytest

from pentools.calc.weighing.balance import BALANCES
from pentools.calc.weighing.capacity import capacity_from_weight
from pentools.calc.weighing.expected import Measured
from pentools.calc.weighing.setting import Handling
from pentools.systems.volume import system_volume
from pentools.units import read_quantity


@pytest.mark.parametrize(
    ("gain_g", "low", "high"),
    # common practice, no source: refilling one repaired pen gained these; read as "about a sixth, a quarter,
    # and one and a third millilitres"
    [(0.17, 0.16, 0.18), (0.24, 0.23, 0.26), (1.30, 1.28, 1.34)],
)
def test_gains_on_refilling(gain_g, low, high):
    result = capacity_from_weight(
        [18.00], [18.00 + gain_g], BALANCES["0.01 g"], start="drained", handling=Handling(0.0, 0.0)
    )
    assert low < result.volume_ml < high


def test_a_converter_holds_less_than_a_millilitre():
    # common practice, no source; a usual converter: bore 6 mm, 30 mm of it usable (from memory)
    converter = system_volume("cartridge-converter", {"bore": Measured(6.0, 0.1), "length": Measured(30.0, 0.5)})
    assert 0.4 < converter.volume_ml < 1.0


def test_a_barrel_in_inches():
    # common practice, no source: a barrel of 5 3/8 in by 0.469 in
    assert read_quantity("5 3/8 in", "mm").value == pytest.approx(136.525)
    assert read_quantity("0.469 in", "mm").value == pytest.approx(11.9126)


def test_such_a_barrel_holds_no_more_than_its_outside():
    # a bore 2 mm narrower than that barrel (judged), its whole length used: an eyedropper would hold about 10 mL, a
    # few times what any pen draws, so 5 3/8 in is the pen's length and not the reservoir's
    outside, length = read_quantity("0.469 in", "mm").value, read_quantity("5 3/8 in", "mm").value
    whole = system_volume("eyedropper", {"bore": Measured(outside - 2), "depth": Measured(length)})
    assert 8 < whole.volume_ml < 15.2  # 15.2 mL: the outside as a cylinder


def test_a_gain_read_in_sixths_and_quarters_stays_within_the_doubt():
    # the same three gains as words: on a 0.01 g balance the words differ from the volumes by less than two of their ±
    for gain_g, in_words in ((0.17, 1 / 6), (0.24, 1 / 4), (1.30, 4 / 3)):
        result = capacity_from_weight(
            [18.00], [18.00 + gain_g], BALANCES["0.01 g"], start="drained", handling=Handling(0.0, 0.0)
        )
        assert abs(result.volume_ml - in_words) < result.budget.expanded_uncertainty
