"""The chart of several fillings: each once, from dry and from drained apart, with words that do not cover a point."""

import pytest

from pentools.figures.weighing.series import fill_series_figure, fillings_figure
from pentools.figures.weighing.strokes import strokes_figure
from pentools.record.stages.weighing.filling import capacity_of, cycles


def test_one_filling_is_no_series(empty):
    for state, mass in (("dry", "18.43"), ("filled", "20.23")):
        empty.add("fill test", "weighing", {"state": state, "mass": f"{mass} g"})
    assert len(cycles(empty)) == 1
    assert fillings_figure(empty) is None
    assert fill_series_figure(empty) is None


def test_fillings_are_those_of_the_record(weighed, drawn):
    drawing = fillings_figure(weighed)
    answers = [capacity_of(weighed, cycle).data for cycle in cycles(weighed)]
    shown = [float(c.lines[0].get_ydata()[0]) for c in drawn[0].axes[0].containers]
    assert shown == pytest.approx([data["volume_ml"] for data in answers])
    assert drawn[0].axes[0].get_ylim()[0] == 0
    assert f"{answers[0]['volume_ml']:.2f}" in drawing.alt
    assert "from dry" in drawing.alt
    assert "from drained" in drawing.alt
    assert f"It should hold {answers[0]['expected_ml']:.2f} mL." in drawing.alt


@pytest.mark.parametrize(
    ("fills", "words"),
    [
        (("20.00", "20.20", "20.40"), "Still rising, by 0.20 mL"),
        (("20.40", "20.20", "20.00"), "Falling, by 0.20 mL"),
        (("20.22", "20.22", "20.23"), "3 refills agree at 1.69 mL"),
    ],
)
def test_the_trend_is_the_title(empty, fills, words):
    for mass in fills:
        empty.add("fill test", "weighing", {"state": "drained", "mass": "18.52 g"})
        empty.add("fill test", "weighing", {"state": "filled", "mass": f"{mass} g"})
    assert fillings_figure(empty).title.startswith(words)


def test_no_words_cover_a_point_or_one_another(empty, drawn):
    # the line of what it should hold lies at the first filling's own height
    empty.add("intake", "arrival", {"pen": "a pen", "system": "piston"})
    empty.add("fill test", "dimensions", {"bore": "9.00 mm", "stroke": "19 mm"})
    for _ in range(4):
        empty.add("fill test", "weighing", {"state": "drained", "mass": "18.50 g"})
        empty.add("fill test", "weighing", {"state": "filled", "mass": "19.72 g"})
    fillings_figure(empty)
    assert overlaps(drawn[0]) == []
    axes = drawn[0].axes[0]
    [held] = [text for text in axes.texts if "should" in text.get_text()]
    assert axes.transData.inverted().transform(held.get_window_extent())[0][0] > 4.4  # past the fourth filling's bar
    for text in axes.texts[:4]:
        bar = next(c for c in axes.containers if float(c.lines[0].get_xdata()[0]) == text.xy[0]).lines[2][0]
        assert text.get_window_extent().y1 <= axes.transData.transform(bar.get_segments()[0][0])[1]  # below the bar


def test_strokes_come_before_fillings(weighed):
    assert fill_series_figure(weighed).title == fillings_figure(weighed).title
    weighed.add("fill test", "weighing", {"state": "dry", "mass": "18.43 g"})
    for n, mass in enumerate(("19.0", "19.5", "19.5"), 1):
        weighed.add("fill test", "weighing", {"state": "stroke", "mass": f"{mass} g", "strokes": str(n)})
    assert fill_series_figure(weighed).title == strokes_figure(weighed).title


def overlaps(figure):
    """Pairs of words, and words and points, that lie on one another."""
    figure.draw_without_rendering()
    axes = figure.axes[0]
    words = [(text.get_text(), text.get_window_extent()) for text in axes.texts if text.get_text()]
    points = [
        axes.transData.transform((x, y))
        for line in axes.lines
        if line.get_marker() in "os"
        for x, y in line.get_xydata()
    ]
    found = [(a, b) for i, (a, one) in enumerate(words) for b, other in words[i + 1 :] if one.overlaps(other)]
    return found + [(word, tuple(point)) for word, box in words for point in points if box.padded(2).contains(*point)]
