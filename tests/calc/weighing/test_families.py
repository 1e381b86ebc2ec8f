"""What is taken where a dimension of a filler was not measured, and how far that may be off."""

import pytest

from pentools.calc.weighing import families
from pentools.calc.weighing.expected import Measured, expected_volume
from pentools.systems.dimensions import LIMITS

# one pen a family: what must be measured, then each taken value with its standard uncertainty: judged
TAKEN = {
    "PISTON": ({"bore": 8.5, "stroke": 60.0}, {"rod": (0.0, 0.0)}),
    "PLUNGER": (
        {"bore": 8.5, "rod": 2.6, "stroke": 62.0, "dead_behind": 0.3, "dead_ahead": 0.2},
        {"head": (60.0, 10.0)},
    ),
    "SAC": ({"outside": 7.0, "length": 60.0}, {"wall": (0.5, 0.08), "pressed_share": (0.75, 0.08)}),
    "PNEUMATIC_SAC": ({"outside": 7.0, "length": 60.0}, {"wall": (0.5, 0.08), "pressed_share": (0.85, 0.08)}),
    "PUMPED_SAC": ({"outside": 7.0, "length": 60.0}, {"wall": (0.5, 0.08), "pressed_share": (0.9, 0.06)}),
    "BREATHER": ({"bore": 8.0, "reach": 40.0}, {"tube": (2.0, 0.3)}),
    "RESERVOIR": ({"bore": 8.0, "depth": 40.0}, {"nipple": (0.0, 0.0), "nipple_length": (0.0, 0.0)}),
    "CELL": ({"bore": 8.0, "depth": 40.0}, {"void_share": (0.6, 0.1)}),
}
PUMPED = ({"bore": 8.0, "reach": 40.0, "strokes": 3.0, "stroke_volume": 0.28}, {"tube_volume": (0.03, 0.01)})
CASES = [
    (key, measured, name, taken) for key, (measured, all_taken) in TAKEN.items() for name, taken in all_taken.items()
]
CASES += [("BREATHER", PUMPED[0], name, taken) for name, taken in PUMPED[1].items()]


@pytest.mark.parametrize(("family", "measured", "name", "taken"), CASES)
def test_what_is_taken_stands_for_a_measurement_as_unsure_as_it(family, measured, name, taken):
    family = getattr(families, family)
    sure = {key: Measured(value, 0.0) for key, value in measured.items()}
    others = {key: Measured(value, 0.0) for key, value, _ in family.takes if key != name and key not in sure}
    left_out = expected_volume(family, {**sure, **others}, LIMITS)
    put_in = expected_volume(family, {**sure, **others, name: Measured(*taken)}, LIMITS)
    assert left_out.volume_ml == pytest.approx(put_in.volume_ml, rel=1e-12)
    assert left_out.budget.standard_uncertainty == pytest.approx(put_in.budget.standard_uncertainty, rel=1e-9)
