"""A line of evidence: where the feature's name ends, no limiting word left in it, kind, certainty, part and source."""

import datetime as dt

import pytest

from pentools.calc.dating.evidence import CERTAINTIES, KINDS, Evidence, read_evidence
from pentools.calc.dating.phrases import read_date
from pentools.errors import InputError


@pytest.mark.parametrize(
    ("line", "feature", "edtf"),
    [
        ("clip not later than 1942", "clip", "../1942"), ("clip after c. 1936", "clip", "1937~/.."), ("clip late 1930s", "clip", "1936/1939"),
        ("clip introduced 1936, dropped 1942, sure", "clip", "1936/1942"), ("clip from 1936, until 1942", "clip", "1936/1942"), ("clip May 12, 1936", "clip", "1936-05-12"),
        ("clip>1936", "clip", "1937/.."), ("clip ≥1936", "clip", "1936/.."), ("clip (1936-1942)", "clip", "1936/1942"), ("clip early 1936", "clip", "1936/1936-04"),
        ("clip last 1942", "clip", "../1942"), ("clip never seen after 1942", "clip", "../1942"), ("clip 1936 dropped 1942", "clip", "1936/1942"),
        ("clip 20th century", "clip", "1901/2000"), ("clip in about 1936", "clip", "1936~"), ("clip c. 1936 ± 3", "clip", "1936~"), ("feed [1936,1938], unknown", "feed", "[1936,1938]"),
        # such words within a name
        ("late style clip 1936", "late style clip", "1936"), ("after-market clip 1936", "after-market clip", "1936"), ("clip, late style 1936", "clip, late style", "1936"),
        ("pre-war clip 1936", "pre-war clip", "1936"), ("early clip before 1936", "early clip", "../1935"), ("last version clip since 1936", "last version clip", "1936/.."),
        ("first-year clip 1936", "first-year clip", "1936"), ("mid-size nib c. 1936", "mid-size nib", "1936~"), ("by-pass filler 1936", "by-pass filler", "1936"),
        ("introduction leaflet 1936", "introduction leaflet", "1936"), ("No. 6 nib 1936", "No. 6 nib", "1936"), ("cap, from the side, 1936", "cap, from the side", "1936"),
        # words that limit, as they are spoken and misspelt
        ("clip not later then 1942", "clip", "../1942"), ("clip no more after 1942", "clip", "../1942"), ("clip not any longer made after 1942", "clip", "../1942"), ("clip at least 1940", "clip", "1940/.."),
        ("clip appears 1936", "clip", "1936/.."), ("clip disappears 1942", "clip", "../1942"), ("clip upto 1942", "clip", "../1942"), ("clip more or less 1940", "clip", "1940~"),
        # the dates first
        ("late 1930s nib", "nib", "1936/1939"), ("1936 clip", "clip", "1936"), ("1936 to 1942 clip, sure", "clip", "1936/1942"), ("introduced in 1938 clip", "clip", "1938/.."),
        ("1936 or later two-tone nib", "two-tone nib", "1936/.."), ("not after 1942 feed", "feed", "../1942"), ("c. 1936 patent", "patent", "1936~"),
        # a colon says where the name ends
        ("clip before repair: 1936", "clip before repair", "1936"), ("clip:1936", "clip", "1936"), ("imprint: second line: 1936", "imprint: second line", "1936"), ("model 1936 clip: before 1942", "model 1936 clip", "../1941"),
        ("after market clip: not later than 1936", "after market clip", "../1936"), ("clip made: 1936", "clip made", "1936"),
        ("imprint, second line, 1936, doubtful", "imprint, second line", "1936"), ("clip, original, 1936", "clip", "1936"),
    ],
)  # fmt: skip
def test_where_the_name_ends(line, feature, edtf):
    item = read_evidence(line)
    assert (item.feature, item.dates.edtf) == (feature, edtf)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("clip introduced by the maker in 1936", "“introduced” belongs to the feature's name"),
        ("clip introduced before 1936", "limits neither end"), ("after market clip 1936", "after market clip: 1936"), ("clip before repair 1936", "clip before repair: 1936"),
        ("clip not later than: 1942", "Put the colon behind the feature's name: clip: not later than 1942"), ("clip introduced: 1936", "clip: introduced 1936"),
        ("clip late: 1930s", "clip: late 1930s"), ("clip c.: 1936", "clip: c. 1936"), ("clip dates from 1936", "“dates” is not understood"), ("clip shortly after 1936", "no agreed length"),
        ("clip spring 1936", "give the months"), ("clip from the 1930s", "then and later"), ("nib replaced 1950", "replaced behind a comma"), ("clip turn of the century 1900", "century"),
        ("clip 1936 gold", "“gold” is not understood"), ("clip 1936 1938", "not one date"), ("1936-1942", "The feature is missing"), ("not later than 1942", "The feature is missing"),
        (": 1936", "named"), ("clip", "clip 1936/1942"), ("", "clip 1936/1942"), ("clip 1936, perhaps", "words from: production"), ("clip, sure", "a feature with its dates"),
        ("model 1936: clip 1938", "“clip” is not understood"), ("clip circa early style 1936", "“circa”"), ("clip well before 1940", "no agreed length"), ("clip towards 1940", "no agreed length"),
        ("1936-38 clip", "Does it mean 1936/1938"), ("1936 clip or later", "clip 1936/1942"), ("1936 clip before repair", "clip 1936/1942"), ("1936 model 8 clip", "clip 1936/1942"), ("1936 not clip", "clip 1936/1942"), ("not original clip 1936", "not original clip: 1936"), ("clip 1936, sure, doubtful", "contradict each other"), ("clip 1936, original, replaced", "contradict"),
    ],
)  # fmt: skip
def test_what_limits_a_date_is_never_left_in_the_name(line, said):
    with pytest.raises(InputError, match=said):
        read_evidence(line)


def test_a_colon_is_not_advised_where_it_would_hide_the_word():
    with pytest.raises(InputError) as error:
        read_evidence("clip shortly 1936")
    assert "colon" not in str(error.value)


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("patent 1934", "patent"), ("pat. 1934", "patent"), ("patented clip 1934", "patent"), ("advert 1938", "advert"), ("catalogue 1938", "advert"), ("date code 1941", "date code"),
        ("price on the band 1938", "price mark"), ("colour 1938", "colour"), ("engraving 1941", "inscription"), ("clip 1936", "production"), ("clip 1936, opinion", "opinion"),
        ("advert 1938, production", "production"), ("compatible clip 1936", "production"),
    ],
)  # fmt: skip
def test_the_kind_is_told_by_words_of_the_name(line, kind):
    assert read_evidence(line).kind == kind


def test_a_line_with_everything():
    item = read_evidence("clip 1936~, sure, unknown part, source: a collectors' wiki, read in March", about_years=3)
    assert (item.certainty, item.part, item.source) == ("sure", "unknown", "a collectors' wiki, read in March")
    assert item.dates.meaning == "1933 to 1939"
    plain = read_evidence("clip 1936")
    assert (plain.certainty, plain.part, plain.source) == ("likely", "original", "")


def days(item):
    return [tuple(None if d is None else dt.date.fromordinal(d).isoformat() for d in span) for span in item.spans]


def test_what_each_kind_says_of_the_pen():
    dates = read_date("1936/1938")
    wanted = {kind: [("1936-01-01", "1938-12-31")] for kind in KINDS} | {
        "patent": [("1936-01-01", None)], "inscription": [(None, "1938-12-31")], "advert": [(None, None)],
    }  # fmt: skip
    for kind, spans in wanted.items():
        item = Evidence("clip", dates, kind)
        assert days(item) == spans
        assert item.limits_nothing == (kind == "advert")


def test_doubt_has_its_price():
    assert [Evidence("clip", read_date("1936"), certainty=word).weight for word in CERTAINTIES] == [3, 2, 1]
    assert Evidence("clip", read_date("1936?"), certainty="sure").weight == 1
    assert Evidence("clip", read_date("c. 1936"), certainty="sure").weight == 3


def test_words_are_checked():
    for wrong, said in (
        ({"part": "mine"}, "one of original"),
        ({"kind": "guess"}, "kind of evidence"),
        ({"certainty": "very"}, "certainty"),
    ):
        with pytest.raises(InputError, match=said):
            Evidence("clip", read_date("1936"), **wrong)
    with pytest.raises(InputError, match="named"):
        Evidence(" ", read_date("1936"))
