"""The work log: typed minutes and the timer's are one sum; a spell is from its own start to the next stop."""

import datetime as dt

import pytest

from pentools.record.entries import new_entry
from pentools.record.stages.job.work_log import minutes_by_activity, running_timer, timed_spells

NOON = dt.datetime(2026, 3, 14, 12, 0, tzinfo=dt.timezone(dt.timedelta(hours=1)))


@pytest.fixture
def job(new_job):
    return new_job()


def start(job, minute, activity="seal"):
    at = NOON + dt.timedelta(minutes=minute)
    return job.record.append(new_entry("work log", "timer start", {"activity": activity}, at=at))


def stop(job, minute, **data):
    at = NOON + dt.timedelta(minutes=minute)
    return job.record.append(new_entry("work log", "timer stop", data, at=at))


def findings(job):
    return [(f.level, f.topic, f.text) for f in job.stage("work log").checks(job)]


def test_a_spell_is_from_its_start_to_the_next_stop(job):
    stop(job, -5, done="no start before it")
    start(job, 0)
    stop(job, 40, done="a cork")
    stop(job, 50, done="no start of its own")
    start(job, 60, "nib")
    start(job, 70, "test")  # forgotten and started anew: the later start counts
    stop(job, 100)
    assert [(s.activity, s.minutes, s.done, s.begun) for s in timed_spells(job)] == [
        ("seal", 40, "a cork", NOON),
        ("test", 30, "", NOON + dt.timedelta(minutes=70)),
    ]
    assert running_timer(job) is None


def test_a_clock_that_went_back_measures_nothing(job):
    start(job, 0)
    stop(job, -30)
    assert [s.minutes for s in timed_spells(job)] == [0]
    assert minutes_by_activity(job) == {}


def test_typed_and_timed_minutes_are_one_sum(job):
    job.add("work log", "work", {"activity": "nib", "minutes": "15 min", "done": "smoothed"})
    job.add("work log", "work", {"activity": "seal", "minutes": "1 h", "done": "a cork"})
    job.record.append(new_entry("work log", "work", {"activity": "test", "done": "no time noted"}))
    start(job, 0)
    stop(job, 20)
    assert list(minutes_by_activity(job).items()) == [("seal", 80), ("nib", 15)]


def test_half_a_minute_is_time_and_none_is_not(job):
    job.add("work log", "work", {"activity": "nib", "minutes": "0.5 min", "done": "a look"})
    job.add("work log", "work", {"activity": "seal", "minutes": "0 min", "done": "thought of it"})
    assert dict(minutes_by_activity(job)) == {"nib": 0.5}


def test_a_running_timer_is_said(job):
    stage = job.stage("work log")
    assert (stage.state_of(job).word, findings(job)) == ("not begun", [])
    begun = start(job, 0)
    assert running_timer(job).entry.id == begun.id
    assert (stage.state_of(job).word, "timer is running" in stage.state_of(job).reason) == ("open", True)
    assert [(level, topic) for level, topic, _ in findings(job)] == [("warning", "timer-running")]
    stop(job, 30)
    assert stage.state_of(job).reason == ""
    assert findings(job) == []


@pytest.mark.parametrize(("minutes", "named"), [(360, False), (361, True), (540, True)])
def test_a_timer_left_running_over_six_hours_is_odd(job, minutes, named):
    start(job, 0)
    stop(job, minutes)
    assert [topic for _, topic, _ in findings(job)] == ["timer-long"] * named
    if minutes == 540:
        assert "9 h" in findings(job)[0][2].replace("\u202f", " ").replace("9.0", "9")
