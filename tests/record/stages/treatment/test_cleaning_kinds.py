"""What is asked at cleaning keeps its names on disk: a record of years ago is still read."""

from record.on_disk import asked, on_disk

from pentools.record.stages.treatment import cleaning_kinds

KEPT = {
    "clean/flush mix": "ammonia:q parts_water:n jar:q room:q beside:l",
    "clean/bath": "part:c bath:c strength minutes:q temperature:q came_out",
    "clean/soak started": "part:c bath:c limit:q strength",
    "clean/soak ended": "part:c came_out",
    "clean/rinse": "part:c with_what minutes:q wets:b",
    "clean/drying": "part:c hours:q begun_ago:q how",
}


# what an entry cannot do without (!), its own ranges, and where the newest entry stands for all (*)
ASKED = {
    "clean/flush mix*": "ammonia!",
    "clean/bath": "part! bath! minutes:0.05-2880min temperature:2-60degC",
    "clean/soak started": "part! bath! limit:0.5-2880min",
    "clean/soak ended": "part!",
    "clean/rinse": "part! with_what! minutes:0.05-120min",
    "clean/drying": "part! hours!:0.05-720h begun_ago:0-720h",
}


def test_names_on_disk_stay():
    assert on_disk(cleaning_kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(cleaning_kinds) == ASKED
