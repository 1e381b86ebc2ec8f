"""The work log's panel: its timer, and no spending past the agreed ceiling."""

from by_name import kind_of


def test_the_timer(sheet, job):
    panel = sheet.panel("work log")
    assert panel.stop.disabled
    panel.activity.value = "clean"
    panel.start.click()
    assert panel.start.disabled
    assert not panel.stop.disabled
    panel.timed.value = "flushed it"
    panel.stop.click()
    assert "timer stopped" in panel.status.text
    assert [e.kind for e in job.record.live("work log")] == ["timer start", "timer stop"]


def test_no_spending_past_the_ceiling(sheet, job, type_into):
    job.add("intake", "request", {"asked": "mend it", "price_limit": "20 EUR"})
    panel = sheet.panel("work log")
    form = panel.forms["material"]
    type_into(form, what="a cork", way="added", cost="15 EUR")
    form.button.click()
    assert form.status.text.startswith("saved ")
    assert panel.holder.layout.display == "none"
    type_into(form, what="a ring", way="added", cost="6 EUR")
    form.button.click()
    assert "21.00 EUR would be past the agreed ceiling of 20.00 EUR" in form.status.text
    assert form.boxes["what"].text == "a ring"
    assert panel.holder.layout.display == ""
    row = panel.holds["spend"]
    row.button.click()
    assert "NOT SAVED" in row.status.text
    row.reason.value = "the owner agreed by letter"
    row.button.click()
    assert panel.holder.layout.display == "none"
    form.button.click()
    assert form.status.text.startswith("saved ")
    assert job.record.releases("spend")[0].data["reason"] == "the owner agreed by letter"
    type_into(form, what="the old ring", way="returned")
    form.button.click()
    assert len(job.log(kind_of("work log", "material"))) == 3
