"""What only holds for now: from the parts mended and from what was left, until it is mended for good."""

import pytest

from pentools.record.stages.job.makeshifts import come_back, makeshifts_of

OILED = {"part": "threads", "method": "thread-oil", "wanted": "a section of its own"}


@pytest.fixture
def job(new_job):
    return new_job()


def told(job):
    return [(one.where, one.what, one.wanted, one.limit) for one in makeshifts_of(job)]


def test_both_places_give_their_makeshifts(job):
    job.add("repairs", "repair", OILED)
    job.add("repairs", "repair", {"part": "clip", "method": "clip-tighten"})
    job.add(
        "limits",
        "limit",
        {
            "part": "cap",
            "left": "no clip ball",
            "why": "none found",
            "instead": "a borrowed ball",
            "for_now": "yes",
            "wanted": "a clip ball of 2 mm",
        },
    )
    job.add("limits", "limit", {"part": "nib", "left": "worn", "why": "it writes", "instead": "nothing"})
    assert told(job) == [
        ("threads", "trace of oil or grease", "a section of its own", False),
        ("cap", "a borrowed ball", "a clip ball of 2 mm", True),
    ]


def test_what_is_mended_for_good_since_holds_no_more_for_now(job):
    job.add("repairs", "repair", {"part": "blind-cap", "method": "blind-cap-wax", "wanted": "a new thread"})
    job.add("repairs", "repair", {"part": "blind-cap", "method": "blind-cap-coat"})
    assert len(told(job)) == 2, "one makeshift is no end of another"
    job.add("repairs", "repair", {"part": "blind-cap", "method": "blind-cap-bush"})
    assert told(job) == []
    job.add("repairs", "repair", {"part": "blind-cap", "method": "blind-cap-wax"})
    assert len(told(job)) == 1


def test_leaving_it_is_no_mend_and_neither_is_another_place(job):
    job.add("repairs", "repair", {"part": "inner-cap", "method": "inner-cap-putty"})
    job.add("repairs", "repair", {"part": "inner-cap", "method": "inner-cap-new"})
    assert len(told(job)) == 1
    job.add("repairs", "repair", {"part": "inner-cap", "method": "inner-cap-set"})
    assert told(job) == []


def test_the_follow_up_says_once_what_is_wanted(job):
    assert come_back(job) == ""
    job.add("repairs", "repair", OILED)
    sentence = "What holds the threads now is a makeshift: come back once this can be had: a section of its own."
    assert come_back(job) == sentence
    assert come_back(job, "Come by for A section of its own.") == ""


def test_it_contradicts_that_nothing_was_left_and_a_plain_end(job):
    job.add("repairs", "repair", OILED)
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    assert [f.topic for f in job.stage("limits").checks(job)] == ["makeshift-left"]
    job.add("release", "result", {"ending": "done", "summary": "It writes."})
    assert [f.topic for f in job.stage("release").checks(job)] == ["ending-limits"]
