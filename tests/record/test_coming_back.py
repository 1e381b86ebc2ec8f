"""From an older job to the one that goes on from it."""

import pytest

from pentools.errors import InputError, RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.coming_back import link_of, returns, start_from, take_over
from pentools.record.job import create_job
from pentools.record.review import review
from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER
from pentools.record.stages.seal.measure import measured
from pentools.record.stages.treatment.facts import materials_of
from pentools.record.stages.weighing.kinds import DIMENSIONS


@pytest.fixture
def older(bench):
    job = create_job(bench, "pen-one")
    job.add(
        "intake",
        "owner",
        {"owner": "Adela Quist", "address": "Rope Walk 3", "contact": "by letter", "private_note": "in a hurry"},
    )
    job.add(
        "intake",
        "arrival",
        {
            "pen": "a black pen",
            "system": "lever-sac",
            "material": "ebonite",
            "arrived_on": "2026-03-02",
            "mass_g": "14.2 g",
            "barrel_mm": "66 mm",
            "pieces": "pen; box",
        },
    )
    job.add("open", "material", {"part": "section", "material": "casein", "sure": "yes"})
    job.add("fill test", "dimensions", {"bore": "7.40 mm"})
    job.add("seal", "measure", {"place": "sac", "bore": "7.40 mm", "nipple": "6.00 mm"})
    job.add("seal", "measure", {"place": "sac", "bore": "7.60 mm", "nipple": "6.00 mm", "altered": "yes"})
    job.add(
        "seal",
        "trial",
        {
            "place": "sac",
            "what": "sac 16",
            "outside": "6.35 mm",
            "dry": "yes",
            "happened": "pulls back",
            "lot": "box 3",
        },
    )
    job.add("seal", "sealant", {"place": "sac", "sealant": "shellac", "lot": "jar of May"})
    job.add("work log", "material", {"what": "latex sac 16", "way": "added", "part": "seals", "lot": "L-7"})
    job.add("work log", "material", {"what": "a clip", "way": "added", "part": "clip", "lot": "C-1"})
    job.add("repairs", "repair", {"part": "clip", "method": "clip-spring", "lot": "wire 4"})
    job.add(
        "release",
        "result",
        {
            "ending": "done",
            "summary": "It writes.",
            "promise_until": "2026-06-14",
            "follow_up": "Look at the sac each spring.",
            "released_on": "2026-03-20",
        },
    )
    return job


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def job(older, bench):
    return start_from(bench.folder, "pen-two", older.name)


def test_what_is_known_of_the_pen_is_taken_over_and_what_is_of_its_day_is_not(job):
    arrival = job.newest(ARRIVAL)
    assert (arrival.pen, arrival.system, arrival.material) == ("a black pen", "lever-sac", "ebonite")
    assert arrival.barrel_mm.value == 66
    assert (arrival.arrived_on, arrival.mass_g, arrival.pieces) == (None, None, None)
    assert (job.newest(OWNER).address, job.newest(OWNER).private_note) == ("Rope Walk 3", None)
    assert materials_of(job, "section") == ("casein",)
    assert job.newest(DIMENSIONS).bore.value == 7.4
    sac = measured(job, "sac")
    assert ([r.value for r in sac.bore], sac.altered) == ([7.6], None), "the newest, and not altered here"
    assert {entry.note for entry in job.record.live()} == {"taken over from job pen-one"}


def test_what_was_promised_and_fitted_goes_along(job):
    back = job.newest(RETURN)
    assert (back.older, back.promised_until, back.promised) == ("pen-one", "2026-06-14", "Look at the sac each spring.")
    assert back.lots == ("seals and sac: L-7", "clip: C-1", "sac on its nipple: jar of May", "clip: wire 4")
    assert back.fitted == (
        "seals and sac: latex sac 16", "clip: a clip", "sac on its nipple: shellac",
        "clip: spring: spring shimmed or made anew",
    )  # fmt: skip
    assert any(f.topic == "value" and "What failed" in f.text for f in review(job)), "what failed is asked for"


def test_the_link_names_lots_and_ways_of_the_part_that_failed(job, older):
    job.add(
        "intake",
        "coming back",
        {"older": "pen-one", "failed": "it leaks", "part": "seals", "cause": "part", "covered": "yes"},
    )
    job.add("intake", "arrival", {"pen": "a black pen", "arrived_on": "2026-05-19"})
    link = link_of(job)
    assert (link.job, link.older, link.part, link.cause, link.covered) == ("pen-two", "pen-one", "seals", "part", True)
    assert link.days == 60
    assert link.lots == ("L-7", "box 3", "jar of May")
    assert link.ways == ("shellac at sac",)
    job.add("intake", "coming back", {"older": "pen-one", "failed": "the clip broke", "part": "clip"})
    assert (link_of(job).lots, link_of(job).ways) == (("C-1", "wire 4"), ("clip-spring",))
    job.add("intake", "coming back", {"older": "pen-one", "failed": "the nib"})
    assert (link_of(job).lots, link_of(job).ways) == ((), ()), "of no part nothing is counted"
    assert link_of(older) is None


def test_every_return_on_a_bench_is_a_row_and_an_older_job_that_is_gone_costs_only_its_lots(job, older, bench):
    table = returns(bench.folder)
    assert list(table["job"]) == ["pen-two"]
    assert table.loc[0, "older"] == "pen-one"
    for path in sorted(older.folder.rglob("*"), reverse=True):
        path.unlink() if path.is_file() else path.rmdir()
    older.folder.rmdir()
    assert link_of(job).lots == ()
    assert list(returns(bench.folder)["older"]) == ["pen-one"]


def test_nothing_is_laid_out_where_the_older_job_is_not_there(bench):
    with pytest.raises(RecordError, match="no job pen-nine"):
        start_from(bench.folder, "pen-two", "pen-nine")
    assert not (bench.folder / "pen-two").exists()


def test_what_was_entered_already_is_not_overwritten_and_nothing_is_taken_twice(older, bench):
    job = create_job(bench, "pen-two")
    job.add("intake", "arrival", {"pen": "the black one again", "system": "lever-sac"})
    job.add("intake", "coming back", {"older": "pen-one", "failed": "it leaks"})
    take_over(job, "pen-one")
    assert job.newest(ARRIVAL).pen == "the black one again"
    assert (job.newest(RETURN).failed, job.newest(RETURN).promised_until) == ("it leaks", "2026-06-14")
    count = len(job.record.entries)
    take_over(job, "pen-one")
    assert len(job.record.entries) == count


def test_no_job_goes_on_from_itself_or_in_a_circle(job, older):
    with pytest.raises(InputError, match="another job"):
        take_over(job, "pen-two")
    with pytest.raises(InputError, match="does not go on from pen-one"):
        take_over(older, "pen-two")
