"""Identity and agreement on the pages: what leads, what the figure is, and what only the client sees."""

import pytest
from writeup.pages import Parsed, notebook, stage

from pentools.writeup.blocks import FigureBlock, Lead, Table
from pentools.writeup.page import render_page, section_of

EVIDENCE = {"evidence_kind": "production", "certainty": "likely", "part_state": "original"}


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "green lever filler", "system": "lever-sac"})
    job.add("intake", "consent", {"publish": "yes"})
    return job


def see(job, feature, dates, **more):
    job.add("identify", "evidence", EVIDENCE | {"feature": feature, "dates": dates} | more)


def test_nothing_entered_nothing_shown(job):
    for key in ("identify", "agree"):
        for audience in ("client", "blog"):
            assert section_of(job, key, audience).blocks == ()


@pytest.mark.parametrize("audience", ["client", "blog"])
def test_the_range_leads_and_the_figure_and_the_evidence_follow(job, audience):
    see(job, "clip", "1936/1942", source="a catalogue of 1939")
    see(job, "imprint", "from 1938")
    section = section_of(job, "identify", audience)
    assert section.title == "What it is and when it was made"
    assert section.blocks[0] == Lead("All evidence on original parts allows 1938 to 1942.")
    assert sum(isinstance(b, FigureBlock) for b in section.blocks) == 1
    [table] = [b for b in section.blocks if isinstance(b, Table)]
    assert table.rows[0][0] == "Clip"
    assert table.rows[0][-1] == "a catalogue of 1939"
    assert "nothing tighter" in table.source_note


def test_a_contradiction_is_admitted_on_both_pages(job):
    see(job, "clip", "1948/1953")
    see(job, "imprint", "1938/1942", certainty="sure")
    cells = notebook(stage("identify"))
    for audience in ("client", "blog"):
        text = Parsed(render_page(job, audience, cells)).text
        assert "The evidence contradicts itself." in text
        assert "Contradiction: the clip (1948 to 1953) against the imprint (1938 to 1942)." in text


def test_what_cannot_be_read_is_shown_as_typed(job):
    see(job, "clip", "somewhen")
    [table] = [b for b in section_of(job, "identify", "client").blocks if isinstance(b, Table)]
    assert table.rows[0][:3] == ("clip", "somewhen", "cannot be read")


def test_marks_stay_as_they_are(job):
    job.add("identify", "mark", {"where": "barrel", "text": "marl0w & s"})
    assert "marl0w & s" in Parsed(render_page(job, "blog", notebook(stage("identify")))).text


def test_money_and_answers_are_for_the_client(job):
    job.add("agree", "survey", {"conclusion": "it can be mended", "grade": "fair"})
    job.add("agree", "proposal", {"part": "seals", "proposed": "a new sac", "leave_it": "it will not write"})
    job.add("agree", "estimate", {"ceiling": "157 EUR"})
    job.add(
        "agree",
        "answer",
        {"action": "heat", "agreed": "no", "answered_on": "2026-04-02", "channel": "letter", "by": "Adela Quist"},
    )
    job.add("agree", "not applicable", {"asked": "accessories", "why": "it came alone"})
    cells = notebook(stage("agree"))
    client, blog = (Parsed(render_page(job, audience, cells)).text for audience in ("client", "blog"))
    for words in ("It can be mended.", "a new sac", "it will not write"):
        assert words in client
        assert words in blog
    for words in ("157 EUR", "You said yes to publishing the story, and no to heat.", "Adela Quist", "it came alone"):
        assert words in client
        assert words not in blog


def test_a_no_at_the_agreement_says_so_where_the_page_is_held(job):
    job.add("agree", "answer", {"action": "publish", "agreed": "no", "answered_on": "2026-04-02", "channel": "letter"})
    text = render_page(job, "blog", notebook(stage("agree")), draft=True)
    assert "has said no to publication" in text
