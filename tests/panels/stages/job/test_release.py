"""At release the price is held against what was agreed, and the owner's leave lets it go."""

from pentools.record.stages.job.ending_kinds import RESULT


def type_into(form, **texts):
    for name, text in texts.items():
        form.boxes[name].text = text


def ready(job):
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    job.add("intake", "request", {"asked": "mend it", "price_limit": "90 EUR"})
    job.add("agree", "estimate", {"ceiling": "90 EUR"})


def test_a_price_past_the_ceiling_waits_for_the_owner(sheet, job):
    ready(job)
    panel = sheet.panel("release")
    form = panel.forms["result"]
    type_into(form, ending="done", summary="It writes again.", price="95")
    form.button.click()
    assert "NOT SAVED" in form.status.text
    assert "the price of 95 EUR is past the agreed ceiling of 90.00 EUR" in form.status.text
    assert job.newest(RESULT).price is None
    row = panel.holds["spend"]
    row.reason.value = "the owner agreed by letter of 3 March"
    row.button.click()
    form.button.click()
    assert form.status.text.startswith("saved ")
    assert job.newest(RESULT).price == "95 EUR"


def test_a_price_within_the_ceiling_is_taken(sheet, job):
    ready(job)
    form = sheet.panel("release").forms["result"]
    type_into(form, ending="done", summary="It writes again.", price="90 EUR")
    form.button.click()
    assert form.status.text.startswith("saved ")


def test_the_follow_up_is_drafted_from_what_holds_only_for_now(job, sheet):
    job.add("repairs", "repair", {"part": "threads", "method": "thread-oil", "wanted": "a section of its own"})
    drafted = sheet.panel("release").forms["result"].boxes["follow_up"].text
    assert drafted == "What holds the threads now is a makeshift: come back once this can be had: a section of its own."
