"""The story as a whole: words lead, each picture and each fact once, and it says what is missing."""

import itertools
import re

import pytest
from PIL import Image
from writeup.pages import code, markdown, notebook, png, stage
from writeup.samples import SAMPLES, sample

from pentools.writeup.blocks import FigureBlock, Photos
from pentools.writeup.notebook import read_notebook
from pentools.writeup.tale.chapters import Words
from pentools.writeup.tale.tale import Heading, Sentence, tale_of


@pytest.mark.parametrize("name", SAMPLES)
def test_every_chapter_of_a_sample_has_words_and_at_most_one_figure_and_one_sentence(name):
    job = sample(name)
    tale = tale_of(job, read_notebook(job.notebook))
    assert tale.title
    assert tale.pair is not None
    assert len(tale.facts) <= 8
    for chapter in tale.chapters:
        assert isinstance(chapter[0], Words)
        assert sum(isinstance(part, FigureBlock | Photos) for part in chapter) <= 1
        assert sum(isinstance(part, Sentence) for part in chapter) <= 1
    shown = [photo.file for photo in tale.pair.photos]
    shown += [photo.file for chapter in tale.chapters for part in chapter if isinstance(part, Photos) for photo in part.photos]  # fmt: skip
    assert len(shown) == len(set(shown)) == len(list((job.folder / "photos").iterdir()))


@pytest.mark.parametrize("name", SAMPLES)
def test_no_generated_sentence_is_said_twice(name):
    job = sample(name)
    tale = tale_of(job, read_notebook(job.notebook))
    said = [part.text for chapter in tale.chapters for part in chapter if isinstance(part, Sentence)]
    said += [part.drawing.title for chapter in tale.chapters for part in chapter if isinstance(part, FigureBlock)]
    said += [value for _, value in tale.facts]
    plain = [text.casefold().rstrip(".") for text in said if len(text) > 8]
    assert [(a, b) for a, b in itertools.permutations(plain, 2) if a in b] == []
    quantities = [
        q for text in said for q in set(re.findall(r"\d[\d.]*[\s\u202f\u00a0]?(?:mL|mm|h|min|mg|°C)\b", text))
    ]
    assert sorted(quantities) == sorted(set(quantities))


def test_the_picture_between_stands_where_the_pictures_are_told(small_job):
    Image.new("RGB", (40, 30)).save(small_job.folder / "photos" / "mid.jpg")
    small_job.add("pictures", "picture", {"photo": "mid.jpg", "moment": "during", "shows": "the cork", "public": "yes"})
    small_job.add("limits", "limit", {"part": "cap", "left": "x", "why": "y", "photo": "mid.jpg"})
    limits, pictures = (
        (markdown("## Left\n\nIt was left."), stage("limits")),
        (markdown("## Seen\n\nLook."), stage("pictures")),
    )
    with_place = tale_of(small_job, notebook(*limits, *pictures))
    assert [part for part in with_place.chapters[0] if isinstance(part, Photos)] == []
    assert [p.file for part in with_place.chapters[1] if isinstance(part, Photos) for p in part.photos] == ["mid.jpg"]
    without = tale_of(small_job, notebook(*limits))
    assert [p.file for part in without.chapters[0] if isinstance(part, Photos) for p in part.photos] == ["mid.jpg"]


def test_a_picture_placed_by_the_restorer_carries_its_chapter(small_job):
    cells = notebook(markdown("## Fill\n\nIt fills.\n\n![side](photos/side-a.jpg)"), stage("fill test"))
    tale = tale_of(small_job, cells)
    assert not [part for part in tale.chapters[0] if isinstance(part, FigureBlock)]
    assert [part for part in tale.chapters[0] if isinstance(part, Sentence)]
    assert [photo.file for photo in tale.pair.photos] == ["side-b.jpg"]  # the other stands in the text
    shown = [{"output_type": "display_data", "data": {"image/png": png()}, "metadata": {}}]
    published = notebook(markdown("## Fill\n\nx"), code("1", "publish", outputs=shown), stage("fill test"))
    assert not [part for part in tale_of(small_job, published).chapters[0] if isinstance(part, FigureBlock)]


def test_a_job_without_a_story_is_told_by_its_stages(small_job):
    tale = tale_of(small_job, None)
    assert tale.title == ()
    assert tale.pen == "Green piston filler"
    assert tale.lead == "It writes."
    titles = [part.text for chapter in tale.chapters for part in chapter if isinstance(part, Heading)]
    assert titles == ["What was asked", "What was wrong", "What was done", "How it performs now", "What was left alone, and why"]  # fmt: skip
    assert "Work" not in dict(tale.facts)  # it was said
    told = tale_of(small_job, notebook(markdown("Only a word."), stage("intake"), stage("release")))
    assert told.lead == ""
    assert [part.text for part in told.chapters[-1] if isinstance(part, Sentence)] == ["It writes."]


def test_an_open_job_and_a_draft_say_so(new_job, small_job):
    job = new_job()
    assert [notice.word for notice in tale_of(job, None, draft=True).notices] == ["Draft", "Unfinished"]
    assert [notice.word for notice in tale_of(job, None).notices] == ["Unfinished"]
    assert tale_of(small_job, None, draft=True).notices == ()
