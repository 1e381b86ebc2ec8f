"""Seals are tried dry from sizes that do not hold to the one that does, and booked with their lot."""

import datetime as dt
import random

import pytest

from pentools.books.invented.pens import draw_truth
from pentools.books.invented.sealing import fit_seal
from pentools.books.invented.story import Story
from pentools.books.invented.truth import SEALS, Rates


@pytest.mark.parametrize("seal", ["latex sac", "silicone sac", "O-ring", "cork", "washer", "diaphragm"])
def test_the_size_that_held_and_its_lot_are_the_true_ones(seal):
    truth = draw_truth(400, 3, dt.date(2026, 10, 31), Rates())
    pen = next(pen for pen in truth.pens if pen.seal == seal)
    story, row = Story(pen, truth, random.Random(2)), SEALS[seal]
    fit_seal(story)
    trials = [entry.data for entry in story.rows if entry.kind == "trial"]
    assert [trial["happened"] for trial in trials].count("pulls back") == 1
    assert trials[-1][row.by]["value"] == pytest.approx(pen.held_mm, abs=0.006)
    measured = next(entry.data for entry in story.rows if entry.kind == "measure")[row.at]
    shown = measured[0] if isinstance(measured, list) else measured
    assert shown["value"] == pytest.approx(pen.fitted_to_mm, abs=0.03)
    added = [entry.data for entry in story.rows if entry.kind == "material" and entry.data["way"] == "added"]
    assert [(one["lot"], one["cost"]) for one in added] == [(pen.lot, f"{row.cost} EUR")]
