"""Identity on the pages: what leads, what the figure is, and the evidence as it was read."""

import pytest
from writeup.pages import Parsed, notebook, stage

from pentools.writeup.blocks import Facts, FigureBlock, Lead, Paragraph, Table
from pentools.writeup.making import section_of
from pentools.writeup.page import render_page

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
    for audience in ("owner", "everybody"):
        assert section_of(job, "identify", audience).blocks == ()


@pytest.mark.parametrize("audience", ["owner", "everybody"])
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
    for audience in ("owner", "everybody"):
        text = Parsed(render_page(job, audience, cells)).text
        assert "The evidence contradicts itself." in text
        assert "Contradiction: the clip (1948 to 1953) against the imprint (1938 to 1942)." in text


def test_what_cannot_be_read_is_shown_as_typed(job):
    see(job, "clip", "somewhen")
    [table] = [b for b in section_of(job, "identify", "owner").blocks if isinstance(b, Table)]
    assert table.rows[0][:3] == ("clip", "somewhen", "cannot be read")


def test_marks_stay_as_they_are(job):
    job.add("identify", "mark", {"where": "barrel", "text": "marl0w & s"})
    assert "marl0w & s" in Parsed(render_page(job, "everybody", notebook(stage("identify")))).text


def test_the_table_of_evidence_word_for_word(job):
    see(job, "clip", "1936/1942", source="a catalogue of 1939")
    see(job, "patent", "before 1935", evidence_kind="patent", certainty="sure", part_state="unknown")
    [table] = [b for b in section_of(job, "identify", "owner").blocks if isinstance(b, Table)]
    assert table.head == ("Feature", "Dates", "Allows for this pen", "How sure; the part", "Known from")
    assert table.rows == (
        ("Clip", "1936 to 1942", "1936 to 1942", "likely; original to this pen", "a catalogue of 1939"),
        ("Patent", "before 1935: 1934 or earlier", "any date (patent)", "sure; not known", "–"),
    )


def test_questions_conclusion_and_price(job):
    job.add("identify", "question", {"feature": "feed", "answers": "1936/1939; 1940/1945"})
    job.add(
        "identify",
        "identity",
        {"maker": "unknown", "object_type": "lever filler", "conclusion": "A middle size of the thirties."},
    )
    job.add("identify", "price then", {"price": "5.00", "year": "1940", "country": "US", "known_from": "the band"})
    blocks = section_of(job, "identify", "owner").blocks
    assert blocks[0] == Paragraph("A middle size of the thirties.")
    [questions] = [b for b in blocks if isinstance(b, Table)]
    assert questions.rows == (("Feed", "1936/1939; 1940/1945"),)
    facts = [b for b in blocks if isinstance(b, Facts)]
    assert facts[0].caption == "An opinion, from the evidence below"
    assert [value for _, value in facts[0].rows] == ["unknown", "lever filler"]
    assert facts[-1].rows == (
        ("Price", "5.00"),
        ("Year", "1940"),
        ("Country", "United States"),
        ("Known from", "the band"),
    )
    assert blocks[-1].text.startswith("5.00 USD in 1940 is about $1")
    assert blocks[-1].text.endswith("It says nothing of what the pen is worth.")


def test_a_price_that_cannot_be_read_stays_as_it_stands(job):
    job.add("identify", "price then", {"price": "much", "year": "1940", "country": "US"})
    blocks = section_of(job, "identify", "owner").blocks
    assert [type(b) for b in blocks] == [Facts]
    assert blocks[0].rows == (("Price", "much"), ("Year", "1940"), ("Country", "United States"))


def test_advice_for_the_bench_stays_at_the_bench(job):
    see(job, "clip", "before 1942")
    see(job, "nib", "1950", part_state="unknown")
    text = Parsed(render_page(job, "owner", notebook(stage("identify")))).text
    assert "does not fit the rest" in text
    assert "without the year named" not in text
    assert "To narrow it most" not in text
