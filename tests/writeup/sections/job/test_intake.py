"""Intake on the pages: the pen for everybody, the owner and the consent for the owner."""

from writeup.pages import Parsed, notebook, stage

from pentools.writeup.blocks import Facts, Quote
from pentools.writeup.page import render_page
from pentools.writeup.sections.job import intake


def test_nothing_entered_nothing_shown(new_job):
    job = new_job()
    for audience in ("owner", "everybody"):
        assert intake.what_it_is(job, audience).blocks == ()
        assert intake.section(job, job.stage("intake"), audience).blocks == ()


def test_whose_it_is_and_what_it_may_cost_are_for_the_owner(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Adela Quist", "declared_value": "180 EUR", "private_note": "pays late"})
    job.add("intake", "arrival", {"pen": "green piston filler"})
    job.add("intake", "request", {"asked": "That it writes again.", "price_limit": "150 EUR", "must_not": "No polish."})
    job.add("intake", "consent", {"publish": "yes", "channel": "letter of May"})
    client, blog = (
        Parsed(render_page(job, audience, notebook(stage("intake")))).text for audience in ("owner", "everybody")
    )
    for words in ("Adela Quist", "180 EUR", "150 EUR", "No polish.", "letter of May"):
        assert words in client
        assert words not in blog
    for words in ("That it writes again.", "reen piston filler"):
        assert words in client
        assert words in blog
    assert "pays late" not in client + blog


def test_the_request_is_a_quotation_and_stands_once(new_job):
    job = new_job()
    job.add("intake", "request", {"asked": "That it writes again.", "meant_for": "use"})
    blocks = intake.section(job, job.stage("intake"), "owner").blocks
    assert blocks[0] == Quote("That it writes again.", "the owner’s request")
    assert repr(blocks).count("writes again") == 1
    assert blocks[1].rows == (("What the pen is for", "to write with"),)


def test_dimensions_stand_in_a_list_of_their_own(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen", "capped_mm": "131.5 mm", "barrel_mm": "72.0 mm"})
    arrived, sizes = intake.what_it_is(job, "owner").blocks
    assert isinstance(sizes, Facts)
    assert [value.split()[0] for _, value in sizes.rows] == ["131.5", "72.0"]
    assert "131.5" not in repr(arrived)
