"""The seals on the client's page and on the page for publication."""

import pytest
from writeup.pages import Parsed, notebook, stage

from pentools.writeup.blocks import Details, FigureBlock, Lead, Notice, Paragraph, Table
from pentools.writeup.page import render_page
from pentools.writeup.sections.seal.sealing import section


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "black syringe filler", "system": "syringe"})
    job.add("intake", "consent", {"publish": "yes"})
    return job


def try_washer(job, size, happened):
    texts = {"place": "washer", "what": f"washer of {size} mm", "outside": f"{size} mm", "dry": "yes", "happened": happened}  # fmt: skip
    job.add("seal", "trial", texts, note="cut from sheet A")


def fit(job):
    job.add("seal", "measure", {"place": "washer", "bore": "8.30 mm; 8.32 mm", "rod": "2.40 mm"})
    for size, happened in (("8.50", "slides, no suction"), ("8.60", "pulls back")):
        try_washer(job, size, happened)
    job.add("seal", "measure", {"place": "packing", "rod": "2.55 mm", "housing": "5.61 mm; 5.60 mm", "width": "2.4 mm"})
    ring = {"place": "packing", "what": "005, second lot", "section": "1.79 mm", "inside": "2.55 mm", "dry": "yes"}
    job.add("seal", "trial", {**ring, "happened": "pulls back"})


def prove(job):
    job.add("seal", "test", {"test": "spring-back", "pushed": "30 mm", "returned": "28 mm"})
    job.add("seal", "test", {"test": "shaft", "shaft_seen": "no bubbles"})


def made(job, audience):
    return section(job, job.stage("seal"), audience)


def paragraphs(blocks):
    return [block.text for block in blocks if isinstance(block, Paragraph)]


def test_nothing_done_nothing_said(job):
    assert made(job, "client").blocks == ()


@pytest.mark.parametrize("audience", ["client", "blog"])
def test_the_ladder_is_told(job, audience):
    fit(job)
    job.add("seal", "sealant", {"sealant": "shellac", "place": "section", "reversible": "yes", "cure": "24 h"})
    prove(job)
    blocks = made(job, audience).blocks
    lead = blocks[0]
    assert isinstance(lead, Lead)
    assert "washer of 8.60 mm, after one that did not do" in lead.text
    assert "005, second lot, at the first trial" in lead.text
    figures = [block.drawing for block in blocks if isinstance(block, FigureBlock)]
    assert len(figures) == 3
    assert "005, second lot in its groove" in figures[2].title
    words = paragraphs(blocks)
    assert any("8.31\u202fmm, the mean of 2 readings that differ by 0.02\u202fmm" in text for text in words)
    assert "After the dry fit had passed, it was sealed with shellac at the section joint (can be undone)." in words
    assert "Tested together: nothing wrong in 2 tests." in words
    assert any(isinstance(block, Notice) and block.word == "Caution" for block in blocks)
    tests = next(block for block in blocks if isinstance(block, Table))
    assert [row[-2] for row in tests.rows] == ["returns", "no bubbles"]
    assert isinstance(next(b for b in blocks if isinstance(b, Details)), Details)


def test_sealed_before_a_dry_fit_is_not_told_as_after_it(job):
    job.release("seal", "sealant", "the old joint has to be shut for the post")
    job.add("seal", "sealant", {"sealant": "rosin", "place": "section"})
    fit(job)
    assert "It was sealed with rosin-based thread sealant at the section joint." in paragraphs(
        made(job, "client").blocks
    )


def test_a_released_hold_is_on_the_clients_page_only(job):
    job.release("seal", "sealant", "the old joint has to be shut for the post")
    job.add("seal", "sealant", {"sealant": "rosin", "place": "section"})
    cells = notebook(stage("seal"))
    client = Parsed(render_page(job, "client", cells)).text
    assert "The hold on" in client
    assert "the old joint has to be shut for the post" in client.replace("The old", "the old")
    assert "has to be shut" not in render_page(job, "blog", cells)


def test_no_sealant_is_said_too(job):
    fit(job)
    job.add("seal", "sealant", {"sealant": "none", "place": "washer"})
    assert "No sealant was needed: it holds dry." in paragraphs(made(job, "client").blocks)


def test_one_test_makes_no_verdict(job):
    fit(job)
    job.add("seal", "test", {"test": "shaft", "shaft_seen": "bubbles"})
    blocks = made(job, "client").blocks
    assert not [text for text in paragraphs(blocks) if text.startswith("Tested")]


def test_a_pattern_that_names_a_seal_is_told(job):
    fit(job)
    for texts in (
        {"test": "shaft", "shaft_seen": "bubbles"},
        {"test": "overnight", "rested": "12 h", "overnight_seen": "at the rod's end"},
        {"test": "spring-back", "pushed": "30 mm", "returned": "0 mm"},
    ):
        job.add("seal", "test", texts)
    assert any("points to the packing" in text for text in paragraphs(made(job, "blog").blocks))


def test_remarks_and_the_drawer_are_for_the_bench_alone(job):
    fit(job)
    job.add("seal", "tool", {"tool": "tube", "purpose": "long tail", "outside_made": "4.80 mm", "kept": "drawer 3"})
    client, blog = (render_page(job, audience, notebook(stage("seal"))) for audience in ("client", "blog"))
    for page in (client, blog):
        assert "long tail" in page
        assert "drawer 3" not in page
        assert "cut from sheet A" not in page


def test_contradicting_measurements_are_said_and_the_page_goes_on(job):
    job.add("seal", "measure", {"place": "head", "bore": "5.00 mm", "groove": "5.30 mm"})
    blocks = made(job, "client").blocks
    assert any(isinstance(block, Notice) and block.word == "To be settled" for block in blocks)
