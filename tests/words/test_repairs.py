"""What is said of parts mended, where the sentence turns on its values."""

import pytest

from pentools.words import phrase


@pytest.mark.parametrize(
    ("sent", "due", "said"),
    [
        (
            "2026-03-14",
            "2026-05-14",
            "Parts mended: the nib is at another workshop since 2026-03-14, expected back on 2026-05-14.",
        ),
        ("2026-03-14", None, "Parts mended: the nib is at another workshop since 2026-03-14."),
        (None, None, "Parts mended: the nib is at another workshop."),
    ],
)
def test_what_is_away(sent, due, said):
    assert phrase("repairs.away", {"part": "nib", "sent": sent, "due": due}) == said
