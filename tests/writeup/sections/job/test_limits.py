"""What was left alone, on the pages: each thing with its reason, its picture only for those who may see it."""

from photo_files import put

from pentools.writeup.blocks import Facts, Paragraph, Photos
from pentools.writeup.making import section_of

LEFT = {"part": "cap", "left": "A hairline.", "why": "It is stable.", "photo": "lip.jpg"}


def test_each_thing_stands_under_its_part_with_its_picture(new_job):
    job = new_job()
    put(job, "lip.jpg")
    job.add("limits", "limit", LEFT)
    facts, photos = section_of(job, "limits", "owner").blocks
    assert isinstance(facts, Facts)
    assert facts.caption == "Cap"
    assert [text for _, text in facts.rows] == ["A hairline.", "It is stable."]
    assert [(photo.file, photo.alt) for photo in photos.photos] == [("lip.jpg", "A hairline.")]
    blog = section_of(job, "limits", "everybody").blocks
    assert facts in blog
    assert not [block for block in blog if isinstance(block, Photos)]
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    job.add("pictures", "picture", {"photo": "lip.jpg", "moment": "during", "shows": "the lip", "public": "yes"})
    assert [block for block in section_of(job, "limits", "everybody").blocks if isinstance(block, Photos)]


def test_that_nothing_was_left_is_said_only_where_it_was_stated(new_job):
    job = new_job()
    nothing = (Paragraph("Nothing that was found was left unmended."),)
    assert section_of(job, "limits", "owner").blocks == ()
    job.add("limits", "nothing left", {"nothing_left": "no"})
    assert section_of(job, "limits", "owner").blocks == ()
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    assert section_of(job, "limits", "owner").blocks == nothing
    put(job, "lip.jpg")
    job.add("limits", "limit", LEFT)
    assert not set(nothing) & set(section_of(job, "limits", "owner").blocks)
