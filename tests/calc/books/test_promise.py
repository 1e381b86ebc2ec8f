"""Whether a promised day can be kept: each reason at its edge, and which of them is said first."""

import pytest

from pentools.calc.books.promise import FEW_DAYS, HOURS_A_DAY, danger_of
from pentools.errors import InputError


@pytest.mark.parametrize(
    ("days", "hours", "waits", "danger"),
    [
        (-1, 0.0, None, "past"),
        (0, 0.0, None, ""),
        (0, 1.0, None, ""),
        (0, 1.01, None, "hours"),
        (3, 4.0, None, ""),
        (3, 4.01, None, "hours"),
        (3, 0.0, 3, ""),
        (3, 0.0, 4, "waits"),
        (3, 90.0, 4, "waits"),
        (7, None, None, ""),
        (6, None, None, "days"),
        (30, None, 31, "waits"),
        (-1, 90.0, 4, "past"),
    ],
)
def test_each_reason_at_its_edge(days, hours, waits, danger):
    assert danger_of(days, hours, waits) == danger


def test_the_rule_is_what_is_said_of_it():
    assert (HOURS_A_DAY, FEW_DAYS) == (1.0, 7)


@pytest.mark.parametrize("hours", [-0.1, float("nan"), float("inf")])
def test_hours_that_are_none_are_refused(hours):
    with pytest.raises(InputError, match="0 h or more"):
        danger_of(3, hours, None)
