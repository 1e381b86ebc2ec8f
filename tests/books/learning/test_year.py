"""A year counts what came in and what ended in it, and nothing of another."""

import datetime as dt

import pytest

from pentools.books.learning.learning import learned_from
from pentools.books.learning.time_taken import JobTime
from pentools.books.learning.year import year_from, year_on
from pentools.errors import InputError


def job(arrived, ended, ending="done", minutes=60.0, **more):
    return JobTime(arrived=arrived, ended=ended, ending=ending, minutes={"seal": minutes}, **more)


JOBS = {
    "a": job(dt.date(2025, 12, 20), dt.date(2026, 1, 9)),
    "b": job(dt.date(2026, 1, 2), dt.date(2026, 1, 12), "stopped", 30),
    "c": job(dt.date(2026, 3, 1), dt.date(2026, 3, 31), "done with limits", older="a"),
    "d": job(dt.date(2026, 12, 30), dt.date(2027, 1, 2)),
    "e": job(dt.date(2026, 5, 1), None, ""),
}


def test_months_endings_hours_and_days():
    year = year_from(2026, JOBS, learned_from(JOBS, {}, 2026))
    assert [month.arrived for month in year.months] == [1, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 1]
    assert year.months[0].ended == {"done": 1, "done with limits": 0, "stopped": 1, "returned": 0}
    assert year.ended == {"done": 1, "done with limits": 1, "stopped": 1, "returned": 0}
    assert (year.hours, year.back) == (2.5, 1)
    assert (year.days.median, year.days.n) == (20, 3)
    assert year.sentence == (
        "2026: 4 pens came in and 3 ended (1 done, 1 done with limits and 1 stopped), in 2.5 hours. 1 pen had been here before."
    )
    data = year.as_json()
    assert data["months"][2] == {
        "month": 3,
        "arrived": 1,
        "ended": {"done": 0, "done with limits": 1, "stopped": 0, "returned": 0},
    }
    assert data["learned"]["jobs"] == 3
    assert data["days_from_arrival_to_end"]["coverage"] == 0.75


def test_an_empty_year_and_a_year_out_of_range(bench):
    year = year_on(2011, bench)
    assert year.sentence == "2011: no pen came in and none was ended."
    assert year.lines[1] == "Days from arrival to end, the middle pen: too few to say."
    with pytest.raises(InputError, match="year must be 1900 to 2200"):
        year_on(12, bench)
