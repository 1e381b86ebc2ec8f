"""What is said of a date: the sentence, and each finding with its level, when it is said and when not."""

import pytest

from pentools.calc.dating.findings import date_sentence
from pentools.calc.dating.narrowing import OpenQuestion
from pentools.calc.dating.phrases import read_date
from pentools.calc.dating.range import date_range


def said(lines, topic, questions=()):
    return [(f.level, f.text) for f in date_range(lines, questions).findings if f.topic == topic]


def test_the_sentence():
    assert (
        date_sentence(date_range(["clip 1936/1942", "cap from 1938"]))
        == "All evidence on original parts allows 1938 to 1942."
    )
    assert (
        date_sentence(date_range(["advert 1938"])) == "The evidence on original parts limits the date at neither end."
    )
    torn = date_sentence(date_range(["clip 1930/1932", "cap 1940/1942"]))
    assert torn == (
        "The evidence contradicts itself. The least to doubt is the clip, which leaves 1940 to 1942; or the cap, which leaves 1930 to 1932."
    )
    # what costs more is not said in the sentence
    assert "date code" not in date_sentence(
        date_range(["clip 1936, doubtful", "cap 1936, doubtful", "date code 1950, sure"])
    )


def test_the_gravest_comes_first():
    levels = [
        f.level for f in date_range(["clip 1930/1932", "cap 1940/1942", "nib c. 1950, unknown", "advert 1931"]).findings
    ]
    order = ["stop", "warning", "note", "ok"]
    assert levels == sorted(levels, key=order.index)


def test_ways_out_and_their_reasons():
    lines = ["clip 1936, doubtful", "cap 1936, doubtful", "date code 1950, sure"]
    assert said(lines, "contradiction") == [
        ("warning", "Doubt the clip and cap (least weight) and the rest allows 1950."),
        ("warning", "Doubt the date code (fewest pieces) and the rest allows 1936."),
    ]
    assert said(["clip 1936", "cap 1936", "nib 1950"], "contradiction") == [
        ("warning", "Doubt the nib (least weight and fewest pieces) and the rest allows 1936.")
    ]
    assert said(["clip 1936", "cap 1936", "nib 1950"], "other ways") == [
        ("note", "1 more way out would cost more doubt.")
    ]
    assert said(["clip 1930", "cap 1930", "nib 1940", "feed 1950"], "other ways") == [
        ("note", "2 more ways out would cost more doubt.")
    ]
    assert said(["clip 1936", "cap 1940"], "other ways") == []


def test_narrow_without_a_stamped_date():
    assert said(["clip 1936/1938", "cap 1937/1940"], "narrow") == [
        (
            "note",
            "1937 to 1938 is narrower than 3 years without a stamped date. Factories fitted the parts they had, so do not lean on the edges.",
        )
    ]
    assert said(["clip 1936/1938"], "narrow") == []  # three years are not fewer
    assert said(["clip 1936/1938", "date code 1937"], "narrow") == []
    assert len(said(["clip 1936/1937", "date code 1937, replaced"], "narrow")) == 1
    assert said(["patent 1934"], "narrow") == []


@pytest.mark.parametrize(
    ("lines", "topic", "told"),
    [
        (
            ["clip 1936/1942", "cap 1938/1944, doubtful"],
            "weak start",
            "The start rests on the cap alone, which is doubtful. Without it: 1936 to 1942.",
        ),
        (
            ["clip 1936/1942", "cap 1930/1940, doubtful"],
            "weak end",
            "The end rests on the cap alone, which is doubtful. Without it: 1936 to 1942.",
        ),
        (["clip 1936/1942", "cap 1938/1944"], "weak start", None),
        (["clip 1936/1942, doubtful", "cap 1936/1942, doubtful"], "weak start", None),
        (
            ["clip 1936/1942, doubtful", "nib 1930/1950, unknown"],
            "weak start",
            "The start rests on the clip alone, which is doubtful. Without it: any date.",
        ),
    ],
)
def test_an_end_that_rests_on_one_doubtful_piece(lines, topic, told):
    assert said(lines, topic) == ([("note", told)] if told else [])


def test_agreement_is_said_where_there_is_something_to_agree():
    assert said(["clip 1936/1942", "cap 1938/1944"], "agreed") == [("ok", "The evidence does not contradict itself.")]
    assert said(["clip 1936/1942", "cap 1938, unknown"], "agreed") == [("ok", "It rests on one piece of evidence.")]
    assert (
        said(["clip 1930", "cap 1940"], "agreed")
        == said(["advert 1938"], "agreed")
        == said(["clip 1936, unknown"], "agreed")
        == []
    )


def test_parts_not_known_to_be_original():
    assert said(["clip 1936/1942, unknown"], "no original") == [
        ("warning", "No evidence is on a part known to be original, so nothing limits the date.")
    ]
    assert said(["clip 1936/1942"], "no original") == []
    assert said(["clip 1936/1942", "feed 1938/1939, unknown"], "if original") == [
        ("note", "If the feed should be original too: 1938/1939.")
    ]
    assert said(["clip 1936/1942", "feed 1930/1950, unknown"], "if original") == []
    assert said(["clip 1936/1942", "feed 1936, unknown", "nib 1940, unknown"], "if original") == [
        ("note", "Not all of these can be original together: feed and nib.")
    ]
    assert said(["clip 1936/1942", "nib 1950, unknown"], "does not fit") == [
        ("warning", "The nib (1950) does not fit the rest: it is probably not original.")
    ]


def test_what_each_kind_says_and_does_not():
    lines = [
        "patent 1934",
        "advert 1938",
        "label 1936/1940, opinion",
        "clip 1936?",
        "cap c. 1936 ± 3",
        "nib 1950, replaced",
        "feed 1951, replaced",
    ]
    assert said(lines, "patent") == [
        ("note", "The patent is taken as “not before”: a patent mark says nothing of the end.")
    ]
    assert said(lines, "advert")[0][1].startswith("The advert limits neither end")
    assert said(lines, "opinion") == [("note", "The label is an opinion: say so wherever the date is given.")]
    assert said(lines, "uncertain") == [("note", "The date of the clip is marked ?, so it counts as doubtful.")]
    assert said(lines, "about") == [("note", "“About” for the cap reaches 3 years to either side: 1933 to 1939.")]
    assert said(lines, "replaced") == [("note", "Left out, as replaced: nib and feed.")]
    assert said(["patent 1934, replaced", "clip 1936?, replaced", "cap c. 1936, replaced"], "patent") == []
    assert said(["clip 1936/1942"], "replaced") == []


def test_how_it_was_read_is_said_where_it_could_be_mistaken():
    assert said(["clip before 1942"], "read as") == [
        ("note", "clip: “before 1942” was taken as 1941 or earlier, without the year named.")
    ]
    assert said(["clip until 1942"], "read as") == []
    assert "thirds" in said(["clip late 1930s"], "read as")[0][1]


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        (["patent 1934"], "To narrow it most, look for a feature that gives a latest date."),
        (["inscription 1941"], "To narrow it most, look for a feature that gives an earliest date."),
        (["advert 1941"], "To narrow it most, look for a feature that gives an earliest or a latest date."),
        (["clip 1936/1942"], "To narrow it most, look for a feature that changed about 1939: it would halve the range."),
        (["clip 1936/1937"], "To narrow it most, look for a feature that changed about 1936: it would halve the range."),
        (["clip 1936"], None),
        (["clip 1936/1942", "feed 1938, unknown"], "To narrow it most, find out whether the feed is original: at best it leaves about 1 year (1938 at best)."),
        (["clip 1936/1942", "feed 1938-05, unknown"], "To narrow it most, find out whether the feed is original: at best it leaves 1 month (1938-05 at best)."),
        (["clip 1936/1942", "feed 1938-05/1938-07, unknown"], "To narrow it most, find out whether the feed is original: at best it leaves 3 months (1938-05/1938-07 at best)."),
        (["clip 1936/1942", "feed 1938-05-12, unknown"], "To narrow it most, find out whether the feed is original: at best it leaves less than a month (1938-05-12 at best)."),
        (["clip 1936/1942", "feed 1938-01/1938-12-12, unknown"], "To narrow it most, find out whether the feed is original: at best it leaves 11 months (1938-01-01/1938-12-12 at best)."),
        (["clip 1936/1942", "feed 1938-01/1938-12-30, unknown"], "To narrow it most, find out whether the feed is original: at best it leaves about 1 year (1938-01-01/1938-12-30 at best)."),
        (["clip 1936/1942", "feed 1938/1939, unknown"], "To narrow it most, find out whether the feed is original: at best it leaves about 2 years (1938/1939 at best)."),
        (["clip 1930", "cap 1940"], "To settle it, find out whether the clip is original and its dates are right: then 1 way out at most would be left."),
        (["clip 1930", "cap 1940", "nib 1950"], "To settle it, find out whether the clip is original and its dates are right: then 2 ways out at most would be left."),
    ],
)  # fmt: skip
def test_what_to_find_out_next(lines, told):
    assert said(lines, "next fact") == ([("note", told)] if told else [])


def test_a_question_that_surely_narrows_is_told_by_its_worst():
    feed = OpenQuestion("feed", (read_date("1936/1938"), read_date("1939/1942")))
    assert said(["clip 1936/1942"], "next fact", [feed]) == [
        (
            "note",
            "To narrow it most, find out which form of the feed it has: at worst it leaves about 4 years (1936/1938 at best).",
        )
    ]
