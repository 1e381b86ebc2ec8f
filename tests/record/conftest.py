"""A bench in a folder of its own, and empty jobs on it."""

import itertools

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def new_job(bench):
    """Makes an empty job, under a name of its own unless one is given."""
    count = itertools.count(1)
    return lambda name="": create_job(bench, name or f"pen-{next(count)}")
