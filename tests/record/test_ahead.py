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


def steps_of(job, *entries):
    for stage, kind, texts in entries:
        job.add(stage, kind, texts)
    return ahead_of(job).words, ahead_of(job).then


WHO = ("intake", "owner", {"owner": "Adela Quist", "contact": "by telephone"})
PEN = ("intake", "arrival", {"pen": "a black pen", "system": "lever-sac", "material": "hard rubber"})
SEEN = ("condition", "part", {"part": "seals", "seen": "hard", "severity": "4"})
YES = ("agree", "yes", {"to": "heat; sealant", "answered_on": "2026-03-14", "channel": "letter"})


def asked(work):
    return ("intake", "request", {"asked": "mend it", "work": work})


def picture(job, moment):
    (job.folder / "photos").mkdir(exist_ok=True)
    (job.folder / "photos" / f"{moment}.png").write_bytes(b"x")
    return ("pictures", "picture", {"photo": f"{moment}.png", "moment": moment, "shows": "the pen"})


def test_the_next_step_is_the_first_that_is_owed_and_the_end_comes_last(job):
    assert ahead_of(job).stage == "intake"
    assert steps_of(job)[0] == "say whose pen it is and how to reach them"
    assert steps_of(job, WHO, PEN)[0] == "say what is asked, and what kind of work it is"
    assert steps_of(job, asked("re-sac")) == ("take a picture before the work", "look at it, and say what is wrong")
    assert steps_of(job, picture(job, "before"), SEEN)[0] == "get the owner’s yes, and its price"
    # a new sac may be entered as done, without a word on opening and weighing
    assert steps_of(job, YES)[0] == "do the work; enter its minutes"
    job.add("work log", "work", {"activity": "seal", "minutes": "25 min", "done": "new sac"})
    job.add("work log", "material", {"what": "sac 16", "way": "added"})
    assert steps_of(job)[0] == "let it rest filled overnight, and say whether it stayed dry"
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    assert steps_of(job, picture(job, "after")) == ("end the job", "")


def test_a_whole_restoration_goes_stage_by_stage(job):
    words = steps_of(job, WHO, PEN, asked("whole"), picture(job, "before"), SEEN)
    assert words == ("note what is stamped on it", "get the owner’s yes, and its price")
    assert steps_of(job, YES) == ("note what is stamped on it", "open it")


def test_a_stage_that_was_begun_comes_before_what_was_done(job):
    steps_of(job, WHO, PEN, asked("re-sac"), picture(job, "before"), SEEN, YES)
    job.add("fill test", "weighing", {"state": "dry", "mass": "15 g"})
    assert ahead_of(job).stage == "fill test"
    job.add("seal", "measure", {"place": "head", "bore": "8 mm"})
    assert (ahead_of(job).stage, ahead_of(job).words) == (
        "seal",
        "nothing was tried dry yet",
    )  # what it lacks, not how it begins


def test_who_only_looks_owes_no_yes_and_no_minutes(job):
    words = steps_of(job, WHO, PEN, asked("look"), picture(job, "before"), SEEN)
    assert words == ("end the job", "")


def test_what_waits_is_said_for_what_is_under_way_only(job):
    assert ahead_of(job).waits == ()
    job.add("seal", "measure", {"place": "head", "bore": "8 mm"})
    [(what, why)] = ahead_of(job).waits
    assert what == "sealant"
    assert "no dry fit has passed" in why


def test_of_a_job_that_has_ended_nothing_is_next(job):
    job.add("release", "result", {"ending": "returned", "summary": "It goes back as it came."})
    assert ahead_of(job).words == "nothing; the job has ended"
