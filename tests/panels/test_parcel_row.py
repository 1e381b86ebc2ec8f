"""The line of a parcel: absent for a pen that came alone; a press reaches every pen that may have it."""

import pytest

from pentools.record.came_with import join, start
from pentools.record.job import create_job, open_job
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.intake_kinds import OWNER

YES = {"to": "heat", "answered_on": "2026-03-05", "channel": "letter"}


@pytest.fixture
def kept(tmp_path, monkeypatch):
    monkeypatch.setenv("PENTOOLS_KEPT", str(tmp_path / "kept"))


def test_a_pen_that_came_alone_has_no_such_line(sheet):
    for stage in ("agree", "posting"):
        assert sheet.panel(stage).parcel.widget.layout.display == "none"


def test_the_yes_is_entered_once(kept, job, sheet, put):
    two = start(job.bench.folder, "pen-two", came_with=job.name)
    panel = sheet.panel("agree")
    put(panel, "yes", **YES)
    row = panel.parcel
    assert (row.widget.layout.display, row.button.description) == ("", "Enter it for the pens that came with it")
    row.button.click()
    assert row.status.text == "taken over by pen-two"
    assert dict(consents(open_job(two.name, bench=job.bench))) == {"heat": True}
    row.button.click()
    assert row.status.text == "nothing was new"


def test_another_pen_of_the_parcel_takes_it_over_and_shows_it(kept, job, sheet):
    lead = create_job(job.bench, "pen-lead")
    join(job, "pen-lead")
    panel = sheet.panel("agree")
    assert "has not answered yet" in panel.result_text.value
    lead = open_job("pen-lead", bench=job.bench)
    lead.add("agree", "yes", YES)
    assert panel.parcel.button.description == "Take it over from pen-lead"
    panel.parcel.button.click()
    assert "has not answered yet" not in panel.result_text.value


def test_a_pen_named_at_intake_fills_the_forms(kept, job, sheet, put):
    lead = create_job(job.bench, "pen-lead")
    lead.add("intake", "owner", {"owner": "Adela Quist"})
    panel = sheet.panel("intake")
    assert "no job pen-9" in put(panel, "came with", lead="pen-9")
    assert "that of another job" in put(panel, "came with", lead=job.name)
    assert put(panel, "came with", lead="pen-lead").startswith("saved ")
    assert panel.forms["owner"].boxes["owner"].text == "Adela Quist"
    assert job.newest(OWNER).owner == "Adela Quist"
