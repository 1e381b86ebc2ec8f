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
