"""Jobs that the tests of several figures draw."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def empty(bench):
    return create_job(bench, "empty", sample=None)


@pytest.fixture
def weighed(empty):
    """A piston filler, two fillings from dry and from drained, four leak weighings, minutes of work."""
    job = empty
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston"})
    job.add("fill test", "dimensions", {"bore": "9.00 mm", "stroke": "28.3 mm"})
    for state, mass in (("dry", "18.43"), ("filled", "20.23"), ("drained", "18.52"), ("filled", "20.22")):
        job.add("fill test", "weighing", {"state": state, "mass": f"{mass} g"})
    for hours, mass in ((0, "20.220"), (10, "20.200"), (20, "20.180"), (30, "20.160")):
        job.add("fill test", "leak reading", {"after": f"{hours} h", "mass": f"{mass} g"})
    job.add("work log", "work", {"activity": "seal", "minutes": "90 min", "done": "a cork"})
    job.add("work log", "work", {"activity": "clean", "minutes": "30 min", "done": "washed"})
    return job
