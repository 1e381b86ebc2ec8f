"""Panels both ways without a browser: typed text reaches the record, and the record shows in the panel."""

import warnings

import pytest
from by_name import kind_of

from pentools.panels import guard
from pentools.panels.bench import BenchSheet, MessagePanel, open_bench
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.holds import held
from pentools.record.job import create_job, open_job
from pentools.record.registry import all_stages
from pentools.record.storage import Record
from pentools.writeup.write import write_pages


def type_into(form, **texts):
    for name, text in texts.items():
        form.boxes[name].text = text


def press_enter(box):
    box.input._handle_custom_msg({"event": "submit"}, [])


@pytest.mark.parametrize("stage", all_stages(), ids=lambda s: s.key)
def test_every_stage_has_a_panel_that_opens_empty(sheet, stage):
    panel = sheet.stage(stage.key)
    assert stage.title in panel.header.value
    assert set(panel.forms) | set(panel.hidden_kinds) == {kind.key for kind in stage.kinds}


@pytest.mark.parametrize("stage", all_stages(), ids=lambda s: s.key)
def test_labels_are_the_accessible_names(sheet, stage):
    for form in sheet.stage(stage.key).forms.values():
        for box in form.boxes.values():
            assert box.input.description.startswith(box.field.label)
            assert getattr(box.input, "continuous_update", True) is True


def test_a_weighing_by_button(sheet, job):
    form = sheet.stage("fill test").forms["weighing"]
    type_into(form, mass="23,26 g")
    form.button.click()
    assert form.status.text.startswith("saved ")
    [logged] = job.log(kind_of("fill test", "weighing"))
    values = logged.values
    assert values.mass.value == 23.26
    assert values.mass.typed == "23,26 g"
    assert form.boxes["mass"].text == ""
    assert Record.open(job.record.path).entries[-1].data["mass"]["value"] == 23.26


def test_a_weighing_by_enter(sheet, job):
    form = sheet.stage("fill test").forms["weighing"]
    type_into(form, mass="23.26 g")
    press_enter(form.boxes["mass"])
    assert form.status.text.startswith("saved ")
    assert len(job.log(kind_of("fill test", "weighing"))) == 1


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("23,26", "unit is missing"),
        ("23.26 mm", "unit of length"),
        ("", "filled in"),
        ("nan g", "leave the field empty"),
        ("2326 g", "another unit"),
    ],
)
def test_a_bad_weighing_is_refused_beside_its_box_and_kept(sheet, job, text, words):
    form = sheet.stage("fill test").forms["weighing"]
    type_into(form, mass=text)
    form.button.click()
    assert form.status.text.startswith("NOT SAVED")
    assert words in form.boxes["mass"].message.value
    assert 'role="alert"' in form.boxes["mass"].message.value
    assert form.boxes["mass"].text == text
    assert job.log(kind_of("fill test", "weighing")) == ()


def test_the_sentence_and_the_figure_follow_the_record(sheet):
    panel = sheet.stage("fill test")
    form = panel.forms["weighing"]
    assert "Weigh it empty first" in panel.result_text.value
    type_into(form, mass="23.26 g", state="dry")
    form.button.click()
    assert "Now fill it" in panel.result_text.value
    before = panel.result_drawings.value
    type_into(form, mass="25.06 g", state="filled")
    form.button.click()
    assert "It draws 1.79\u202fmL" in panel.result_text.value
    assert "<svg" in panel.result_drawings.value
    assert panel.result_drawings.value != before


def test_a_double_click_saves_once_and_keeps_its_word(sheet, job):
    form = sheet.stage("fill test").forms["weighing"]
    type_into(form, mass="23.26 g")
    form.button.click()
    form.button.click()
    assert form.status.text.startswith("saved ")
    assert len(job.log(kind_of("fill test", "weighing"))) == 1


def test_an_entry_is_corrected_and_the_old_line_stays(sheet, job):
    panel = sheet.stage("fill test")
    form = panel.forms["weighing"]
    type_into(form, mass="32.26 g")
    form.button.click()
    wrong = job.log(kind_of("fill test", "weighing"))[0].entry
    panel.pick.value = wrong.id
    panel.correct_button.click()
    assert form.boxes["mass"].text == "32.26 g"
    type_into(form, mass="23.26 g")
    form.button.click()
    [logged] = job.log(kind_of("fill test", "weighing"))
    right, values = logged.entry, logged.values
    assert values.mass.value == 23.26
    assert right.replaces == wrong.id
    assert wrong.id in {e.id for e in job.record.entries}
    assert "corrected" in panel.log.value


def test_an_entry_is_withdrawn_only_with_a_reason(sheet, job):
    panel = sheet.stage("fill test")
    type_into(panel.forms["weighing"], mass="23.26 g")
    panel.forms["weighing"].button.click()
    panel.pick.value = job.log(kind_of("fill test", "weighing"))[0].entry.id
    panel.withdraw_button.click()
    assert "NOT SAVED" in panel.status.text
    panel.why.value = "weighed the wrong pen"
    panel.withdraw_button.click()
    assert panel.status.text.startswith("withdrawn")
    assert job.log(kind_of("fill test", "weighing")) == ()


def test_a_single_form_shows_what_is_recorded_and_replaces_it(sheet, job):
    form = sheet.stage("intake").forms["arrival"]
    assert form.boxes["pen"].text == "a drawn test pen"
    type_into(form, mass_g="16.42 g")
    form.button.click()
    assert job.newest(kind_of("intake", "arrival")).mass_g.value == 16.42
    assert len(job.record.live("intake", "arrival")) == 1
    assert (
        BenchSheet(open_job(job.name, bench=job.bench)).stage("intake").forms["arrival"].boxes["mass_g"].text
        == "16.42 g"
    )


def test_release_is_held_until_the_leak_check_and_the_limits(sheet, job):
    panel = sheet.stage("release")
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


def test_a_hold_is_released_with_a_reason_that_stays(sheet, job):
    panel = sheet.stage("release")
    panel.hold_reason.value = ""
    panel._release_hold_button.click()
    assert "NOT SAVED" in panel.status.text
    panel.hold_reason.value = "the owner collects it today and will test it"
    panel._release_hold_button.click()
    assert held(job, "release") == ""
    assert job.record.releases("release")[0].data["reason"].startswith("the owner")


def test_stopped_is_an_ending_that_nothing_holds(sheet, job):
    form = sheet.stage("release").forms["result"]
    type_into(form, ending="stopped", summary="The barrel would not open.")
    form.button.click()
    assert form.status.text.startswith("saved ")


def test_the_timer(sheet, job):
    panel = sheet.stage("work log")
    assert panel.stop.disabled
    panel.activity.value = "clean"
    panel.start.click()
    assert panel.start.disabled
    assert not panel.stop.disabled
    panel.timed.value = "flushed it"
    panel.stop.click()
    assert "timer stopped" in panel.status.text
    assert [e.kind for e in job.record.live("work log")] == ["timer start", "timer stop"]


def test_an_unexpected_error_is_said_and_nothing_is_lost(sheet, job, monkeypatch):
    guard.strict(False)
    form = sheet.stage("fill test").forms["weighing"]
    type_into(form, mass="23.26 g")
    monkeypatch.setattr(form.job.record, "append", lambda _: 1 / 0)
    form.button.click()
    assert "NOT SAVED" in form.status.text
    assert "division by zero" in form.status.text
    assert 'role="alert"' in form.status.widget.value
    assert form.boxes["mass"].text == "23.26 g"


def test_other_panels_hear_of_it(sheet):
    release, fill = sheet.stage("release"), sheet.stage("fill test")
    assert "leak check" in release.hold_text.value
    type_into(fill.forms["leak check"], rested="12 h", dry="yes")
    fill.forms["leak check"].button.click()
    assert "leak check" not in release.hold_text.value
    assert "limits" in release.hold_text.value


def test_large_type_reaches_every_panel(sheet):
    panel = sheet.stage("limits")
    sheet.large.value = True
    assert "pt-large" in panel.widget._dom_classes
    sheet.large.value = False
    assert "pt-large" not in panel.widget._dom_classes


def test_an_unknown_stage_is_a_message(sheet):
    assert isinstance(sheet.stage("polishing the moon"), MessagePanel)


def test_an_entry_of_an_unknown_kind_is_shown_and_kept(sheet, job):
    job.record.append(new_entry("limits", "from the future", {"x": 1}))
    assert "does not know" in sheet.stage("limits").log.value


def test_outside_a_job_it_is_a_practice_sheet(tmp_path):
    opened = open_bench(tmp_path)
    assert opened.practice
    assert "nothing typed here is kept" in opened.overview.value
    assert not (tmp_path / "record.jsonl").exists()


def test_a_bench_file_that_cannot_be_read_is_a_message(job):
    (job.bench.folder / "bench.toml").write_text("[balance\n")
    opened = open_bench(job.folder)
    assert isinstance(opened, MessagePanel)
    assert "bench.toml" in opened.text
    assert opened.stage("intake") is opened


def test_nothing_deprecated_is_used(sheet):
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        for stage in all_stages():
            sheet.stage(stage.key)


def test_more_is_drawn_only_when_it_is_asked_for(sheet, job):
    for state, mass in (("dry", "23.26 g"), ("filled", "25.06 g"), ("drained", "23.50 g"), ("filled", "25.07 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    panel = sheet.stage("fill test")
    assert panel.more_drawings.value == ""
    panel.more_button.value = True
    assert panel.more_drawings.value.count("<svg") == 2
    assert "How it was worked out" in panel.more_drawings.value
    assert sheet.stage("limits").more_button.layout.display == "none"


def test_several_stages_in_one_cell(sheet):
    group = sheet.stage("limits", "pictures")
    assert [panel.stage.key for panel in group.panels] == ["limits", "pictures"]
    assert sheet.panels == list(group.panels)


def test_the_dimensions_form_shows_where_to_measure(sheet):
    panel = sheet.stage("fill test")
    panel.chooser.value = "dimensions"
    assert panel.result_drawings.value.count("<svg") == 3
    assert "bore" in panel.result_drawings.value


def test_no_spending_past_the_ceiling(sheet, job):
    job.add("intake", "request", {"asked": "mend it", "price_limit": "20 EUR"})
    panel = sheet.stage("work log")
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
    assert "NOT SAVED" in panel.status.text
    row.reason.value = "the owner agreed by letter"
    row.button.click()
    assert panel.holder.layout.display == "none"
    form.button.click()
    assert form.status.text.startswith("saved ")
    assert job.record.releases("spend")[0].data["reason"] == "the owner agreed by letter"
    type_into(form, what="the old ring", way="returned")
    form.button.click()
    assert len(job.log(kind_of("work log", "material"))) == 3


def test_a_job_in_which_nothing_is_missing_says_so(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    job = create_job(bench, "green-piston", sample="green-piston")
    assert "a copy for the owner" in BenchSheet(job).check().value
    write_pages(job, ("client", "blog"))
    assert BenchSheet(job).check().value == "<p>Nothing is missing, and nothing is odd.</p>"
