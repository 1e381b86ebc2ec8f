"""What lies ahead: the stages on the sheet, the next step, and what waits."""

import pytest

from pentools.record.ahead import ahead_of, further_stages, sheet_stages
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.registry import STAGES
from pentools.record.stages.job.works import STAGES_AT_ONCE, WORKS


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "pen")


def keys(stages):
    return [stage.key for stage in stages]


def test_where_nothing_is_said_everything_stands_on_the_sheet(job):
    assert keys(sheet_stages(job)) == list(STAGES)
    assert further_stages(job) == ()


@pytest.mark.parametrize("work", [key for key, _ in WORKS])
def test_every_kind_of_work_shows_its_stages_and_folds_the_others(job, work):
    job.add("intake", "request", {"asked": "please", "work": work})
    shown, folded = keys(sheet_stages(job)), keys(further_stages(job))
    assert sorted(shown + folded) == sorted(STAGES)
    assert set(shown) == set(STAGES_AT_ONCE.get(work, STAGES))
    assert {"intake", "condition", "agree", "release", "pictures"} <= set(shown)


def test_a_folded_stage_that_holds_an_entry_stands_on_the_sheet(job):
    job.add("intake", "request", {"asked": "please", "work": "look"})
    assert "clean" not in keys(sheet_stages(job))
    job.add("clean", "drying", {"part": "feed", "hours": "24 h"})
    assert "clean" in keys(sheet_stages(job))


def test_the_next_step_is_the_first_that_is_not_done_and_release_comes_last(job):
    ahead = ahead_of(job)
    assert (ahead.stage, ahead.words) == ("intake", "say whose pen it is, what arrived and what is asked")
    assert ahead.then == "note what is stamped on it"
    job.add("intake", "request", {"asked": "only look", "work": "look"})
    assert ahead_of(job).then == "look at it part by part"


def test_what_waits_is_said_for_what_is_under_way_only(job):
    assert ahead_of(job).waits == ()
    job.add("seal", "measure", {"place": "head", "bore": "8 mm"})
    [(what, why)] = ahead_of(job).waits
    assert what == "sealant"
    assert "no dry fit has passed" in why


def test_of_a_job_that_has_ended_nothing_is_next(job):
    job.add("release", "result", {"ending": "returned", "summary": "It goes back as it came."})
    assert ahead_of(job).words == "nothing; the job has ended"
