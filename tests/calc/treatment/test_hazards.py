"""From which strength a solution hurts: ends of the ranges, order, refusals."""

import pytest

from pentools import tables
from pentools.calc.treatment.hazards import HazardRow, hazards_of
from pentools.errors import InputError

ROWS = tables.read(HazardRow, "substance_hazards")


def labelled(substance, percent):
    return " ".join(hazard.labelled for hazard in hazards_of(substance, percent, ROWS))


@pytest.mark.parametrize(("substance", "percent", "first"), [("peroxide", 4.99, None), ("peroxide", 5, "warning"), ("peroxide", 8, "stop"), ("ammonia", 0.99, None), ("ammonia", 1, "warning"), ("ammonia", 3, "stop"), ("ammonia", 5, "stop"), ("bleach", 2.9, "warning"), ("bleach", 3, "stop"), ("bleach", 100, "stop")])  # fmt: skip
def test_the_first_is_the_gravest_and_a_range_begins_with_its_end(substance, percent, first):
    found = hazards_of(substance, percent, ROWS)
    assert (found[0].level if found else None) == first
    assert [h.level for h in found] == sorted((h.level for h in found), key=["stop", "warning"].index)


def test_no_hazard_goes_away_as_it_grows_stronger_but_into_a_graver_one():
    for substance in ("peroxide", "ammonia", "bleach"):
        last = 0
        for percent in range(101):
            found = hazards_of(substance, percent, ROWS)
            grave = 0 if not found else 2 if found[0].level == "stop" else 1
            assert grave >= last, (substance, percent)
            last = grave


def test_every_hazard_says_what_and_whence():
    for row in tables.rows("substance_hazards"):
        (found,) = [h for h in hazards_of(row["substance"], float(row["from_percent"]), ROWS) if h.labelled == row["class"]]  # fmt: skip
        assert (found.does, found.source, found.certainty) == (row["hazard"], row["source"], row["certainty"])
        assert found.does[-1] != "."


@pytest.mark.parametrize(("substance", "percent"), [("vinegar", 5), ("peroxide", -1), ("peroxide", 101)])
def test_refusals(substance, percent):
    with pytest.raises(InputError):
        hazards_of(substance, percent, ROWS)
