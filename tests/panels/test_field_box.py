"""One box: its label is its accessible name, Enter saves, and an error stands beside the text that was typed."""

import pytest
from by_name import kind_of

from pentools.fields import Field
from pentools.panels.bench import BenchSheet
from pentools.panels.field_box import with_own_unit
from pentools.record.bench import open_bench_folder
from pentools.record.job import open_job
from pentools.record.registry import all_stages


@pytest.mark.parametrize("stage", all_stages(), ids=lambda s: s.key)
def test_labels_are_the_accessible_names(sheet, stage):
    for form in sheet.panel(stage.key).forms.values():
        for box in form.boxes.values():
            assert box.input.description.startswith(box.field.label)
            assert getattr(box.input, "continuous_update", True) is True


def test_a_weighing_by_enter(sheet, job, type_into, press_enter):
    form = sheet.panel("fill test").forms["weighing"]
    type_into(form, mass="23.26 g")
    press_enter(form.boxes["mass"])
    assert form.status.text.startswith("saved ")
    assert len(job.log(kind_of("fill test", "weighing"))) == 1


def test_a_bare_number_is_read_in_the_box_s_own_unit_and_said(sheet, job, type_into):
    form = sheet.panel("fill test").forms["weighing"]
    type_into(form, mass="23,26")
    assert "read as 23.26\u202fg" in form.boxes["mass"].message.value
    form.button.click()
    assert job.log(kind_of("fill test", "weighing"))[0].values.mass.value == 23.26


def test_a_day_in_figures_is_said_as_this_bench_writes_it(job, type_into):
    (job.bench.folder / "bench.toml").write_text('[bench]\ndate_order = "day first"\n', encoding="utf-8")
    form = BenchSheet(open_job(job.name, bench=open_bench_folder(job.bench.folder))).panel("intake").forms["arrival"]
    type_into(form, arrived_on="3/4/2026")
    assert "read as 2026-04-03" in form.boxes["arrived_on"].message.value


@pytest.mark.parametrize(
    ("kind", "unit", "text", "given"),
    [
        ("quantity", "mm", "8,1", "8,1 mm"),
        ("quantities", "mm", "9,10; 9,10; 9,05", "9,10; 9,10; 9,05 mm"),
        ("quantity", "min", "45", "45 min"),
        ("quantity", "mm", "8.10 ± 0.02", "8.10 ± 0.02 mm"),
        ("quantity", "mm", "3/8 in", "3/8 in"),
        ("quantity", "mm", '5"', '5"'),
        ("quantity", "1", "45", "45"),
        ("quantity", "mm", "", ""),
        ("text", "", "45", "45"),
    ],
)
def test_what_a_box_takes_a_bare_number_for(kind, unit, text, given):
    assert with_own_unit(Field("x", "X", kind, unit=unit), text) == given


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("23.26 mm", "unit of length"),
        ("", "filled in"),
        ("nan g", "leave the field empty"),
        ("2326 g", "another unit"),
    ],
)
def test_a_bad_weighing_is_refused_beside_its_box_and_kept(sheet, job, text, words, type_into):
    form = sheet.panel("fill test").forms["weighing"]
    type_into(form, mass=text)
    form.button.click()
    assert form.status.text.startswith("NOT SAVED")
    assert words in form.boxes["mass"].message.value
    assert 'role="alert"' in form.boxes["mass"].message.value
    assert form.boxes["mass"].text == text
    assert job.log(kind_of("fill test", "weighing")) == ()


def test_what_is_suggested_counts_as_the_default_and_never_goes_over_what_was_typed(sheet):
    box = sheet.panel("fill test").forms["weighing"].boxes["mass"]
    box.suggest("15.2 g")
    assert box.text == box.field.default == "15.2 g"
    box.suggest("15.3 g")
    assert box.text == "15.3 g"
    box.text = "16 g"
    box.suggest("15.4 g")
    assert (box.text, box.field.default) == ("16 g", "15.4 g")
