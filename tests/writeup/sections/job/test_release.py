"""Release on the pages: how it ended, what it costs for the client alone, and the care text once."""

import pytest

from pentools.writeup.blocks import Facts, Lead, Paragraph
from pentools.writeup.making import section_of
from pentools.writeup.sections.job.release import care, ending_in_words, price


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen", "mass_g": "16.42 g"})
    return job


def release(job, **texts):
    job.add("release", "result", {"ending": "done", "summary": "It writes.", **texts})


@pytest.mark.parametrize(
    ("ending", "words"),
    [
        ("done", "is done and the pen was released on 28\u00a0March 2026"),
        ("done with limits", "done with limits"),
        ("stopped", "stopped on 28\u00a0March 2026"),
        ("returned", "returned unrepaired on 28\u00a0March 2026"),
    ],
)
def test_each_ending_has_its_sentence(job, ending, words):
    assert ending_in_words(job) == ""
    assert section_of(job, "release", "owner").blocks == ()
    release(job, ending=ending, released_on="2026-03-28")
    assert words in ending_in_words(job)
    assert section_of(job, "release", "everybody").blocks[0] == Lead(ending_in_words(job))
    release(job, ending=ending)
    assert "March" not in ending_in_words(job)


def test_both_masses_stand_beside_each_other_once_the_pen_was_weighed_again(job):
    release(job)
    assert not [b for b in section_of(job, "release", "owner").blocks if isinstance(b, Facts)]
    release(job, mass_g="16.55 g")
    [facts] = [b for b in section_of(job, "release", "owner").blocks if isinstance(b, Facts)]
    assert facts.rows == (
        ("Mass as it arrived", "16.42\u202fg"),
        ("Mass as it leaves", "16.55\u202fg"),
    )


def test_the_care_text_stands_once_and_the_price_is_the_clients(job):
    release(job, care="Flush it.", follow_up="Look at the cork.", price="118 EUR", promise_until="2026-06-14")
    for audience in ("owner", "everybody"):
        assert care(job, audience).blocks == (Paragraph("Flush it."), Paragraph("Follow-up: Look at the cork."))
        stands = Paragraph("Flush it.") in section_of(job, "release", audience).blocks
        assert stands == (audience == "everybody")
    assert price(job, "everybody").blocks == ()
    [facts] = price(job, "owner").blocks
    assert sorted(text for _, text in facts.rows) == sorted(["118 EUR", "14\u00a0June 2026"])
