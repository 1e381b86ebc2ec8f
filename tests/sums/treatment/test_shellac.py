"""The sum shellac: flakes, thinning, and a printed chart that is off."""

import pytest
from sums.treatment.asking import ask

from pentools.calc.treatment.shellac import ChartLine
from pentools.sums.treatment import shellac
from pentools.sums.treatment.shellac import SHELLAC


def test_shellac():
    data = ask(SHELLAC, cut="3").data
    assert data["flakes_g"] == pytest.approx(10.78, abs=0.0051)
    assert data["thinning_parts"] is None
    thin = ask(SHELLAC, cut="2", thin_to="1")
    assert thin.data["thinning_parts"] == pytest.approx(0.833, abs=0.0005)
    assert any(f.topic == "printed-chart" for f in thin.findings)
    assert not any(f.topic == "printed-chart" for f in ask(SHELLAC, cut="5", thin_to="2").findings)


def test_every_figure_of_a_cut_by_hand():
    """1 lb to a US gallon is 453.59237/3.785411784 = 119.83 g/l; a pound swells the gallon by a tenth (a woodworker's rule)."""
    answer = ask(SHELLAC, cut="3")
    assert answer.sentence == "10.8 g of flakes to 30 ml of alcohol make a 3 lb cut."
    assert answer.table == (
        ("quantity", "value"), ("flakes to a litre of alcohol", "359.5 g"), ("flakes in a litre of the finished solution", "276.5 g"),
        ("ounces to 8 US fl oz of alcohol", "3"),
    )  # fmt: skip
    assert (answer.data["flakes_g_per_l_alcohol"], answer.data["flakes_g_per_l_finished"]) == pytest.approx(
        (359.479, 359.479 / 1.3)
    )
    thin = ask(SHELLAC, cut="2", thin_to="1", alcohol="45 ml")
    assert thin.sentence == "Add 0.83 parts of alcohol to one part of the 2 lb cut for a 1 lb cut."
    assert thin.data["flakes_g"] == pytest.approx(2 * 119.83 * 0.045, abs=0.001)
    # printed 2/3 where (2 - 1)/1.2 = 0.833 is reckoned: a fifth too little
    chart = next(f for f in thin.findings if f.topic == "printed-chart")
    assert (chart.level, chart.values["way"], chart.values["printed"], round(chart.values["off"], 2)) == (
        "note",
        "less",
        pytest.approx(0.67, abs=0.01),
        0.2,
    )
    # 3 to 1 is printed 1 1/2 for 1.54, which agrees
    assert [f.topic for f in ask(SHELLAC, cut="3", thin_to="1").findings] == ["fire"]
    assert ask(SHELLAC, cut="1").sentence == "3.6 g of flakes to 30 ml of alcohol make a 1 lb cut."


def test_a_chart_that_prints_too_much_is_said_to(monkeypatch):
    much = ChartLine(2.0, 1.0, 1.0, 5 / 6, 0.2, False)
    monkeypatch.setattr(shellac, "check_chart", lambda _: (much, ChartLine(3.0, 1.0, 9.0, 1.54, 4.8, False)))
    told = [f.text for f in ask(SHELLAC, cut="2", thin_to="1").findings if f.topic == "printed-chart"]
    assert [text.replace("\u202f", " ") for text in told] == [
        "A printed chart says 1.00 parts here, 20 % more: that contradicts the room the flakes take up."
    ]
