"""One vocabulary of dimensions: what the formulas, the forms, the record and the drawings call the same thing."""

import pytest

from pentools.errors import InputError
from pentools.record.stages.job.intake import INTAKE
from pentools.sums.weighing.fields import FIELDS
from pentools.systems.dimensions import ASKED, DIMENSIONS, LIMITS, dimension_named, dimension_words
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import DRAWN


def test_every_formula_finds_the_limits_of_all_it_takes():
    for system in SYSTEMS.values():
        assert set(system.dimensions()) <= set(LIMITS), system.key
    assert set(LIMITS) == {name for system in SYSTEMS.values() for name in system.dimensions()}


def test_a_box_and_a_formula_have_one_range_and_one_unit():
    bore = ASKED["bore"]
    assert (bore.field().low, bore.field().high, bore.field().unit) == (1, 28, "mm")
    assert (LIMITS["bore"].low, LIMITS["bore"].high, LIMITS["bore"].unit) == (1, 28, "mm")
    assert (LIMITS["pressed_share"].unit, LIMITS["dead_behind"].unit, LIMITS["strokes"].unit) == ("(a share)", "mL", "")
    assert LIMITS["tube_volume"].high == 0.5
    boxes = {field.name: field for field in FIELDS}
    for name, limit in LIMITS.items():
        assert (boxes[name].low, boxes[name].high) == (limit.low, limit.high), name
        assert boxes[name].label
        assert boxes[name].hint
    assert boxes["strokes"].kind == "count"


def test_the_lengths_of_the_intake_are_those_of_the_drawing():
    arrival = next(kind for kind in INTAKE.kinds if kind.key == "arrival")
    asked = {field.name: field for field in arrival.fields if field.unit == "mm"}
    assert set(asked) == {name for name in ASKED if name.endswith("_mm")}
    assert {ASKED[name].name for name in asked} <= set(DRAWN)


def test_two_dimensions_of_one_name_in_a_form_are_one_box():
    same = [dimension for dimension in DIMENSIONS.values() if dimension.asked == "length"]
    assert [dimension.name for dimension in same] == ["sac_length", "cartridge_length"]
    assert len({(d.low, d.high, d.label, d.hint) for d in same}) == 1


def test_no_name_means_two_things():
    names = [name for dimension in DIMENSIONS.values() for name in (dimension.name, *dimension.also)]
    assert len(names) == len(set(names))


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("bore", "bore"), ("bore-mm", "bore"), ("outside", "sac_outside"), ("wall_mm", "sac_wall"),
        ("reach", "breather_length"), ("tube", "breather_diameter"), ("capped_mm", "capped_length"),
        ("cap-outside-mm", "cap_diameter"), ("head", "head_diameter"), ("width", "groove_width"), ("owner", "owner"),
        ("nipple", "nipple"), ("nipple_length", "standing_length"),
    ],
)  # fmt: skip
def test_a_dimension_is_known_by_its_names(said, meant):
    assert dimension_named(said) == meant


def test_length_alone_is_what_the_system_has():
    assert dimension_named("length") == "sac_length"
    assert dimension_named("length-mm", length="cartridge_length") == "cartridge_length"


def test_words_are_those_of_a_sentence():
    assert dimension_words("breather_diameter") == "breather tube diameter"
    with pytest.raises(InputError, match="rocket"):
        dimension_words("rocket")


def test_every_dimension_can_be_and_says_how_it_is_taken_or_is_not_drawn():
    for dimension in DIMENSIONS.values():
        assert 0 <= dimension.low < dimension.high, dimension.name
        assert dimension.taken is None or dimension.taken.how.endswith("."), dimension.name
    untold = {name for name in DRAWN if DIMENSIONS[name].taken is None}
    assert untold == {"thread_length", "end_length", "lever_length"}
    assert {d.asked for d in DIMENSIONS.values() if d.rough} == {
        "stroke", "length", "reach", "depth", "nipple_length", "head",
    }  # fmt: skip


# judged: what cannot be a pen; written out once more, so that a slip of a digit is seen
RANGES = {
    "bore": (1, 28), "rod": (0, 15), "stroke": (2, 150), "sac_outside": (2, 20), "sac_wall": (0.1, 3),
    "sac_length": (5, 150), "cartridge_length": (5, 150), "pressed_share": (0.1, 1), "breather_length": (3, 150),
    "breather_diameter": (0.3, 8), "depth": (5, 160), "standing": (0, 15), "standing_length": (0, 40),
    "dead_behind": (0, 1), "dead_ahead": (0, 1), "lift": (0, 200), "strokes": (0, 60), "stroke_volume": (0, 3),
    "tube_volume": (0, 0.5), "void_share": (0.1, 1), "open_length": (60, 220), "capped_length": (60, 220),
    "cap_length": (20, 120), "cap_diameter": (6, 35), "barrel_length": (20, 160), "barrel_diameter": (5, 30),
    "section_length": (5, 50), "section_diameter": (4, 25), "nib_length": (3, 45), "end_length": (2, 60),
    "barrel_depth": (5, 160), "thread_diameter": (5, 30), "thread_length": (0.5, 20), "feed_diameter": (1.5, 12),
    "feed_tail": (1, 12), "nipple": (2, 15), "head_diameter": (2, 28), "head_length": (0.5, 30),
    "groove_diameter": (1, 27), "groove_width": (0.3, 10), "housing": (1, 25), "tube_diameter": (3, 25),
    "lever_length": (5, 50), "cartridge_diameter": (3, 14),
}  # fmt: skip


def test_the_ranges_are_those_that_were_meant():
    assert {name: (dimension.low, dimension.high) for name, dimension in DIMENSIONS.items()} == RANGES
