"""What a job says of its time and money, and when its minutes are not to be built on."""

import datetime as dt
from decimal import Decimal

import pytest

from pentools.books.learning.time_taken import DOUBTS, time_of
from pentools.record.entries import new_entry
from pentools.record.job import create_job


@pytest.fixture
def job(bench):
    job = create_job(bench, "d-fourth")
    job.add(
        "intake",
        "arrival",
        {"pen": "a pen", "system": "lever-sac", "material": "black celluloid", "arrived_on": "2026-03-02"},
    )
    job.add("intake", "request", {"asked": "a sac", "work": "re-sac", "price_limit": "80 EUR"})
    return job


def work(job, minutes="40 min", activity="seal"):
    job.add("work log", "work", {"activity": activity, "minutes": minutes, "done": "it"})


def at(job, day, stage, kind, **data):
    entry = new_entry(stage, kind, data)
    job.record.append(
        type(entry)(**{**{f: getattr(entry, f) for f in entry.__struct_fields__}, "at": f"2026-0{day}T12:00:00+00:00"})
    )


def test_every_figure_reaches_its_place(job):
    work(job)
    work(job, "1 h", "finish")
    job.add("condition", "part", {"part": "seals", "seen": "gone", "severity": "3"})
    job.add(
        "agree",
        "estimate",
        {
            "hours_low": "1 h",
            "hours_likely": "90 min",
            "hours_high": "3 h",
            "price_low": "40 EUR",
            "price_high": "70 EUR",
        },
    )
    job.add("work log", "material", {"what": "sac", "way": "added", "part": "seals", "cost": "2.80 EUR"})
    job.add("work log", "material", {"what": "old sac", "way": "removed", "part": "seals", "cost": "9 EUR"})
    job.add("release", "result", {"ending": "done", "summary": "x", "price": "55", "released_on": "2026-03-09"})
    said = time_of(job)
    assert (said.system, said.family, said.work, said.material, said.ending) == (
        "lever-sac",
        "sac",
        "re-sac",
        "celluloid",
        "done",
    )
    assert (said.arrived, said.ended) == (dt.date(2026, 3, 2), dt.date(2026, 3, 9))
    assert (said.minutes, said.whole_min, said.doubt) == ({"seal": 40, "finish": 60}, 100, "")
    assert (said.parts, said.price, said.limit) == (Decimal("2.80"), Decimal(55), Decimal(80))
    assert (said.hours, said.estimate) == ((1, 1.5, 3), (Decimal(40), Decimal(70)))
    assert (said.grave, said.polish, said.nib, said.older) == (True, True, False, "")


def test_other_money_and_parts_without_a_cost_are_not_made_up(job):
    assert time_of(job).parts == 0
    job.add("work log", "material", {"what": "sac", "way": "added", "part": "seals"})
    assert time_of(job).parts is None
    job.add("release", "result", {"ending": "done", "summary": "x", "price": "55 USD"})
    said = time_of(job)
    assert said.price is None
    assert said.ended is not None  # the day it was entered, where no other is


def test_minutes_that_are_not_whole(job):
    assert time_of(job).doubt == "none"
    work(job)
    assert time_of(job).doubt == ""
    job.add("finish", "step", {"grade": "P2000", "zone": "plain barrel", "minutes": "50 min"})
    assert time_of(job).doubt == "polishing"
    work(job, "90 min", "finish")
    assert time_of(job).doubt == ""
    job.add("work log", "timer start", {"activity": "clean"})
    assert time_of(job).doubt == "running"
    assert set(DOUBTS) == {"none", "running", "forgotten", "polishing", "late"}


def test_a_forgotten_timer_and_work_after_the_last_minutes(job):
    at(job, "3-05", "work log", "timer start", activity="clean")
    at(job, "3-06", "work log", "timer stop")
    assert time_of(job).doubt == "forgotten"
    job.withdraw(job.record.live("work log", "timer stop")[0], "it was forgotten")
    job.withdraw(job.record.live("work log", "timer start")[0], "it was forgotten")
    at(
        job,
        "3-05",
        "work log",
        "work",
        activity="seal",
        minutes={"value": 40.0, "unit": "min", "u": None, "typed": "40 min"},
        done="it",
    )
    assert time_of(job).doubt == ""
    at(job, "3-07", "seal", "sealant", sealant="shellac", place="sac")
    assert time_of(job).doubt == "late"
