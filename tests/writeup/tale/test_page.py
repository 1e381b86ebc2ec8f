"""The story's page, counted and read as a browser and a screen reader take it."""

import pytest
from writeup.pages import Parsed, markdown, notebook, stage
from writeup.samples import LEAD, SAMPLES, made, sample

from pentools.writeup.notebook import StoryCell, cells_for, read_notebook
from pentools.writeup.tale.page import story_page

MOST_GENERATED = 1500


def page(name):
    return made(name, "story")["blog.html"]


def own_words(name):
    """What the restorer wrote for everybody, in words."""
    notebook_ = read_notebook(sample(name).notebook)
    return sum(
        len(cell.text.replace("#", " ").split())
        for cell in cells_for(notebook_, "everybody")
        if isinstance(cell, StoryCell)
    )


@pytest.mark.parametrize("name", SAMPLES)
def test_words_tables_and_figures_are_few(name):
    found = Parsed(page(name))
    generated = len(found.text.split()) - own_words(name)  # the letters in drawings are counted too
    assert 60 < generated <= MOST_GENERATED
    assert [tag for tag, _ in found.tags].count("table") <= 1
    assert [tag for tag, _ in found.tags].count("tr") <= 8
    chapters = found.headings.count(2)
    assert 3 <= [tag for tag, _ in found.tags].count("figure") <= chapters + 2  # and the pair
    assert [tag for tag, _ in found.tags].count("details") == 1


@pytest.mark.parametrize("name", SAMPLES)
def test_it_can_be_followed_and_fetches_nothing(name):
    text = page(name)
    found = Parsed(text)
    assert found.headings.count(1) == 1
    assert all(after <= before + 1 for before, after in zip(found.headings, found.headings[1:], strict=False))
    assert {"header", "main"} <= {tag for tag, _ in found.tags}
    assert found.images
    assert all(image.get("alt", "").strip() for image in found.images)
    assert not {"script", "link", "iframe", "form"} & {tag for tag, _ in found.tags}
    assert [v[:40] for _, _, v in found.links if not v.startswith(("data:image/", "#", "https://", "mailto:"))] == []
    assert len(found.ids) == len(set(found.ids))
    assert text.count('<figure class="drawing" tabindex="0" aria-label="') == text.count("<svg")


def test_the_restorers_title_and_words_lead():
    text = Parsed(page(LEAD)).text
    order = ["A green pen in a seed merchant’s envelope", "Green marbled celluloid piston filler", "Before, side, 9", "It came in a stiff brown envelope", "Nobody’s pen", "In a few facts", "How it was measured"]  # fmt: skip
    places = [text.index(words) for words in order]
    assert places == sorted(places)


def test_no_log_and_no_order_to_the_bench():
    for name in SAMPLES:
        text = Parsed(page(name)).text
        for word in (
            "Next test",
            "let it cool",
            "Nothing is planned yet",
            "say how",
            "say what",
            "Entered",
            "not recorded",
        ):
            assert word not in text, (name, word)


def test_what_stands_under_a_figure_is_part_of_it(small_job):
    text = story_page(small_job, notebook(markdown("## Fill\n\nIt fills."), stage("fill test")))
    assert "<figcaption>It draws " in text
    assert 'class="under"' not in text
    alone = story_page(small_job, notebook(markdown("## Work"), stage("clean")))
    assert "<figcaption>It" not in alone


def test_a_comma_for_the_decimal_sign(small_job):
    path = small_job.bench.folder / "bench.toml"
    path.write_text(path.read_text().replace('decimal_sign = "."', 'decimal_sign = ","'))
    from pentools.record.job import job_in

    text = Parsed(story_page(job_in(small_job.folder), None)).text
    assert "1,28" in text
    assert "1.28" not in text
