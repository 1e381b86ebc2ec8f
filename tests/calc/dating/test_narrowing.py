"""Which new fact would narrow a range most: a part's originality, a firm date for an "about", an open question's answers."""

import pytest

from pentools.calc.dating.evidence import read_evidence
from pentools.calc.dating.narrowing import OpenQuestion, facts_that_narrow, facts_that_settle
from pentools.calc.dating.phrases import read_date
from pentools.calc.dating.range import date_range
from pentools.errors import InputError


def narrow(lines, questions=()):
    evidence = [read_evidence(line) for line in lines]
    return facts_that_narrow(evidence, date_range(evidence).spans, questions)


def test_whether_a_part_is_original():
    (fact,) = narrow(["clip 1936/1942", "feed 1938/1939, unknown"])
    assert (fact.feature, fact.text, fact.edtf_at_best, fact.ways_left) == (
        "feed",
        "whether the feed is original",
        "1938/1939",
        0,
    )
    assert (round(fact.best_years, 2), round(fact.worst_years, 2)) == (2.0, 7.0)
    assert narrow(["clip 1936/1942", "feed 1950, unknown"]) == ()  # it cannot be
    assert narrow(["clip 1936/1942", "feed 1930/1950, unknown"]) == ()  # it would change nothing
    assert narrow(["clip 1936/1942", "feed 1938, replaced"]) == ()


def test_a_firm_date_in_place_of_about():
    (fact,) = narrow(["clip c. 1936", "cap 1930/1950"])
    assert (fact.text, fact.edtf_at_best) == ("a firm date for the clip", "1936")
    assert round(fact.worst_years) == 5
    assert narrow(["advert c. 1938", "clip 1936/1942"]) == ()
    (patent,) = narrow(["patent c. 1938", "clip 1936/1942"])
    assert patent.edtf_at_best == "1938/1942"


def test_open_questions_what_narrows_surely_comes_first():
    halves = OpenQuestion("feed", (read_date("1936/1938"), read_date("1939/1942")))
    may = OpenQuestion("section", (read_date("1936"), read_date("1936/1942")))
    out = OpenQuestion("band", (read_date("1950"), read_date("1936/1940")))
    facts = narrow(["clip 1936/1942"], [may, halves, out])
    assert [(fact.feature, round(fact.worst_years), round(fact.best_years)) for fact in facts] == [
        ("feed", 4, 3),
        ("band", 5, 5),
        ("section", 7, 1),
    ]
    assert [fact.edtf_at_best for fact in facts] == ["1936/1938", "1936/1940", "1936"]
    assert facts[0].text == "which form of the feed it has"
    assert narrow(["clip 1936/1942"], [OpenQuestion("cap", (read_date("1950"), read_date("1960")))]) == ()


def test_what_settles_a_contradiction():
    spans = date_range(["clip 1936"]).spans
    facts = facts_that_settle(["clip", "cap", "nib"], [((0,), spans), ((1, 2), spans), ((1,), spans)])
    assert [(f.feature, f.ways_left, f.edtf_at_best) for f in facts] == [
        ("clip", 2, "1936"),
        ("cap", 2, "1936"),
        ("nib", 2, ""),
    ]
    assert facts[0].best_years == facts[0].worst_years == pytest.approx(1, abs=0.01)
    assert facts[-1].best_years == 0
    (alone, other) = facts_that_settle(["clip", "cap"], [((0,), spans), ((1,), spans)])
    assert (alone.ways_left, other.ways_left) == (1, 1)


def test_a_question_needs_two_answers():
    with pytest.raises(InputError, match="at least two"):
        OpenQuestion("feed", (read_date("1936"),))
