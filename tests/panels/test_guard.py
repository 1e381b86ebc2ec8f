"""No callback fails in silence."""

from pentools.panels import guard
from pentools.panels.guard import AskedOnce, Status


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


def test_what_is_unlikely_is_asked_once_and_again_when_it_changed():
    status = Status()
    once = AskedOnce(status, "Press it again.")
    assert once.sure("14 g", lambda: "")
    assert not once.sure("142 g", lambda: "Is that right?")
    assert status.text == "Is that right? Not saved yet. Press it again."
    assert not once.sure("143 g", lambda: "And that?")
    assert once.sure("143 g", lambda: "And that?")
    assert not once.sure("143 g", lambda: "And that?")  # it was taken; the next one is asked about afresh
