"""The tip from the record: what the loupe showed rules the plan, and the strokes are held against it."""

import pytest

from pentools.record.stages.nib.tip import (
    aligned,
    loupe,
    loupe_findings,
    nib_plan_of,
    smoothing_findings,
    strokes_done,
    tipped,
)


def topics(found):
    return [f.topic for f in found]


def smooth(job, grade, strokes, **more):
    job.add("nib", "smoothing", {"grade": grade, "strokes": str(strokes), "figure": "eight", **more})


def test_nobody_has_looked(job):
    assert (loupe(job), aligned(job), tipped(job), loupe_findings(job)) == (None, None, None, ())


def test_the_newest_look_counts_and_each_moment_keeps_its_own(job, look):
    look(tines="left high")
    assert (aligned(job), tipped(job)) == (False, True)
    look("after", tipping="chipped")
    assert (aligned(job), tipped(job)) == (True, False)
    assert (loupe(job, "found").tines, loupe(job, "after").tines) == ("left high", "level")


@pytest.mark.parametrize(
    ("seen", "told"),
    [
        ({}, []), ({"tines": "crossed"}, ["align-first"]), ({"step": "30 um"}, ["step-out"]), ({"step": "20 um"}, []),
        ({"cracks": "vent"}, ["cracked"]), ({"cracks": "none"}, []), ({"slit": "opening"}, ["slit-opens"]), ({"slit": "closing"}, []),
        ({"gap": "0.08 mm"}, ["gap-wide"]), ({"gap": "0.05 mm"}, []), ({"tipping": "gone"}, ["tip-lost"]), ({"tipping": "flat"}, []),
    ],
)  # fmt: skip
def test_what_a_look_asks_for(job, look, seen, told):
    look(**seen)
    assert topics(loupe_findings(job)) == told


def test_the_plan_takes_tines_and_tipping_from_the_loupe_and_grades_from_the_bench(job, look):
    assert nib_plan_of(job) is None
    job.add("nib", "smoothing plan", {"feel": "scratchy"})
    assert [s.most_strokes for s in nib_plan_of(job).steps] == [6, 6], "nobody looked: as without tipping"
    look()
    assert [(s.grade.label, s.most_strokes) for s in nib_plan_of(job).steps] == [("film 3 µm", 12), ("film 1 µm", 12)]
    look(tipping="gone")
    assert [s.most_strokes for s in nib_plan_of(job).steps] == [6, 6]
    look(tines="right high")
    assert nib_plan_of(job).steps == ()


def test_a_plan_that_was_entered_under_the_finish_still_counts(job):
    job.add("finish", "nib plan", {"feel": "a little toothy", "aligned": "yes", "tipped": "yes"})
    assert (aligned(job), tipped(job)) == (True, True)
    assert [(s.grade.label, s.most_strokes) for s in nib_plan_of(job).steps] == [("film 1 µm", 8)]


def test_strokes_are_summed_by_grade_and_looks_end_a_run(job, look):
    look()
    job.add("nib", "smoothing plan", {"feel": "scratchy"})
    smooth(job, "film 3 um", 4, looked="yes")
    smooth(job, "film 3 µm", 4, looked="yes")
    smooth(job, "film 1 um", 4, looked="yes")
    assert [(s.label, s.strokes, s.unseen, s.most) for s in strokes_done(job)] == [
        ("film 3 µm", 8, 4, 12), ("film 1 µm", 4, 4, 12),
    ]  # fmt: skip
    assert smoothing_findings(job) == ()


def test_past_the_plan_and_without_a_look(job, look):
    look()
    job.add("nib", "smoothing plan", {"feel": "scratchy"})
    smooth(job, "film 3 um", 12, looked="yes")
    assert topics(smoothing_findings(job)) == ["strokes-unseen"]
    smooth(job, "film 3 um", 1, looked="yes")
    assert next((f.level, f.topic) for f in smoothing_findings(job)) == ("stop", "strokes-past")
    smooth(job, "P2500", 2, looked="yes")
    assert "strokes-unplanned" in topics(smoothing_findings(job))


def test_a_run_over_two_grades_without_a_look_is_one_run(job, look):
    look()
    smooth(job, "film 3 um", 3)
    smooth(job, "film 1 um", 3, looked="yes")
    assert topics(smoothing_findings(job)) == ["strokes-unseen"]


@pytest.mark.parametrize(("first", "second", "told"), [(6, 10, ["starts-clean"]), (9, 7, ["starts-worse"]), (6, 8, [])])
def test_clean_starts_say_when_to_stop(job, look, first, second, told):
    look()
    for starts in (first, second):
        smooth(job, "film 1 um", 2, looked="yes", starts=str(starts))
    assert topics(smoothing_findings(job)) == told
