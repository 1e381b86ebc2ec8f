"""A form of one kind: saved by its button, once, and filled again from what is recorded."""

from by_name import kind_of

from pentools.panels.bench import BenchSheet
from pentools.record.job import open_job
from pentools.record.storage import Record


def test_a_weighing_by_button(sheet, job, type_into):
    form = sheet.panel("fill test").forms["weighing"]
    type_into(form, mass="23,26 g")
    form.button.click()
    assert form.status.text.startswith("saved ")
    [logged] = job.log(kind_of("fill test", "weighing"))
    values = logged.values
    assert values.mass.value == 23.26
    assert values.mass.typed == "23,26 g"
    assert form.boxes["mass"].text == ""
    assert Record.open(job.record.path).entries[-1].data["mass"]["value"] == 23.26


def test_a_double_click_saves_once_and_keeps_its_word(sheet, job, type_into):
    form = sheet.panel("fill test").forms["weighing"]
    type_into(form, mass="23.26 g")
    form.button.click()
    form.button.click()
    assert form.status.text.startswith("saved ")
    assert len(job.log(kind_of("fill test", "weighing"))) == 1


def test_a_single_form_shows_what_is_recorded_and_replaces_it(sheet, job, type_into):
    form = sheet.panel("intake").forms["arrival"]
    assert form.boxes["pen"].text == "a drawn test pen"
    type_into(form, mass_g="16.42 g")
    form.button.click()
    assert job.newest(kind_of("intake", "arrival")).mass_g.value == 16.42
    assert len(job.record.live("intake", "arrival")) == 1
    assert (
        BenchSheet(open_job(job.name, bench=job.bench)).panel("intake").forms["arrival"].boxes["mass_g"].text
        == "16.42 g"
    )


def test_enter_in_a_saved_and_empty_form_leads_on_and_never_past_what_was_typed(sheet, job, type_into, press_enter):
    sheet.open_stage("fill test")
    form = sheet.panel("fill test").forms["weighing"]
    press_enter(form.boxes["mass"])
    assert "NOT SAVED" in form.status.text  # nothing was saved in it yet
    type_into(form, mass="23.26 g")
    press_enter(form.boxes["mass"])
    press_enter(form.boxes["mass"])  # the same press twice
    assert sheet.slots["fill test"].is_open
    form._last_save -= 5
    type_into(form, mass="23.2")
    press_enter(form.boxes["mass"])
    assert len(job.log(kind_of("fill test", "weighing"))) == 2
    form._last_save -= 5
    press_enter(form.boxes["mass"])
    assert sheet.slots["intake"].is_open
    assert not sheet.slots["fill test"].is_open
