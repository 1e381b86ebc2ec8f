"""The charts show the record's own numbers, say them in words, and are whole SVG with ids of their own."""

import re
import xml.etree.ElementTree as ET

import pytest

from pentools.calc.base.uncertainty import rounded_pair
from pentools.figures import chart
from pentools.figures.job import work_log
from pentools.figures.weighing import filling as fill_test
from pentools.figures.weighing import series as fill_series
from pentools.figures.weighing import strokes
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.job.work_log import minutes_by_activity
from pentools.record.stages.weighing.filling import capacity_of, cycles, leak_points
from pentools.sums.weighing.capacity import CAPACITY

SVG = "{http://www.w3.org/2000/svg}"


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

    for module in (fill_test, fill_series, strokes, work_log):
        monkeypatch.setattr(module, "to_drawing", catch)
    return kept


def bars(figure):
    return [round(patch.get_width(), 6) for patch in figure.axes[0].patches]


def all_drawings(job):
    answer = capacity_of(job)
    found = [fill_test.capacity_figure(answer), fill_test.budget_figure(answer), fill_series.fill_series_figure(job)]
    return [*found, fill_test.leak_figure(job), work_log.minutes_figure(job)]


def test_nothing_to_draw_is_none(empty):
    assert fill_test.fill_series_figure(empty) is None
    assert fill_test.leak_figure(empty) is None
    assert work_log.minutes_figure(empty) is None
    assert strokes.stroke_runs(empty) == ()
    assert strokes.strokes_of(empty) is None


def test_one_filling_is_no_series(empty):
    for state, mass in (("dry", "18.43"), ("filled", "20.23")):
        empty.add("fill test", "weighing", {"state": state, "mass": f"{mass} g"})
    assert len(cycles(empty)) == 1
    assert fill_series.fillings_figure(empty) is None


def test_capacity_bars_are_what_it_draws_and_what_it_should_hold(weighed, drawn):
    answer = capacity_of(weighed)
    drawing = fill_test.capacity_figure(answer)
    assert bars(drawn[0]) == [round(answer.data["volume_ml"], 6), round(answer.data["expected_ml"], 6)]
    assert drawn[0].axes[0].get_xlim()[0] == 0
    value, doubt = rounded_pair(answer.data["volume_ml"], answer.data["expanded_uncertainty_ml"])
    assert f"{value} mL ± {doubt}" in drawing.alt
    assert f"{100 * answer.data['share_filled']:.0f} %" in drawing.title


def test_capacity_without_dimensions_has_one_bar(drawn):
    texts = {"empty": "18.43 g", "filled": "19.43 g"}
    answer = CAPACITY.run({f.name: f.read(texts.get(f.name, f.default)) for f in CAPACITY.fields})
    drawing = fill_test.capacity_figure(answer)
    assert len(bars(drawn[0])) == 1
    assert "hold" not in drawing.alt


def test_budget_bars_are_the_shares_largest_first(weighed, drawn):
    answer = capacity_of(weighed)
    drawing = fill_test.budget_figure(answer)
    shares = sorted((100 * row["share"] for row in answer.data["budget"]), reverse=True)
    shown = bars(drawn[0])
    assert shown[: fill_test.SHARES_SHOWN] == pytest.approx(shares[: fill_test.SHARES_SHOWN], abs=1e-5)
    assert sum(shown) == pytest.approx(100, abs=0.6)
    largest = max(answer.data["budget"], key=lambda row: row["share"])
    assert largest["source"] in drawing.title
    assert drawing.title.startswith("Most") == (largest["share"] > 0.5)


def test_fillings_are_those_of_the_record(weighed, drawn):
    drawing = fill_series.fillings_figure(weighed)
    volumes = [capacity_of(weighed, cycle).data["volume_ml"] for cycle in cycles(weighed)]
    shown = [float(c.lines[0].get_ydata()[0]) for c in drawn[0].axes[0].containers]
    assert shown == pytest.approx(volumes)
    assert drawn[0].axes[0].get_ylim()[0] == 0
    assert f"{volumes[0]:.2f}" in drawing.alt
    assert "from dry" in drawing.alt
    assert "from drained" in drawing.alt


@pytest.mark.parametrize(
    ("fills", "words"),
    [
        (("20.00", "20.20", "20.40"), "Still rising"),
        (("20.40", "20.20", "20.00"), "Falling"),
        (("20.22", "20.22", "20.23"), "3 refills agree"),
    ],
)
def test_the_trend_is_the_title(empty, fills, words):
    for mass in fills:
        empty.add("fill test", "weighing", {"state": "drained", "mass": "18.52 g"})
        empty.add("fill test", "weighing", {"state": "filled", "mass": f"{mass} g"})
    assert fill_series.fillings_figure(empty).title.startswith(words)


def stroke_weighings(job, start, masses):
    job.add("fill test", "weighing", {"state": start, "mass": "16.83 g"})
    for number, mass in enumerate(masses, 1):
        job.add("fill test", "weighing", {"state": "stroke", "mass": f"{mass} g", "strokes": str(number)})


def test_runs_of_strokes_stand_apart(empty, drawn):
    stroke_weighings(empty, "dry", ("17.08", "17.32", "17.53", "17.53", "17.53"))
    stroke_weighings(empty, "drained", ("17.08", "17.33", "17.58", "17.83"))
    first, last = strokes.stroke_runs(empty)
    assert first.plateau_stroke == 3
    assert last.plateau_stroke is None
    assert strokes.strokes_of(empty) == last
    drawing = fill_series.fill_series_figure(empty)
    assert [len(c.lines[0].get_xdata()) for c in drawn[0].axes[0].containers] == [6, 5]
    assert "still rises" in drawing.title
    assert "after stroke 3" in drawing.title
    assert "0.70" in drawing.alt


def test_a_run_begins_from_the_mean_of_its_empty_weighings(empty):
    empty.add("fill test", "weighing", {"state": "dry", "mass": "16.83 g"})
    empty.add("fill test", "weighing", {"state": "dry", "mass": "16.85 g"})
    for number, mass in enumerate(("17.34", "17.84"), 1):
        empty.add("fill test", "weighing", {"state": "stroke", "mass": f"{mass} g", "strokes": str(number)})
    (run,) = strokes.stroke_runs(empty)
    assert run.volumes_ml[1] == pytest.approx(0.5 * 1.003, abs=1e-6)


def test_leak_slope_and_points(weighed, drawn):
    drawing = fill_test.leak_figure(weighed)
    axes = drawn[0].axes[0]
    hours, masses, _ = leak_points(weighed)
    points = axes.containers[0].lines[0]
    assert list(points.get_xdata()) == hours
    assert list(points.get_ydata()) == pytest.approx([1000 * (m - masses[0]) for m in masses])
    line = next(one for one in axes.lines if len(one.get_xdata()) > 10)
    slope = (line.get_ydata()[-1] - line.get_ydata()[0]) / (line.get_xdata()[-1] - line.get_xdata()[0])
    assert slope == pytest.approx(-2.0)  # 20 mg in ten hours, three times
    assert "leaks: 2.0 mg" in drawing.title
    assert "30 h: −60 mg" in drawing.alt
    assert axes.collections, "the band"


def test_minutes_are_the_sums_by_activity(weighed, drawn):
    drawing = work_log.minutes_figure(weighed)
    assert bars(drawn[0]) == sorted(minutes_by_activity(weighed).values(), reverse=True) == [90, 30]
    assert "2.0 hours" in drawing.title
    assert "seals and sac, 90 min" in drawing.title


def test_every_chart_is_whole_and_its_ids_are_its_own(weighed):
    seen = set()
    for drawing in [*all_drawings(weighed), *all_drawings(weighed)]:
        assert drawing.svg.startswith("<svg ")
        root = ET.fromstring(drawing.svg)
        assert root.get("role") == "img"
        assert root.get("width") == f"{drawing.width_mm:g}mm"
        ids = {node.get("id") for node in root.iter() if node.get("id")}
        assert not ids & seen
        seen |= ids
        named = root.get("aria-labelledby").split()
        texts = [next(node.text for node in root.iter() if node.get("id") == name) for name in named]
        assert texts == [drawing.title, drawing.alt]
        links = re.findall(r'(?:href="|url\()#([^")]+)', drawing.svg)
        assert set(links) <= ids


def test_text_stays_text_and_is_nine_points_or_more(weighed):
    for drawing in all_drawings(weighed):
        root = ET.fromstring(drawing.svg)
        words = " ".join("".join(node.itertext()) for node in root.iter(f"{SVG}text"))
        assert drawing.title.split(",")[0].split(" (")[0][:12] in words
        # the picture's own unit is the point: 160 mm are 453.5 of them
        assert float(root.get("viewBox").split()[2]) == pytest.approx(drawing.width_mm / 25.4 * 72, rel=1e-3)
        sizes = [float(s) for s in re.findall(r"font(?:-size)?:[^;\"]*?([\d.]+)px", drawing.svg)]
        assert sizes
        assert min(sizes) >= 9


def test_nothing_is_fetched_and_no_date_is_kept(weighed):
    for drawing in all_drawings(weighed):
        assert "<metadata" not in drawing.svg
        assert not re.findall(r'(?:href|src)="(?!#)', drawing.svg)
