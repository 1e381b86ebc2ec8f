"""Price against what was agreed, care in the restorer's words, and whom to ask."""

import pytest
from writeup.pages import CONTACT

from pentools.writeup.letter.after import care_row, contact_row, price_row


def said(row):
    return " ".join(row.lines).replace("\u202f", " ").replace("\u00a0", " ")


def result(job, **more):
    job.add("release", "result", {"ending": "done", "summary": "x", **more})


@pytest.mark.parametrize(
    ("price", "text"),
    [
        ("58 EUR", "58 EUR, of 70 EUR agreed at most."),
        ("70.50 EUR", "70.50 EUR; 70 EUR at most had been agreed."),
        ("58 GBP", "58 GBP, of 70 EUR agreed at most."),
    ],
)
def test_the_price_against_the_ceiling(new_job, price, text):
    job = new_job()
    assert price_row(job) is None
    job.add("intake", "request", {"asked": "x", "price_limit": "70 EUR"})
    assert said(price_row(job)) == "At most 70 EUR was agreed."
    result(job)
    assert said(price_row(job)) == "No price was entered. At most 70 EUR was agreed."
    result(job, price=price)
    assert said(price_row(job)) == text


def test_the_estimate_and_what_the_parts_cost(new_job):
    job = new_job()
    result(job, price="58 EUR")
    job.add("agree", "estimate", {"price_low": "40 EUR", "price_high": "60 EUR"})
    for cost in ("2.80 EUR", "0.10 EUR"):
        job.add("work log", "material", {"what": "sac", "way": "added", "cost": cost})
    assert said(price_row(job)) == "58 EUR. The estimate was 40 to 60 EUR. Parts and materials came to 2.90 EUR."


def test_parts_in_two_moneys_or_without_one_have_no_total(new_job):
    job = new_job()
    result(job, price="58 EUR")
    job.add("work log", "material", {"what": "sac", "way": "added", "cost": "2.80 EUR"})
    job.add("work log", "material", {"what": "ring", "way": "added", "cost": "1 GBP"})
    assert said(price_row(job)) == "58 EUR."


def test_the_restorers_care_stands_and_common_practice_only_where_there_is_none(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "x", "system": "piston", "material": "celluloid"})
    assert care_row(job) is None
    result(job)
    assert "(Common practice for a pen of its kind.)" in said(care_row(job))
    result(job, care="Talk to it. Then leave it alone.")
    assert said(care_row(job)) == "Talk to it. Then leave it alone."
    result(job, care=" ".join(f"Sentence {n} of nine long words in all here." for n in range(30)))
    assert said(care_row(job)).endswith("The rest of it stands in the record.")


def test_what_was_mended_has_its_care_whatever_was_written_and_however_much(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "x", "system": "lever-sac", "material": "hard rubber"})
    result(job, care="Talk to it.")
    for part, method in (("cap", "cap-lip-glue"), ("inner-cap", "inner-cap-set"), ("cap", "cap-fade-leave")):
        job.add("repairs", "repair", {"part": part, "method": method})
    glued, inner, wax = "a glued crack is weaker than the wall", "have the inner cap looked at", "Its wax is renewed"
    assert all(said(care_row(job)).count(words) == 1 for words in ("Talk to it.", glued, inner, wax))
    result(job, care="Mind the crack, and wax it yearly.")
    assert inner in said(care_row(job))
    assert glued not in said(care_row(job))
    assert wax not in said(care_row(job))
    result(job, care=" ".join(f"Sentence {n} of nine long words in all here." for n in range(30)))
    assert glued in said(care_row(job))
    result(job)
    assert all(said(care_row(job)).count(words) == 1 for words in (glued, inner, wax))


def test_whom_to_ask_and_until_when(new_job):
    job = new_job()
    assert said(contact_row(job)) == f"Ask {CONTACT}"
    result(job, follow_up="Watch the lip.", promise_until="2027-01-02")
    assert said(contact_row(job)) == f"Watch the lip. The work is answered for until 2 January 2027. Ask {CONTACT}"
    (job.bench.folder / "bench.toml").write_text("")
    from pentools.record.job import job_in

    bare = job_in(job.folder)
    assert said(contact_row(bare)) == "Watch the lip. The work is answered for until 2 January 2027."


def test_what_holds_only_for_now_says_when_to_come_back(new_job):
    job = new_job()
    job.add("repairs", "repair", {"part": "threads", "method": "thread-oil", "wanted": "a section of its own"})
    job.add("release", "result", {"ending": "done with limits", "summary": "It writes.", "follow_up": "Watch the lip."})
    wanted = "come back once this can be had: a section of its own."
    assert said(contact_row(job)).startswith("Watch the lip. What holds the threads now is a makeshift: " + wanted)
    told = {"ending": "done with limits", "summary": "It writes.", "follow_up": "I look for a section of its own."}
    job.add("release", "result", told)
    assert "makeshift" not in said(contact_row(job))


def test_a_pen_that_came_back_and_is_covered_says_so_beside_its_price(new_job):
    job = new_job()
    job.add("release", "result", {"ending": "done", "summary": "It writes.", "price": "0 EUR"})
    for covered, told in (("", False), ("no", False), ("yes", True)):
        job.add("intake", "coming back", {"older": "pen-one", "failed": "it leaked", "covered": covered})
        assert ("covered by what was promised" in said(price_row(job))) is told
