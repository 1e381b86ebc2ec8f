"""A stage's line: mark, sentence, and the panel only while it is open."""

import pytest

from pentools.panels.slot import MARKS, line_of
from pentools.record.registry import find_stage


def test_the_line_says_the_state_and_the_sentence_that_matters(sheet, job):
    slot = sheet.stage("fill test")
    assert "not begun" in slot.sentence.value
    assert MARKS["not begun"] in slot.mark.value
    for state, mass in (("dry", "23.26 g"), ("filled", "25.06 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    sheet.changed(None)
    assert slot.sentence.value.startswith("It draws 1.79\u202fmL")
    assert "pt-mark-open" in slot.mark.value


def test_a_held_stage_says_why_it_waits(sheet, job):
    slot = sheet.stage("release")
    sheet.changed(None)
    assert slot.sentence.value.startswith("waits: the leak check has not been done")
    assert "pt-is-held" in slot.widget._dom_classes
    assert line_of(job, find_stage("release"))[0] == "held"


def test_what_a_person_typed_is_no_markup(sheet, job):
    job.add("intake", "arrival", {"pen": "<b>bold</b> pen"})
    sheet.changed(None)
    assert "&lt;b&gt;" in sheet.stage("intake").sentence.value
    assert "<b>bold" not in sheet.head.value


@pytest.mark.parametrize("stage", ["fill test", "seal"])
def test_a_panel_is_made_once_and_follows_while_it_is_open(sheet, job, stage):
    slot = sheet.stage(stage)
    assert slot.built is None
    slot.title.click()
    made = slot.panel
    slot.title.click()
    job.add("fill test", "weighing", {"state": "dry", "mass": "23.26 g"})
    slot.title.click()
    assert slot.panel is made
    if stage == "fill test":
        assert "Now fill it" in made.result_text.value


def test_a_panel_that_cannot_be_made_says_so_in_its_place(sheet, monkeypatch):
    slot = sheet.stage("seal")

    def broken(_):
        raise LookupError("washer")

    monkeypatch.setattr(slot, "_make", broken)
    slot.title.click()
    assert "Seal cannot be shown" in slot.body.children[-2].value
    slot.title.click()
    assert not slot.is_open
