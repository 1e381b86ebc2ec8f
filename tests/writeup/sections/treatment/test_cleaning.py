"""Cleaning on the client's page and on the page for publication."""

import datetime as dt

import pytest
from writeup.pages import Parsed, notebook, stage

from pentools.record.entries import new_entry
from pentools.writeup.blocks import Findings, Notice, Paragraph, Table
from pentools.writeup.page import render_page
from pentools.writeup.sections.treatment import cleaning

CELLS = notebook(stage("clean"))


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "green lever filler", "system": "lever-sac", "material": "celluloid"})
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    job.add(
        "open", "material", {"part": "section", "material": "ebonite", "told_by": "It smells of sulfur.", "sure": "yes"}
    )
    return job


def work(job):
    job.add("clean", "flush mix", {"ammonia": "7 %"})
    start = dt.datetime(2026, 3, 9, 10, 0, tzinfo=dt.UTC)
    for minutes, kind, data in (
        (0, "soak started", {"part": "section", "bath": "flush mix soak", "strength": "one to nine"}),
        (12, "soak ended", {"part": "section", "came_out": "Blue clouds."}),
    ):
        job.record.append(new_entry("clean", kind, data, at=start + dt.timedelta(minutes=minutes)))
    job.add("clean", "rinse", {"part": "section", "with_what": "a drop of soap", "wets": "yes"})


def test_nothing_done_nothing_said(job):
    for audience in ("owner", "everybody"):
        assert cleaning.section(job, job.stage("clean"), audience).blocks == ()


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_cleaning_tells_minutes_limits_and_what_came_out(job, audience):
    work(job)
    blocks = cleaning.section(job, job.stage("clean"), audience).blocks
    assert blocks[0].text.startswith("Cleaned in flush mix of ammonia and water: section. 1 bath, the longest for 12")
    [soaks] = [b for b in blocks if isinstance(b, Table) and b.caption.startswith("Soaks")]
    assert soaks.rows[0][-3:] == ("12\u202fmin", "30\u202fmin", "Blue clouds.")
    assert any(isinstance(b, Notice) and "chloramine" in b.text for b in blocks)


def test_why_a_limit_was_passed_over_is_for_the_client(job):
    work(job)
    job.release("clean", "soak", "it was asked for twice")
    client, blog = (Parsed(render_page(job, audience, CELLS)).text for audience in ("owner", "everybody"))
    assert "asked for twice" in client
    assert "asked for twice" not in blog
    for words in ("Blue clouds.", "a drop of soap"):
        assert words in client
        assert words in blog


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_what_went_past_a_limit_is_told_to_both(job, audience):
    job.add("clean", "bath", {"part": "barrel", "bath": "cold water soak", "minutes": "40 min"})
    blocks = cleaning.section(job, job.stage("clean"), audience).blocks
    assert "past a limit" in blocks[0].text
    assert any(isinstance(b, Findings) for b in blocks)


def test_ammonia_brings_its_caution_and_water_does_not(job):
    job.add("clean", "bath", {"part": "section", "bath": "cold water soak", "minutes": "5 min"})
    without = cleaning.section(job, job.stage("clean"), "everybody").blocks
    assert not any(isinstance(b, Notice) for b in without)
    assert "none past what the material can take" in without[0].text
    job.add("clean", "flush mix", {"ammonia": "7 %"})
    [notice] = [b for b in cleaning.section(job, job.stage("clean"), "everybody").blocks if isinstance(b, Notice)]
    assert "chloramine" in notice.text


@pytest.mark.parametrize(("audience", "more"), [("owner", 1), ("everybody", 0)])
def test_the_soaks_by_the_clock_word_for_word(job, audience, more):
    start = dt.datetime(2026, 3, 9, 10, 0, tzinfo=dt.UTC)
    for minutes, kind, data in (
        (0, "soak started", {"part": "section", "bath": "flush mix soak", "strength": "one to nine"}),
        (0, "soak started", {"part": "nib", "bath": "flush mix soak", "strength": "one to nineteen"}),
        (12, "soak ended", {"part": "section", "came_out": "Blue clouds."}),
        (100, "soak ended", {"part": "nib"}),
        (110, "soak started", {"part": "barrel", "bath": "cold water soak"}),
        (111, "soak ended", {"part": "cap", "came_out": "It was never in."}),
    ):
        job.record.append(new_entry("clean", kind, data, at=start + dt.timedelta(minutes=minutes)))
    blocks = cleaning.section(job, job.stage("clean"), audience).blocks
    [soaks] = [b for b in blocks if isinstance(b, Table) and b.caption.startswith("Soaks")]
    assert soaks.head[more:] == ("Part", "In what", "Strength", "For", "Limit", "What came out")
    rows = [[cell.replace("\u202f", " ").replace("\u00a0", " ") for cell in row] for row in soaks.rows]
    mix = "flush mix of ammonia and water"
    limits = [row.pop(-2) for row in rows]
    assert [row[more:] for row in rows] == [
        ["section", mix, "one to nine", "12 min", "Blue clouds."],
        ["nib", mix, "one to nineteen", "1 h 40 min", "–"],
        ["barrel", "cool water", "–", "still running", "–"],
    ]
    assert limits[0] == "30 min"
    assert limits[2] == "15 min"
    assert [row[:more] for row in rows] == [["9 March 2026"][:more]] * 3
    assert soaks.numeric == (3 + more, 4 + more)
    assert Paragraph("What came out: It was never in.") in blocks
    assert (
        blocks[0]
        .text.replace("\u202f", " ")
        .startswith(f"Cleaned in {mix}: section and nib. 2 baths, the longest for 1 h 40 min;")
    )
    [said] = [b for b in blocks if isinstance(b, Table) and b.caption.startswith("What the table of limits says")]
    assert len(said.rows) == 2
    assert said.rows[0][0].startswith("Hard rubber")


def test_a_bath_without_a_time_is_told_without_one(job):
    job.add("clean", "bath", {"part": "section", "bath": "cold water soak"})
    lead = cleaning.section(job, job.stage("clean"), "everybody").blocks[0].text
    assert lead == "Cleaned in cool water: section. 1 bath; none past what the material can take."
