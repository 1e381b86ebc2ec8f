"""The finish on the client's page and on the page for publication."""

import pytest
from photo_files import put
from writeup.pages import Parsed, notebook, stage

from pentools.writeup.blocks import Details, FigureBlock, Findings, Lead, Notice, Paragraph, Photos, Table
from pentools.writeup.page import render_page
from pentools.writeup.sections.finish.finishing import section


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "green lever filler", "system": "lever-sac", "material": "hard rubber"})
    job.add("intake", "consent", {"publish": "yes"})
    return job


def polish(job):
    job.add(
        "finish", "zone", {"part": "barrel", "zone": "imprint", "start_mm": "20 mm", "end_mm": "41 mm", "masked": "yes"}
    )
    job.add("finish", "consent to polish", {"agreed": "yes", "agreed_words": "Only until it is even."})
    job.add("finish", "masks on", {"masks": "yes", "with_what": "the imprint, paper tape"})
    job.add("finish", "plan", {"defect": "20 um", "own": "P600; P1200; film 9 um; film 3 um", "zone": "plain barrel"})
    job.add("finish", "measure", {"station": "middle", "diameter": "12.040 mm ± 0.002 mm"})
    for grade in ("P600", "P1200"):
        job.add("finish", "step", {"grade": grade, "minutes": "6 min", "seen": "even lines"}, note="hand got tired")
    job.add("finish", "measure", {"station": "middle", "diameter": "11.994 mm ± 0.002 mm"})


def made(job, audience):
    return section(job, job.stage("finish"), audience)


def test_nothing_done_nothing_said(job):
    assert made(job, "owner").blocks == ()


def test_a_plain_sentence_leads_and_says_nothing_of_what_comes_next(job):
    polish(job)
    lead = made(job, "owner").blocks[0]
    assert isinstance(lead, Lead)
    assert (
        lead.text
        == "2 of 4 steps done, the last with P1200: 23.0 ± 2.8 µm a side taken, by diameter, of the 50 µm that can be spared."
    )


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_figure_steps_zones_before_and_after_and_what_was_left(job, audience):
    polish(job)
    blocks = made(job, audience).blocks
    assert sum(isinstance(block, FigureBlock) for block in blocks) == 2
    tables = {block.caption: block for block in blocks if isinstance(block, Table)}
    steps = tables["The steps as they were done"]
    assert [row[-6] for row in steps.rows] == ["P600", "P1200"]
    assert tables["Before and after"].rows[0][1:] == ("12.040\u202fmm", "11.994\u202fmm", "23.0 ± 2.8\u202fµm")
    left = dict(tables["What was left on the surface, and why"].rows)
    assert any(what.startswith("The imprint on the barrel") for what in left)
    assert "A finish like 15.3 µm where 3 µm was planned" in left


def test_the_caution_is_that_of_the_material(job):
    polish(job)
    [caution] = [b.text for b in made(job, "everybody").blocks if isinstance(b, Notice)]
    assert "mercury" in caution
    assert "Celluloid" not in caution
    assert caution.endswith("Follow local codes; ask a licensed professional.")


def test_consent_and_releases_are_for_the_client_and_remarks_for_nobody(job):
    polish(job)
    job.release("finish", "polish", "it is a trial piece")
    cells = notebook(stage("finish"))
    client, blog = (Parsed(render_page(job, audience, cells)).text for audience in ("owner", "everybody"))
    for words in ("Only until it is even.", "trial piece"):
        assert words in client
        assert words not in blog
    assert "hand got tired" not in client + blog
    assert "23.0 ± 2.8" in blog


def test_a_plan_that_cannot_be_read_is_said_to_the_client_only(job):
    job.add("finish", "plan", {"defect": "20 um", "own": "400"})
    assert any(isinstance(b, Notice) and "Which scale?" in b.text for b in made(job, "owner").blocks)
    assert not any(isinstance(b, Notice) for b in made(job, "everybody").blocks)


def entered(job, material="celluloid"):
    """A finish in two zones with a grade that nobody knows, measured both ways."""
    sizes = {"barrel_mm": "70 mm", "barrel_outside_mm": "12 mm"}
    job.add("intake", "arrival", {"pen": "green lever filler", "system": "lever-sac", "material": material, **sizes})
    imprint = {"part": "barrel", "zone": "imprint", "start_mm": "20 mm", "end_mm": "41 mm", "masked": "yes", "words": "two lines"}  # fmt: skip
    job.add("finish", "zone", imprint)
    job.add("finish", "zone", {"part": "cap-band", "zone": "plating"})
    put(job, "masks.jpg")
    job.add("finish", "masks on", {"masks": "yes", "with_what": "paper tape", "photo": "masks.jpg"})
    job.add("finish", "plan", {"defect": "20 um", "own": "P600; P1200; film 9 um; film 3 um", "zone": "plain barrel"})
    for diameter, mass, steps in (
        ("12.040", "9.184", [{"grade": "P600", "minutes": "6.5 min", "strokes": "40", "wet": "wet", "fresh": "used", "seen": "even lines", "cleared": "no"}, {"grade": "P1200", "zone": "near an imprint", "minutes": "75 min"}, {"grade": "wool"}]),
        ("11.994", "9.150", []),
    ):  # fmt: skip
        job.add("finish", "measure", {"station": "middle", "diameter": f"{diameter} mm ± 0.002 mm", "weighed": "barrel", "mass": f"{mass} g"})  # fmt: skip
        for step in steps:
            job.add("finish", "step", step)


def tables(job, audience):
    blocks = made(job, audience).blocks
    folded = [inner for block in blocks if isinstance(block, Details) for inner in block.blocks]
    return {block.caption: block for block in (*blocks, *folded) if isinstance(block, Table)}


@pytest.mark.parametrize(("audience", "more"), [("owner", 1), ("everybody", 0)])
def test_every_table_word_for_word(job, audience, more):
    entered(job)
    found = tables(job, audience)
    plain = [[[cell.replace("\u202f", " ") for cell in row] for row in found[name].rows] for name in found]
    shown = dict(zip(found, plain, strict=True))
    steps = "The steps as they were done"
    assert found[steps].head[more:] == ("Grade", "Zone", "Finish", "Time", "How", "What the loupe showed", "Taken")
    assert [row[more:] for row in shown[steps]] == [
        ["P600", "plain (barrel or cap)", "25.8 µm", "6.5 min, 40 strokes", "wet, used", "Even lines. Older lines were left.", "20 µm"],
        ["P1200", "near an imprint", "15.3 µm", "1 h 15 min", "–", "–", "96 µm"],
        ["wool", "plain (barrel or cap)", "not known", "–", "–", "–", "–"],
    ]  # fmt: skip
    assert found[steps].numeric == (6 + more,)
    assert shown["Before and after"] == [
        ["Diameter, middle", "12.040 mm", "11.994 mm", "23.0 ± 2.8 µm"],
        ["Mass, barrel", "9.184 g", "9.150 g", "9 ± 8 µm"],
    ]
    assert found["Before and after"].numeric == (1, 2, 3)
    assert shown["The plan"][:2] == [
        ["1", "P600", "25.8 µm", "25.8 µm", "–", "20 µm", "20 µm"],
        ["2", "P1200", "15.3 µm", "15.3 µm", "1.69", "5.2 µm", "25.2 µm"],
    ]
    assert found["The plan"].numeric == (0, 2, 3, 4, 5, 6)
    assert found["The plan"].source_note == "Most that “plain barrel” can spare: 50 µm a side."
    assert shown["Zones and masks"] == [
        ["Barrel", "imprint", "20 to 41 mm", "yes", "two lines"],
        ["Cap band", "plating", "all of it", "not said", "–"],
    ]


def test_the_two_ways_of_measuring_are_compared_for_both_and_advice_is_the_owner_s(job):
    entered(job)
    topics = {a: [[f.topic for f in b.findings] for b in made(job, a).blocks if isinstance(b, Findings)] for a in ("owner", "everybody")}  # fmt: skip
    assert topics == {"owner": [["removal-differs"]], "everybody": [["removal-differs"]]}
    job.add("finish", "step", {"grade": "film 9 um", "zone": "imprint"})
    [_, advice] = [b for b in made(job, "owner").blocks if isinstance(b, Findings)]
    assert "forbidden-zone" in {f.topic for f in advice.findings}


def test_the_picture_of_the_masks_needs_its_own_yes(job):
    def pictures(audience):
        return [photo.file for b in made(job, audience).blocks if isinstance(b, Photos) for photo in b.photos]

    entered(job)
    assert Paragraph("Before the first abrasive the masks were put on: paper tape.") in made(job, "everybody").blocks
    assert (pictures("owner"), pictures("everybody")) == (["masks.jpg"], [])
    job.add("finish", "masks on", {"masks": "no", "with_what": "paper tape", "photo": "masks.jpg"})
    assert pictures("owner") == []


@pytest.mark.parametrize(
    ("material", "words"),
    [
        ("celluloid", {"burns fiercely"}), ("casein", {"worked dry"}), ("black hard rubber", {"worked dry", "mercury"}),
        ("red hard rubber", {"mercury"}), ("acrylic", {"Keep plastic dust wet"}),
        ("perhaps acrylic", {"burns fiercely", "worked dry", "mercury"}),
    ],
)  # fmt: skip
def test_the_caution_of_each_material_and_of_all_where_it_is_not_named(job, material, words):
    job.add("intake", "arrival", {"pen": "a pen", "material": material})
    job.add("finish", "step", {"grade": "P600"})
    [caution] = [b.text for b in made(job, "everybody").blocks if isinstance(b, Notice)]
    every = ("burns fiercely", "worked dry", "mercury", "Keep plastic dust wet")
    assert {text for text in every if text in caution} == words
    assert caution.count("Follow local codes") == 1
    assert "eye protection" in caution


def test_a_plan_without_a_step_leads_with_what_is_planned(job):
    job.add("finish", "plan", {"defect": "20 um", "own": "P600; film 3 um", "zone": "plain barrel"})
    assert made(job, "owner").blocks[0].text.startswith("Planned: P600")
    assert not [b for b in made(job, "owner").blocks if isinstance(b, Notice)]
    job.add("finish", "plan", {"defect": "20 um"})
    assert made(job, "owner").blocks[0] == Lead("A plan for the surface was begun.")
