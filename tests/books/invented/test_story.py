"""An entry's quantity is rounded as it would have been typed, and the balance shows what is in the pen."""

import datetime as dt
import random

import msgspec
import pytest

from pentools.books.invented.pens import draw_truth
from pentools.books.invented.story import PER_ML_G, Story, quantity
from pentools.books.invented.truth import Rates
from pentools.units import read_quantity


@pytest.mark.parametrize(
    ("given", "typed"), [((7.126, "mm"), "7.13 mm"), ((48.0, "degC", 0), "48 °C"), ((0.604, "1", 0), "60 %")]
)
def test_a_quantity_says_what_it_keeps(given, typed):
    kept = quantity(*given)
    assert kept["typed"] == typed
    assert read_quantity(typed, given[1]).value == pytest.approx(kept["value"])


def test_a_filled_pen_weighs_what_its_share_weighs_more():
    truth = draw_truth(30, 3, dt.date(2026, 10, 31), Rates(balance_g=0.0))
    pen = next(pen for pen in truth.pens if pen.share is not None)
    story = Story(pen, truth, random.Random(1))
    gained = story.weighing("filled")["mass"]["value"] - story.weighing("drained")["mass"]["value"]
    assert gained == pytest.approx(pen.share * pen.holds_ml * PER_ML_G, abs=0.011)


def test_the_clock_never_goes_back():
    truth = draw_truth(3, 3, dt.date(2026, 10, 31), Rates())
    story = Story(msgspec.structs.replace(truth.pens[0], arrived_on="2026-03-01"), truth, random.Random(1))
    before = story.at
    story.wait(0, 0.4)
    assert story.at >= before
    story.wait(2, 3)
    assert story.at.date() >= dt.date(2026, 3, 3)
