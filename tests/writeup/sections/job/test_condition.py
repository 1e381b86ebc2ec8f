"""Condition on the pages: the gravest fault first, and pictures only where they may be shown."""

import pytest
from PIL import Image

from pentools.writeup.blocks import Lead, Photos, Table
from pentools.writeup.sections.job import condition


def seen(job, part, severity, **more):
    job.add("condition", "part", {"part": part, "seen": f"{part} as seen", "severity": severity, **more})


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_nothing_looked_at_nothing_said(new_job, audience):
    job = new_job()
    assert condition.section(job, job.stage("condition"), audience).blocks == ()
    assert condition.gravest(job) == ""


def test_the_sentence_counts_parts_and_names_the_gravest(new_job):
    job = new_job()
    seen(job, "cap", "0")
    assert condition.gravest(job) == "Of the one part looked at, none has a fault."
    seen(job, "clip", "1")
    assert condition.gravest(job) == "Of 2 parts looked at, 1 has a fault; the gravest (slight) is in the clip."
    seen(job, "barrel", "3")
    seen(job, "barrel", "1")
    assert condition.gravest(job) == "Of 3 parts looked at, 2 have a fault; the gravest (serious) is in the barrel."


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_the_table_goes_from_grave_to_sound_and_has_only_the_columns_it_needs(new_job, audience):
    job = new_job()
    seen(job, "cap", "0")
    seen(job, "barrel", "3")
    lead, *blocks = condition.section(job, job.stage("condition"), audience).blocks
    assert isinstance(lead, Lead)
    [table] = [b for b in blocks if isinstance(b, Table)]
    assert table.head == ("Part", "What is seen", "How serious")
    assert [row[0] for row in table.rows] == ["barrel", "cap"]
    seen(job, "clip", "2", means="It was bent.", earlier_repair="no")
    [table] = [b for b in condition.section(job, job.stage("condition"), audience).blocks if isinstance(b, Table)]
    assert table.head == ("Part", "What is seen", "What it may mean", "How serious", "Earlier repair")
    assert table.rows[1][2:] == ("It was bent.", "2\u00a0moderate", "no")
    assert table.rows[0][2:] == ("–", "3\u00a0serious", "–")


def test_a_picture_needs_a_yes_for_publication(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    Image.new("RGB", (40, 20), "teal").save(job.folder / "photos" / "cap.jpg")
    seen(job, "cap", "1", photo="cap.jpg")

    def pictures(audience):
        blocks = condition.section(job, job.stage("condition"), audience).blocks
        return [photo.file for b in blocks if isinstance(b, Photos) for photo in b.photos]

    assert pictures("owner") == ["cap.jpg"]
    assert pictures("everybody") == []
    job.add("pictures", "picture", {"photo": "cap.jpg", "moment": "before", "shows": "the cap", "public": "yes"})
    assert pictures("everybody") == ["cap.jpg"]


def test_a_picture_says_what_is_seen_in_it_until_it_has_words_of_its_own(new_job):
    job = new_job()
    Image.new("RGB", (40, 20), "teal").save(job.folder / "photos" / "cap.jpg")
    job.add("condition", "part", {"part": "cap", "seen": "A deep bruise", "severity": "2", "photo": "cap.jpg"})
    job.add("condition", "part", {"part": "clip", "seen": "Bent outward", "severity": "2", "photo": "cap.jpg"})

    def told():
        blocks = condition.section(job, job.stage("condition"), "owner").blocks
        return [(photo.alt, photo.caption) for b in blocks if isinstance(b, Photos) for photo in b.photos]

    assert told() == [("A deep bruise. Bent outward.", "Cap and clip: A deep bruise. Bent outward.")]
    job.add(
        "pictures", "picture", {"photo": "cap.jpg", "moment": "before", "shows": "the cap and its clip", "public": "no"}
    )
    assert told() == [("the cap and its clip", "Cap and clip: The cap and its clip.")]
