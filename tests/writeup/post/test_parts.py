"""The parts of a post: HTML and Markdown know every one of them."""

from typing import get_args

import pytest

from pentools.writeup.outputs import PublishedOutput
from pentools.writeup.post import commonmark, fragment
from pentools.writeup.post.parts import Caption, FactsList, Fold, Image, Mark, PostPart, Said, Title
from pentools.writeup.post.pictures import PostPicture
from pentools.writeup.tale.chapters import Words

IMAGE = Image(PostPicture("01-a.jpg", "a pen", 8, 4))
ONE_OF_EACH = (
    Title(2, "told"), Said("told"), Mark("M", "told"), IMAGE, Caption(IMAGE, "told"), FactsList((("a", "told"),)),
    Fold("told", ()), PublishedOutput("<p>told</p>"),
)  # fmt: skip


def test_there_is_one_of_each():
    assert {type(part) for part in ONE_OF_EACH} | {Words} == set(get_args(PostPart))


@pytest.mark.parametrize("part", ONE_OF_EACH, ids=lambda part: type(part).__name__)
@pytest.mark.parametrize("write", [commonmark.commonmark, fragment.fragment])
def test_each_is_written(part, write):
    text = write((part,), lambda picture: IMAGE.picture)
    assert ("01-a.jpg" if part is IMAGE else "told") in text
