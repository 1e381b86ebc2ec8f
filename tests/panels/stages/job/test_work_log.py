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


def test_what_held_in_a_dry_trial_stands_in_the_form_of_what_went_in(job, sheet, put):
    tried = {"place": "head", "what": "dash 007, nitrile", "outside": "7.30 mm", "lot": "drawer 2", "dry": "yes"}
    job.add("seal", "trial", {**tried, "happened": "no touch"})
    panel = sheet.panel("work log")
    boxes = panel.forms["material"].boxes
    assert boxes["what"].text == ""
    job.add("seal", "trial", {**tried, "what": "dash 008, nitrile", "outside": "8.30 mm", "happened": "pulls back"})
    panel.refresh()
    assert [boxes[name].text for name in ("what", "lot", "way", "part")] == [
        "dash 008, nitrile",
        "drawer 2",
        "added",
        "seals",
    ]
    panel.forms["material"].button.click()
    assert panel.forms["material"].status.text.startswith("saved ")
    assert [boxes[name].text for name in ("what", "lot", "way", "part")] == ["", "", "", ""], "it is offered once"


def test_what_is_being_typed_is_not_replaced_by_an_offer(job, sheet, type_into):
    panel = sheet.panel("work log")
    type_into(panel.forms["material"], what="old cork", way="removed")
    tried = {"place": "head", "what": "a ring", "outside": "8.30 mm", "dry": "yes", "happened": "pulls back"}
    job.add("seal", "trial", tried)
    panel.refresh()
    assert (panel.forms["material"].boxes["what"].text, panel.forms["material"].boxes["way"].text) == (
        "old cork",
        "removed",
    )
