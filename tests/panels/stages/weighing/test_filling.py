"""The fill test's panel: its sentence and its figure follow the record."""

from pentools.panels.bench import BenchSheet
from pentools.record.stages.weighing.kinds import DIMENSIONS


def test_the_sentence_and_the_figure_follow_the_record(sheet, type_into):
    panel = sheet.panel("fill test")
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


def test_the_dimensions_form_shows_where_to_measure(sheet):
    panel = sheet.panel("fill test")
    panel.show_form("dimensions")
    assert panel.result_drawings.value.count("<svg") == 3
    assert "bore" in panel.result_drawings.value


def test_dimensions_that_another_stage_has_are_filled_in(job, sheet, put):
    job.add("intake", "arrival", {"pen": "a drawn pen", "system": "bulb"})
    job.add("seal", "measure", {"place": "breather", "tube": "2 mm", "tube_hole": "1.95 mm", "reach": "55 mm"})
    panel = sheet.panel("fill test")
    boxes = panel.forms["dimensions"].boxes
    assert (boxes["reach"].text, boxes["tube"].text, boxes["bore"].text) == ("55 mm", "2 mm", "")
    assert put(panel, "dimensions", bore="8.3 mm").startswith("saved ")
    assert job.newest(DIMENSIONS).reach.value == 55


def test_dips_on_a_tared_balance_give_the_fill_and_their_chart(sheet, type_into):
    panel = sheet.panel("fill test")
    form = panel.forms["weighing"]
    for mass in ("0.18 g", "1.19 g", "1.20 g"):
        type_into(form, mass=mass, state="gain")
        form.button.click()
    assert "It draws 1.19\u202fmL ± 0.05 in 3 dips" in panel.result_text.value
    panel.more_button.value = True
    assert "Full at 1.19 mL" in panel.more_drawings.value


def test_a_whole_pens_mass_is_no_gain(sheet, type_into):
    panel = sheet.panel("fill test")
    form = panel.forms["weighing"]
    type_into(form, mass="23.26 g", state="gain")
    form.button.click()
    assert "Was the balance tared with the pen on it?" in form.status.text
    assert not panel.job.record.live("fill test")


def test_the_state_goes_on_where_it_was_before_the_kernel_was_new(job):
    job.add("fill test", "weighing", {"state": "dry", "mass": "15.2 g"})
    assert BenchSheet(job).panel("fill test").forms["weighing"].boxes["state"].text == "filled"
    job.add("fill test", "weighing", {"state": "gain", "mass": "0.31 g"})
    assert BenchSheet(job).panel("fill test").forms["weighing"].boxes["state"].text == "gain"
