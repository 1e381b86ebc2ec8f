"""Where a question about a job raises, whoever shows the job says why in its place and goes on with the rest."""

import dataclasses

import pytest
from faults import harmless

from pentools.errors import InputError
from pentools.panels.bench import BenchSheet
from pentools.record import holds, registry
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.registry import find_stage
from pentools.record.review import review
from pentools.record.stages.weighing import filling
from pentools.record.view import SPOILT

RAISED = [InputError("mass", "heavier when filled", "8 g"), *(kind("odd") for kind in SPOILT[1:])]


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "piston"})
    job.add("fill test", "weighing", {"state": "dry", "mass": "15 g"})
    return job


@pytest.fixture
def raising(monkeypatch):
    """Makes a stage's state, checks and panel's result raise."""

    def made(key, error):
        def raises(*_):
            raise error

        real = find_stage(key)
        spoilt = dataclasses.replace(real, state=raises, checks=raises)
        known = registry.find_stage
        for module in ("pentools.record.registry", "pentools.panels.bench"):
            monkeypatch.setattr(f"{module}.find_stage", lambda name: spoilt if name == key else known(name))
        monkeypatch.setattr("pentools.panels.stages.weighing.filling.FillTestPanel.result", raises)
        return spoilt

    return made


@pytest.mark.parametrize("error", RAISED, ids=lambda error: type(error).__name__)
def test_state_check_and_panel_say_why(job, raising, error):
    why = "heavier when filled" if isinstance(error, InputError) else type(error).__name__
    stage = raising("fill test", error)
    state = holds.state_of(job, stage)
    assert state.word == "open"
    assert why in state.reason
    [said] = [finding.text for finding in review(job) if finding.topic == "sum"]
    assert said.startswith("Fill test: ")
    assert why in said
    panel = BenchSheet(job).panel("fill test")
    assert why in panel.header.value
    assert why in panel.result_text.value
    assert "15\u202fg" in panel.log.table.value  # the log stands, so the entry can be taken back


def test_what_cannot_be_told_is_held(job, monkeypatch):
    def raises(_):
        raise ZeroDivisionError

    monkeypatch.setattr(holds, "job_facts", raises)
    assert "cannot be told (What is entered cannot be worked with (ZeroDivisionError))" in holds.held(job, "heat")
    job.release("open", "heat", "the owner asks for it")
    assert holds.held(job, "heat") == ""


def test_a_panel_that_cannot_be_built_says_so_and_the_others_stand(job, monkeypatch):
    def raises(*_):
        raise KeyError("odd")

    monkeypatch.setattr("pentools.panels.stages.weighing.filling.FillTestPanel.__init__", raises)
    sheet = BenchSheet(job)
    slot = sheet.stage("fill test")
    slot.title.click()
    assert "Fill test cannot be shown" in slot.body.children[-2].value
    sheet.open_stage("intake")
    assert sheet.panel("intake").result_text.value


def test_forms_that_cannot_follow_leave_state_and_log_alone(job, monkeypatch):
    sheet = BenchSheet(job)
    sheet.open_stage("fill test")
    panel = sheet.panel("fill test")

    def raises():
        raise InputError("system", "one of these", "odd")

    monkeypatch.setattr(panel, "refresh_forms", raises)
    sheet.changed(None)
    assert "system must be one of these" in panel.status.text
    panel.refresh()
    assert "15" in panel.log.table.value


def test_contradicting_weighings_stop_only_their_own_answer(job):
    job.add("fill test", "weighing", {"state": "filled", "mass": "8 g"})
    with pytest.raises(InputError):
        filling.capacity_of(job)
    assert harmless.looked_at(job) == []
    assert [f.text for f in review(job) if f.topic == "sum" and f.text.startswith("Fill test")]
