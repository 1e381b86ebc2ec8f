"""What is asked before it is saved, against the job's own earlier entries."""

import pytest
from by_name import kind_of

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, open_job
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


def rated(job, rate):
    path = job.bench.folder / "bench.toml"
    path.write_text(path.read_text().replace("rate_per_hour = 0.0", f"rate_per_hour = {rate}"))
    return open_job(job.name, bench=open_bench_folder(job.bench.folder))


def work(job, minutes):
    return doubt(job, "work log", "work", activity="seal", minutes=minutes, done="new sac")


def test_minutes_are_held_against_the_agreed_most_at_the_benchs_rate(job):
    assert work(job, "90 min") == ""  # no rate, no ceiling
    job = rated(job, 30.0)
    assert work(job, "90 min") == ""
    job.add("agree", "yes", {"to": "sealant", "at_most": "60 EUR", "answered_on": "2026-03-14", "channel": "letter"})
    job.add("work log", "work", {"activity": "seal", "minutes": "60 min", "done": "new sac"})
    job.add("work log", "material", {"what": "sac", "way": "added", "cost": "10 EUR"})
    assert work(job, "40 min") == ""  # 30 + 10 + 20 is just what was agreed
    assert "comes to 60.50 EUR, past the agreed 60.00 EUR: was so much time spent?" in work(job, "41 min")
    job.add("work log", "work", {"activity": "seal", "minutes": "60 min", "done": "again"})
    assert work(job, "5 min") == ""  # it went past before
    assert work(job, "9 h").endswith("540 min at one thing: is that right?")


def test_a_price_is_held_against_what_the_parts_cost(job):
    job.add("work log", "material", {"what": "sac", "way": "added", "cost": "10 EUR"})

    def price(text):
        return doubt(job, "release", "result", ending="done", summary="It writes.", price=text)

    assert price("10 EUR") == price("9 USD") == ""
    assert price("9 EUR") == "A price of 9 EUR, and the parts alone came to 10.00 EUR: is that right?"
