"""What the work log asks keeps its names on disk: a record of years ago is still read."""

from record.on_disk import on_disk

from pentools.record.stages.job import work_kinds

KEPT = {
    "work log/work": "activity:c minutes:q done by",
    "work log/timer start": "activity:c",
    "work log/timer stop": "done",
    "work log/material": "what way:c part:c reversible:b lot cost",
    "work log/departure": "what why agreed_on:d channel",
}


def test_names_on_disk_stay():
    assert on_disk(work_kinds) == KEPT
