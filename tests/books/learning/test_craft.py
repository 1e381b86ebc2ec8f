"""What a job says of the craft: the last filling after the work, the seal that held, measured rates, lots and returns."""

import pytest

from pentools.books.learning.craft import craft_of
from pentools.record.job import create_job


@pytest.fixture
def job(bench):
    job = create_job(bench, "d-fourth")
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston", "material": "celluloid"})
    return job


def test_the_filling_after_the_work_counts_and_not_the_one_before(job):
    job.add("fill test", "dimensions", {"bore": "9 mm", "rod": "3 mm", "stroke": "30 mm"})
    for state, mass in (("dry", "20.00 g"), ("filled", "20.40 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    assert 0.3 < craft_of(job).ml < 0.5
    job.add("seal", "measure", {"place": "cork", "bore": "9.00 mm; 9.02 mm; 9.01 mm"})
    for what, size, happened in (
        ("large", "9.6 mm", "too stiff"),
        ("first", "9.30 mm", "pulls back"),
        ("right", "9.40 mm", "pulls back"),
    ):
        job.add(
            "seal",
            "trial",
            {"place": "cork", "what": what, "outside": size, "dry": "yes", "happened": happened, "lot": "bag 3"},
        )
    said = craft_of(job)
    assert (said.ml, said.share, said.seal) == (None, None, "cork")
    [held] = said.held
    assert (held.place, held.bore_mm, held.size_mm) == ("cork", 9.01, 9.4)
    assert ("seals", "bag 3") in said.lots
    for state, mass in (("dry", "20.10 g"), ("filled", "21.60 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    said = craft_of(job)
    assert 1.4 < said.ml < 1.6
    assert said.share == pytest.approx(said.ml / 1.6965, abs=0.01)


def test_a_rate_is_a_measured_run_of_one_grade(job):
    job.add("finish", "measure", {"station": "20 mm", "diameter": "12.060 mm ± 0.001 mm"})
    job.add("finish", "step", {"grade": "P1500", "zone": "plain barrel", "minutes": "10 min"})
    job.add("finish", "measure", {"station": "20 mm", "diameter": "12.030 mm ± 0.001 mm"})
    [rate] = craft_of(job).rates
    assert (rate.material, rate.grade, rate.um_per_min) == ("celluloid", "P 1500", 1.5)


def test_a_return_and_its_end(job):
    job.add("intake", "coming back", {"older": "a-first", "failed": "it leaks", "part": "seals", "cause": "way"})
    job.add("work log", "material", {"what": "a sac", "way": "added", "part": "seals", "lot": "bag 9"})
    job.add("seal", "sealant", {"sealant": "shellac", "place": "sac"})
    job.add("release", "result", {"ending": "done", "summary": "x", "released_on": "2026-03-09"})
    said = craft_of(job)
    assert (said.older, said.part, said.cause, said.ending, str(said.ended)) == (
        "a-first",
        "seals",
        "way",
        "done",
        "2026-03-09",
    )
    assert ("seals", "bag 9") in said.lots
    assert ("seals", "shellac at sac") in said.ways
    assert said.seal == "sac"
    job.add("release", "result", {"ending": "stopped", "summary": "x"})
    assert craft_of(job).ended is not None


def test_of_an_empty_job_nothing_is_said(job):
    said = craft_of(job)
    assert (said.held, said.rates, said.lots, said.share, said.ended) == ((), (), (), None, None)
