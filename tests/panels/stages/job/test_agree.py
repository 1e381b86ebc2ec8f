"""Agreement at the bench: what is typed, what is refused, and what is shown back."""

from by_name import kind_of

from pentools.record.report import missing_report_fields


def fill(form, **texts):
    for name, text in texts.items():
        form.boxes[name].text = text
    form.button.click()
    return form.status.text


def test_answers_and_ceiling_are_told_in_one_sentence(sheet):
    panel = sheet.panel("agree")
    assert "has not answered yet" in panel.result_text.value
    said = {"answered_on": "2026-04-02", "channel": "letter"}
    fill(panel.forms["answer"], action="heat", agreed="yes", **said)
    fill(panel.forms["answer"], action="polish", agreed="no", **said)
    fill(panel.forms["estimate"], ceiling="150 EUR")
    assert (
        "The owner said yes to heat; no to polishing. 0 of at most 150 EUR spent on materials."
        in panel.result_text.value
    )


def test_an_estimate_out_of_order_is_refused(sheet, job):
    form = sheet.panel("agree").forms["estimate"]
    assert fill(form, hours_low="4 h", hours_high="2 h").startswith("NOT SAVED")
    assert job.log(kind_of("agree", "estimate")) == ()


def test_what_guidance_asks_for_is_listed_with_its_state(sheet, job):
    panel = sheet.panel("agree")
    panel.more_button.value = True
    missing = len(missing_report_fields(job).missing)
    assert f": {missing} of " in panel.more_drawings.value
    assert fill(panel.forms["not applicable"], asked="accessories", why="none").startswith("NOT SAVED")
    fill(panel.forms["not applicable"], asked="accessories", why="it came alone")
    assert "it came alone" in panel.more_drawings.value
    assert len(missing_report_fields(job).missing) == missing - 1


def shown(box):
    return [tick.description for tick in box.input._row.children[:-1]]


def test_one_entry_holds_several_yeses_and_the_price(sheet, job):
    job.add("intake", "request", {"asked": "let it write again", "work": "re-sac"})
    panel = sheet.panel("agree")
    form = panel.forms["yes"]
    assert panel.chooser.value == "yes"
    assert shown(form.boxes["to"]) == [
        "heat",
        "soaking",
        "sealant or glue",
        "replacing a part",
        "publishing the story",
        "showing its pictures",
    ]
    assert form.boxes["answered_on"].text == "today"
    form.boxes["to"].input.ticks["heat"].value = True
    form.boxes["to"].input.ticks["replace part"].value = True
    assert fill(form, at_most="60 EUR", channel="by word of mouth").startswith("saved ")
    assert "yes to heat, replacing a part. 0 of at most 60 EUR" in panel.result_text.value
    assert len(job.log(kind_of("agree", "yes"))) == 1
    form.boxes["not_to"].input.ticks["heat"].value = True
    assert "Take the tick away on one side" in fill(form, channel="letter")


def test_what_was_proposed_can_be_said_yes_to_as_a_whole(sheet, job):
    job.add("intake", "request", {"asked": "polish it", "work": "finish only"})
    form = sheet.panel("agree").forms["yes"]
    assert shown(form.boxes["to"]) == ["polishing", "publishing the story", "showing its pictures"]
    fill(sheet.panel("agree").forms["proposal"], part="cap", proposed="polish it")
    assert "the proposal as a whole" in shown(form.boxes["to"])
