"""The finish on the client's page and on the page for publication."""

import pytest
from writeup.pages import Parsed, notebook, stage

from pentools.writeup.blocks import FigureBlock, Lead, Notice, Table
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
