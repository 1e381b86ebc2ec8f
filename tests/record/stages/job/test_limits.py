"""Limits: written down, or stated that there are none; never both."""

from pentools.record.stages.job.limits import limits_written

LEFT = {"part": "cap", "left": "a hairline", "why": "it is stable"}


def state(job):
    return limits_written(job), job.stage("limits").state_of(job).word


def test_a_limit_or_the_statement_that_there_is_none(new_job):
    job = new_job()
    assert state(job) == (False, "not begun")
    job.add("limits", "nothing left", {"nothing_left": "no"})
    assert state(job) == (False, "not begun")
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    assert state(job) == (True, "done")
    other = new_job()
    other.add("limits", "limit", LEFT)
    assert state(other) == (True, "done")


def test_a_limit_beside_the_statement_contradicts_it(new_job):
    job = new_job()
    stage = job.stage("limits")
    job.add("limits", "limit", LEFT)
    assert stage.checks(job) == ()
    job.add("limits", "nothing left", {"nothing_left": "no"})
    assert stage.checks(job) == ()
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    assert [(f.level, f.topic) for f in stage.checks(job)] == [("warning", "limits-contradict")]
