"""The finish's panel both ways: the plan answers while it is typed, the next step is offered, the hold is kept."""

import pytest
from by_name import kind_of

from pentools.panels import kind_form
from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.job import open_job
from pentools.record.stages.finish.plan import plan_of


@pytest.fixture
def panel(sheet, job):
    path = job.bench.folder / "bench.toml"
    path.write_text(
        path.read_text().replace("abrasives = []", 'abrasives = ["P600", "P1200", "film 9 um", "film 3 um"]')
    )
    reopened = open_job(job.name, bench=open_bench_folder(job.bench.folder))
    return BenchSheet(reopened).panel("finish")


def type_into(form, **texts):
    for name, text in texts.items():
        form.boxes[name].text = text


def make_ready(panel):
    type_into(panel.forms["consent to polish"], agreed="yes")
    panel.forms["consent to polish"].button.click()
    type_into(panel.forms["masks on"], masks="yes")
    panel.forms["masks on"].button.click()


def save_plan(panel, defect="20 um"):
    type_into(panel.forms["plan"], defect=defect, zone="plain barrel", trim="none")
    panel.forms["plan"].button.click()


def test_a_fresh_plan_begins_with_the_stock_and_the_material(panel):
    boxes = panel.forms["plan"].boxes
    assert boxes["own"].text == "P600; P1200; film 9 um; film 3 um"
    assert boxes["material"].text == "celluloid"


def test_the_plan_answers_while_it_is_typed_and_nothing_is_saved(panel):
    form = panel.forms["plan"]
    type_into(form, defect="20 um")
    assert "Name the zone" in panel.preview.value
    type_into(form, zone="plain barrel")
    assert "film 3 µm" in panel.preview.value
    assert "Over budget" not in panel.preview.value
    type_into(form, defect="90 um")
    assert "Over budget" in panel.preview.value
    type_into(form, own="600; 400")
    assert "Which scale?" in panel.preview.value
    assert panel.job.log(kind_of("finish", "plan")) == ()


def test_without_a_grade_that_is_what_is_missing(sheet, job):
    job.add("intake", "arrival", {"pen": "a pen", "material": "perhaps celluloid"})
    panel = sheet.panel("finish")
    type_into(panel.forms["plan"], defect="20 um")
    assert "Still missing: a grade that is owned." in panel.preview.value


def test_the_first_abrasive_is_held_and_released_with_a_reason(panel):
    save_plan(panel)
    form = panel.forms["step"]
    assert "consent" in panel.hold_text.value
    form.button.click()
    assert "NOT SAVED" in form.status.text
    assert "held" in form.status.text
    assert panel.job.log(kind_of("finish", "step")) == ()
    panel.hold_reason.value = "it is my own trial barrel"
    panel._release_hold_button.click()
    assert panel.holder.layout.display == "none"
    form.button.click()
    assert form.status.text.startswith("saved ")
    assert panel.job.record.releases("polish")[0].data["reason"] == "it is my own trial barrel"


def test_the_next_step_is_offered_after_each_save(panel):
    make_ready(panel)
    save_plan(panel)
    form, steps = panel.forms["step"], plan_of(panel.job).steps
    assert form.boxes["grade"].text == steps[0].grade.label
    assert form.boxes["wet"].text == "wet"
    type_into(form, minutes="6 min", seen="one pit left")
    form.button.click()
    assert form.status.text.startswith("saved ")
    assert form.boxes["grade"].text == steps[1].grade.label
    assert form.boxes["minutes"].text == ""
    assert f"1 of {len(steps)} steps done" in panel.result_text.value
    assert "✓" in panel.result_table.value


def test_a_double_click_does_not_log_the_next_step_too(panel, monkeypatch):
    monkeypatch.setattr(kind_form, "DOUBLE_CLICK_SECONDS", 60)  # however slow the machine is
    make_ready(panel)
    save_plan(panel)
    form = panel.forms["step"]
    type_into(form, minutes="6 min")
    form.button.click()
    form.button.click()
    assert len(panel.job.log(kind_of("finish", "step"))) == 1
    assert form.status.text.startswith("saved ")


def test_a_grade_typed_by_hand_is_kept_and_needs_its_scale(panel):
    make_ready(panel)
    save_plan(panel)
    form = panel.forms["step"]
    type_into(form, grade="400")
    panel.refresh()
    assert form.boxes["grade"].text == "400"
    form.button.click()
    assert "Which scale?" in form.status.text
    assert panel.job.log(kind_of("finish", "step")) == ()
    type_into(form, grade="P600")
    form.button.click()
    assert form.status.text.startswith("saved ")


def test_the_figures_and_the_zones_follow_the_record(panel):
    assert "<svg" not in panel.result_drawings.value
    save_plan(panel)
    assert panel.result_drawings.value.count("<svg") == 1
    type_into(panel.forms["zone"], part="barrel", zone="imprint", start_mm="20 mm", end_mm="41 mm", masked="yes")
    panel.forms["zone"].button.click()
    assert panel.result_drawings.value.count("<svg") == 2
    assert "masked, no abrasive" in panel.result_drawings.value
    assert "The imprint on the barrel" in panel.result_table.value


def test_a_zone_that_runs_backwards_and_an_empty_measurement_are_refused(panel):
    type_into(panel.forms["zone"], part="barrel", zone="imprint", start_mm="41 mm", end_mm="20 mm")
    panel.forms["zone"].button.click()
    assert "beyond 41 mm" in panel.forms["zone"].status.text
    type_into(panel.forms["measure"], station="middle")
    panel.forms["measure"].button.click()
    assert "a diameter or a mass" in panel.forms["measure"].status.text
    type_into(panel.forms["measure"], station="", diameter="12.03 mm")
    panel.forms["measure"].button.click()
    assert "named for a diameter" in panel.forms["measure"].status.text
    assert panel.job.record.live("finish") == []


def test_the_cautions_stand_above_the_forms(panel):
    text = panel.above.children[0].value
    for words in ("eye protection", "Fire", "mercury", "Follow local codes; ask a licensed professional."):
        assert words in text
