"""What is asked of a pen that came with others keeps its name on disk."""

from record.on_disk import asked, on_disk

from pentools.record.stages.job import came_with_kinds


def test_names_on_disk_stay():
    assert on_disk(came_with_kinds) == {"intake/came with": "lead"}


def test_what_is_needed():
    assert asked(came_with_kinds) == {"intake/came with*": "lead!"}
