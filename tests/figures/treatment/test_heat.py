"""The chart of heatings shows the record's own numbers against the limits, and counts one session at a time."""

import datetime as dt
import xml.etree.ElementTree as ET

import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg

from pentools.figures import chart
from pentools.figures.treatment import heat
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.job import create_job
from pentools.record.stages.treatment.heat import joint_heat
from pentools.units import Reading


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")
    job.add("intake", "arrival", {"pen": "a drawn pen", "system": "lever-sac", "material": "celluloid"})
    job.add("open", "joint", {"joint": "section", "sealant": "shellac"})
    return job


@pytest.fixture
def drawn(monkeypatch):
    kept = []

    def catch(figure, title, alt, width_mm=160.0):
        kept.append(figure)
        return chart.to_drawing(figure, title, alt, width_mm)

    monkeypatch.setattr(heat, "to_drawing", catch)
    return kept


def warm(job, *surfaces, **last):
    for number, surface in enumerate(surfaces, 1):
        more = last if number == len(surfaces) else {}
        texts = {"joint": "section", "surface": f"{surface} °C" if surface else "", **more}
        job.add("open", "heat pass", {name: text for name, text in texts.items() if text})


def test_nothing_looked_at_nothing_drawn(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "b", create=True), "empty")
    assert heat.heat_figure(job) is None
    assert heat.heat_figures(job) == ()


def test_a_joint_that_was_looked_at_and_never_warmed_has_nothing_to_draw(job):
    assert heat.heat_figure(job) is None
    assert heat.heat_figure(job, "section") is None
    job.add("open", "joint", {"joint": "clip", "sealant": "none"})
    warm(job, 48)
    assert [drawing.title[:18] for drawing in heat.heat_figures(job)] == ["Section and barrel"]
    # 60 °C: the celluloid's softening, and shellac's 60 to 75 °C, as in the tables with their sources
    assert "he limit of celluloid is 60 °C; shellac softens from 60 to 75 °C" in heat.heat_figure(job).alt


@pytest.mark.parametrize(("body", "sealant"), [("celluloid", "shellac"), ("hard rubber", "shellac"), ("celluloid", "epoxy"), ("acrylic", "beeswax")])  # fmt: skip
def test_no_line_goes_through_the_words_and_they_do_not_touch(job, drawn, body, sealant):
    job.add("open", "joint", {"joint": "section", "sealant": sealant, "body": body})
    warm(job, 48, 52)
    assert heat.heat_figure(job) is not None
    figure = drawn[0]
    renderer = FigureCanvasAgg(figure).get_renderer()
    figure.draw_without_rendering()
    axes = figure.axes[0]
    words = [text for text in axes.texts if "softens" in text.get_text() or "limit of" in text.get_text()]
    boxes = [text.get_window_extent(renderer) for text in words]
    assert len(boxes) == 2
    assert not boxes[0].overlaps(boxes[1])
    plot = axes.get_window_extent(renderer)
    for box in boxes:
        assert box.x0 >= plot.x1, "the words stand beside the plot"
        assert box.x1 <= figure.bbox.x1 + 1


def test_each_heating_stands_at_its_temperature_and_the_limit_across(job, drawn):
    warm(job, 48, 0, 58, moved="half a turn", free="yes")
    drawing = heat.heat_figure(job)
    assert drawing.title == "Section and barrel: 3 heatings, the hottest 2 °C under the limit; it came free"
    assert "heating 2: not measured" in drawing.alt
    axes = drawn[0].axes[0]
    marks = [(line.get_xdata()[0], line.get_ydata()[0]) for line in axes.lines if line.get_marker() not in ("None", "")]
    assert marks == [(1, 48), (3, 58)]
    levels = [line.get_ydata()[0] for line in axes.lines if list(line.get_xdata()) == [0, 1]]
    assert 60 in levels
    assert ET.fromstring(drawing.svg).tag.endswith("svg")


def test_over_the_limit_is_said_and_stops(job):
    warm(job, 48, 63)
    assert "3 °C over the limit" in heat.heat_figure(job).title
    assert joint_heat(job, "section").log.stop


def test_a_sealant_nobody_knows_is_drawn_as_what_it_is_taken_for(job):
    job.add("open", "joint", {"joint": "section", "sealant": "unknown"})
    warm(job, 48)
    assert "not known: as rosin from 80 to 100 °C" in heat.heat_figure(job).alt


def test_five_heatings_without_coming_free_stop_the_session(job):
    warm(job, 45, 50, 52, 54, 55)
    assert heat.heat_figure(job).title.endswith("; not free")
    found = joint_heat(job, "section")
    assert found.log.left == 0
    assert any("stop here" in f.text for f in found.findings)


def test_another_day_is_another_session(job):
    day = dt.datetime(2026, 3, 9, 10, 0, tzinfo=dt.UTC)
    for number in range(5):
        data = {"joint": "section", "surface": Reading(50.0, "degC").as_json()}
        job.record.append(new_entry("open", "heat pass", data, at=day + dt.timedelta(days=number // 3, minutes=number)))
    found = joint_heat(job, "section")
    assert len(found.passes) == 5
    assert len(found.session) == 2
    assert found.log.left == 3


def test_what_is_never_warmed_is_drawn_only_where_it_was(job):
    job.add("open", "joint", {"joint": "clip", "sealant": "shellac", "body": "degrading celluloid"})
    assert heat.heat_figure(job, "clip") is None
    job.add("open", "heat pass", {"joint": "clip", "surface": "40 °C"})
    assert "never warmed" in heat.heat_figure(job, "clip").title
