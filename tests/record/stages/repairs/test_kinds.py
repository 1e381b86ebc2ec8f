"""What is asked of parts mended keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.repairs import kinds

KEPT = {
    "repairs/repair": "part:c method:c where with_what long:q came_out lot stands:q ago:q for_now:b wanted photo:p",
    "repairs/test spot": "part:c method:c passed:b showed place photo:p",
    "repairs/imprint": "seen:c depth:q rubbing:b mask_proof:b photo:p",
    "repairs/sent out": "part:c work:c sent_on:d whom price due_on:d",
    "repairs/back again": "part:c back_on:d done cost photo:p",
}
ASKED = {
    "repairs/repair": "part! method! long:0.1-100mm stands:0-2000h ago:0-2000h",
    "repairs/test spot": "part! method! passed!",
    "repairs/imprint*": "seen! depth:0.001-1mm",
    "repairs/sent out": "part! work! sent_on!",
    "repairs/back again": "part! back_on! done!",
}


def test_names_on_disk_stay():
    assert on_disk(kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(kinds) == ASKED
