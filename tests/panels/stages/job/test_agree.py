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
