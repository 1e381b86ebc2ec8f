"""All scales of abrasives on one axis."""

import re

import pytest

from pentools.calc.finish.reading import read_grade
from pentools.figures.finish.finishing import scales_chart
from pentools.tables.abrasives import catalogue


def test_all_scales_on_one_axis():
    chart = scales_chart()
    for name in (
        "P",
        "F",
        "CAMI",
        "JIS electrical",
        "JIS sedimentation",
        "film",
        "cushioned, grain",
        "cushioned, finish",
        "mesh",
        "paste",
    ):
        assert f">{name}<" in chart.svg or f" {name}: " in chart.alt
    assert "cushioned, grain: 1000 at 45 µm" in chart.alt
    # dots stand where the logarithm puts them: equal ratios of size, equal distances
    ticks = dict(
        re.findall(r'<use[^>]*x="([\d.]+)"[^>]*/>\s*</g>\s*</g>\s*<g[^>]*>\s*<text[^>]*>([\d.]+)</text>', chart.svg)
    )
    places = {float(label): float(x) for x, label in ticks.items()}
    assert len(places) >= 8
    assert places[10] - places[100] == pytest.approx(places[1] - places[10], abs=0.01)


def test_a_grade_beyond_the_axis_is_still_named():
    assert scales_chart(read_grade("P60", catalogue())).title == "P60 has a grain of 269 µm"


def test_a_cloth_between_the_points_of_the_curve_is_marked_on_both_its_lines():
    chart = scales_chart(read_grade("cushioned cloth 4000", catalogue()))
    plain_chart = scales_chart()
    assert chart.title == "cushioned cloth 4000 has a grain of 9 µm and finishes like 8.1 µm"
    assert chart.svg.count("<use") == plain_chart.svg.count("<use") + 2
