"""Minutes of work by activity."""

import pytest

from pentools.figures import chart
from pentools.figures.job import work_log
from pentools.record.stages.job.work_log import minutes_by_activity


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
