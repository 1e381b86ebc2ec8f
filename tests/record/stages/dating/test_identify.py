"""What the record says of a pen's identity and date; the logic of dates itself is tested in calc."""

import datetime as dt

import pytest

from pentools.errors import InputError
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.job import create_job
from pentools.record.review import review
from pentools.record.stages.dating.identify import clues, contradictions, dating, dating_findings, price_today


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")


def see(job, feature, dates, part="original", certainty="likely", kind="production"):
    return job.add(
        "identify",
        "evidence",
        {"feature": feature, "dates": dates, "evidence_kind": kind, "certainty": certainty, "part_state": part},
    )


def identify_checks(job):
    return [f for f in review(job) if f.text.startswith("Identify")]


def test_an_empty_job_has_no_date_and_no_findings(job):
    assert dating(job) is None
    assert dating_findings(job) == ()
    assert job.stage("identify").state_of(job).word == "not begun"
    assert identify_checks(job) == []


def test_all_original_evidence_gives_the_range_and_replaced_parts_none(job):
    see(job, "clip", "1936/1942")
    see(job, "imprint", "from 1938")
    see(job, "nib", "1950/1955", part="replaced")
    see(job, "feed", "1940/1944", part="unknown")
    assert dating(job).edtf == "1938/1942"
    assert contradictions(dating(job)) == ()


def test_the_odd_one_is_named_against_the_others_whichever_came_first(job):
    see(job, "clip", "1948/1953")
    see(job, "barrel imprint", "1938/1942", certainty="sure")
    see(job, "cap band", "1937/1941")
    result = dating(job)
    assert result.edtf == ""
    assert contradictions(result) == ((0, 1), (0, 2))
    [who] = [f.text for f in dating_findings(job) if f.topic == "who contradicts"]
    assert who == (
        "Contradiction: the clip (1948 to 1953) against the barrel imprint (1938 to 1942) and the cap band (1937 to 1941)."
    )


@pytest.mark.parametrize(
    ("evidence", "said"),
    [
        ([("clip", "1936/1938", "sure"), ("nib", "1940/1942", "likely")], ["the nib (1940 to 1942) against the clip (1936 to 1938)"]),
        ([("clip", "1936/1938", "likely"), ("nib", "1940/1942", "sure")], ["the clip (1936 to 1938) against the nib (1940 to 1942)"]),
        (
            [("clip", "1936/1938", "likely"), ("nib", "1940/1942", "likely"), ("band", "1945/1946", "likely")],
            ["the nib (1940 to 1942) against the clip (1936 to 1938) and the band (1945 to 1946)", "the clip (1936 to 1938) against the band (1945 to 1946)"],
        ),
        (
            [("clip", "1936/1938", "likely"), ("nib", "1940/1942", "doubtful"), ("band", "1945/1946", "doubtful")],
            ["the nib (1940 to 1942) against the clip (1936 to 1938)", "the band (1945 to 1946) against the clip (1936 to 1938) and the nib (1940 to 1942)"],
        ),
    ],
)  # fmt: skip
def test_the_least_sure_is_the_odd_one_and_of_equals_the_later(job, evidence, said):
    for feature, dates, certainty in evidence:
        see(job, feature, dates, certainty=certainty)
    told = [f.text for f in dating_findings(job) if f.topic == "who contradicts"]
    assert told == [f"Contradiction: {text}." for text in said]
    assert "the evidence contradicts itself" not in job.stage("identify").state_of(job).reason
    job.add("identify", "identity", {"maker": "unknown", "object_type": "lever filler"})
    assert job.stage("identify").state_of(job).reason == "the evidence contradicts itself"


def test_evidence_of_which_nothing_is_said_never_narrows_the_range(job):
    see(job, "clip", "1936/1942", certainty="sure")
    job.record.append(new_entry("identify", "evidence", {"feature": "feed", "dates": "1948/1953"}))
    (_, bare) = clues(job)
    assert (bare.evidence.kind, bare.evidence.certainty, bare.evidence.part) == ("opinion", "doubtful", "unknown")
    assert dating(job).edtf == "1936/1942"


@pytest.mark.parametrize(("minute", "level"), [(-1, "warning"), (0, "note"), (1, "note")])
def test_a_conclusion_settles_only_what_was_seen_before_it(job, minute, level):
    noon = dt.datetime(2026, 3, 14, 12, 0, tzinfo=dt.UTC)
    words = {"evidence_kind": "production", "certainty": "likely", "part_state": "original"}
    for number, (feature, dates) in enumerate((("clip", "1948/1953"), ("imprint", "1938/1942"))):
        at = noon - dt.timedelta(minutes=10 * number)  # the newest by the clock, not the last line
        job.record.append(new_entry("identify", "evidence", {"feature": feature, "dates": dates, **words}, at=at))
    told = {"maker": "unknown", "object_type": "lever filler", "conclusion": "Another's clip."}
    job.record.append(new_entry("identify", "identity", told, at=noon + dt.timedelta(minutes=minute)))
    assert [f.level for f in identify_checks(job)] == [level]


def test_a_question_that_cannot_be_read_is_named_and_stands_in_the_way_of_nothing(job):
    see(job, "imprint", "1936/1945")
    job.add("identify", "question", {"feature": "feed", "answers": "1936/1939; 1940/1945"})
    job.record.append(new_entry("identify", "question", {"feature": "slit", "answers": ["1936", "somewhen"]}))
    job.record.append(new_entry("identify", "question", {"feature": "pin", "answers": ["1936/1940"]}))
    assert [f.feature for f in dating(job).next_facts] == ["feed"]
    assert [f.level for f in identify_checks(job)] == ["warning", "warning"]
    told = [f.text.partition(": ")[2].partition(": ")[0] for f in identify_checks(job)]
    assert told == ["Not looked at yet, slit", "Not looked at yet, pin"]


def test_a_contradiction_is_a_warning_until_a_later_conclusion_settles_it(job):
    see(job, "clip", "1948/1953")
    see(job, "imprint", "1938/1942")
    assert [f.level for f in identify_checks(job)] == ["warning"]
    job.add(
        "identify", "identity", {"maker": "unknown", "object_type": "lever filler", "conclusion": "Another's clip."}
    )
    assert [f.level for f in identify_checks(job)] == ["note"]


def test_the_newest_conclusion_counts_and_one_without_words_settles_nothing(job):
    see(job, "clip", "1948/1953")
    see(job, "imprint", "1938/1942")
    job.add("identify", "identity", {"maker": "unknown", "object_type": "lever filler"})
    assert [f.level for f in identify_checks(job)] == ["warning"]
    concluded = {"maker": "unknown", "object_type": "lever filler", "conclusion": "Another's clip."}
    job.add("identify", "identity", concluded)
    assert [f.level for f in identify_checks(job)] == ["note"]
    job.add("identify", "identity", {**concluded, "conclusion": ""})
    assert [f.level for f in identify_checks(job)] == ["warning"]


def test_a_corrected_part_no_longer_counts(job):
    wrong = see(job, "clip", "1948/1953")
    see(job, "imprint", "1938/1942")
    job.add(
        "identify",
        "evidence",
        {
            "feature": "clip",
            "dates": "1948/1953",
            "evidence_kind": "production",
            "certainty": "likely",
            "part_state": "replaced",
        },
        replaces=wrong.id,
    )
    assert dating(job).edtf == "1938/1942"
    assert identify_checks(job) == []


@pytest.mark.parametrize("dates", ["1942/1936", "spring 1930", "somewhen", "3036"])
def test_dates_that_another_program_wrote_and_nobody_can_read_are_named_and_left_out(job, dates):
    see(job, "clip", dates)
    see(job, "imprint", "1938/1942")
    first, second = clues(job)
    assert first.evidence is None
    assert first.problem
    assert second.evidence is not None
    assert dating(job).edtf == "1938/1942"
    [told] = identify_checks(job)
    assert told.level == "warning"
    assert told.text.startswith("Identify: The date of the clip cannot be read and does not count: ")


def test_a_question_that_would_narrow_it_is_said_first(job):
    see(job, "imprint", "1936/1945")
    job.add("identify", "question", {"feature": "feed", "answers": "1936/1939; 1940/1945"})
    assert dating(job).next_facts[0].feature == "feed"


def test_a_price_then_in_money_of_now(job):
    job.add("identify", "price then", {"price": "5.00 USD", "year": "1940", "country": "US"})
    # US CPI-U, annual averages: 14.0 in 1940, 313.689 in 2024 (Bureau of Labor Statistics)
    assert price_today(job).data["amount_rounded"] == pytest.approx(5.0 * 313.689 / 14.0, rel=0.01)


def test_a_price_of_a_country_without_an_index_stays_as_it_was(job):
    job.add("identify", "price then", {"price": "12 marks", "year": "1938", "country": "other"})
    assert price_today(job) is None
    assert identify_checks(job) == []


def test_money_of_another_country_is_named(job):
    job.add("identify", "price then", {"price": "12/6", "year": "1938", "country": "US"})
    assert [f.level for f in identify_checks(job)] == ["warning"]


@pytest.mark.parametrize(
    ("price", "country", "read"),
    [("12/6", "UK", "GBP"), ("2.75", "US", "USD"), ("12/6", "US", None), ("2.75 USD", "UK", None)],
)
def test_a_price_without_its_money_is_in_that_of_the_country(job, price, country, read):
    job.record.append(new_entry("identify", "price then", {"price": price, "year": 1938, "country": country}))
    if read:
        assert price_today(job).data["currency"] == read
        assert identify_checks(job) == []
        return
    with pytest.raises(InputError, match="in the money of the country"):
        price_today(job)
    assert [f.level for f in identify_checks(job)] == ["warning"]


def test_a_price_of_nothing_is_no_price(job):
    job.record.append(new_entry("identify", "price then", {"price": "0 USD", "year": 1938, "country": "US"}))
    with pytest.raises(InputError, match=r"^price"):
        price_today(job)


def test_the_state_goes_from_open_to_done(job):
    stage = job.stage("identify")
    job.add("identify", "mark", {"where": "barrel", "text": "MARLOW & S"})
    assert stage.state_of(job).reason == "no dating evidence yet"
    see(job, "clip", "1936/1942")
    assert stage.state_of(job).word == "open"
    job.add("identify", "identity", {"maker": "unknown", "object_type": "lever filler"})
    assert stage.state_of(job).word == "done"
    assert stage.state_of(job).reason == "1936/1942"


def test_a_feature_typed_with_its_article_gets_no_second_one(job):
    job.add(
        "identify",
        "evidence",
        {
            "feature": "the family's word",
            "evidence_kind": "opinion",
            "dates": "c. 1940",
            "certainty": "doubtful",
            "part_state": "original",
        },
    )
    texts = [finding.text for finding in dating_findings(job)]
    assert any("The family's word" in text for text in texts), texts
    assert not any("the the" in text.lower() for text in texts)
