"""A bench and a job with a syringe filler."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def job(bench):
    job = create_job(bench, "test-pen")
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "syringe"})
    return job
