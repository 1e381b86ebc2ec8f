"""What was wrong, done and left: the restorer's words, the gravest and the most telling first."""

from pentools.writeup.letter.work import done_row, left_row, proposed_row, why_row, wrong_row


def part(job, name, severity, seen):
    job.add("condition", "part", {"part": name, "severity": severity, "seen": seen})


def work(job, activity, done, minutes="10 min"):
    job.add("work log", "work", {"activity": activity, "minutes": minutes, "done": done})


def lines(row):
    return "\n".join(row.lines)


def test_the_gravest_fault_leads_and_the_slight_ones_are_counted(new_job):
    job = new_job()
    assert wrong_row(job) is None
    part(job, "clip", "0", "Sound.")
    assert lines(wrong_row(job)) == "No fault was found in what was looked at."
    part(job, "cap", "1", "A scratch.")
    assert lines(wrong_row(job)) == "Cap: A scratch."
    part(job, "seals", "4", "Perished to crumbs.")
    part(job, "nib", "2", "Bent.")
    job.add("release", "result", {"ending": "done", "summary": "x"})
    assert wrong_row(job).label == "What was wrong"
    assert lines(wrong_row(job)) == "Seals and sac: Perished to crumbs.\nNib: Bent.\nBeside these, 1 slight fault."


def test_more_than_fits_is_named_and_not_told(new_job):
    job = new_job()
    for name in ("seals", "nib", "feed", "barrel"):
        part(job, name, "3", " ".join(["word"] * 27) + ".")
    assert len(wrong_row(job).lines) == 3
    assert wrong_row(job).lines[-1] == "Beside these, feed (serious) and barrel (serious)."


def test_what_mends_the_pen_is_told_before_what_cleans_it_and_in_the_order_of_the_work(new_job):
    job = new_job()
    long = " ".join(["rinsed"] * 60)
    work(job, "look", "Looked at it.")
    work(job, "clean", f"{long}.")
    work(job, "open", "Warmed and drawn. It took three days.")
    work(job, "seal", " ".join(["turned"] * 40) + ". More words.")
    said = done_row(job)
    assert said.label == "What was done so far"
    first, last = said.lines
    assert first.startswith("Warmed and drawn. Turned turned")
    assert "rinsed" not in first
    assert "Looked" not in first
    assert first.endswith("The other steps stand in the record.")
    assert last.replace("\u202f", " ") == "40 min in all."


def test_what_went_in_and_whether_it_comes_off_again(new_job):
    job = new_job()
    job.add("work log", "material", {"what": "latex sac", "way": "added", "reversible": "yes"})
    assert lines(done_row(job)) == "Put in: latex sac. All of it can be taken off again."
    job.add("work log", "material", {"what": "talc", "way": "added"})
    assert lines(done_row(job)) == "Put in: latex sac; talc."
    job.add("work log", "material", {"what": "glue", "way": "added", "reversible": "no"})
    job.add("work log", "material", {"what": "old sac", "way": "returned"})
    assert lines(done_row(job)) == "Put in: latex sac; talc; glue. For good: glue. Given back with it: old sac."


def test_what_broke_stands_on_the_first_page_and_is_not_claimed_where_nothing_was_said(new_job):
    job = new_job()
    work(job, "open", "Drawn.")
    assert "roke" not in lines(done_row(job))
    job.add("open", "step", {"did": "Pulled.", "broke": "a chip off the mouth"})
    assert "Broken or changed on the way: a chip off the mouth." in lines(done_row(job))


def test_what_was_left_with_its_reason_and_nothing_only_where_that_was_said(new_job):
    job = new_job()
    assert left_row(job) is None
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    assert lines(left_row(job)) == "Nothing that was found was left unmended."
    job.add("limits", "limit", {"part": "cap", "left": "A hairline", "why": "It is stable", "advice": "Use no glue."})
    assert lines(left_row(job)) == "A hairline. It is stable."


def test_a_pen_that_goes_home_as_it_came_has_a_reason_and_an_open_one_a_proposal(new_job):
    job = new_job()
    job.add("agree", "survey", {"conclusion": "It must not be opened"})
    job.add("agree", "proposal", {"part": "seals", "proposed": "A new sac. Then a night."})
    assert (proposed_row(job).label, lines(proposed_row(job))) == (
        "What is proposed",
        "Seals and sac: A new sac. Then a night.",
    )
    assert why_row(job).label == "What it comes to"
    job.add("release", "result", {"ending": "returned", "summary": "x"})
    assert (why_row(job).label, lines(why_row(job))) == ("Why it was not mended", "It must not be opened.")
    assert proposed_row(job) is None
    job.add("release", "result", {"ending": "done", "summary": "x"})
    assert why_row(job) is None


def test_parts_mended_are_one_line_and_what_was_left_or_holds_for_now_stands_among_what_was_left(new_job):
    job = new_job()
    job.add("repairs", "repair", {"part": "clip", "method": "clip-tighten"})
    assert lines(done_row(job)) == "Parts mended: clip (cleaned and tightened)."
    job.add("repairs", "repair", {"part": "cap", "method": "cap-lip-leave"})
    job.add("repairs", "repair", {"part": "threads", "method": "thread-oil", "wanted": "a section of its own"})
    job.add("repairs", "back again", {"part": "nib", "back_on": "2026-05-01", "done": "New tipping.", "cost": "58 EUR"})
    assert lines(done_row(job)) == "Parts mended: clip (cleaned and tightened) and nib (by another workshop)."
    left = left_row(job)
    assert left.label == "What was left, and why"
    assert lines(left) == (
        "Cap: left, its place and length noted.\nThreads: trace of oil or grease. It holds only for now."
    )
    job.add(
        "limits",
        "limit",
        {"part": "seals", "left": "a soft sac", "why": "none came", "for_now": "yes", "wanted": "a sac 16"},
    )
    assert "A soft sac. None came. What was done instead holds only for now." in lines(left_row(job))
