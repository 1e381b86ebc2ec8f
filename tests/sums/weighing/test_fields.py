"""What the sums of weighing take: every range up to its edges and no further, and what is taken where nothing is said."""

import math

import pytest
from sums.asked import asked_of, without_usual

from pentools.errors import InputError
from pentools.sums.weighing.capacity import CAPACITY
from pentools.sums.weighing.leak import LEAK

MASS = "0 g 200 g"
ROOM = {"temperature": "5 degC 35 degC", "humidity": "0 % 100 %"}
# judged: wide enough for every pen and bench, narrow enough that a slipped unit or point is seen
RANGES = {
    CAPACITY: {
        "empty": MASS,
        "filled": MASS,
        "gain": "0 g 20 g",
        "ink_density": "0.9 g/ml 1.3 g/ml",
        "ink_mass": "0 g 100 g",
        "water_mass": "0 g 100 g",
        "pressure": "75 kPa 107 kPa",
        "drop": "0 g 0.2 g",
        "evaporation": "0 g 0.5 g",
        "kept": "0 ml 1 ml",
        "caliper": "0 mm 1 mm",
        "level": "50 % 99.99 %",
        **ROOM,
    },
    LEAK: {
        "gap": "0 mm 2 mm",
        "seat": "2 mm 20 mm",
        "gap_length": "0.2 mm 40 mm",
        "times": "0 h 2000 h",
        "masses": MASS,
        "blanks": MASS,
        **ROOM,
    },
}
CASES = [(fields, name, edges) for fields, ranges in RANGES.items() for name, edges in ranges.items()]


def field_of(of, name):
    return next(field for field in of.fields if field.name == name)


@pytest.mark.parametrize(("of", "name", "edges"), CASES, ids=[f"{of.key} {name}" for of, name, _ in CASES])
def test_a_range_holds_its_edges_and_nothing_beyond(of, name, edges):
    field = field_of(of, name)
    low, unit, high, _ = edges.split()
    reach = 1e-4 * (float(high) - float(low))
    for edge, out in ((float(low), -reach), (float(high), reach)):
        assert field.read(f"{edge:.10g} {unit}") is not None
        with pytest.raises(InputError):
            field.read(f"{edge + out:.10g} {unit}")


@pytest.mark.parametrize(
    ("key", "of", "must"),
    [("capacity", CAPACITY, set()), ("leak", LEAK, {"times", "masses"})],
    ids=["capacity", "leak"],
)
def test_only_the_masses_and_times_must_be_said(key, of, must):
    assert of.key == key
    assert asked_of(of)[0] == must


def test_what_is_taken_where_nothing_is_said():
    usual = {"temperature": 20.0, "pressure": 101.3, "humidity": 0.5, "drop": 0.04, "evaporation": 0.005}
    usual |= {"caliper": 0.02, "level": 0.95, "readability": 0.01}
    for name, value in usual.items():
        field = field_of(CAPACITY, name)
        assert math.isclose(field.read(field.default).value, value, rel_tol=1e-9), name


@pytest.mark.parametrize(
    ("chosen", "typed"),
    [
        (CAPACITY, {"empty": "23.2 g", "filled": "25.0 g"}),
        (
            LEAK,
            {
                "times": "0 h; 24 h; 48 h",
                "masses": "18.21 g; 18.20 g; 18.19 g",
                "gap": "0.1 mm",
                "seat": "8 mm",
                "gap_length": "4 mm",
            },
        ),
    ],
)
def test_what_is_not_handed_in_is_taken_as_what_is_not_typed(chosen, typed):
    bare, typed_only = without_usual(chosen, **typed)
    assert bare == typed_only
