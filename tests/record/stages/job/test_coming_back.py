"""Whether a pen came back in time, and what is missing about it."""

import pytest

from pentools.record.stages.job.coming_back import continued_on, covered_by_date, return_findings, return_words


def back(job, came="2026-06-02", **said):
    job.add("intake", "arrival", {"pen": "a pen", "arrived_on": came})
    job.add("intake", "coming back", {"older": "pen-old", "failed": "it leaks", **said})


def topics(job):
    return [f.topic for f in return_findings(job)]


@pytest.mark.parametrize(
    ("came", "until", "in_time"),
    [("2026-06-02", "2026-06-14", True), ("2026-06-14", "2026-06-14", True), ("2026-06-15", "2026-06-14", False), ("", "2026-06-14", None), ("2026-06-02", "", None)],
)  # fmt: skip
def test_in_time_is_up_to_the_day_that_was_promised(new_job, came, until, in_time):
    job = new_job()
    back(job, came, promised_until=until)
    assert covered_by_date(job) is in_time


def test_what_it_comes_back_for_is_said_in_words(new_job):
    job = new_job()
    assert (return_words(job), continued_on(job), return_findings(job)) == ("", "", ())
    back(job, promised_until="2026-06-14")
    assert return_words(job) == "It was here as pen-old. It was answered for until 14 June 2026. It came back in time."
    assert continued_on(job) == "pen-old"
    back(job, "2026-07-02", promised_until="2026-06-14")
    assert return_words(job).endswith("It came back after that.")
    back(job)
    assert return_words(job) == "It was here as pen-old."


def test_what_is_missing_is_named(new_job):
    job = new_job("pen-new")
    back(job)
    assert topics(job) == ["return-part", "return-covered"]
    back(job, part="seals", covered="no", cause="part", promised_until="2026-06-14")
    assert topics(job) == ["return-in-time"]
    back(job, part="seals", covered="no", cause="use", promised_until="2026-06-14")
    assert topics(job) == []
    job.add("intake", "coming back", {"older": "pen-new", "failed": "x", "part": "nib", "covered": "yes"})
    assert topics(job) == ["return-itself"]
