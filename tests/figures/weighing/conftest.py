"""The figures on their way to SVG."""

import pytest

from pentools.figures import chart
from pentools.figures.weighing import filling, leak, series, strokes


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
