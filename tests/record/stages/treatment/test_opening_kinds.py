"""What is asked at opening keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.treatment import opening_kinds

KEPT = {
    "open/material": "part:c material told_by sure:b",
    "open/joint": "joint:c sealant:c body seen",
    "open/heat pass": "joint:c surface:q minutes:q moved broke free:b",
    "open/step": "number:i did came_off:l moved broke photo:p",
    "open/met": "condition:c how",
    "open/knock-out block": "tail:q shoulder:q bore:q depth:q front:q section:q clearance:q",
    "open/parts tray": "items:l kept all_there:b",
    "open/overrule": "material treatment:c verdict:c reason how_far most_minutes:q most_warmth:q",
    "open/caution read": "caution:c",
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "open/material": "part! material!",
    "open/joint": "joint! sealant!",
    "open/heat pass": "joint! surface:15-150degC minutes:0.05-60min",
    "open/step": "number:1-40 did!",
    "open/met": "condition! how!",
    "open/knock-out block*": "tail! shoulder! bore!",
    "open/parts tray": "items!",
    "open/overrule": "material! treatment! verdict! reason! most_minutes:0-2880min most_warmth:15-120degC",
    "open/caution read": "caution!",
}


def test_names_on_disk_stay():
    assert on_disk(opening_kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(opening_kinds) == ASKED
