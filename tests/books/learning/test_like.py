"""The nearest circle of three is taken, it is said why no nearer one, and nothing narrows it by chance."""

import pytest

from pentools.books.learning.like import circle_of, counted_jobs, left_out, narrowed
from pentools.books.learning.time_taken import JobTime


def job(system="lever-sac", work="re-sac", family="sac", minutes=60.0, **more):
    given = {"ending": "done", "material": "celluloid"} | more
    return JobTime(system=system, family=family, work=work, minutes={"seal": minutes}, **given)


HERE = job(ending="")


@pytest.mark.parametrize(
    ("more", "why"),
    [
        ({"ending": ""}, "it is not finished"),
        ({"ending": "stopped"}, "it was stopped"),
        ({"ending": "returned"}, "it went home unrepaired"),
        ({"older": "2025-1"}, "it came back from an earlier job"),
        ({"doubt": "late"}, "work was entered on a later day than the last minutes"),
        ({}, ""),
    ],
)
def test_who_is_left_out_and_why(more, why):
    one = job(**more)
    assert left_out(one) == why
    assert bool(counted_jobs({"a": one})) is (why == "")


def test_a_job_is_never_like_itself():
    assert list(counted_jobs({"a": job(), "b": job()}, "a")) == ["b"]


CIRCLES = {
    "system and work": [job(), job(), job()],
    "family and work": [job(), job(), job("button-sac")],
    "work": [job(), job("piston", family="piston"), job("piston", family="piston")],
    "all": [job(), job("piston", "whole", "piston"), job(work="look")],
}


@pytest.mark.parametrize("key", CIRCLES)
def test_it_widens_until_there_are_three(key):
    found = circle_of(HERE, {str(n): one for n, one in enumerate(CIRCLES[key])})
    assert (found.key, len(found.jobs)) == (key, 3)
    assert (found.why == "") is (key == "system and work")
    if found.why:
        near = 2 if key == "family and work" else 1
        assert found.why.startswith(f"It takes three: “lever sac filler, a new sac” has {near}")


def test_where_the_kind_of_work_is_not_said_the_system_stands_alone():
    found = circle_of(job(work="", ending=""), {str(n): one for n, one in enumerate(CIRCLES["system and work"])})
    assert (found.key, found.words) == ("system", "lever sac filler, any work")
    assert found.why == "The kind of work is not on record."
    assert circle_of(JobTime(), {}).key == "all"


def bench(slow, fast, **of_slow):
    jobs = {f"s{n}": job(minutes=m, **of_slow) for n, m in enumerate(slow)}
    return jobs | {f"f{n}": job(minutes=m) for n, m in enumerate(fast)}


def test_only_what_the_jobs_show_narrows_the_circle():
    jobs = bench((150, 160, 155, 170), (50, 55, 60, 52, 58), grave=True)
    mine = job(ending="", grave=True)
    like, moved = narrowed(mine, circle_of(mine, jobs))
    assert sorted(like) == ["s0", "s1", "s2", "s3"]
    assert [(one.key, one.counted) for one in moved] == [("faults", True)]
    assert moved[0].told.startswith("the 4 took 2.9 times (")
    other, moved = narrowed(HERE, circle_of(HERE, jobs))
    assert sorted(other) == ["f0", "f1", "f2", "f3", "f4"]
    assert "0.35 times" in moved[0].told


def test_what_does_not_show_or_cannot_be_told_is_listed_and_moves_nothing():
    jobs = bench((50, 61, 55), (50, 55, 60), polish=True)
    like, moved = narrowed(HERE, circle_of(HERE, jobs))
    assert len(like) == 6
    assert moved[0].told == "3 as this one, 3 not: no difference shows"
    jobs = bench((150, 160), (50, 55, 60), nib=True)
    mine = job(ending="", material="")
    like, moved = narrowed(mine, circle_of(mine, jobs))
    assert len(like) == 5
    assert {one.key: one.told for one in moved} == {
        "material": "it is not named",
        "nib": "3 of the like jobs are as this one, 2 not: too few to say",
    }


def test_a_mixed_circle_is_not_narrowed():
    jobs = {f"s{n}": job("piston", "whole", "piston", m, polish=True) for n, m in enumerate((300, 310, 320, 305))}
    jobs |= {f"n{n}": job("bulb", "nib only", "breather", m) for n, m in enumerate((30, 31, 32, 30))}
    circle = circle_of(HERE, jobs)
    assert circle.key == "all"
    assert len(narrowed(HERE, circle)[0]) == 8
