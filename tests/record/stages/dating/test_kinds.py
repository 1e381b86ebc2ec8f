"""What is asked of age and make keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.dating import kinds

KEPT = {
    "identify/mark": "where text read_with engraved_name:b photo:p",
    "identify/evidence": "feature dates evidence_kind:c certainty:c part_state:c source",
    "identify/question": "feature answers:l",
    "identify/price then": "price year:i country:c known_from",
    "identify/identity": "maker origin object_type certainty:c conclusion",
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "identify/mark": "where! text!",
    "identify/evidence": "feature! dates! evidence_kind! certainty! part_state!",
    "identify/question": "feature! answers!",
    "identify/price then*": "price! year!:1850-2100 country!",
    "identify/identity*": "maker! object_type!",
}


def test_names_on_disk_stay():
    assert on_disk(kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(kinds) == ASKED
