"""Jobs with a lever pen of acrylic, which takes shellac and water."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")
    job.add("intake", "arrival", {"pen": "a drawn pen", "system": "lever-sac", "material": "acrylic"})
    return job
