"""What is said of dating, where one and several or months and years are told apart."""

import pytest

from pentools.words import phrase


@pytest.mark.parametrize(
    ("key", "values", "said"),
    [
        ("other ways", {"number": 1}, "1 more way out would cost more doubt."),
        ("other ways", {"number": 2}, "2 more ways out would cost more doubt."),
        (
            "next fact:narrow",
            {"fact": "the clip", "surely": True, "years": 0.5, "best": "1931"},
            "To narrow it most, find out the clip: at worst it leaves 6 months (1931 at best).",
        ),
        (
            "next fact:narrow",
            {"fact": "the clip", "surely": True, "years": 1.0, "best": "1931"},
            "To narrow it most, find out the clip: at worst it leaves about 1 year (1931 at best).",
        ),
        (
            "next fact:narrow",
            {"fact": "the clip", "surely": True, "years": 3.4, "best": "1931"},
            "To narrow it most, find out the clip: at worst it leaves about 3 years (1931 at best).",
        ),
        (
            "next fact:settle",
            {"fact": "the clip", "ways": 1},
            "To settle it, find out the clip: then 1 way out at most would be left.",
        ),
        (
            "next fact:end",
            {"earliest": True, "latest": True},
            "To narrow it most, look for a feature that gives an earliest or a latest date.",
        ),
        (
            "next fact:end",
            {"earliest": True, "latest": False},
            "To narrow it most, look for a feature that gives an earliest date.",
        ),
        (
            "next fact:end",
            {"earliest": False, "latest": True},
            "To narrow it most, look for a feature that gives a latest date.",
        ),
    ],
)
def test_said(key, values, said):
    assert phrase(f"dating.{key}", values) == said
