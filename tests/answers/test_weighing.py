"""Weighing asked from a notebook."""

import math

import numpy as np
import pytest
from signatures import agree

from pentools import capacity_from_weight, leak_from_weight
from pentools.answers.asking import answer_to
from pentools.errors import InputError
from pentools.units import Reading


def test_signatures_are_those_of_the_sums():
    assert agree(capacity_from_weight, "capacity")
    assert agree(leak_from_weight, "leak")


def test_capacity_is_what_the_command_line_says():
    asked = capacity_from_weight(empty=[23.26, 23.25, 23.26], filled=25.06, system="piston", bore=9, stroke=31, caliper="0.03 mm")  # fmt: skip
    typed = {"empty": "23.26 g; 23.25 g; 23.26 g", "filled": "25.06 g", "system": "piston", "bore": "9 mm", "stroke": "31 mm", "caliper": "0.03 mm"}  # fmt: skip
    assert asked.data == answer_to("capacity", typed).data
    assert asked.figure().title.startswith("It draws")


def test_many_fillings_give_a_frame():
    frame = capacity_from_weight(empty=23.26, filled=np.array([25.06, 24.96, 24.86]))
    one = capacity_from_weight(empty=23.26, filled="24.96 g")
    assert frame["volume_ml"].tolist()[1] == one.data["volume_ml"]
    assert frame["volume_ml"].is_monotonic_decreasing


def test_leak_takes_arrays_as_its_readings():
    times, masses = np.array([0.0, 8.0, 24.0]), np.array([18.214, 18.213, 18.212])
    asked = leak_from_weight(times=times, masses=masses, readability=0.001)
    assert asked.data == leak_from_weight(times="0 h; 8 h; 24 h", masses="18.214 g; 18.213 g; 18.212 g", readability="0.001 g").data  # fmt: skip


def test_what_is_missing_is_named():
    with pytest.raises(InputError, match="filled in"):
        capacity_from_weight(empty="", filled="25.06 g")


def test_numbers_carry_no_digits_and_texts_do():
    def read_to(empty, filled, **more):
        return capacity_from_weight(empty=empty, filled=filled, **more).data["readability_g"]

    assert read_to([23.2, 23.26], 25.0) == read_to(np.float64(23.2), 25) == read_to(Reading(23.2, "g"), 25.0) == 0.01
    assert (
        read_to("23.2 g", 25.0) == read_to(["23.20 g", "23.2 g"], 25.0) == read_to([23.2, "23.2 g"], "25.00 g") == 0.1
    )
    assert read_to([23.2, math.nan, 23.3], 25.0, readability="0.001 g") == 0.001
    frame = capacity_from_weight(empty=np.array([23.2, 23.3]), filled=np.array([25.0, 25.1]))
    assert frame["readability_g"].tolist() == [0.01, 0.01]
    assert leak_from_weight(times=[0, 24], masses=[18.2, 18.1]).data["readability_g"] == 0.01
    assert leak_from_weight(times="0 h; 24 h", masses="18.2 g; 18.1 g").data["readability_g"] == 0.1
