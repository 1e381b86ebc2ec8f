"""Opening on the client's page and on the page for publication."""

import pytest
from photo_files import put
from PIL import Image
from writeup.pages import Parsed, notebook, stage

from pentools.writeup.blocks import Details, FigureBlock, Findings, Lead, Notice, Paragraph, Photos, Table
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


def told(job, audience, kind):
    return [block.text for block in opening.section(job, job.stage("open"), audience).blocks if isinstance(block, kind)]


def test_the_tool_for_nib_and_feed_is_told_and_sizes_that_give_none_to_the_owner_only(job):
    sizes = {"tail": "1.80 mm", "shoulder": "4.20 mm", "bore": "5.00 mm"}
    job.add("open", "knock-out block", sizes)
    [words] = [text for text in told(job, "everybody", Paragraph) if text.startswith("For knocking out")]
    assert words.startswith("For knocking out nib and feed: Tube: ")
    job.add("open", "knock-out block", {**sizes, "tail": "4.60 mm"})
    for audience in ("owner", "everybody"):
        settled = [text for text in told(job, audience, Notice) if text.startswith("The sizes for knocking out")]
        assert len(settled) == (audience == "owner")
        assert not [text for text in told(job, audience, Paragraph) if text.startswith("For knocking out")]


def test_a_step_s_picture_goes_by_what_was_done_until_it_has_words_of_its_own(job):
    work(job)

    def photos():
        blocks = opening.section(job, job.stage("open"), "owner").blocks
        return [photo for block in blocks if isinstance(block, Photos) for photo in block.photos]

    assert [(p.file, p.alt, p.drawn) for p in photos()] == [("open.jpg", "Drew the section out.", False)]
    job.add(
        "pictures", "picture", {"photo": "open.jpg", "moment": "during", "shows": "the section out", "drawn": "yes"}
    )
    assert [(p.file, p.alt, p.drawn) for p in photos()] == [("open.jpg", "the section out", True)]


def test_where_the_limits_of_heat_are_known_from_stands_in_plain_words(job):
    work(job)
    job.add("open", "joint", {"joint": "clip", "sealant": "none"})
    texts = told(job, "owner", Paragraph)
    clip, section = (text for text in texts if text.startswith("Limits of heat, "))
    assert clip.startswith("Limits of heat, clip or cap top and cap: ")
    assert clip.endswith(" (body: seen on a trade page).")
    assert section.startswith("Limits of heat, section and barrel: ")
    assert section.endswith(" (body: seen on a trade page; sealant: read in the source).")
