"""What is asked at cleaning keeps its names on disk: a record of years ago is still read."""

from record.on_disk import on_disk

from pentools.record.stages.treatment import cleaning_kinds

KEPT = {
    "clean/flush mix": "ammonia:q parts_water:n jar:q room:q beside:l",
    "clean/bath": "part:c bath:c strength minutes:q temperature:q came_out",
    "clean/soak started": "part:c bath:c limit:q strength",
    "clean/soak ended": "part:c came_out",
    "clean/rinse": "part:c with_what minutes:q wets:b",
    "clean/drying": "part:c hours:q begun_ago:q how",
}


def test_names_on_disk_stay():
    assert on_disk(cleaning_kinds) == KEPT
