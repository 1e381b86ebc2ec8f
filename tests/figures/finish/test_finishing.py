"""The ladder against its budget, and the zones, from the record."""

import pytest

from pentools.figures.finish.finishing import ladder_figure, ladder_of_job, zones_figures
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.finish.plan import plan_of


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "pen-one")
    job.add("intake", "arrival", {"pen": "a drawn pen", "system": "lever-sac", "material": "celluloid"})
    return job


def plan(job, **more):
    job.add(
        "finish",
        "plan",
        {"defect": "20 um", "own": "P600; P1200; film 9 um; film 3 um", "zone": "plain barrel", **more},
    )


def test_the_ladder_needs_a_plan(job):
    assert ladder_of_job(job) is None
    job.add("finish", "plan", {"defect": "20 um", "own": "P600", "zone": "imprint"})
    assert ladder_of_job(job) is None


def test_the_ladder_as_planned_and_as_done(job):
    plan(job)
    before = ladder_of_job(job)
    assert before.title == "4 steps take about 30 µm of the 50 µm that can be spared"
    assert before.alt.count("planned") == 4
    job.add("finish", "step", {"grade": "P600"})
    job.add("finish", "step", {"grade": "P1000", "minutes": "2 min"})
    job.add("finish", "measure", {"station": "middle", "diameter": "12.040 mm ± 0.002 mm"})
    job.add("finish", "measure", {"station": "middle", "diameter": "11.994 mm ± 0.002 mm"})
    after = ladder_of_job(job)
    assert after.title.startswith("1 of 4 planned steps done")
    assert "P600, finish 25.8 µm, done, to 20 µm" in after.alt
    assert "P1200, finish 15.3 µm, planned" in after.alt
    assert "Measured by diameter: 23 µm." in after.alt
    for words in ("P600, done", "P1000, not in the plan", "measured: 23.0 ± 2.8 µm", "no more"):
        assert words in after.svg


def test_a_step_that_cannot_be_counted_is_not_drawn_as_nought(job):
    plan(job)
    job.add("finish", "step", {"grade": "P1000"})
    assert ladder_of_job(job).title == "0 of 4 planned steps done: what was taken is not known"


def test_a_plan_alone_is_drawn(job):
    plan(job)
    assert ladder_figure(plan_of(job)).title == ladder_of_job(job).title


def test_zones_are_drawn_open_for_the_barrel_and_capped_for_the_cap(job):
    assert zones_figures(job) == ()
    job.add(
        "finish", "zone", {"part": "barrel", "zone": "imprint", "start_mm": "20 mm", "end_mm": "41 mm", "masked": "yes"}
    )
    job.add("finish", "zone", {"part": "cap-band", "zone": "plating"})
    job.add("finish", "zone", {"part": "nib", "zone": "solid gold nib"})
    job.add("finish", "zone", {"part": "barrel", "zone": "imprint", "start_mm": "150 mm"})  # past its end: not drawn
    barrel, cap = zones_figures(job)
    assert barrel.title == "The one zone noted on the barrel and section is kept from abrasives."
    assert "barrel from 20 mm to 41 mm: imprint, masked, no abrasive" in barrel.alt
    assert "no abrasive, NOT MASKED" in cap.svg


def test_a_small_zone_is_drawn_over_the_large_one_it_lies_in(job):
    job.add(
        "finish", "zone", {"part": "barrel", "zone": "imprint", "start_mm": "20 mm", "end_mm": "41 mm", "masked": "yes"}
    )
    job.add("finish", "zone", {"part": "barrel", "zone": "plain barrel"})
    job.add("finish", "zone", {"part": "barrel", "zone": "near an imprint", "start_mm": "15 mm", "end_mm": "46 mm"})
    [barrel] = zones_figures(job)
    places = [barrel.alt.index(words) for words in ("plain, may be worked", "near the imprint", "imprint, masked")]
    assert places == sorted(places)
    assert barrel.title == "1 of 3 zones on the barrel and section is kept from abrasives."


def test_the_zones_respect_the_owner_s_no(job):
    job.add("finish", "zone", {"part": "barrel", "zone": "plain barrel"})
    assert "may be worked" in zones_figures(job)[0].title
    job.add("finish", "consent to polish", {"agreed": "no"})
    [barrel] = zones_figures(job)
    assert barrel.title == "No abrasive on the barrel and section: left as it is, by the owner’s wish."
    assert "may be worked" not in barrel.svg + barrel.alt


@pytest.mark.parametrize("zone", ["silver", "lacquer", "overlay", "aluminium", "bare metal"])
def test_every_surface_can_be_drawn(job, zone):
    job.add("finish", "zone", {"part": "barrel", "zone": zone})
    assert len(zones_figures(job)) == 1


def test_a_plan_that_does_not_say_where_says_so(job):
    job.add("finish", "plan", {"defect": "20 um", "own": "P600; film 9 um; film 3 um"})
    assert ladder_of_job(job).title.endswith("where on the pen is not said")
