"""A bench with grades in its drawer, and a celluloid pen on it."""

import pytest
from record.stages.finish.pens import STOCK, new_pen

from pentools.record.bench import open_bench_folder


@pytest.fixture
def bench(tmp_path):
    made = open_bench_folder(tmp_path / "bench", create=True)
    path = made.folder / "bench.toml"
    path.write_text(path.read_text().replace("abrasives = []", STOCK))
    return open_bench_folder(made.folder)


@pytest.fixture
def job(bench):
    return new_pen(bench, "pen-one")
