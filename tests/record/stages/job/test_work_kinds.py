"""What the work log asks keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.job import work_kinds

KEPT = {
    "work log/work": "activity:c minutes:q done by",
    "work log/timer start": "activity:c",
    "work log/timer stop": "done",
    "work log/material": "what way:c part:c reversible:b lot cost",
    "work log/wanted": "what part:c ordered_on:d expected_by:d arrived_on:d",
    "work log/departure": "what why agreed_on:d channel",
    "work log/tool": "tool part:c dimensions made_from photo:p",
    "work log/note": "note",
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "work log/work": "activity! minutes!:0-1440min done!",
    "work log/timer start": "activity!",
    "work log/timer stop": "",
    "work log/material": "what! way!",
    "work log/wanted": "what!",
    "work log/departure": "what! why!",
    "work log/tool": "tool!",
    "work log/note": "note!",
}


def test_names_on_disk_stay():
    assert on_disk(work_kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(work_kinds) == ASKED
