"""Every sort of block has its place in the page's frame: what is put in comes out, and nothing twice."""

from typing import get_args

import pytest
from writeup.pages import Parsed

from pentools.calc.base.findings import Finding
from pentools.figures.drawing import Drawing
from pentools.writeup import blocks
from pentools.writeup.page_parts import Page, Placed
from pentools.writeup.photos import PhotoBook
from pentools.writeup.template import fill_template

ONE_OF_EACH = (
    (blocks.Lead("Carried words."), "Carried words."),
    (blocks.Paragraph("Plain words."), "Plain words."),
    (blocks.Quote("Quoted words.", "an uncle"), "Quoted words. an uncle"),
    (blocks.Notice("Told words.", "Mind"), "Mind: Told words."),
    (blocks.Table("Caption", ("Head",), (("Cell",),), source_note="Noted."), "Caption Head Cell Noted."),
    (blocks.Facts("Known", (("Label", "Value"),), source_note="Noted."), "Known Label Value Noted."),
    (
        blocks.FigureBlock(Drawing("<svg><text>Drawn</text></svg>", "title", "alt", 40.0), "Under it."),
        "Drawn Under it.",
    ),
    (blocks.Photos((blocks.Photo("no.jpg", "alt", "Shown words."),)), "Shown words. (The picture no.jpg is not in"),
    (blocks.Findings((Finding("stop", "base.refused", sentence="Found words."),)), "Found words."),
    (blocks.Details("Folded", (blocks.Paragraph("Inner words."),)), "Folded Inner words."),
)


def text_with(job, *shown):
    page = Page("owner", "A pen", (), (), (Placed(blocks.Section("key", "Heading", shown)),), (), ())
    return Parsed(fill_template(job, page, PhotoBook(job, "owner"))).text


def test_none_is_forgotten_here():
    assert {type(block) for block, _ in ONE_OF_EACH} == set(get_args(blocks.Block))


@pytest.mark.parametrize(("block", "words"), ONE_OF_EACH, ids=lambda x: type(x).__name__)
def test_a_block_stands_on_the_page_once(new_job, block, words):
    assert text_with(new_job(), block).count(words) == 1


def test_blocks_keep_their_order(new_job):
    text = text_with(new_job(), *(block for block, _ in ONE_OF_EACH))
    places = [text.index(words) for _, words in ONE_OF_EACH]
    assert places == sorted(places)
