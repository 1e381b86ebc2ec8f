"""What a declaration says holds together: parts listed once, stand-ins that are parts, ranges that can be."""

from pentools.record.stages.common import PARTS
from pentools.systems.dimensions import DIMENSIONS
from pentools.systems.parts import PART_NAMES, drawn_part
from pentools.systems.registry import SYSTEMS


def test_parts_are_listed_once_and_have_a_trade_name():
    for key, system in SYSTEMS.items():
        assert len(system.parts) == len(set(system.parts)), key
        assert set(system.parts) <= set(PART_NAMES) | set(system.part_names), key


def test_what_stands_for_seals_mechanism_section_and_end_is_a_part():
    for key, system in SYSTEMS.items():
        stands = (system.seals_at, system.works_at, system.section_at, system.end_part)
        assert set(stands) <= set(system.parts), key
        assert (system.end_part == "barrel") == (system.typical.end_mm == 0.0), key


def test_length_means_a_dimension_that_a_form_asks_for():
    assert {DIMENSIONS[system.length].asked for system in SYSTEMS.values()} == {"length", "reach"}


def test_only_a_safety_pen_has_no_section():
    assert [key for key, system in SYSTEMS.items() if not system.has_section] == ["safety"]


def test_the_dimensions_are_those_of_the_formula_needed_ones_first():
    assert SYSTEMS["lever-sac"].dimensions() == ("outside", "length", "wall", "pressed_share")
    assert SYSTEMS["plunger-vacuum"].dimensions()[:3] == ("bore", "rod", "stroke")


def test_every_part_of_a_condition_survey_has_a_place_on_every_pen():
    for key, system in SYSTEMS.items():
        for part, _ in PARTS:
            assert drawn_part(key, part) in ("cap", "clip", "cap-band", "inner-cap", *system.parts), (key, part)
