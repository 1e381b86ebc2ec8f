"""The proposal: the newest word of each part, price as it was entered, an answer with its date and way or room for one."""

import pytest

from pentools.writeup.papers.proposal import proposal_paper


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "request", {"asked": "that it fills again", "price_limit": "60 EUR"})
    job.add("agree", "survey", {"conclusion": "sound, but the sac is gone", "grade": "good"})
    job.add("agree", "proposal", {"part": "seals", "proposed": "an older word", "reversible": "yes"})
    job.add("agree", "proposal", {"part": "nib", "mendable": "unknown", "proposed": "leave it", "alternative": "set it", "leave_it": "it skips", "risk": "none", "reversible": "yes"})  # fmt: skip
    job.add("agree", "proposal", {"part": "seals", "mendable": "yes", "proposed": "a new sac", "materials": "Latex, shellac", "reversible": "yes"})  # fmt: skip
    job.add("agree", "estimate", {"hours_low": "1 h", "hours_high": "2 h", "price_low": "45 EUR", "price_high": "58 EUR", "ceiling": "70 EUR"})  # fmt: skip
    return job


def rows(job):
    return {row.label: row for row in proposal_paper(job).rows}


def test_of_each_part_the_newest_word_counts_each_way_under_its_own_label(job):
    found = rows(job)
    assert found["You asked"].lines == ("That it fills again.",)
    assert found["What was found"].lines == ("Sound, but the sac is gone.", "Condition: good.")
    assert found["What is proposed"].parts == (
        ("Seals and sac", "A new sac. Materials: Latex, shellac."),
        ("Nib", "Leave it. Can it be mended: not known before it is open."),
    )
    assert found["Other ways"].parts == (("Nib", "Set it."),)
    assert found["If nothing is done"].parts == (("Nib", "It skips."),)
    assert found["Risk"].parts == (("Nib", "None."),)


def test_that_all_can_be_undone_is_said_only_where_it_was_entered_of_all(job):
    assert rows(job)["For good"].lines == ("All of it can be undone.",)
    job.add("agree", "proposal", {"part": "cap", "proposed": "wax"})
    assert "For good" not in rows(job)
    job.add("agree", "proposal", {"part": "cap", "proposed": "polish", "reversible": "no"})
    assert rows(job)["For good"].parts == (("Cap", "What is done here cannot be undone."),)
    job.add(
        "agree", "proposal", {"part": "cap", "proposed": "polish", "reversible": "no", "permanent": "it takes gold"}
    )
    assert rows(job)["For good"].parts == (("Cap", "It takes gold."),)


@pytest.mark.parametrize(
    ("low", "high", "big"),
    [
        ("45 EUR", "58 EUR", "45 to 58 EUR"),
        ("45 EUR", "45 EUR", "45 EUR"),
        ("45 EUR", "", "from 45 EUR"),
        ("", "58 EUR", "up to 58 EUR"),
        ("45 GBP", "58 EUR", "45 GBP to 58 EUR"),
    ],
)
def test_the_price_is_a_range_in_one_currency_or_just_what_was_entered(new_job, low, high, big):
    job = new_job()
    job.add("agree", "estimate", {"price_low": low, "price_high": high})
    assert rows(job)["Price"].big == big


def test_ceiling_limit_and_hours_are_told_apart(job):
    price = rows(job)["Price"]
    assert price.big == "45 to 58 EUR"
    assert price.lines == (
        "Never more than 70 EUR without a new yes from you. The limit you named: 60 EUR. Time at the bench: 1\u202fh to 2\u202fh.",
    )
    job.add("intake", "request", {"asked": "that it fills again", "price_limit": "70 EUR"})
    assert "The limit you named" not in rows(job)["Price"].lines[0]


def test_room_for_a_yes_with_its_date_and_way_until_one_is_there(job):
    job.add(
        "agree", "answer", {"action": "polish", "agreed": "no", "answered_on": "2026-05-03", "channel": "telephone"}
    )
    answer = rows(job)["Your answer"]
    assert answer.ticks[0] == "Yes, as it is proposed"
    assert answer.blanks == ("Date", "By letter, e-mail or telephone", "Name", "Signature")
    assert dict(answer.answers)["polishing"] == "no"
    assert dict(answer.answers)["heat"] == ""
    assert "publishing the story" not in dict(answer.answers)
    job.add("agree", "answer", {"action": "proposal", "agreed": "yes", "answered_on": "2026-05-04", "channel": "e-mail", "by": "the owner", "terms": "Go on"})  # fmt: skip
    answer = rows(job)["Your answer"]
    assert answer.lines[0].replace("\u00a0", " ") == "Yes, on 4 May 2026, by e-mail, given by the owner. “Go on”"
    assert (answer.ticks, answer.answers, answer.blanks) == ((), (), ())


def test_something_newer_opens_the_answer_again_until_it_is_agreed(job):
    yes = {"agreed": "yes", "answered_on": "2026-05-04", "channel": "by word of mouth"}
    job.add("agree", "answer", {"action": "proposal", **yes})
    job.add("agree", "proposal", {"part": "cap", "proposed": "a weld"})
    answer = rows(job)["Your answer"]
    assert "by word of mouth" in answer.lines[0]
    assert any("proposed since then" in line for line in answer.lines)
    assert answer.blanks
    job.add("agree", "answer", {"action": "departure", **yes})
    assert rows(job)["Your answer"].blanks == ()


def test_a_no_is_a_no_and_a_yes_from_one_who_may_not_decide_does_not_count(job):
    said = {"action": "proposal", "answered_on": "2026-05-04", "channel": "letter"}
    job.add("agree", "answer", {**said, "agreed": "yes", "authority": "no"})
    assert "does not count" in rows(job)["Your answer"].lines[0]
    assert rows(job)["Your answer"].blanks
    job.add("agree", "answer", {**said, "agreed": "no"})
    assert rows(job)["Your answer"].lines[0].startswith("No, on 4")


def test_no_answer_is_asked_for_where_nothing_is_proposed_or_the_job_is_over(new_job, job):
    assert "Your answer" not in rows(new_job())
    assert rows(new_job())["What is proposed"].lines == ("Nothing has been proposed yet.",)
    job.add("release", "result", {"ending": "stopped", "summary": "It stays shut."})
    assert rows(job)["Your answer"].lines == ("Not entered.",)
    assert rows(job)["Your answer"].blanks == ()


def test_a_price_that_nobody_named_leaves_what_else_was_said_of_it(new_job):
    job = new_job()
    assert rows(job)["Price"].lines == ("Not entered.",)
    job.add("agree", "estimate", {"parts_cost": "12 EUR"})
    assert (rows(job)["Price"].lines, rows(job)["Price"].big) == (("Parts and materials: 12 EUR.",), "")
    job.add("agree", "estimate", {"price_low": "45 EUR", "price_high": "58 EUR"})
    assert (rows(job)["Price"].lines, rows(job)["Price"].big) == ((), "45 to 58 EUR")


def test_hours_stand_as_they_were_entered(new_job):
    job = new_job()
    job.add("agree", "proposal", {"part": "seals", "proposed": "a new sac"})
    job.add("agree", "estimate", {"hours_low": "40 min", "hours_likely": "1.5 h", "hours_high": "2.75 h"})
    price = next(row for row in proposal_paper(job).rows if row.label == "Price")
    assert price.lines[0].replace("\u202f", " ") == "Time at the bench: 40 min to 2.75 h, most likely 1.5 h."
