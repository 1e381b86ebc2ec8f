"""What is asked as a job ends keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.job import ending_kinds

KEPT = {
    "limits/limit": "part:c left why instead for_now:b wanted advice photo:p",
    "limits/nothing left": "nothing_left:b",
    "pictures/picture": "photo:p moment:c view shows caption belongs_to:c taken_on:d light_and_scale known_mm:q known_px:n drawn:b public:b",
    "release/result": "ending:c summary price care follow_up follow_up_on:d promise_until:d mass_g:q released_on:d",
    "release/followed up": "asked_on:d said again_on:d",
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "limits/limit": "part! left! why!",
    "limits/nothing left*": "nothing_left!",
    "pictures/picture": "photo! moment! known_mm:1-300mm known_px:20-100000",
    "release/result*": "ending! summary! mass_g:0-200g",
    "release/followed up": "asked_on!",
}


def test_names_on_disk_stay():
    assert on_disk(ending_kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(ending_kinds) == ASKED
