"""What was weighed before the work and what after it are never taken for one another."""

from pentools.record.after_work import changed_at, drawn_at_first, now_ml


def weigh(job, *pairs):
    for state, mass in pairs:
        job.add("fill test", "weighing", {"state": state, "mass": f"{mass:.3f} g"})


def test_before_the_first_change_it_is_how_the_pen_came(new_job):
    job = new_job()
    assert (now_ml(job), drawn_at_first(job), changed_at(job)) == (None, None, None)
    weigh(job, ("dry", 10.0), ("filled", 10.5))
    assert round(now_ml(job).data["volume_ml"], 1) == 0.5
    assert drawn_at_first(job) is None
    job.add("work log", "work", {"activity": "write", "minutes": "5 min", "done": "wrote it down"})
    assert changed_at(job) is None
    job.add("work log", "work", {"activity": "seal", "minutes": "30 min", "done": "a new sac"})
    assert changed_at(job) is not None
    assert now_ml(job) is None
    assert round(drawn_at_first(job).data["volume_ml"], 1) == 0.5
    weigh(job, ("dry", 10.1), ("filled", 11.6))
    assert round(now_ml(job).data["volume_ml"], 1) == 1.5
    assert round(drawn_at_first(job).data["volume_ml"], 1) == 0.5


def test_weighings_that_contradict_each_other_say_nothing(new_job):
    job = new_job()
    weigh(job, ("dry", 10.0), ("filled", 9.0))
    assert now_ml(job) is None
