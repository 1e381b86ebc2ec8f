"""A stage's panel both ways: the record shows in it, entries are corrected and withdrawn, holds are kept."""

import warnings

import pytest
from by_name import kind_of

from pentools.record.entries import new_entry
from pentools.record.registry import all_stages


@pytest.mark.parametrize("stage", all_stages(), ids=lambda s: s.key)
def test_every_stage_has_a_panel_that_opens_empty(sheet, stage):
    panel = sheet.panel(stage.key)
    assert stage.title in panel.header.value
    assert set(panel.forms) | set(panel.hidden_kinds) == {kind.key for kind in stage.kinds}


def test_an_entry_is_corrected_and_the_old_line_stays(sheet, job, type_into):
    panel = sheet.panel("fill test")
    form = panel.forms["weighing"]
    type_into(form, mass="32.26 g")
    form.button.click()
    wrong = job.log(kind_of("fill test", "weighing"))[0].entry
    panel.log.pick.value = wrong.id
    panel.log.correct_button.click()
    assert form.boxes["mass"].text == "32.26 g"
    type_into(form, mass="23.26 g")
    form.button.click()
    [logged] = job.log(kind_of("fill test", "weighing"))
    right, values = logged.entry, logged.values
    assert values.mass.value == 23.26
    assert right.replaces == wrong.id
    assert wrong.id in {e.id for e in job.record.entries}
    assert "corrected" in panel.log.table.value


def test_an_entry_is_withdrawn_only_with_a_reason(sheet, job, type_into):
    panel = sheet.panel("fill test")
    type_into(panel.forms["weighing"], mass="23.26 g")
    panel.forms["weighing"].button.click()
    panel.log.pick.value = job.log(kind_of("fill test", "weighing"))[0].entry.id
    panel.log.withdraw_button.click()
    assert "NOT SAVED" in panel.log.status.text
    panel.log.why.value = "weighed the wrong pen"
    panel.log.withdraw_button.click()
    assert panel.log.status.text.startswith("withdrawn")
    assert job.log(kind_of("fill test", "weighing")) == ()


def test_release_is_held_until_the_leak_check_and_the_limits(sheet, job, type_into):
    panel = sheet.panel("release")
    form = panel.forms["result"]
    assert "leak check" in panel.hold_text.value
    type_into(form, ending="done", summary="It writes again.")
    form.button.click()
    assert "NOT SAVED" in form.status.text
    assert "leak check" in form.status.text
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    panel.refresh()
    assert panel.holder.layout.display == "none"
    form.button.click()
    assert form.status.text.startswith("saved ")


def test_stopped_is_an_ending_that_nothing_holds(sheet, job, type_into):
    form = sheet.panel("release").forms["result"]
    type_into(form, ending="stopped", summary="The barrel would not open.")
    form.button.click()
    assert form.status.text.startswith("saved ")


def test_other_panels_hear_of_it(sheet, type_into):
    sheet.open_stage("release")
    release, fill = sheet.panel("release"), sheet.panel("fill test")
    assert "leak check" in release.hold_text.value
    type_into(fill.forms["leak check"], rested="12 h", dry="yes")
    fill.forms["leak check"].button.click()
    assert "leak check" not in release.hold_text.value
    assert "limits" in release.hold_text.value


def test_what_a_save_changes_stands_before_its_figure_is_drawn(sheet, put, monkeypatch):
    panel, seen = sheet.panel("fill test"), []
    draw, owed_before = panel.result, sheet.owed.label.value

    def drawn():
        seen.append((panel.forms["leak check"].status.text, sheet.owed.label.value, panel.log.table.value))
        return draw()

    monkeypatch.setattr(panel, "result", drawn)
    put(panel, "leak check", rested="12 h", dry="yes")
    [(said, owed, log)] = seen
    assert said.startswith("saved")
    assert owed == sheet.owed.label.value != owed_before
    assert "12\u202fh" in log


def test_an_entry_of_an_unknown_kind_is_shown_and_kept(sheet, job):
    job.record.append(new_entry("limits", "from the future", {"x": 1}))
    assert "does not know" in sheet.panel("limits").log.table.value


def test_nothing_deprecated_is_used(sheet):
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        for stage in all_stages():
            sheet.panel(stage.key)


def test_more_is_drawn_only_when_it_is_asked_for(sheet, job):
    for state, mass in (("dry", "23.26 g"), ("filled", "25.06 g"), ("drained", "23.50 g"), ("filled", "25.07 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    panel = sheet.panel("fill test")
    assert panel.more_drawings.value == ""
    panel.more_button.value = True
    assert panel.more_drawings.value.count("<svg") == 2
    assert "How it was worked out" in panel.more_drawings.value
    assert sheet.panel("limits").more_button.layout.display == "none"
