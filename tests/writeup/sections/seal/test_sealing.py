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
    assert made(job, "owner").blocks == ()


@pytest.mark.parametrize("audience", ["owner", "everybody"])
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
        made(job, "owner").blocks
    )


def test_a_released_hold_is_on_the_clients_page_only(job):
    job.release("seal", "sealant", "the old joint has to be shut for the post")
    job.add("seal", "sealant", {"sealant": "rosin", "place": "section"})
    cells = notebook(stage("seal"))
    client = Parsed(render_page(job, "owner", cells)).text
    assert "The hold on" in client
    assert "the old joint has to be shut for the post" in client.replace("The old", "the old")
    assert "has to be shut" not in render_page(job, "everybody", cells)


def test_no_sealant_is_said_too(job):
    fit(job)
    job.add("seal", "sealant", {"sealant": "none", "place": "washer"})
    assert "No sealant was needed: it holds dry." in paragraphs(made(job, "owner").blocks)


def test_one_test_makes_no_verdict(job):
    fit(job)
    job.add("seal", "test", {"test": "shaft", "shaft_seen": "bubbles"})
    blocks = made(job, "owner").blocks
    assert not [text for text in paragraphs(blocks) if text.startswith("Tested")]


def test_a_pattern_that_names_a_seal_is_told(job):
    fit(job)
    for texts in (
        {"test": "shaft", "shaft_seen": "bubbles"},
        {"test": "overnight", "rested": "12 h", "overnight_seen": "at the rod's end"},
        {"test": "spring-back", "pushed": "30 mm", "returned": "0 mm"},
    ):
        job.add("seal", "test", texts)
    assert any("points to the packing" in text for text in paragraphs(made(job, "everybody").blocks))


def test_remarks_and_the_drawer_are_for_the_bench_alone(job):
    fit(job)
    job.add("seal", "tool", {"tool": "tube", "purpose": "long tail", "outside_made": "4.80 mm", "kept": "drawer 3"})
    client, blog = (render_page(job, audience, notebook(stage("seal"))) for audience in ("owner", "everybody"))
    for page in (client, blog):
        assert "long tail" in page
        assert "drawer 3" not in page
        assert "cut from sheet A" not in page


def test_contradicting_measurements_are_said_and_the_page_goes_on(job):
    job.add("seal", "measure", {"place": "head", "bore": "5.00 mm", "groove": "5.30 mm"})
    blocks = made(job, "owner").blocks
    assert any(isinstance(block, Notice) and block.word == "To be settled" for block in blocks)


def tables(blocks):
    found = {block.caption: block for block in blocks if isinstance(block, Table)}
    for block in blocks:
        if isinstance(block, Details):
            found |= {inner.caption: inner for inner in block.blocks if isinstance(inner, Table)}
    return found


def test_dates_are_for_the_client_only(job):
    fit(job)
    prove(job)
    job.add(
        "seal",
        "sealant",
        {"sealant": "shellac", "place": "section", "reversible": "no", "cure": "24 h", "open_time": "5 min"},
    )
    prove(job)
    for audience, more in (("owner", 1), ("everybody", 0)):
        found = tables(made(job, audience).blocks)
        assert {"Every trial", "Sealant", "Tests of the seals as they are now", "Tests before the last change"} <= set(
            found
        )
        for table in found.values():
            assert (table.head[0] == "Date") is bool(more), table.caption
            assert {len(row) for row in table.rows} == {len(table.head)}
        assert found["Sealant"].rows[0][more:] == ("shellac", "section joint", "no", "5\u202fmin", "24\u202fh")
        assert found["Every trial"].rows[0][more:] == (
            "Washer on the head", "washer of 8.50 mm", "outside 8.50\u202fmm", "dry", "slides, no suction"
        )  # fmt: skip
        assert [row[more] for row in found["Tests before the last change"].rows] == [
            "Half stroke and let go",
            "Bubbles at the shaft",
        ]


def test_what_was_read_in_a_test_is_told_whole(job):
    fit(job)
    vacuum = {
        "test": "vacuum",
        "volume": "12 ml",
        "vacuum_start": "30 kPa",
        "vacuum_end": "29.9 kPa",
        "seconds": "600 s",
        "gauge": "0.5 kPa",
    }
    job.add("seal", "test", vacuum)
    job.add(
        "seal",
        "test",
        {"test": "overnight", "rested": "12 h", "overnight_seen": "at the section", "damp": "section; cap lip"},
    )
    job.add("seal", "test", {"test": "spring-back", "pushed": "30 mm", "returned": "40 mm"})
    rows = tables(made(job, "everybody").blocks)["Tests of the seals as they are now"].rows
    assert rows[0][1] == "holds"
    told = rows[0][2].replace("\u202f", " ")
    assert told.startswith(
        "12 mL of pen, hose and gauge, from 30 kPa, to 29.9 kPa below the room, in 600 s, gauge good to 0.5 kPa. It holds"
    )
    assert rows[1][1:] == ("at the section", "12\u202fh at rest, damp: section; cap lip")
    assert rows[2][1] == "cannot be told"
    assert rows[2][2].replace("\u202f", " ").startswith("Pushed 30 mm, 40 mm back. ")


def test_the_sealant_says_whether_it_can_be_undone(job):
    fit(job)
    for sealant, place, undone in (("shellac", "section", "no"), ("grease", "packing", "yes"), ("silicone", "sac", "")):
        job.add("seal", "sealant", {"sealant": sealant, "place": place, "reversible": undone})
    assert (
        "After the dry fit had passed, it was sealed with shellac at the section joint (cannot be undone), silicone grease at the "
        "O-ring in the packing (can be undone) and silicone adhesive at the sac on its nipple."
    ) in paragraphs(made(job, "everybody").blocks)


def test_sealed_while_a_place_still_fails_is_not_told_as_after_a_dry_fit(job):
    try_washer(job, "8.50", "slides, no suction")
    job.add("seal", "sealant", {"sealant": "shellac", "place": "section"})
    assert "It was sealed with shellac at the section joint." in paragraphs(made(job, "everybody").blocks)


def test_what_was_measured_is_told_by_its_place(job):
    fit(job)
    words = paragraphs(made(job, "everybody").blocks)
    assert (
        words[0]
        == "At the washer on the head the bore measures 8.31\u202fmm, the mean of 2 readings that differ by 0.02\u202fmm, and the rod 2.40\u202fmm."
    )
    job.add("seal", "measure", {"place": "sac", "bore": "8.00 mm", "nipple": "6.60 mm"})
    assert "At the sac on its nipple the bore measures 8.00\u202fmm and the nipple 6.60\u202fmm." in paragraphs(
        made(job, "everybody").blocks
    )
    packing = next(text for text in words if "packing" in text)
    assert "the housing measures 5.61" in packing or "the housing measures 5.60" in packing


def test_only_a_ring_that_held_dry_is_drawn(job):
    job.add("seal", "measure", {"place": "packing", "rod": "2.55 mm", "housing": "5.61 mm; 5.60 mm", "width": "2.4 mm"})
    ring = {"place": "packing", "section": "1.70 mm", "inside": "2.50 mm"}

    def drawn():
        return [
            b.drawing.title
            for b in made(job, "everybody").blocks
            if isinstance(b, FigureBlock) and "in its groove" in b.drawing.title
        ]

    job.add("seal", "trial", {**ring, "what": "thin", "dry": "yes", "happened": "slides, no suction"})
    assert drawn() == []
    job.add("seal", "trial", {**ring, "what": "greased", "section": "1.78 mm", "dry": "no", "happened": "pulls back"})
    assert drawn() == []
    job.add(
        "seal", "trial", {**ring, "what": "thick one", "section": "1.80 mm", "dry": "yes", "happened": "pulls back"}
    )
    assert [title.startswith("Thick one in its groove") for title in drawn()] == [True]


def test_one_test_makes_no_paragraph_and_a_sealant_brings_its_caution(job):
    fit(job)
    assert not [b for b in made(job, "everybody").blocks if isinstance(b, Notice)]
    job.add("seal", "sealant", {"sealant": "rosin", "place": "section"})
    assert [b.word for b in made(job, "everybody").blocks if isinstance(b, Notice)] == ["Caution"]


@pytest.mark.parametrize(
    ("used", "words"),
    [("grease", ()), ("none", ()), ("silicone", ()), ("shellac", ("Shellac is cut", "over a flame")), ("thread", ("Shellac is cut", "over a flame")), ("rosin", ("over a flame",))],
)  # fmt: skip
def test_the_caution_is_that_of_the_sealant_that_was_used(job, used, words):
    job.add("seal", "sealant", {"sealant": used, "place": "washer"})
    said = [block.text for block in made(job, "owner").blocks if isinstance(block, Notice) and block.word == "Caution"]  # fmt: skip
    assert len(said) == bool(words)
    for word in ("Shellac is cut", "over a flame"):
        assert any(word in text for text in said) == (word in words)
    assert all(text.endswith("ask a licensed professional.") for text in said)
