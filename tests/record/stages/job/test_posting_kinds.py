"""What is asked of the parcel keeps its names on disk, and nothing of it is for everybody."""

from record.on_disk import asked, on_disk

from pentools.record.stages.job import posting_kinds

KEPT = {
    "posting/parcel": "carried:c sent_on:d packed:c empty:b insured basis weighs:q number border:b",
    "posting/arrived": "arrived_on:d state:c said",
}
ASKED = {"posting/parcel*": "carried! sent_on! weighs:5-5000g", "posting/arrived*": "state!"}


def test_names_on_disk_stay():
    assert on_disk(posting_kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(posting_kinds) == ASKED


def test_nothing_of_a_parcel_is_for_everybody():
    for kind in (posting_kinds.PARCEL, posting_kinds.ARRIVED):
        assert kind.fields_for("everybody") == ()
