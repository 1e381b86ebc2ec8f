"""What every subject may have to say, filled in."""

import pytest

from pentools.words import phrase


@pytest.mark.parametrize(
    ("key", "values", "said"),
    [
        ("from-bench", {"facts": ["the bore", "the wall"]}, "Taken from this bench's own facts: the bore and the wall."),
        ("from-bench", {"facts": ["the bore"]}, "Taken from this bench's own facts: the bore."),
        ("missing", {"section": "Intake", "field": "owner"}, "Not on record (Intake): owner."),
    ],
)  # fmt: skip
def test_said(key, values, said):
    assert phrase(f"base.{key}", values) == said
