"""A job on a bench of its own, and its sheet; unexpected errors are raised again."""

import pytest

from pentools.panels import guard
from pentools.panels.bench import BenchSheet
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "piston", "material": "celluloid"})
    return job


@pytest.fixture
def sheet(job):
    guard.strict(True)
    yield BenchSheet(job)
    guard.strict(False)


@pytest.fixture
def unnamed(job):
    """The job with a pen whose material nobody has named."""
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "lever-sac", "material": "unknown"})
    return job


@pytest.fixture
def type_into():
    """Types texts into a form's boxes."""

    def typed(form, **texts):
        for name, text in texts.items():
            form.boxes[name].text = text

    return typed


@pytest.fixture
def press_enter():
    """Presses Enter in a box, as the browser reports it."""
    return lambda box: box.input._handle_custom_msg({"event": "submit"}, [])


@pytest.fixture
def put(type_into):
    """Types texts into a panel's form, saves them, and hands back what the status line says."""

    def saved(panel, kind, **texts):
        form = panel.forms[kind]
        type_into(form, **texts)
        form.button.click()
        return form.status.text

    return saved


@pytest.fixture
def release():
    """Presses a hold point's button with a reason."""

    def released(panel, key, reason):
        row = panel.holds[key]
        row.reason.value = reason
        row.button.click()

    return released
