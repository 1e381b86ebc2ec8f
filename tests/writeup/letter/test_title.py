"""The title says no more than the record: that it writes, that it fills, or that it is ready."""

import pytest

from pentools.writeup.letter.title import letter_title, pen_in_short, status_line


@pytest.mark.parametrize(
    ("pen", "short"),
    [
        ("green marbled piston filler, about 1940, no mark", "green marbled piston filler"),
        ("A grey lever filler (worn)", "grey lever filler"),
        ("my pen", "pen"),
        (None, "pen"),
    ],
)
def test_the_pen_in_its_owners_words(new_job, pen, short):
    job = new_job()
    if pen:
        job.add("intake", "arrival", {"pen": pen})
    assert pen_in_short(job) == short


@pytest.mark.parametrize(
    ("ending", "summary", "title"),
    [
        ("done", "It writes a wet line.", "Your grey filler writes again"),
        ("done with limits", "It does not write yet. It drips.", "Your grey filler is ready"),
        ("done", "It never writes well.", "Your grey filler is ready"),
        ("done", "Washed.", "Your grey filler is ready"),
        ("stopped", "It writes.", "The work on your grey filler was stopped"),
        ("returned", "As it came.", "Your grey filler comes home unrepaired"),
    ],
)
def test_the_title_from_the_ending_and_what_was_said(new_job, ending, summary, title):
    job = new_job()
    job.add("intake", "arrival", {"pen": "grey filler"})
    assert letter_title(job) == "Your grey filler is still on the bench"
    job.add("release", "result", {"ending": ending, "summary": summary})
    assert letter_title(job) == title


def test_a_pen_that_was_weighed_fills_and_one_that_was_tried_writes(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "grey filler"})
    for state, mass in (("dry", "16.55 g"), ("filled", "17.85 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    job.add("release", "result", {"ending": "done", "summary": "Done."})
    assert letter_title(job) == "Your grey filler fills again"
    job.add("work log", "work", {"activity": "test", "minutes": "5 min", "done": "A page was written with ink."})
    assert letter_title(job) == "Your grey filler writes again"


def test_done_with_limits_says_which(new_job):
    job = new_job()
    assert status_line(job) == ""
    for part in ("cap", "nib"):
        job.add("limits", "limit", {"part": part, "left": "A crack.", "why": "It is stable."})
    job.add("release", "result", {"ending": "done with limits", "summary": "x", "released_on": "2026-05-06"})
    assert status_line(job) == "Done with limits: cap and nib; released 6\u00a0May 2026."
