"""What is said of the course of a job, where values are listed or shaped."""

import pytest

from pentools.words import phrase


@pytest.mark.parametrize(
    ("key", "values", "said"),
    [
        ("timer-long", {"hours": 9.26}, "Work log: a timer ran for 9.3 h at one go. Was it forgotten?"),
        (
            "alternatives",
            {"part": "clip", "missing": ["doing nothing"], "verb": "is"},
            "Agreement, clip: doing nothing is not weighed.",
        ),
        (
            "value:missing",
            {"title": "Intake", "kind": "arrival", "at": "10:00", "names": ["mass"]},
            "Intake, arrival, 10:00: not filled in: mass.",
        ),
        (
            "price-past",
            {"price": "90 EUR", "ceiling": "80 EUR"},
            "Release: the price of 90 EUR is past the agreed ceiling of 80 EUR (ask the owner first).",
        ),
    ],
)
def test_said(key, values, said):
    assert phrase(f"job.{key}", values) == said
