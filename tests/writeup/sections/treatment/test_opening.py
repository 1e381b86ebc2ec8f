"""Opening on the client's page and on the page for publication."""

import pytest
from photo_files import put
from PIL import Image
from writeup.pages import Parsed, notebook, stage

from pentools.writeup.blocks import Details, FigureBlock, Findings, Lead, Table
from pentools.writeup.page import render_page
from pentools.writeup.sections.treatment import opening

CELLS = notebook(stage("open"))


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "green lever filler", "system": "lever-sac", "material": "celluloid"})
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    return job


def work(job):
    job.add("open", "caution read", {"caution": "nitrate-fire"})
    job.add(
        "open", "material", {"part": "section", "material": "ebonite", "told_by": "It smells of sulfur.", "sure": "yes"}
    )
    job.add("open", "joint", {"joint": "section", "sealant": "shellac", "seen": "Brown crumbs."})
    job.add("open", "heat pass", {"joint": "section", "surface": "50 °C"}, note="hands were cold")
    job.add("open", "heat pass", {"joint": "section", "surface": "56 °C", "moved": "A quarter turn.", "free": "yes"})
    job.add("open", "met", {"condition": "heat-agreed", "how": "By letter of 3 March."})
    put(job, "open.jpg")
    job.add(
        "open", "step", {"number": "1", "did": "Drew the section out.", "came_off": "section; nib", "photo": "open.jpg"}
    )
    job.add("open", "parts tray", {"items": "section; nib; feed", "kept": "Tray seven.", "all_there": "yes"})


def test_nothing_done_nothing_said(job):
    for audience in ("owner", "everybody"):
        assert opening.section(job, job.stage("open"), audience).blocks == ()


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_opening_leads_with_a_sentence_and_shows_heat_against_its_limits(job, audience):
    work(job)
    blocks = opening.section(job, job.stage("open"), audience).blocks
    assert blocks[0] == Lead("It came apart in 1 step, with 2 heatings.")
    assert sum(isinstance(block, FigureBlock) for block in blocks) == 1
    captions = [block.caption for block in blocks if isinstance(block, Table)]
    assert {"What each part is made of", "Joints", "Heatings", "Step by step", "What came out, counted"} <= set(
        captions
    )
    [limits] = [b for b in blocks if isinstance(b, Details) and b.title.startswith("What each part can take")]
    assert any("International Chemical Safety Card" in cell for row in limits.blocks[0].rows for cell in row)


def test_what_is_for_the_client_stays_off_the_page_for_publication(job):
    work(job)
    job.release("open", "heat", "the owner insists in writing")
    client, blog = (Parsed(render_page(job, audience, CELLS)).text for audience in ("owner", "everybody"))
    for words in ("By letter of 3 March.", "insists in writing"):
        assert words in client
        assert words not in blog
    for words in ("Tray seven.", "hands were cold"):
        assert words not in client + blog
    for words in ("It smells of sulfur.", "Brown crumbs.", "A quarter turn."):
        assert words in client
        assert words in blog
    assert "Cautions read before the work" not in client
    assert "Cautions read before the work" not in blog
    assert "If it burns, leave and call the fire service." in blog


def test_a_picture_of_a_step_needs_its_own_yes(job):
    work(job)
    Image.new("RGB", (40, 20), "teal").save(job.folder / "photos" / "open.jpg")
    assert len(Parsed(render_page(job, "owner", CELLS)).images) == 1
    assert Parsed(render_page(job, "everybody", CELLS)).images == []
    job.add(
        "pictures", "picture", {"photo": "open.jpg", "moment": "during", "shows": "the section out", "public": "yes"}
    )
    assert len(Parsed(render_page(job, "everybody", CELLS)).images) == 1


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_what_went_past_a_limit_is_told_to_both(job, audience):
    job.add("open", "heat pass", {"joint": "section", "surface": "66 °C", "broke": "The mouth is oval now."})
    [found] = [b for b in opening.section(job, job.stage("open"), audience).blocks if isinstance(b, Findings)]
    assert {f.topic for f in found.findings} == {"over-limit", "broke"}


def test_an_overrule_is_told_with_its_reason(job):
    job.add("open", "overrule", {"material": "celluloid", "treatment": "ultrasonic", "verdict": "limited", "reason": "Tried on an offcut."})  # fmt: skip
    text = Parsed(render_page(job, "everybody", CELLS)).text
    assert "Where the bench overruled the table of limits" in text
    assert "Tried on an offcut." in text


def test_a_pen_that_was_not_opened_says_so(job):
    job.add("open", "material", {"part": "barrel", "material": "casein", "sure": "yes"})
    made = opening.section(job, job.stage("open"), "everybody")
    assert made.title == "What it is made of, and what it can take"
    assert made.blocks[0].text == "What it is made of was told apart: casein, celluloid."
