"""The form of what went in, filled from the drawer: nothing typed is overwritten, and nothing is guessed."""

import ipywidgets as widgets
import pytest

from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.drawer import DRAWER
from pentools.record.job import open_job

LINES = """kind,what,size,lot,how many,cost
sac,latex sac 16,6.40 mm,bag of May 2026,5,1.20
sac,latex sac 17,,bag A,5,1.30
sac,latex sac 17,,bag B,5,1.40
adhesive,shellac,,bottle 1,1,
"""


@pytest.fixture
def form(job):
    (job.bench.folder / DRAWER).write_text(LINES, encoding="utf-8")
    sheet = BenchSheet(open_job(job.name, bench=open_bench_folder(job.bench.folder)))
    return sheet.panel("work log").forms["material"]


def texts(form):
    return tuple(form.boxes[name].text for name in ("what", "lot", "cost"))


def test_what_lies_there_is_listed(form):
    assert isinstance(form.boxes["what"].input, widgets.Combobox)
    assert form.boxes["what"].input.options == ("latex sac 16", "latex sac 17", "shellac")
    assert form.boxes["lot"].input.options == ("bag of May 2026", "bag A", "bag B", "bottle 1")
    assert form.boxes["what"].input.description.startswith("What")


def test_a_known_item_fills_lot_and_cost(form):
    form.boxes["what"].input.value = "latex sac 16"
    assert texts(form) == ("latex sac 16", "bag of May 2026", "1.20 EUR")
    form.boxes["what"].input.value = "3 × latex sac 16"
    assert texts(form) == ("3 × latex sac 16", "bag of May 2026", "3.60 EUR")
    form.boxes["what"].input.value = "a cork"
    assert texts(form) == ("a cork", "", "")


def test_a_known_lot_fills_what_and_cost(form):
    form.boxes["lot"].input.value = "bag of may2026"
    assert texts(form) == ("latex sac 16, 6.40 mm", "bag of may2026", "1.20 EUR")


def test_of_two_lots_none_is_guessed_and_what_was_typed_stays(form):
    form.boxes["what"].input.value = "latex sac 17"
    assert texts(form) == ("latex sac 17", "", "")
    form.boxes["cost"].text = "2 EUR"
    form.boxes["lot"].input.value = "bag B"
    assert texts(form) == ("latex sac 17", "bag B", "2 EUR")


def test_it_is_saved_and_cleared(form, job):
    form.boxes["what"].input.value = "latex sac 16"
    form.boxes["way"].text = "added"
    form.button.click()
    assert form.status.text.startswith("saved ")
    job.record.refresh()
    assert job.record.live("work log", "material")[0].data == {"what": "latex sac 16", "way": "added", "lot": "bag of May 2026", "cost": "1.20 EUR"}  # fmt: skip
    assert texts(form) == ("", "", "")


def test_what_held_in_a_dry_trial_is_found_there_too(job):
    (job.bench.folder / DRAWER).write_text(LINES, encoding="utf-8")
    job.add(
        "seal",
        "trial",
        {"place": "head", "what": "latex sac 16", "outside": "6.4 mm", "dry": "yes", "happened": "pulls back"},
    )
    sheet = BenchSheet(open_job(job.name, bench=open_bench_folder(job.bench.folder)))
    form = sheet.panel("work log").forms["material"]
    assert texts(form) == ("latex sac 16", "bag of May 2026", "1.20 EUR")


def test_without_a_drawer_the_boxes_are_as_they_were(sheet):
    form = sheet.panel("work log").forms["material"]
    assert not isinstance(form.boxes["what"].input, widgets.Combobox)
