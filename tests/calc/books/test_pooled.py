"""Groups lean on one another the more the fewer they have, and not at all where there is nothing to lean on."""

import math

import pytest

from pentools.calc.books.pooled import pooled, scatter_within
from pentools.errors import InputError

GROUPS = {
    "re-sac": [40, 45, 50, 55, 42, 48, 52, 46],
    "piston": [90, 120, 100],
    "nib": [30],
    "whole": [200, 260],
    "look": [],
}


def test_the_scatter_is_that_within_groups_and_not_between_them():
    found = scatter_within({"a": [10, 10 * math.e], "b": [1000, 1000 * math.e], "c": [5], "d": []})
    assert found.degrees_of_freedom == 2
    assert found.log_spread == pytest.approx(math.sqrt(0.5))
    assert scatter_within({"a": [3]}).degrees_of_freedom == 0


def test_the_fewer_it_has_the_more_a_group_leans():
    found = pooled(GROUPS)
    leans = {name: one.lean for name, one in found.groups.items()}
    assert list(leans) == ["re-sac", "piston", "nib", "whole"]
    assert leans["re-sac"] < leans["piston"] < leans["whole"] < leans["nib"] < 0.2
    for name, one in found.groups.items():
        assert one.low < one.likely < one.high
        nearer = sorted((one.own, found.middle))
        assert nearer[0] <= one.likely <= nearer[1], name
    assert found.groups["nib"].own == pytest.approx(30)


def test_groups_that_do_not_differ_become_one():
    found = pooled({name: [50, 70] for name in "abcd"})
    assert found.between == 0
    assert {round(one.likely, 9) for one in found.groups.values()} == {round(math.sqrt(3500), 9)}
    assert all(one.lean == 1 for one in found.groups.values())


def test_few_groups_and_single_pens_alone_say_nothing():
    assert pooled({name: GROUPS[name] for name in ("re-sac", "piston", "nib")}) is None
    assert pooled({name: [50 + number] for number, name in enumerate("abcde")}) is None


def test_no_time_at_all_is_refused():
    with pytest.raises(InputError, match="above 0"):
        pooled({"a": [0, 3], "b": [1], "c": [2], "d": [3]})
