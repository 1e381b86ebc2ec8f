"""The queue as it is read: a heading a group, a line a pen, and every key for who reads it by program."""

import datetime as dt

import pentools
from pentools.books.queue.queue import Line
from pentools.books.queue.words import as_json, in_lines, said_of
from pentools.record.bench import open_bench_folder

DAY = dt.date(2026, 11, 28)
ON = Line("pen-1", "a red pen", "bench", True, dt.date(2026, 11, 26), "open it", promised_by=dt.date(2026, 12, 2), danger="it is tight",
          holds=(("heat", "the material is not named"),))  # fmt: skip
OWNER = Line("pen-22", "", "owner", False, dt.date(2025, 11, 27), "open it", waits_for=("an answer",), overdue=("a clip was expected by 1 May 2026",))  # fmt: skip
POST = Line("pen-3", "a blue pen", "posting", True, dt.date(2026, 9, 1), "post it", days_here=88, overdue=("uncollected for 88 days",), waits_for=("posting",))  # fmt: skip
LONG = Line("pen-4", "a dun pen", "posting", True, dt.date(2025, 9, 1), "post it", days_here=453, overdue=("uncollected for 453 days",))  # fmt: skip
HOME = Line("pen-5", "a tan pen", "ended", False, None, "done", follow_up="ask after it", parcel="pen-4")


def test_groups_and_lines():
    lines = list(in_lines([ON, POST, LONG, OWNER, HOME], DAY))
    assert lines == [
        "To work on now (1)",
        "  pen-1   a red pen: open it. Since 26 Nov (2 days). Promised by 2 Dec: it is tight. Held: heat.",
        "Waiting for the owner (1)",
        "  pen-22  Open it. Waits for an answer. Since 27 Nov 2025 (366 days). Late: a clip was expected by 1 May 2026.",
        "Done, to be posted or fetched (2)",
        "  pen-3   a blue pen. Since 1 Sep (88 days). Uncollected.",
        "  and 1 that ended more than a year ago (--json lists them)",
        "Follow-ups due (1)",
        "  pen-5   a tan pen: ask after it.",
        "Ended: 1.",
        "Uncollected: what notices are due, and when, is for your own law and terms to say; the kit only counts the days.",
        "Open one with: pentools open JOB",
    ]


def test_reasons_stand_where_they_are_asked_for():
    assert "           heat waits: the material is not named" in list(in_lines([ON], DAY, why=True))
    assert list(in_lines([], DAY)) == ["The bench is empty. Start a job with: pentools new JOB"]


def test_a_day_before_it_began_counts_nothing():
    assert said_of(ON, dt.date(2026, 11, 20)).startswith("a red pen: open it. Since 26 Nov. ")


def test_every_key():
    assert as_json(ON) == {
        "job": "pen-1", "pen": "a red pen", "state": "bench", "state_words": "on the bench", "ready": True, "since": "2026-11-26",
        "by": None, "promised_by": "2026-12-02", "next": "open it", "until": None,
        "holds": [{"step": "heat", "reason": "the material is not named"}], "waits_for": [], "overdue": [], "in_danger": True,
        "danger": "it is tight", "follow_up": None, "days_uncollected": None, "parcel": None, "ending": None, "open": "pentools open pen-1",
    }  # fmt: skip
    assert (as_json(OWNER)["pen"], as_json(POST)["days_uncollected"], as_json(HOME)["parcel"]) == (None, 88, "pen-4")


def test_the_table_has_a_row_a_job_also_of_none(bench):
    table = pentools.queue(bench.folder, DAY)
    assert list(table["job"]) == ["a-first", "b-second", "c-torn"]
    assert set(table.columns) == set(as_json(ON))
    empty = open_bench_folder(bench.folder.parent / "empty", create=True)
    assert list(pentools.queue(empty.folder).columns) == list(table.columns)
