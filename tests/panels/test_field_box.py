"""One box: its label is its accessible name, Enter saves, and an error stands beside the text that was typed."""

import pytest
from by_name import kind_of

from pentools.record.registry import all_stages


@pytest.mark.parametrize("stage", all_stages(), ids=lambda s: s.key)
def test_labels_are_the_accessible_names(sheet, stage):
    for form in sheet.stage(stage.key).forms.values():
        for box in form.boxes.values():
            assert box.input.description.startswith(box.field.label)
            assert getattr(box.input, "continuous_update", True) is True


def test_a_weighing_by_enter(sheet, job, type_into, press_enter):
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
def test_a_bad_weighing_is_refused_beside_its_box_and_kept(sheet, job, text, words, type_into):
    form = sheet.stage("fill test").forms["weighing"]
    type_into(form, mass=text)
    form.button.click()
    assert form.status.text.startswith("NOT SAVED")
    assert words in form.boxes["mass"].message.value
    assert 'role="alert"' in form.boxes["mass"].message.value
    assert form.boxes["mass"].text == text
    assert job.log(kind_of("fill test", "weighing")) == ()
