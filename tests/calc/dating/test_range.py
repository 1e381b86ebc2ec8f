"""Dating from evidence, above all against brute force: every year tried, every subset of evidence tried."""

import datetime as dt
import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pentools.calc.dating.evidence import Evidence, read_evidence
from pentools.calc.dating.findings import date_sentence
from pentools.calc.dating.interval import EdtfInterval, read_edtf, write_edtf
from pentools.calc.dating.phrases import read_date
from pentools.calc.dating.range import OpenQuestion, date_range
from pentools.calc.dating.spans import first_and_last_day, intersect, largest_agreements, merge_spans
from pentools.errors import InputError

LOW, HIGH = 1900, 1911  # a small calendar, so that runs into each other are common
YEARS = range(LOW - 1, HIGH + 2)  # one more at either side stands for all years outside
FIRST_DAYS = {year: dt.date(year, 1, 1).toordinal() for year in YEARS}


def year_span(first, last):
    return (
        None if first is None else first_and_last_day(first)[0],
        None if last is None else first_and_last_day(last)[1],
    )


@st.composite
def some_dates(draw):
    parts = []
    for _ in range(draw(st.sampled_from([1, 1, 1, 2]))):
        first = draw(st.none() | st.integers(LOW, HIGH))
        last = draw(st.none() | st.integers(first or LOW, HIGH))
        parts.append(year_span(first, last))
    spans = merge_spans(parts)
    return EdtfInterval(write_edtf(spans), spans)


@st.composite
def some_evidence(draw):
    return Evidence(
        draw(st.sampled_from(["clip", "nib", "cap", "imprint"])),
        draw(some_dates()),
        draw(st.sampled_from(["production", "production", "patent", "inscription", "advert", "colour"])),
        draw(st.sampled_from(["sure", "likely", "doubtful"])),
        draw(st.sampled_from(["original", "original", "original", "unknown", "replaced"])),
    )


def allowed_years(item):
    """The years an item allows, worked out year by year from its kind; nothing of the code under test but the dates."""
    spans = item.dates.spans
    firsts, lasts = [s[0] for s in spans], [s[1] for s in spans]

    def allows(year):
        day = FIRST_DAYS[year]
        if item.kind == "advert":
            return True
        if item.kind == "patent":
            return None in firsts or day >= min(firsts)
        if item.kind == "inscription":
            return None in lasts or day <= max(lasts)
        return any((a is None or day >= a) and (b is None or day <= b) for a, b in spans)

    return {year for year in YEARS if allows(year)}


def years_of(spans):
    return {
        year
        for year in YEARS
        if any((a is None or FIRST_DAYS[year] >= a) and (b is None or FIRST_DAYS[year] <= b) for a, b in spans)
    }


def brute_ways(items):
    """Every set of original evidence whose removal lets the rest agree, no part of which would do."""
    original = [i for i, item in enumerate(items) if item.part == "original"]
    years = {i: allowed_years(items[i]) for i in original}
    enough = []
    for size in range(len(original) + 1):
        for doubted in itertools.combinations(original, size):
            if any(set(smaller) <= set(doubted) for smaller, _ in enough):
                continue
            left = set(YEARS).intersection(*(years[i] for i in original if i not in doubted))
            if left:
                enough.append((doubted, left))
    return dict(enough)


@settings(max_examples=250, deadline=None)
@given(st.lists(some_evidence(), min_size=1, max_size=8))
def test_range_and_contradictions_against_brute_force(items):
    result = date_range(items)
    ways = brute_ways(items)
    if () in ways:
        assert years_of(result.spans) == ways[()]
        assert result.conflicts == result.other_ways == ()
        assert read_edtf(result.edtf).spans == result.spans
        return
    assert result.spans == ()
    assert result.edtf == ""
    found = {way.doubted: years_of(way.spans) for way in (*result.conflicts, *result.other_ways)}
    assert found == ways
    weight = {doubted: sum(items[i].weight for i in doubted) for doubted in ways}
    for way in (*result.conflicts, *result.other_ways):
        assert way.weight == weight[way.doubted]
        assert way.least_weight == (way.weight == min(weight.values()))
        assert way.fewest == (len(way.doubted) == min(map(len, ways)))
        assert (way in result.conflicts) == (way.least_weight or way.fewest)
    assert [way.weight for way in result.conflicts] == sorted(way.weight for way in result.conflicts)


@settings(max_examples=100, deadline=None)
@given(st.lists(some_evidence(), min_size=1, max_size=8))
def test_nothing_is_tighter_than_the_evidence(items):
    result = date_range(items)
    for year in years_of(result.spans):
        assert all(year in allowed_years(item) for item in items if item.part == "original")
    # only what is on original parts counts
    kept = [item for item in items if item.part == "original"]
    if kept:
        assert date_range(kept).spans == result.spans


@settings(max_examples=100, deadline=None)
@given(st.lists(some_evidence(), min_size=1, max_size=6), st.lists(some_dates(), min_size=2, max_size=3))
def test_the_facts_that_narrow_against_brute_force(items, answers):
    result = date_range(items, [OpenQuestion("feed", tuple(answers))])
    if not result.spans:
        return
    now = years_of(result.spans)
    left = [rest for answer in answers if (rest := now & years_of(answer.spans))]
    facts = [fact for fact in result.next_facts if fact.feature == "feed"]
    narrowing = [rest for rest in left if rest < now]

    def size(years):  # the years at the rim stand for all years outside
        return math.inf if years & {LOW - 1, HIGH + 1} else len(years)

    assert bool(facts) == any(size(rest) < size(now) for rest in left)
    assert bool(facts) <= bool(narrowing)
    if facts:
        for got, wanted in ((facts[0].best_years, min(map(size, left))), (facts[0].worst_years, max(map(size, left)))):
            assert got == wanted or round(got) == wanted
    assert [f.worst_years for f in result.next_facts] == sorted(f.worst_years for f in result.next_facts)
    for fact in result.next_facts:
        assert set(years_of(read_edtf(fact.edtf_at_best).spans)) <= now


@given(st.lists(some_dates(), min_size=1, max_size=7))
def test_agreements_are_the_largest_ones(dates):
    sets = [years_of(d.spans) for d in dates]
    masks = {sum(1 << i for i, years in enumerate(sets) if year in years) for year in YEARS}
    largest = {m for m in masks if not any(m != o and m & o == m for o in masks)}
    assert {a.members for a in largest_agreements([d.spans for d in dates], [1] * len(dates))} == largest


def test_a_replaced_part_is_found_out():
    result = date_range(["clip 1936/1942", "barrel 1938/1945", "imprint 1935/1940", "nib 1950/1955"])
    assert [way.features for way in result.conflicts] == [("nib",)]
    assert result.conflicts[0].edtf == "1938/1940"
    assert "doubt is the nib" in date_sentence(result)
    mended = date_range(["clip 1936/1942", "barrel 1938/1945", "imprint 1935/1940", "nib 1950/1955, replaced"])
    assert (mended.first_year, mended.last_year, mended.conflicts) == (1938, 1940, ())


def test_two_doubtful_ones_may_cost_less_than_a_sure_one():
    result = date_range(["clip 1936/1942, doubtful", "cap 1936/1940, doubtful", "date code 1950, sure"])
    assert [(w.features, w.least_weight, w.fewest) for w in result.conflicts] == [
        (("clip", "cap"), True, False),
        (("date code",), False, True),
    ]


def test_ties_are_all_named():
    result = date_range(["clip 1930/1932", "cap 1940/1942"])
    assert {way.features for way in result.conflicts} == {("clip",), ("cap",)}
    assert all(way.least_weight and way.fewest for way in result.conflicts)


def test_a_patent_is_only_a_not_before():
    assert date_range(["patent 1934"]).edtf == "1934/.."
    assert date_range(["patent 1934/1936", "clip 1938/1942"]).edtf == "1938/1942"
    contradiction = date_range(["patent 1934", "clip 1930/1933"])
    assert contradiction.conflicts


def test_an_inscription_is_only_a_not_after_and_an_advert_limits_nothing():
    assert date_range(["inscription 1941"]).edtf == "../1941"
    advert = date_range(["advert 1938"])
    assert advert.edtf == "../.."
    assert any("limits neither end" in f.text for f in advert.findings)


def test_a_part_not_known_to_be_original_never_tightens():
    result = date_range(["clip 1936/1942", "feed 1938/1939, unknown", "nib 1950, unknown"])
    assert result.edtf == "1936/1942"
    assert result.edtf_if_all_original == "1938/1939"
    assert [result.evidence[i].feature for i in result.unknown_disagree] == ["nib"]
    assert result.next_facts[0].feature == "feed"
    assert any(f.level == "warning" and "nib" in f.text for f in result.findings)


def test_without_anything_original_nothing_is_said():
    result = date_range(["clip 1936/1942, unknown"])
    assert result.edtf == "../.."
    assert any(f.topic == "no original" for f in result.findings)
    with pytest.raises(InputError, match="at least one"):
        date_range([])


def test_a_gap_stays_a_gap():
    assert date_range(["imprint [1936..1938,1946..1948]", "clip 1938/1946"]).edtf == "[1938,1946]"


def test_days_count_not_only_years():
    result = date_range(["price mark until May 1936", "patent 1936-06-02"])
    assert not result.spans
    assert date_range(["price mark until June 1936", "patent 1936-06-02"]).edtf == "1936-06-02/1936-06-30"


def test_a_narrow_range_is_warned_of_unless_a_date_is_stamped():
    assert any(f.topic == "narrow" for f in date_range(["clip 1936/1938", "cap 1938/1940"]).findings)
    assert not any(f.topic == "narrow" for f in date_range(["date code Q1 1941, sure"]).findings)
    assert not any(f.topic == "narrow" for f in date_range(["clip 1936/1938"]).findings)


def test_an_end_that_rests_on_something_doubtful_is_named():
    result = date_range(["clip 1936/1942", "colour 1938/1940?"])
    assert result.evidence[1].weight == 1
    text = next(f.text for f in result.findings if f.topic == "weak end")
    assert "1936 to 1942" in text


def test_which_fact_narrows_most():
    feed = OpenQuestion("feed", (read_date("until 1938"), read_date("from 1939")))
    section = OpenQuestion("section", (read_date("until 1936"), read_date("from 1937")))
    result = date_range(["clip 1936/1942"], [section, feed])
    assert [fact.feature for fact in result.next_facts] == ["feed", "section"]
    assert round(result.next_facts[0].worst_years) == 4
    open_ended = date_range(["patent 1938"])
    assert any("latest date" in f.text for f in open_ended.findings)


def test_which_fact_settles_a_contradiction():
    result = date_range(["clip 1930/1932", "cap 1940/1942", "nib 1931/1941"])
    best = result.next_facts[0]
    assert best.ways_left == 1
    assert best.feature in ("clip", "cap")


@pytest.mark.parametrize(
    ("line", "feature", "edtf", "kind"),
    [
        ("clip 1936/1942", "clip", "1936/1942", "production"),
        ("clip: 1936/1942", "clip", "1936/1942", "production"),
        ("cap band c. 1936", "cap band", "1936~", "production"),
        ("nib 5 before 1942", "nib 5", "../1941", "production"),
        ("nib 1436: 1936", "nib 1436", "1936", "production"),
        ("patent no. 1888888 1934", "patent no. 1888888", "1934", "patent"),
        ("retail price mark 1936/1938", "retail price mark", "1936/1938", "price mark"),
        ("imprint [1936,1938]", "imprint", "[1936,1938]", "production"),
        ("box label May 1936, inscription", "box label", "1936-05", "inscription"),
        ("clip /1942", "clip", "/1942", "production"),
    ],
)
def test_a_line_of_evidence(line, feature, edtf, kind):
    item = read_evidence(line)
    assert (item.feature, item.dates.edtf, item.kind) == (feature, edtf, kind)


def test_a_line_with_everything():
    item = read_evidence("clip 1936~, sure, unknown part, source: a collectors' wiki, read in March", about_years=3)
    assert (item.certainty, item.part, item.source) == ("sure", "unknown", "a collectors' wiki, read in March")
    assert item.dates.meaning == "1933 to 1939"


@pytest.mark.parametrize(
    "line", ["", "clip", "1936", "clip 1942/1936", "clip 1936 to 1930", "clip 1936, perhaps", "clip 1936 1938"]
)
def test_a_line_that_cannot_be_read(line):
    with pytest.raises(InputError):
        read_evidence(line)


def test_words_are_checked():
    with pytest.raises(InputError, match="one of original"):
        Evidence("clip", read_date("1936"), part="mine")
    with pytest.raises(InputError, match="named"):
        Evidence(" ", read_date("1936"))
    with pytest.raises(InputError, match="at least two"):
        OpenQuestion("feed", (read_date("1936"),))


def test_nothing_in_common_with_nothing_given_is_any_day():
    assert intersect([]) == ((None, None),)


@settings(max_examples=100, deadline=None)
@given(st.lists(some_evidence(), min_size=2, max_size=7))
def test_the_facts_that_settle_against_brute_force(items):
    result = date_range(items)
    if result.spans:
        return
    ways = set(brute_ways(items))
    wanted = {}
    for place in {i for way in ways for i in way}:
        doubting = sum(place in way for way in ways)
        wanted[place] = max(doubting, len(ways) - doubting)
    assert sorted((items[i].feature, left) for i, left in wanted.items()) == sorted(
        (f.feature, f.ways_left) for f in result.next_facts
    )
    assert result.next_facts[0].ways_left == min(wanted.values())
