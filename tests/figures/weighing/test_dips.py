"""The chart of a pen filled dip after dip."""

import pytest

from pentools.answers.weighing import capacity_from_weight
from pentools.figures.weighing.dips import dips_figure


@pytest.mark.parametrize(
    ("gain", "title"),
    [
        ("0.18 g; 0.31 g; 1.20 g", "After dip 3, 1.19 mL, and it still rose"),
        ("0.18 g; 1.19 g; 1.20 g", "Full at 1.19 mL: dip 3 added nothing"),
        ("0.18 g; 1.20 g; 1.05 g", "The fill fell between dips: 1.04 mL after dip 3"),
    ],
)
def test_the_title_is_the_finding(gain, title):
    assert dips_figure(capacity_from_weight(gain=gain)).title == title


def test_every_dip_is_told_and_drawn():
    drawing = dips_figure(capacity_from_weight(gain="0.18 g; 0.31 g; 1.20 g"))
    assert "Dip 1: 0.17 mL; dip 2: 0.30 mL; dip 3: 1.19 mL" in drawing.alt
    assert all(f"{shown} mL" in drawing.svg for shown in ("0.17", "0.30", "1.19"))


def test_no_chart_of_one_dip_or_of_two_masses():
    assert dips_figure(capacity_from_weight(gain="1.20 g")) is None
    assert dips_figure(capacity_from_weight(empty="15.00 g", filled="16.20 g")) is None
