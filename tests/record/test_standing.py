"""The bench in lines: what goes on, what cannot be read, what has ended; and a name for a new pen."""

import datetime as dt

import pytest

from pentools.errors import InputError
from pentools.record.job import create_job
from pentools.record.standing import job_name_for, new_pen, standing_on

DAY = dt.date(2026, 3, 14)


def test_every_job_has_its_line_and_a_bad_one_stands_in_nobodys_way(bench):
    done, bad, going = (create_job(bench, name) for name in ("a-done", "b-bad", "c-going"))
    done.add("intake", "arrival", {"pen": "black pen"})
    done.add("release", "result", {"ending": "returned", "summary": "It goes back."})
    (bad.folder / "record.jsonl").unlink(missing_ok=True)
    (bad.folder / "record.jsonl").mkdir()
    going.add("seal", "measure", {"place": "head", "bore": "8 mm"})
    first, second, third = standing_on(bench)
    assert (first.name, first.state, first.pen) == ("c-going", "open", "")
    assert first.next == "say whose pen it is and how to reach them"
    assert first.waits[0].startswith("sealant waits: no dry fit has passed")
    assert (second.name, second.state) == ("b-bad", "unread")
    assert "record.jsonl" in second.next
    assert (third.name, third.state, third.pen, third.next) == ("a-done", "ended", "black pen", "returned unrepaired")


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
    [line] = [one for one in standing_on(bench) if one.name == job.name]
    assert line.pen == "black lever filler"


def test_a_pen_of_which_nothing_is_said_is_asked_about(bench):
    with pytest.raises(InputError, match="described in a few words"):
        job_name_for(bench, "  ", DAY)
