"""What is asked of a pen that comes back keeps its names on disk."""

from record.on_disk import asked, on_disk

from pentools.record.stages.job import coming_back_kinds

KEPT = {"intake/coming back": "older failed part:c cause:c covered:b promised_until:d promised fitted:l lots:l"}
ASKED = {"intake/coming back*": "older! failed!"}


def test_names_on_disk_stay():
    assert on_disk(coming_back_kinds) == KEPT


def test_what_is_needed_and_what_is_plausible():
    assert asked(coming_back_kinds) == ASKED
