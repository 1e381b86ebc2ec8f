"""The dimensions of a pen: what is refused, what is assumed, and that nothing measured is altered."""

from __future__ import annotations

import pytest

from pentools.errors import InputError
from pentools.record.stages.common import PARTS
from pentools.systems.dimensions import dimension_words
from pentools.systems.parts import PART_NAMES, drawn_part, part_name, parts_of
from pentools.systems.registry import SYSTEMS, system_named
from pentools.systems.shape import PenShape, shape_from_measurements
from pentools.systems.typical import proportions_of


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


def test_unknown_systems_parts_and_dimensions_are_refused():
    for call in (
        lambda: PenShape("rocket"),
        lambda: parts_of("rocket"),
        lambda: system_named("rocket"),
        lambda: part_name("rocket"),
        lambda: dimension_words("rocket"),
        lambda: PenShape("piston").measured("rocket"),
    ):
        with pytest.raises(InputError):
            call()


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_part_of_a_condition_survey_has_a_place_on_every_pen(system):
    for part, _ in PARTS:
        assert drawn_part(system, part) in parts_of(system)
    with pytest.raises(InputError):
        drawn_part(system, "rocket")


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_part_has_a_trade_name_and_is_listed_once(system):
    parts = parts_of(system)
    assert len(parts) == len(set(parts))
    assert set(parts) <= set(PART_NAMES)
    assert set(parts_of(system, cap=False)) < set(parts)


def test_there_are_seventeen_systems_and_no_part_that_none_of_them_has():
    assert len(SYSTEMS) == 17
    assert set(PART_NAMES) == {part for system in SYSTEMS for part in parts_of(system)}


@pytest.mark.parametrize("system", SYSTEMS)
def test_what_was_measured_stays_and_the_rest_is_marked_assumed(system):
    measured = {"barrel_diameter": 13.3, "bore": 9.1, "barrel_length": 71.0, "nib_length": 18.2}
    full = proportions_of(PenShape(system, **{f"{name}_mm": value for name, value in measured.items()}))
    assert {name: full[name] for name in measured} == measured
    assert not full.assumed & set(measured)
    assert "cap_diameter" in full.assumed


def test_a_measured_total_length_is_shared_out():
    full = proportions_of(PenShape("lever-sac", open_length_mm=121.0))
    assert full["nib_length"] + full["section_length"] + full["barrel_length"] == pytest.approx(121.0)


def test_a_measured_sac_or_bore_sets_the_barrel_it_needs():
    assert proportions_of(PenShape("lever-sac", sac_outside_mm=9.5))["bore"] > 9.5
    assert proportions_of(PenShape("piston", bore_mm=14.0))["barrel_diameter"] > 15.0


def test_measurements_of_a_record_are_read_under_their_usual_names():
    shape = shape_from_measurements(
        "diaphragm-pump", {"reach": 40.0, "bore-mm": 9.0, "owner": 3.0, "stroke": None, "head": 8.0}
    )
    assert (shape.breather_length_mm, shape.bore_mm, shape.stroke_mm, shape.head_diameter_mm) == (40.0, 9.0, None, 8.0)
    assert shape_from_measurements("bulb", {"length": 30.0}).breather_length_mm == 30.0
    assert shape_from_measurements("button-sac", {"length": 40.0}).sac_length_mm == 40.0
    assert shape_from_measurements("cartridge-converter", {"length": 40.0}).cartridge_length_mm == 40.0
