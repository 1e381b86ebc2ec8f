"""What guidance asks for, held against a record: every place is one the record has, and filling it in counts."""

import pytest
from photo_files import put

from pentools import tables
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.job import create_job, open_job
from pentools.record.registry import STAGES, find_stage
from pentools.record.report import REPORT_PLACES, missing_report_fields, report_conditions, report_notes
from pentools.record.review import review


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")


def states(job):
    return {field.key: field.state for field in missing_report_fields(job).fields}


def test_every_place_of_the_table_leads_to_a_field_of_the_record():
    """A place that leads nowhere would be missing for ever, however much is filled in."""
    special = {"job.folder.name", "bench.facts.restorer", "writeup.client.page", "writeup.client.glossary"}
    for row in tables.rows("report_fields"):
        for place in (part.strip() for part in row["place"].split(";")):
            if place in special or place.startswith(("pictures.picture.", "opening.step")):
                continue
            for where in REPORT_PLACES.get(place, (place,)):
                stage, kind, field = where.split(".")
                assert stage in STAGES, where
                assert find_stage(stage).kind(kind).field(field).name == field


def test_an_untouched_job_is_left_in_peace(job):
    assert report_notes(job) == ()
    assert not any(f.topic.startswith("report") for f in review(job))


def test_a_begun_job_gets_one_note_for_must_and_one_for_should(job):
    job.add("intake", "request", {"asked": "That it writes."})
    notes = report_notes(job)
    assert [f.topic for f in notes] == ["report-must", "report-should"]
    assert {f.level for f in notes} == {"note"}
    must = [f for f in missing_report_fields(job).missing if f.level == "must"]
    assert f"{len(must)} things" in notes[0].text
    assert all(field.field in notes[0].text for field in must)
    assert set(notes) <= set(review(job))


@pytest.mark.parametrize(
    ("key", "stage", "kind", "texts"),
    [
        ("purpose", "intake", "request", {"asked": "That it writes."}),
        ("owner", "intake", "owner", {"owner": "Adela Quist"}),
        ("measurements", "intake", "arrival", {"pen": "pen", "capped_mm": "128 mm"}),
        ("maker", "identify", "identity", {"maker": "unknown", "object_type": "pen"}),
        ("marks", "identify", "mark", {"where": "cap", "text": "ABC"}),
        (
            "made-when",
            "identify",
            "evidence",
            {
                "feature": "clip",
                "dates": "1936",
                "evidence_kind": "production",
                "certainty": "sure",
                "part_state": "original",
            },
        ),
        ("examination-methods", "agree", "survey", {"conclusion": "sound", "methods": "loupe"}),
        ("grade-word", "agree", "survey", {"conclusion": "sound", "grade": "good"}),
        ("proposed-treatment", "agree", "proposal", {"part": "cap", "proposed": "wax"}),
        ("alternatives", "agree", "proposal", {"part": "cap", "proposed": "wax", "leave_it": "it stays dull"}),
        ("proposed-time", "agree", "estimate", {"hours_likely": "2 h"}),
        (
            "approval",
            "agree",
            "answer",
            {"action": "proposal", "agreed": "yes", "answered_on": "2026-04-01", "channel": "letter"},
        ),
        ("during-picture", "pictures", "picture", {"photo": "a.jpg", "moment": "during", "shows": "inside"}),
        (
            "permanent-change",
            "agree",
            "proposal",
            {"part": "cap", "proposed": "polish", "permanent": "gone", "permanent_told": "yes"},
        ),
    ],
)
def test_filling_it_in_makes_it_present(job, key, stage, kind, texts):
    assert states(job)[key] == "missing"
    put(job, "a.jpg")
    job.add(stage, kind, texts)
    assert states(job)[key] == "present"


def test_a_no_where_a_yes_is_asked_is_not_there(job):
    job.add("intake", "owner", {"owner": "Adela Quist", "may_decide": "no"})
    assert states(job)["authority"] == "missing"
    put(job, "a.jpg")
    job.add("pictures", "picture", {"photo": "a.jpg", "moment": "before", "shows": "x"})
    assert states(job)["during-picture"] == "missing"


def test_what_does_not_apply_says_why_and_is_asked_no_more(job):
    job.add("agree", "not applicable", {"asked": "accessories", "why": "the pen came alone"})
    [field] = [f for f in missing_report_fields(job).fields if f.key == "accessories"]
    assert (field.state, field.reason) == ("not applicable", "the pen came alone")
    assert field.field not in report_notes(job)[0].text


def test_a_pen_returned_unrepaired_is_not_asked_about_treatment(job):
    assert "treated" in report_conditions(job)
    job.add("release", "result", {"ending": "returned", "summary": "Nothing was done."})
    assert "treated" not in report_conditions(job)
    assert states(job)["after-picture"] == "not applicable"


def test_money_and_measuring_are_asked_for_where_there_are_any(job):
    assert report_conditions(job) == ("treated",)
    job.add("intake", "request", {"asked": "x", "price_limit": "90 EUR"})
    job.add("fill test", "weighing", {"state": "dry", "mass": "16.5 g"})
    assert report_conditions(job) == ("treated", "paid", "measured")


def test_the_written_page_is_the_second_copy(job):
    assert states(job)["two-copies"] == "missing"
    (job.folder / "writeup" / "client.html").write_text("x")
    assert states(job)["two-copies"] == "present"


def test_nothing_permanent_needs_no_warning(job):
    job.add("agree", "proposal", {"part": "cap", "proposed": "wax", "reversible": "yes"})
    assert states(job)["permanent-change"] == "not applicable"
    job.add("agree", "proposal", {"part": "barrel", "proposed": "polish", "reversible": "no"})
    assert states(job)["permanent-change"] == "missing"


def excuse(job, key, why="it is a drawn pen"):
    job.record.append(new_entry("agree", "not applicable", {"asked": key, "why": why}))


def test_without_a_reason_nothing_is_excused_and_a_word_unknown_here_excuses_nothing(job):
    excuse(job, "accessories", " ")
    excuse(job, "weather")
    assert states(job)["accessories"] == "missing"
    assert "weather" not in states(job)


def test_one_thing_and_several_are_told_in_their_number(job):
    job.add("intake", "request", {"asked": "That it writes."})
    must = [f for f in missing_report_fields(job).missing if f.level == "must"]
    for field in must[2:]:
        excuse(job, field.key)
    assert f"asks for 2 things that are not on record: {must[0].field}; {must[1].field}." in report_notes(job)[0].text
    excuse(job, must[0].key)
    assert f"asks for one thing that is not on record: {must[1].field}." in report_notes(job)[0].text
    excuse(job, must[1].key)
    assert [f.topic for f in report_notes(job)] == ["report-should"]


def test_the_restorer_is_named_by_the_bench_or_by_whoever_did_the_work(job):
    job.add("work log", "work", {"activity": "seal", "minutes": "5 min", "done": "a cork"})
    assert states(job)["recorder"] == "missing"
    job.add("work log", "work", {"activity": "seal", "minutes": "5 min", "done": "a cork", "by": "Adela Quist"})
    assert states(job)["recorder"] == "present"


@pytest.mark.parametrize(
    ("old", "new", "paid", "named"),
    [('name = ""', 'name = "Quist"', False, True), ("rate_per_hour = 0.0", "rate_per_hour = 0.5", True, False)],
)
def test_the_bench_s_own_facts_are_asked(job, old, new, paid, named):
    path = job.bench.folder / "bench.toml"
    assert old in path.read_text()
    path.write_text(path.read_text().replace(old, new))
    job = open_job(job.name, bench=open_bench_folder(job.bench.folder))
    assert ("paid" in report_conditions(job)) is paid
    assert (states(job)["recorder"] == "present") is named
