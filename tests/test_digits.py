"""A reading is shown as finely as it was typed."""

import pytest

from pentools.digits import last_digit, reading_in_words
from pentools.units import Reading, read_quantity


@pytest.mark.parametrize(
    ("typed", "unit", "step"),
    [("23.2 g", "g", 0.1), ("8920 mg", "g", 0.001), ("12 mm", "mm", 1.0), ("1/2 in", "mm", None), ("0.469 in", "mm", 0.0254)],
)  # fmt: skip
def test_one_step_of_the_last_digit(typed, unit, step):
    assert last_digit(read_quantity(typed, unit)) == (None if step is None else pytest.approx(step))


def test_a_number_that_nobody_typed_has_no_last_digit():
    assert last_digit(Reading(23.2, "g")) is None
    assert last_digit(Reading(23.2, "g", typed="½½ zonk")) is None


@pytest.mark.parametrize(
    ("typed", "unit", "shown"),
    [("128.50 mm", "mm", "128.50\u202fmm (5.059\u202fin)"), ("1.5 mm", "mm", "1.5\u202fmm"), ("55 %", "1", "55\u202f%"), ("16.420 g", "g", "16.420\u202fg")],
)  # fmt: skip
def test_in_words(typed, unit, shown):
    assert reading_in_words(read_quantity(typed, unit)) == shown
