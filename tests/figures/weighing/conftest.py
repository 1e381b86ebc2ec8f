"""A pen that was weighed, and the figures on their way to SVG."""

import pytest

from pentools.figures import chart
from pentools.figures.weighing import filling, leak, series, strokes
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def empty(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "empty", sample=None)


@pytest.fixture
def weighed(empty):
    """A piston filler, two fillings from dry and from drained, four leak weighings."""
    job = empty
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston"})
    job.add("fill test", "dimensions", {"bore": "9.00 mm", "stroke": "28.3 mm"})
    for state, mass in (("dry", "18.43"), ("filled", "20.23"), ("drained", "18.52"), ("filled", "20.22")):
        job.add("fill test", "weighing", {"state": state, "mass": f"{mass} g"})
    for hours, mass in ((0, "20.220"), (10, "20.200"), (20, "20.180"), (30, "20.160")):
        job.add("fill test", "leak reading", {"after": f"{hours} h", "mass": f"{mass} g"})
    return job


@pytest.fixture
def drawn(monkeypatch):
    """Catches the figures on their way to SVG."""
    kept = []

    def catch(figure, title, alt, width_mm=160.0):
        kept.append(figure)
        return chart.to_drawing(figure, title, alt, width_mm)

    for module in (filling, leak, series, strokes):
        monkeypatch.setattr(module, "to_drawing", catch)
    return kept
