"""What is asked before it is saved, against the job's own earlier entries."""

import pytest
from by_name import kind_of

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.plausible import doubt_of


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "pen")
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston", "material": "black hard rubber", "mass_g": "14.2 g", "barrel_outside_mm": "12 mm"})  # fmt: skip
    return job


def doubt(job, stage, kind, **texts):
    which = kind_of(stage, kind)
    values, errors = job.read(which, texts)
    assert not errors
    return doubt_of(job, which.filled(values))


def weigh(job, state, mass):
    return doubt(job, "fill test", "weighing", state=state, mass=mass)


def test_an_empty_mass_is_held_against_what_arrived(job):
    assert weigh(job, "dry", "14.9 g") == ""
    assert "it arrived with 14.2 g" in weigh(job, "dry", "142 g")
    assert weigh(job, "dry", "17.2 g") == ""
    assert "is that right?" in weigh(job, "dry", "17.3 g")


def test_then_against_the_last_empty_weighing(job):
    job.add("fill test", "weighing", {"state": "dry", "mass": "14.86 g"})
    assert weigh(job, "drained", "15.86 g") == ""
    assert "it weighed 14.86 g empty" in weigh(job, "drained", "15.87 g")
    assert weigh(job, "filled", "14.86 g").endswith("was it filled?")
    assert weigh(job, "filled", "14.80 g")
    assert weigh(job, "filled", "16.0 g") == ""
    assert weigh(job, "filled", "22.86 g") == ""
    assert weigh(job, "filled", "22.87 g")
    assert weigh(job, "gain", "1.2 g") == ""


def test_a_bore_is_smaller_than_its_barrel(job):
    assert "in a barrel of 12 mm" in doubt(job, "seal", "measure", place="head", bore="8.0 mm; 12.0 mm")
    assert doubt(job, "seal", "measure", place="head", bore="8.0 mm; 11.9 mm") == ""
    assert doubt(job, "fill test", "dimensions", bore="12.5 mm")
    assert doubt(job, "fill test", "dimensions", stroke="28 mm") == ""


def test_heat_past_the_limit_is_asked(job):
    # the table's limit of hard rubber's surface is 70 °C
    job.add("open", "joint", {"joint": "section", "sealant": "shellac", "body": "black hard rubber"})
    assert "95 °C is past the limit of 70 °C" in doubt(job, "open", "heat pass", joint="section", surface="95 °C")
    assert doubt(job, "open", "heat pass", joint="section", surface="70 °C") == ""
    assert doubt(job, "open", "heat pass", joint="section") == ""


def test_a_bath_past_its_limit_is_asked(job):
    job.add("open", "material", {"part": "barrel", "material": "celluloid", "sure": "yes"})
    asked = doubt(job, "clean", "bath", part="barrel", bath="cold water soak", minutes="45 min")
    assert "45 min, 30 more than the limit of 15 min" in asked
    assert doubt(job, "clean", "bath", part="barrel", bath="cold water soak", minutes="10 min") == ""


def test_nothing_is_asked_of_anything_else(job):
    assert doubt(job, "limits", "nothing left", nothing_left="yes") == ""
