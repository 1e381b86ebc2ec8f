"""How long adhesives wait, against the times that pages on them print; hours of ours against minutes and hours of theirs."""

import pytest
from outside import Outside

from pentools import tables
from pentools.calc.closing.clock import CureRow, cure_of

ROWS = tables.read(CureRow, "cure_times")

# sealant, moment, printed low and high with their unit in hours, source
PRINTED = [
    ("shellac", "touch", "15", "45", 1 / 60, "woodworking-shellac"),
    ("shellac", "hard", "24", "168", 1.0, "woodworking-shellac"),
    ("silicone", "touch", "5", "60", 1 / 60, "acetic-sealant-pages"),
    ("silicone", "test", "24", "48", 1.0, "acetic-sealant-pages"),
]


@pytest.mark.parametrize(("sealant", "moment", "low", "high", "unit", "source"), PRINTED)
def test_the_ends_are_those_that_were_printed_and_what_is_proposed_lies_between(
    sealant, moment, low, high, unit, source
):
    row = cure_of(sealant, moment, ROWS)
    check = Outside(source, f"{sealant}, {moment} [h]")
    check.agree(row.low_h / unit, low)
    check.agree(row.high_h / unit, high)
    assert float(low) * unit - 1e-3 <= row.proposed_h <= float(high) * unit


def test_a_coat_on_a_pen_waits_as_the_repairer_says_and_not_as_the_woodworker():
    """Woodworkers coat again after a quarter of an hour to four hours; on a pen eight hours are named."""
    row = cure_of("shellac", "next coat", ROWS)
    Outside("woodworking-shellac", "shellac, shortest to the next coat [h]").agree(row.low_h, "0.25")
    Outside("loose-section-page", "shellac, next coat on a pen [h]").agree(row.proposed_h, "8")
    Outside("loose-section-page", "shellac, first test [h]").agree(cure_of("shellac", "test", ROWS).proposed_h, "8")


def test_ink_waits_until_the_earliest_hour_at_which_the_film_is_called_hard():
    hard = cure_of("shellac", "hard", ROWS)
    Outside("woodworking-shellac", "shellac, ink [h]").agree(cure_of("shellac", "ink", ROWS).proposed_h, "24")
    assert cure_of("shellac", "ink", ROWS).proposed_h >= hard.low_h
    latest = Outside("acetic-sealant-pages", "silicone, ink [h]")
    latest.agree(cure_of("silicone", "ink", ROWS).proposed_h, "48")
