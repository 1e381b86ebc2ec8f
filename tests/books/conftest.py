"""A bench of three jobs, one of which no question gets an answer from."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def bench(tmp_path, monkeypatch):
    monkeypatch.setenv("PENTOOLS_KEPT", str(tmp_path / "kept"))
    bench = open_bench_folder(tmp_path / "bench", create=True)
    for name in ("b-second", "a-first", "c-torn"):
        create_job(bench, name).add("intake", "arrival", {"pen": f"the {name} pen"})
    return bench
