"""Minutes of work by activity."""

import pytest

from pentools.figures import chart
from pentools.figures.job import work_log
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.job.work_log import minutes_by_activity


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


@pytest.fixture
def drawn(monkeypatch):
    """Catches the figures on their way to SVG."""
    kept = []

    def catch(figure, title, alt, width_mm=160.0):
        kept.append(figure)
        return chart.to_drawing(figure, title, alt, width_mm)

    for module in (work_log,):
        monkeypatch.setattr(module, "to_drawing", catch)
    return kept


def bars(figure):
    return [round(patch.get_width(), 6) for patch in figure.axes[0].patches]


def test_minutes_are_the_sums_by_activity(weighed, drawn):
    drawing = work_log.minutes_figure(weighed)
    assert bars(drawn[0]) == sorted(minutes_by_activity(weighed).values(), reverse=True) == [90, 30]
    assert "2.0 hours" in drawing.title
    assert "seals and sac, 90 min" in drawing.title
