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


def test_by_hand():
    """Means 0 to 3 of two each, half a unit off: within 0.5, between (10/3 - 0.5)/2, so that 0.15 of the way is leant."""
    found = pooled({str(m): [math.exp(m - 0.5), math.exp(m + 0.5)] for m in range(4)})
    assert found.within**2 == pytest.approx(0.5)
    assert found.between**2 == pytest.approx(17 / 12)
    assert [one.lean for one in found.groups.values()] == pytest.approx([0.15] * 4)
    assert [math.log(one.likely) for one in found.groups.values()] == pytest.approx([0.225, 1.075, 1.925, 2.775])
    # variance: (1 - B) v/n + B² var(m) + 2 B² (mean - m)² / 3; Student's t of 4 degrees, from memory
    half = 2.776445 * math.sqrt(0.85 * 0.25 + 0.0225 * (17 / 12 + 0.25) / 4 + 2 * 0.0225 * 2.25 / 3)
    assert math.log(found.groups["0"].high) == pytest.approx(0.225 + half, abs=1e-5)
    assert math.log(found.groups["0"].low) == pytest.approx(0.225 - half, abs=1e-5)
