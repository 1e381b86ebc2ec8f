"""A figure is told with its n and interval, or that they are too few; JSON has all of it."""

from pentools.books.learning.figures_told import Chapter, Learnt
from pentools.calc.books.median import median_of
from pentools.calc.books.share import share_of


def test_medians_shares_and_too_few_in_words():
    figures = (
        Learnt({"work": "re-sac"}, "a new sac", 6, median_of([40, 45, 50, 55, 60, 90]), {"x": 1}, "beside"),
        Learnt({"work": "look"}, "a look", 3, median_of([10, 20, 30])),
        Learnt({"work": "nib"}, "the nib", 2, None),
    )
    chapter = Chapter("minutes", "Minutes", "min", 0, figures)
    assert chapter.lines == (
        "  a new sac: 52 min (40 to 90); n = 6; beside",
        "  a look: 20 min (10 to 30, which holds the true middle in 75\u202f% of cases only); n = 3",
        "  the nib: too few to say; n = 2",
    )
    rows = chapter.as_json()
    assert rows[0] == {
        "work": "re-sac",
        "n": 6,
        "median": 52.5,
        "low": 40,
        "high": 90,
        "coverage": 0.9688,
        "unit": "min",
        "x": 1,
    }
    assert rows[2] == {"work": "nib", "n": 2, "said": "too few to say"}
    shares = Chapter(
        "s", "S", "share", 0, (Learnt({}, "lot", 4, share_of(1, 4)), Learnt({}, "fill", 3, median_of([0.5, 0.6, 0.7])))
    )
    assert shares.words(shares.figures[0]) == "1 of 4, 25\u202f% (1\u202f% to 81\u202f%)"
    assert shares.words(shares.figures[1]).startswith("60\u202f% (50\u202f% to 70\u202f%, which")


def test_a_long_chapter_is_cut_and_says_so():
    chapter = Chapter("m", "M", "min", 0, tuple(Learnt({}, str(n), 1, None) for n in range(20)))
    assert len(chapter.lines) == 16
    assert chapter.lines[-1] == "  and 5 more, which --json has"
    assert Chapter("m", "M", "min", 0, ()).lines == ("  too few to say",)
