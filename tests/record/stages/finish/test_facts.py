"""What the finish asks of other stages: the material, the bench's own decisions, the owner's word."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.finish.facts import material_of, overruled, polish_refused
from pentools.record.stages.finish.plan import plan_of


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "pen-one")


def arrived(job, material):
    job.add("intake", "arrival", {"pen": "a drawn pen", "material": material})


@pytest.mark.parametrize(
    ("material", "name"),
    [
        ("celluloid", "celluloid"), ("red hard rubber", "coloured hard rubber"), ("black ebonite", "hard rubber"),
        ("perhaps celluloid", None), ("plastic", None), ("unknown", None),
    ],
)  # fmt: skip
def test_the_material_is_the_one_that_heat_and_soak_go_by(job, material, name):
    arrived(job, material)
    assert material_of(job) == name


def test_the_plan_s_own_word_goes_before_the_intake(job):
    arrived(job, "celluloid")
    job.add("finish", "plan", {"defect": "20 um", "material": "rolled gold"})
    assert material_of(job) == "gold-filled"
    job.add("finish", "plan", {"defect": "20 um", "material": "something"})
    assert material_of(job) is None


def test_cap_and_barrel_that_differ_name_nothing(job):
    arrived(job, "celluloid")
    job.add("open", "material", {"part": "cap", "material": "sterling silver", "sure": "yes"})
    assert material_of(job) is None
    job.add("open", "material", {"part": "barrel", "material": "sterling silver", "sure": "yes"})
    assert material_of(job) == "silver"


def test_the_bench_s_decision_reaches_the_plan(job):
    arrived(job, "sterling silver")
    job.add("finish", "plan", {"defect": "1 um", "zone": "plain barrel", "own": "film 3 um; film 1 um"})
    assert overruled(job, "silver") == {}
    assert plan_of(job).steps == ()
    job.add(
        "open",
        "overrule",
        {"material": "silver", "treatment": "wet sanding", "verdict": "limited", "reason": "a filled dent"},
    )
    assert overruled(job, "silver")["sanding"].verdict == "limited"
    assert overruled(job, "silver")["wheel"].verdict == "never"
    assert [s.grade.label for s in plan_of(job).steps] == ["film 3 µm"]
    assert "filled dent" in plan_of(job).limits.material.sanding_text


def test_the_owner_s_newest_word_counts(job):
    assert not polish_refused(job)
    job.add("finish", "consent to polish", {"agreed": "no"})
    assert polish_refused(job)
    job.add("finish", "consent to polish", {"agreed": "yes"})
    assert not polish_refused(job)
