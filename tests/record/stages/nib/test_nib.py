"""The nib stage: where it stands, and what `pentools check` says of it."""

import pytest

from pentools.record.registry import find_stage
from pentools.record.review import review
from pentools.record.stages.nib.nib import NIB, nib_findings, worked_on

PAGE = {"when": "after", "ink": "a blue ink", "paper": "smooth pad paper"}


def state(job):
    found = NIB.state_of(job)
    return found.word, found.reason


def test_it_is_registered_after_the_fill_test(job):
    assert find_stage("nib") is NIB
    assert state(job) == ("not begun", "")


def test_where_it_stands(job, look):
    look()
    assert state(job) == ("open", "nothing is written with it yet")
    job.add("nib", "writing test", {**PAGE, "when": "found"})
    assert state(job) == ("done", "")
    job.add("nib", "adjust", {"what": "tines", "did": "by hand"})
    assert worked_on(job)
    assert state(job) == ("open", "worked on, and not written with since")
    assert [f.topic for f in nib_findings(job)] == ["not-written"]
    job.add("nib", "writing test", PAGE)
    assert state(job) == ("done", "")
    job.add("nib", "fit", {"when": "found", "inner_cap": "19.0 mm"})
    assert state(job) == ("open", "the nib does not stay clear of the inner cap")


def test_a_test_before_the_work_is_none_after_it(job):
    job.add("nib", "writing test", PAGE)
    job.add("nib", "smoothing", {"grade": "film 1 um", "strokes": "2", "figure": "eight"})
    assert state(job)[0] == "open"
    job.add("nib", "writing test", {**PAGE, "when": "found"})
    assert state(job)[0] == "open", "how it wrote as found, entered late, is no test after the work"
    job.add("nib", "writing test", PAGE)
    assert state(job)[0] == "done"


@pytest.mark.parametrize(
    ("kind", "texts", "topic"),
    [
        ("loupe", {"when": "found", "tipping": "sound", "tines": "crossed"}, "align-first"),
        ("smoothing", {"grade": "film 1 um", "strokes": "20", "figure": "line"}, "strokes-unseen"),
        ("fit", {"when": "found", "inner_cap": "19.0 mm"}, "clearance"),
        ("feed setting", {"way": "water", "gap": "slides", "surface": "80 °C"}, "setting"),
        ("start", {"when": "after", "way": "30 mm", "starts": "4"}, "starts-few"),
    ],
)
def test_each_kind_of_trouble_reaches_the_check(job, kind, texts, topic):
    job.add("nib", kind, texts)
    assert topic in [f.topic for f in nib_findings(job)]
    assert any(f.topic == topic and f.text.startswith("Nib: ") for f in review(job))


def test_smoothing_without_a_look_first_is_named(job):
    job.add("nib", "smoothing", {"grade": "film 1 um", "strokes": "2", "figure": "eight"})
    assert "Look first" in " ".join(f.text for f in nib_findings(job))
