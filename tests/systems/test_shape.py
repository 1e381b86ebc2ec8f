"""The dimensions of a pen: what is refused, what is assumed, and that nothing measured is altered."""

from __future__ import annotations

import pytest

from pentools.errors import InputError
from pentools.systems.dimensions import DIMENSIONS
from pentools.systems.shape import DRAWN, PenShape, shape_from_measurements


@pytest.mark.parametrize(
    ("measurements", "words"),
    [
        ({"bore_mm": 0.0}, "bore must be"),
        ({"bore_mm": -8.0}, "bore must be"),
        ({"bore_mm": float("nan")}, "bore must be"),
        ({"bore_mm": float("inf")}, "bore must be"),
        ({"bore_mm": True}, "bore must be"),
        ({"bore_mm": "8.4"}, "bore must be"),
        ({"barrel_length_mm": 2.7}, "another unit"),
        ({"bore_mm": 12.0, "barrel_diameter_mm": 12.0}, "smaller than the barrel diameter"),
        ({"rod_mm": 9.0, "bore_mm": 8.0}, "smaller than the bore"),
        ({"groove_diameter_mm": 8.2, "head_diameter_mm": 8.1}, "smaller than the head diameter"),
        ({"barrel_length_mm": 130.0, "open_length_mm": 120.0}, "smaller than the uncapped length"),
    ],
)
def test_a_shape_that_cannot_be_is_refused(measurements, words):
    with pytest.raises(InputError, match=words):
        PenShape("piston", **measurements)


@pytest.mark.parametrize("call", [lambda: PenShape("rocket"), lambda: PenShape("piston").measured("rocket")])
def test_an_unknown_system_or_dimension_is_refused(call):
    with pytest.raises(InputError, match="rocket"):
        call()


def test_every_dimension_drawn_is_one_of_the_vocabulary():
    assert set(DRAWN) <= set(DIMENSIONS)
    assert {DIMENSIONS[name].unit for name in DRAWN} == {"mm"}


def test_a_rod_of_nothing_is_no_rod():
    with pytest.raises(InputError, match="rod diameter must be above 0, at most 15 mm"):
        PenShape("piston", rod_mm=0.0)


def test_measurements_of_a_record_are_read_under_their_usual_names():
    shape = shape_from_measurements(
        "diaphragm-pump", {"reach": 40.0, "bore-mm": 9.0, "owner": 3.0, "stroke": None, "head": 8.0}
    )
    assert (shape.breather_length_mm, shape.bore_mm, shape.stroke_mm, shape.head_diameter_mm) == (40.0, 9.0, None, 8.0)
    assert shape_from_measurements("bulb", {"length": 30.0}).breather_length_mm == 30.0
    assert shape_from_measurements("button-sac", {"length": 40.0}).sac_length_mm == 40.0
    assert shape_from_measurements("cartridge-converter", {"length": 40.0}).cartridge_length_mm == 40.0
