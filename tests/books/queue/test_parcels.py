"""Which pens came together, over a whole bench, and whose price is the parcel's."""

import pytest

from pentools.books.queue.parcels import hand_on_to_all, members, parcel_of, parcels_on, shares_price
from pentools.record.came_with import start
from pentools.record.job import create_job, open_job
from pentools.record.stages.job.intake_kinds import OWNER

YES = {"to": "heat", "at_most": "90 EUR", "answered_on": "2026-03-05", "channel": "letter"}


@pytest.fixture
def parcel(bench):
    lead = create_job(bench, "m-lead")
    lead.add("agree", "yes", YES)
    for name in ("d-two", "z-three"):
        start(bench.folder, name, came_with=lead.name)
    return [open_job(name, bench=bench) for name in ("m-lead", "d-two", "z-three")]


def test_the_first_pen_stands_first(bench, parcel):
    assert members(bench, "m-lead") == ("m-lead", "d-two", "z-three")
    assert dict(parcels_on(bench)) == {"m-lead": ("m-lead", "d-two", "z-three")}
    assert [parcel_of(job) for job in parcel] == ["m-lead"] * 3
    alone = open_job("a-first", bench=bench)
    assert (parcel_of(alone), members(bench, "a-first"), hand_on_to_all(alone)) == (None, (), {})


def test_a_price_of_its_own_is_not_the_parcels(parcel):
    lead, two, three = parcel
    three.add("agree", "yes", YES | {"at_most": "30 EUR"})
    assert [shares_price(job) for job in (lead, two, three)] == [True, True, False]


def test_what_is_entered_once_reaches_every_pen(bench, parcel):
    lead, two, _ = parcel
    lead.add("intake", "owner", {"owner": "Adela Quist"})
    assert hand_on_to_all(two) == {"d-two": 1, "z-three": 1}, "from whichever pen it is asked"
    assert open_job("z-three", bench=bench).newest(OWNER).owner == "Adela Quist"
