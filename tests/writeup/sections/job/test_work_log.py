"""The work on the pages: in the order it was done, timed and typed together; dates and names for the client only."""

import datetime as dt

import pytest

from pentools.record.entries import new_entry
from pentools.writeup.blocks import FigureBlock, Lead, Paragraph, Table
from pentools.writeup.making import section_of
from pentools.writeup.sections.job.work_log import departures, materials, time_in_words

NOON = dt.datetime(2026, 3, 14, 12, 0, tzinfo=dt.timezone(dt.timedelta(hours=1)))


def enter(job, kind, hours, **data):
    return job.record.append(new_entry("work log", kind, data, at=NOON + dt.timedelta(hours=hours)))


def minutes(number):
    return {"value": number, "unit": "min"}


@pytest.fixture
def job(new_job):
    job = new_job()
    enter(job, "work", 24, activity="nib", minutes=minutes(20), done="smoothed", by="Adela Quist")
    enter(job, "timer start", 0, activity="seal")
    enter(job, "timer stop", 1.5, done="a cork")
    enter(job, "work", 48, activity="test", done="wrote a page")
    return job


def table(job, audience):
    [found] = [block for block in section_of(job, "work log", audience).blocks if isinstance(block, Table)]
    return (
        found.head,
        [tuple(cell.replace("\u202f", " ").replace("\u00a0", " ") for cell in row) for row in found.rows],
        found.numeric,
    )


def test_the_client_is_told_when_and_by_whom(job):
    head, rows, numeric = table(job, "owner")
    assert head == ("Date", "Activity", "Time", "What was done", "By")
    assert rows == [
        ("14 March 2026", "Seals and sac", "1 h 30 min", "a cork", ""),
        ("15 March 2026", "Nib and feed", "20 min", "smoothed", "Adela Quist"),
        ("16 March 2026", "Testing", "not measured", "wrote a page", ""),
    ]
    assert numeric == (2,)


def test_everybody_is_told_neither(job):
    head, rows, numeric = table(job, "everybody")
    assert head == ("Activity", "Time", "What was done")
    assert rows[0] == ("Seals and sac", "1 h 30 min", "a cork")
    assert rows[1] == ("Nib and feed", "20 min", "smoothed")
    assert numeric == (1,)


def test_a_column_that_would_be_empty_is_left_out(new_job):
    job = new_job()
    enter(job, "work", 0, activity="nib", minutes=minutes(20), done="smoothed")
    head, rows, _ = table(job, "owner")
    assert head == ("Date", "Activity", "Time", "What was done")
    assert rows == [("14 March 2026", "Nib and feed", "20 min", "smoothed")]


def test_the_time_in_one_sentence(job, new_job):
    assert time_in_words(job).replace("\u202f", " ") == (
        "The work took 1 h 50 min; the largest share of it, 1 h 30 min, went into seals and sac."
    )
    other = new_job()
    assert time_in_words(other) == ""
    assert section_of(other, "work log", "owner").blocks == ()
    enter(other, "work", 0, activity="finish", minutes=minutes(45), done="waxed")
    assert time_in_words(other).replace("\u202f", " ") == "The work took 45 min, all of it the finish."
    blocks = section_of(job, "work log", "owner").blocks
    assert isinstance(blocks[0], Lead)
    assert any(isinstance(block, FigureBlock) for block in blocks)


def test_materials_stand_with_the_work_for_publication_and_at_the_foot_for_the_client(job):
    job.add("work log", "material", {"what": "cork", "way": "added", "cost": "4.50 EUR"})
    captions = {a: [b.caption for b in section_of(job, "work log", a).blocks if isinstance(b, Table)] for a in ("owner", "everybody")}  # fmt: skip
    assert captions["everybody"][-1] == "Added, removed, given back"
    assert "Added, removed, given back" not in captions["owner"]
    told = {a: str(materials(job, a).blocks) for a in ("owner", "everybody")}
    assert "4.50 EUR" in told["owner"]
    assert "4.50 EUR" not in told["everybody"]
    assert "cork" in told["everybody"]


def test_departures_are_the_clients(job):
    assert departures(job, "owner").blocks == (Paragraph("None is recorded."),)
    assert departures(job, "everybody").blocks == ()
    job.add("work log", "departure", {"what": "The nib was set.", "why": "It was bent."})
    assert "The nib was set." in str(departures(job, "owner").blocks)
    assert "None is recorded." not in str(departures(job, "owner").blocks)
    assert departures(job, "everybody").blocks == ()
