"""The foot of a page names the instruments this job was measured with, and pictures keep an earlier no."""

from datetime import datetime

import pytest
from photo_files import put

from pentools.calc.base.uncertainty import format_value
from pentools.record.entries import new_entry
from pentools.writeup.closing import answer_of, full_log, key_facts, methods, pen_title, summary
from pentools.writeup.photos import PhotoBook


def instruments(job):
    [facts] = [block for block in methods(job, "owner").blocks if hasattr(block, "rows")]
    return dict(facts.rows)


def test_the_balance_at_the_foot_is_the_jobs_own(new_job):
    job = new_job()
    assert instruments(job)["Balance, readability"] == "0.01 g"
    job.add("fill test", "setup", {"readability": "0.001 g", "temperature": "23 °C"})
    found = instruments(job)
    assert found["Balance, readability"].startswith("0.001")
    assert found["Room"].startswith("23")
    assert "1013 hPa" in found["Room"]  # what the job does not say is the bench's


@pytest.mark.parametrize(
    ("words", "shown"),
    [(("yes",), True), (("no", "yes"), False), (("yes", "no"), False), (("", "yes"), False), (("yes", "yes"), True)],
)
def test_a_later_yes_does_not_overrule_an_earlier_no(new_job, words, shown):
    job = new_job()
    put(job, "side.jpg")
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    for word in words:
        job.add("pictures", "picture", {"photo": "side.jpg", "moment": "during", "shows": "the side", "public": word})
    assert PhotoBook(job, "everybody").allowed("side.jpg") is shown
    assert PhotoBook(job, "owner").allowed("side.jpg")


def test_an_entry_that_cannot_be_read_is_no_yes(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    put(job, "side.jpg")
    job.add("pictures", "picture", {"photo": "side.jpg", "moment": "during", "shows": "the side", "public": "yes"})
    job.record.append(new_entry("pictures", "picture", {"photo": "SIDE.jpg", "moment": "sometime"}))
    assert not PhotoBook(job, "everybody").allowed("side.jpg")


def test_the_facts_under_the_title(new_job, small_job):
    assert key_facts(new_job()) == ()
    facts = dict(key_facts(small_job))
    assert list(facts) == ["Arrived", "Released", "Result", "Draws"]
    assert (facts["Arrived"], facts["Released"]) == ("14\u00a0March 2026", "28\u00a0March 2026")
    assert facts["Result"] == "Done with limits"
    answer = answer_of(small_job)
    assert facts["Draws"] == format_value(answer.data["volume_ml"], answer.data["expanded_uncertainty_ml"], "mL")


@pytest.mark.parametrize(
    ("arrival", "request_", "words"),
    [
        ({}, {}, "The pen arrived."),
        ({"pieces": "pen"}, {}, "The pen arrived."),
        (
            {"pieces": "cap; barrel", "arrived_on": "2026-03-14"},
            {},
            "The pen arrived on 14\u00a0March 2026 in 2 pieces.",
        ),
        ({}, {"meant_for": "keepsake"}, "The pen arrived and is a keepsake."),
    ],
)
def test_the_summary_begins_with_what_came(new_job, arrival, request_, words):
    job = new_job()
    assert pen_title(job) == "A pen"
    job.add("intake", "arrival", {"pen": "green lever filler", **arrival})
    job.add("intake", "request", {"asked": "mend it", **request_})
    assert pen_title(job) == "Green lever filler"
    [paragraph] = summary(job).blocks
    assert paragraph.text.startswith(words)
    assert paragraph.text.endswith("The work is not finished.")


def test_the_log_is_the_clients_and_the_oldest_stands_first(new_job):
    job = new_job()
    assert full_log(job, "owner").blocks == ()
    for day in (16, 14):
        at = datetime.fromisoformat(f"2026-03-{day}T10:30:00+01:00")
        job.record.append(new_entry("intake", "arrival", {"pen": f"seen on {day}"}, at=at))
    assert full_log(job, "everybody").blocks == ()
    [details] = full_log(job, "owner").blocks
    [table] = details.blocks
    assert [row[0] for row in table.rows] == ["14\u00a0March 2026, 10:30", "16\u00a0March 2026, 10:30"]
    assert "All 2 entries" in table.caption
    assert table.rows[0][1] == "Intake"


def test_the_volume_is_told_with_its_factor_and_its_freedom(small_job):
    data = answer_of(small_job).data
    text = methods(small_job, "everybody").blocks[0].text.replace("\u202f", " ")
    assert f"(here {data['z_ml_per_g']:.4f} mL/g)" in text
    assert f"standard uncertainty is {data['standard_uncertainty_ml']:.2g} mL" in text
    assert f"a factor of {data['coverage_factor']:.2f}" in text
    assert not [
        block for block in methods(small_job, "everybody").blocks if hasattr(block, "rows")
    ]  # the bench's own tools
