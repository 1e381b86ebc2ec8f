"""The chart of evidence: what is shaded, what is marked, and where the axis ends."""

import pytest

from pentools.calc.dating.range import date_range
from pentools.figures.dating.identify import evidence_figure, years_shown


def test_nothing_to_draw():
    assert evidence_figure(None) is None
    assert evidence_figure(date_range(["advert 1939"])) is None


def test_the_title_is_the_finding_and_the_words_carry_the_numbers():
    drawing = evidence_figure(date_range(["clip 1936/1942, sure", "imprint from 1938", "nib 1950/1955, replaced"]))
    assert drawing.title == "All evidence on original parts allows 1938 to 1942"
    assert "clip: 1936 to 1942, sure" in drawing.alt
    assert "nib: 1950 to 1955, likely – replaced, left out" in drawing.alt
    assert "Shaded: agreed: 1938 to 1942." in drawing.alt
    assert "replaced, left out" in drawing.svg  # said in the picture too, not by colour alone


def test_the_outlier_is_marked_and_the_rest_shaded():
    drawing = evidence_figure(date_range(["imprint 1938/1942, sure", "clip 1948/1953", "band 1937/1941"]))
    assert drawing.title == "The evidence contradicts itself; without the clip it allows 1938 to 1941"
    assert "clip: 1948 to 1953, likely – does not fit" in drawing.alt
    assert drawing.alt.count("does not fit") == 1
    assert "Shaded: 1938 to 1941, without the clip." in drawing.alt


def test_an_unknown_part_that_does_not_fit_says_both():
    drawing = evidence_figure(date_range(["imprint 1938/1942", "feed 1950/1952, unknown"]))
    assert "feed: 1950 to 1952, likely – not known to be original; does not fit" in drawing.alt


@pytest.mark.parametrize(
    ("lines", "first", "last"),
    [
        (["clip 1936/1942"], 1936.0, 1943.0),
        (["imprint from 1938", "patent 1934"], 1934.0, 1938.0),
        (["imprint from 1938-07"], 1938.5, 1938.5),
    ],
)
def test_the_axis_holds_every_year_named_with_room_to_spare(lines, first, last):
    low, high = years_shown(date_range(lines))
    assert low <= first - 2 + 0.01
    assert high >= last + 2 - 0.01
