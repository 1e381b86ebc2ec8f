"""The chart of a pen at rest shows the weighings, the line and its doubt."""

import pytest

from pentools.figures.sum_figures import figures_for
from pentools.figures.weighing.leak import leak_figure
from pentools.record.stages.weighing.rest import leak_of, leak_points
from pentools.sums.weighing.capacity import CAPACITY
from pentools.sums.weighing.leak import LEAK


def asked(masses, **texts):
    texts = {"times": "0 h; 24 h; 48 h; 72 h", "masses": masses, "readability": "0.001 g", **texts}
    return LEAK.run({f.name: f.read(texts.get(f.name, f.default)) for f in LEAK.fields})


def test_slope_points_and_bars(weighed, drawn):
    answer = leak_of(weighed)
    drawing = leak_figure(answer)
    axes = drawn[0].axes[0]
    hours, masses, _ = leak_points(weighed)
    points = axes.containers[0].lines[0]
    assert list(points.get_xdata()) == [h.value for h in hours]
    assert list(points.get_ydata()) == pytest.approx([1000 * (m.value - masses[0].value) for m in masses])
    line = next(one for one in axes.lines if len(one.get_xdata()) > 10)
    slope = (line.get_ydata()[-1] - line.get_ydata()[0]) / (line.get_xdata()[-1] - line.get_xdata()[0])
    assert slope == pytest.approx(-2.0)  # 20 mg in ten hours, three times
    assert drawing.title == "It leaks: 2 mg an hour"
    assert "30 h: −60 mg" in drawing.alt
    bar = axes.containers[0].lines[2][0].get_segments()[0]
    assert bar[1][1] - bar[0][1] == pytest.approx(4000 * answer.data["reading_uncertainty_g"])
    # by hand, at the first weighing: 1.96 u √(1/4 + 15²/500) to either side of the line
    [band] = [one for one in axes.collections if hasattr(one, "get_paths") and len(one.get_paths()[0].vertices) > 20]
    heights = [y for x, y in band.get_paths()[0].vertices if x == 0.0]
    wanted = 2 * 1.95996 * 1000 * answer.data["reading_uncertainty_g"] * (1 / 4 + 15**2 / 500) ** 0.5
    assert max(heights) - min(heights) == pytest.approx(wanted, rel=1e-4)


@pytest.mark.parametrize(
    ("masses", "more", "title"),
    [
        ("18.210 g; 18.209 g; 18.210 g; 18.209 g", {}, "No leak of 3 mg a day or more"),
        ("18.210 g; 18.205 g; 18.200 g; 18.195 g", {}, "It loses 5 mg a day: evaporation or a slow leak"),
        (
            "18.210 g; 18.208 g; 18.206 g; 18.204 g",
            {"gap": "0.02 mm", "seat": "10 mm", "gap_length": "5 mm"},
            "It loses 2 mg a day, no more than evaporation may take",
        ),
        ("18.210 g; 18.220 g; 18.230 g; 18.240 g", {}, "It gains 10 mg a day: the balance drifts, or it takes up damp"),
        ("18.2 g; 18.2 g; 18.2 g; 18.2 g", {}, "No leak seen, but the test is too short for this balance"),
    ],
)
def test_the_verdict_is_the_title(masses, more, title):
    drawing = leak_figure(asked(masses, **more))
    assert drawing.title == title
    assert "would have shown" in drawing.alt


def test_the_sum_has_it_as_its_figure():
    answer = asked("18.210 g; 18.205 g; 18.200 g; 18.195 g")
    assert [d.title for d in figures_for("leak", answer)] == [leak_figure(answer).title]
    other = CAPACITY.run(
        {f.name: f.read({"empty": "1.00 g", "filled": "2.00 g"}.get(f.name, f.default)) for f in CAPACITY.fields}
    )
    assert leak_figure(other) is None
