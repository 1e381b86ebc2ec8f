"""No callback fails in silence."""

from pentools.panels import guard


def test_an_unexpected_error_is_said_and_nothing_is_lost(sheet, job, monkeypatch, type_into):
    guard.strict(False)
    form = sheet.panel("fill test").forms["weighing"]
    type_into(form, mass="23.26 g")
    monkeypatch.setattr(form.job.record, "append", lambda _: 1 / 0)
    form.button.click()
    assert "NOT SAVED" in form.status.text
    assert "division by zero" in form.status.text
    assert 'role="alert"' in form.status.widget.value
    assert form.boxes["mass"].text == "23.26 g"
