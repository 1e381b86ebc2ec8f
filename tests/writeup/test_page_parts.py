"""A picture stands on a page once, where it comes first."""

from pentools.writeup.blocks import Paragraph, Photo, Photos, Section
from pentools.writeup.page_parts import Passage, Placed, each_picture_once


def shows(key, *files):
    return Section(key, key, (Photos(tuple(Photo(file, file, file) for file in files)),))


def test_each_picture_stands_where_it_comes_first():
    first = [shows("head", "one.jpg")]
    stage = Placed(Section("stage", "Stage", (*shows("", "one.jpg", "two.jpg").blocks, Paragraph("Words."))), 3)
    passages = [Passage("<p>story</p>", [stage, "<p>an output</p>", Placed(shows("again", "two.jpg"))])]
    first, passages, last = each_picture_once(first, passages, [shows("foot", "two.jpg", "three.jpg")])
    files = [
        [photo.file for block in section.blocks if isinstance(block, Photos) for photo in block.photos]
        for section in (*first, *(p.section for p in passages[0].placed if isinstance(p, Placed)), *last)
    ]
    assert files == [["one.jpg"], ["two.jpg"], ["three.jpg"]]
    assert passages[0].placed[0].level == 3
    assert passages[0].placed[0].section.blocks[1] == Paragraph("Words.")
    assert passages[0].placed[1] == "<p>an output</p>"
