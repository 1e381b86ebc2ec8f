"""A new pen has a name made of the year, a free number and its words."""

import datetime as dt

import pytest

from pentools.errors import InputError
from pentools.record.job import create_job
from pentools.record.new_pen import job_name_for, new_pen
from pentools.record.stages.job.intake_kinds import ARRIVAL

DAY = dt.date(2026, 3, 14)


@pytest.mark.parametrize(
    ("pen", "name"),
    [
        ("black lever filler", "2026-001-black-lever-filler"),
        ("Grün/marbled, “1930s”!", "2026-001-grun-marbled-1930s"),
        ("黒い万年筆", "2026-001-pen"),
        ("x" * 200, "2026-001-" + "x" * 23),
    ],
)
def test_a_name_is_made_of_the_year_a_number_and_the_pen(bench, pen, name):
    assert job_name_for(bench, pen, DAY) == name


def test_the_number_is_free(bench):
    for name in ("2026-007-x", "2025-090-y", "2026-extra"):
        create_job(bench, name)
    assert job_name_for(bench, "pen", DAY).startswith("2026-008-")
    job = new_pen(bench, "black lever filler", DAY)
    assert job.name == "2026-008-black-lever-filler"
    assert job.newest(ARRIVAL).pen == "black lever filler"


def test_a_pen_of_which_nothing_is_said_is_asked_about(bench):
    with pytest.raises(InputError, match="described in a few words"):
        job_name_for(bench, "  ", DAY)
