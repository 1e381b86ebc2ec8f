"""A hold point is let go only with a reason, which stays in the record."""

from pentools.record.holds import held


def test_a_hold_is_released_with_a_reason_that_stays(sheet, job):
    panel = sheet.panel("release")
    panel.hold_reason.value = ""
    panel._release_hold_button.click()
    assert "NOT SAVED" in panel.holds["release"].status.text
    panel.hold_reason.value = "the owner collects it today and will test it"
    panel._release_hold_button.click()
    assert held(job, "release") == ""
    assert job.record.releases("release")[0].data["reason"].startswith("the owner")
