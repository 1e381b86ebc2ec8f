"""A pen beside the bench's others: six or more that were mended no later, none named, and never itself or its own past."""

import pytest

from pentools.books.learning.beside_others import beside_others, fill_of
from pentools.record.job import create_job


def pen(bench, name, filled, day, ending="done", system="piston", bore="9 mm"):
    job = create_job(bench, name)
    job.add("intake", "arrival", {"pen": "a pen", "system": system})
    if bore:
        job.add("fill test", "dimensions", {"bore": bore, "rod": "3 mm", "stroke": "30 mm"})
    for state, mass in (("dry", 20.0), ("filled", filled)):
        job.add("fill test", "weighing", {"state": state, "mass": f"{mass:.2f} g"})
    job.add("release", "result", {"ending": ending, "summary": "x", "released_on": f"2026-05-{day:02}"})
    return job


@pytest.fixture
def others(bench):
    return [pen(bench, f"o-{n}", 21.3 + 0.05 * n, n + 1) for n in range(6)]


def test_six_others_are_told_by_their_number_and_interval(bench, others):
    mine = pen(bench, "mine", 21.5, 20)
    said = beside_others(mine).replace("\u202f", " ")
    shares = sorted(fill_of(job).share for job in others)
    middle = 100 * (shares[2] + shares[3]) / 2
    assert said == (
        "Compared with this bench’s other pens: of 6 others with this filling system the middle one fills to "
        f"{middle:.0f} % ({100 * shares[0]:.0f} to {100 * shares[-1]:.0f} %) of what it holds."
    )
    assert not any(job.name in said for job in others)


def test_without_dimensions_it_is_the_volume(bench, others):
    mine = pen(bench, "mine", 21.5, 20, bore="")
    said = beside_others(mine).replace("\u202f", " ")
    volumes = sorted(fill_of(job).ml for job in others)
    assert f"draws {(volumes[2] + volumes[3]) / 2:.2f} mL ({volumes[0]:.2f} to {volumes[-1]:.2f} mL)." in said


@pytest.mark.parametrize("why", ["later", "stopped", "another system", "came back as this"])
def test_who_does_not_count(bench, others, why):
    mine = pen(bench, "mine", 21.5, 20)
    odd = others[0]
    if why == "later":
        odd.add("release", "result", {"ending": "done", "summary": "x", "released_on": "2026-06-01"})
    elif why == "stopped":
        odd.add("release", "result", {"ending": "stopped", "summary": "x", "released_on": "2026-05-01"})
    elif why == "another system":
        odd.add("intake", "arrival", {"pen": "a pen", "system": "syringe"})
    else:
        mine.add("intake", "coming back", {"older": odd.name, "failed": "leaks"})
    assert beside_others(mine) == ""


def test_an_unmended_or_unweighed_pen_is_not_compared(bench, others):
    assert beside_others(pen(bench, "mine", 21.5, 20, ending="stopped")) == ""
    bare = create_job(bench, "bare")
    bare.add("release", "result", {"ending": "done", "summary": "x"})
    assert beside_others(bare) == ""
    assert fill_of(bare).ml is None
