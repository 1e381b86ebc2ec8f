"""What the pen does now: measured after the work, or plainly not measured."""

import pytest

from pentools.record.after_work import drawn_at_first, now_ml
from pentools.writeup.letter.now import now_row


def weigh(job, *pairs):
    for state, mass in pairs:
        job.add("fill test", "weighing", {"state": state, "mass": f"{mass:.3f} g"})


def end(job, ending="done"):
    job.add("release", "result", {"ending": ending, "summary": "x"})


def text(job):
    row = now_row(job)
    return f"{row.label}: {row.big} {' '.join(row.lines)}".replace("\u202f", " ")


def test_before_and_after_are_kept_apart(new_job):
    job = new_job()
    weigh(job, ("dry", 10.0), ("filled", 10.5))
    job.add("fill test", "leak check", {"rested": "5 h", "dry": "no"})
    assert drawn_at_first(job) is None  # nothing was done yet, so it is what it does
    job.add("work log", "material", {"what": "a sac", "way": "added", "part": "seals"})
    assert now_ml(job) is None
    end(job)
    assert "Not weighed after the work." in text(job)
    assert "Not tried for leaks after the work." in text(job)
    weigh(job, ("dry", 10.1), ("filled", 11.6))
    job.add("fill test", "leak check", {"rested": "14 h", "dry": "yes", "how": "nib down"})
    assert text(job).startswith("What it does now: 1.49 mL ± 0.0")
    assert "Before the work it drew 0.49 mL ± 0.0" in text(job)
    first = job.record.live("fill test", "weighing")[1]
    job.add("fill test", "weighing", {"state": "filled", "mass": "10.502 g"}, replaces=first.id)
    assert "Before the work it drew 0.49 mL ± 0.0" in text(job)  # a correction stays where it was weighed
    assert text(job).endswith("14 h at rest, filled (nib down): dry all over.")


@pytest.mark.parametrize(
    ("check", "said"),
    [
        ({"rested": "6 h", "dry": "no", "damp": "lever slot"}, "6 h at rest, filled: it leaked, lever slot."),
        (
            {"rested": "6 h", "dry": "yes", "damp": "clip"},
            "6 h at rest, filled: dry all over, though damp was noted: clip.",
        ),
    ],
)
def test_a_leak_is_told_as_one(new_job, check, said):
    job = new_job()
    job.add("fill test", "leak check", check)
    end(job)
    assert text(job).endswith(said)
    assert "Not weighed after the work." in text(job)


def test_a_night_of_the_seals_own_tests_counts_where_there_was_no_leak_check(new_job):
    job = new_job()
    job.add("seal", "test", {"test": "overnight", "rested": "15 h", "overnight_seen": "dry"})
    end(job)
    assert text(job).endswith("15 h at rest, filled: it was dry.")


def test_nothing_is_said_of_a_pen_that_went_home_unweighed(new_job):
    job = new_job()
    assert now_row(job) is None
    end(job, "returned")
    assert now_row(job) is None


def test_a_gain_that_cannot_be_told_is_no_volume_and_gives_no_order(new_job):
    job = new_job()
    weigh(job, ("dry", 10.0), ("filled", 10.0))
    end(job)
    assert "cannot be told from nothing" in text(job)
    assert "Next test" not in text(job)
    assert now_row(job).big == ""


def test_what_it_writes_after_the_work_is_one_sentence_of_the_row(new_job):
    job = new_job()
    job.add("nib", "writing test", {"when": "found", "ink": "a blue ink", "paper": "pad paper", "wetness": "dry"})
    end(job)
    assert "writ" not in text(job).replace("written", ""), "as found is not what it does now"
    job.add("nib", "writing test", {"when": "after", "ink": "a blue ink", "paper": "pad paper", "wetness": "wet"})
    job.add("nib", "lines", {"when": "after", "line": "0.523 ± 0.004 mm"})
    assert text(job).endswith("It writes a wet line of 0.523 mm ± 0.008 on pad paper, with a blue ink.")


def test_it_is_compared_with_the_benchs_others_where_they_are_enough(new_job, monkeypatch):
    job = new_job()
    job.add("work log", "material", {"what": "a sac", "way": "added", "part": "seals"})
    weigh(job, ("dry", 10.1), ("filled", 11.6))
    monkeypatch.setattr("pentools.writeup.letter.now.beside_others", lambda _: "Compared with others.")
    assert "Compared" not in text(job)  # not while it is under way
    end(job, "stopped")
    assert "Compared" not in text(job)
    end(job)
    assert text(job).count("Compared with others.") == 1
