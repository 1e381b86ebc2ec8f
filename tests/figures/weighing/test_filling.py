"""The charts of one filling show the sum's own numbers."""

import pytest

from pentools.calc.base.uncertainty import rounded_pair
from pentools.figures.weighing.filling import SHARES_SHOWN, budget_figure, capacity_figure
from pentools.record.stages.weighing.filling import capacity_of
from pentools.sums.weighing.capacity import CAPACITY


def bars(figure):
    return [round(patch.get_width(), 6) for patch in figure.axes[0].patches]


def asked(**texts):
    return CAPACITY.run({f.name: f.read(texts.get(f.name, f.default)) for f in CAPACITY.fields})


def test_capacity_bars_are_what_it_draws_and_what_it_should_hold(weighed, drawn):
    answer = capacity_of(weighed)
    drawing = capacity_figure(answer)
    data = answer.data
    assert bars(drawn[0]) == [round(data["volume_ml"], 6), round(data["expected_ml"], 6)]
    assert drawn[0].axes[0].get_xlim()[0] == 0
    value, doubt = rounded_pair(data["volume_ml"], data["expanded_uncertainty_ml"])
    assert f"{value} mL ± {doubt}" in drawing.alt
    assert f"{100 * data['share_filled']:.0f}\u202f%" in drawing.title
    spans = [line.get_segments()[0] for line in drawn[0].axes[0].collections]
    assert [(span[1][0] - span[0][0]) / 2 for span in spans] == pytest.approx(
        [data["expanded_uncertainty_ml"], 2 * data["expected_standard_uncertainty_ml"]]
    )


def test_what_is_usual_stands_under_it(weighed, drawn):
    answer = capacity_of(weighed)
    drawing = capacity_figure(answer)
    ends = [answer.data[name] * answer.data["expected_ml"] for name in ("usual_share_low", "usual_share_high")]
    band = drawn[0].axes[0].lines[-1]
    assert list(band.get_xdata()) == pytest.approx(ends)
    assert f"From drained {ends[0]:.2f} to {ends[1]:.2f} mL are usual (judged)." in drawing.alt


def test_capacity_without_dimensions_has_one_bar(drawn):
    drawing = capacity_figure(asked(empty="18.43 g", filled="19.43 g"))
    assert len(bars(drawn[0])) == 1
    assert "hold" not in drawing.alt
    assert "usual" not in drawing.alt


def test_a_gain_that_cannot_be_told_is_the_title():
    drawing = capacity_figure(asked(empty="18.43 g", filled="18.43 g", system="piston", bore="9 mm", stroke="28 mm"))
    assert drawing.title == "What it draws cannot be told from nothing: at most 0.04 mL"


def test_budget_bars_are_the_shares_largest_first(weighed, drawn):
    answer = capacity_of(weighed)
    drawing = budget_figure(answer)
    shares = sorted((100 * row["share"] for row in answer.data["budget"]), reverse=True)
    shown = bars(drawn[0])
    assert shown[:SHARES_SHOWN] == pytest.approx(shares[:SHARES_SHOWN], abs=1e-5)
    assert sum(shown) == pytest.approx(100, abs=0.6)
    largest = max(answer.data["budget"], key=lambda row: row["share"])
    assert largest["source"] in drawing.title
    assert drawing.title.startswith("Most") == (largest["share"] > 0.5)
