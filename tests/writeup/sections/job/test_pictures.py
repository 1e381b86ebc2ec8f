"""Before and after: the same view side by side at the head, the others in their own section."""

import pytest
from photo_files import put

from pentools.writeup.blocks import Photo, Photos
from pentools.writeup.making import section_of
from pentools.writeup.sections.job.pictures import before_and_after, photo_among, photo_of, photos_beside


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    return job


def add(job, name, moment, view="", public="yes", **more):
    texts = {"photo": name, "moment": moment, "shows": f"shows {name}", "view": view, "public": public, **more}
    put(job, name)
    job.add("pictures", "picture", texts)


def files(section):
    return [[photo.file for photo in block.photos] for block in section.blocks if isinstance(block, Photos)]


def test_the_same_view_before_and_after_is_a_pair(job):
    add(job, "a0.jpg", "before", "side")
    add(job, "b0.jpg", "before", "nib")
    add(job, "a9.jpg", "before", "Side")  # a second picture of a view that has its pair
    add(job, "a1.jpg", "after", "side")
    add(job, "a2.jpg", "after", "SIDE")  # the last one after
    add(job, "b1.jpg", "after", "nib")
    add(job, "c1.jpg", "after", "cap")
    assert files(before_and_after(job, "owner")) == [["a0.jpg", "a2.jpg"], ["b0.jpg", "b1.jpg"]]
    more = section_of(job, "pictures", "owner")
    assert (more.title, files(more)) == ("More pictures", [["a9.jpg", "a1.jpg", "c1.jpg"]])


def test_without_a_view_named_twice_the_first_before_and_the_last_after(job):
    assert before_and_after(job, "owner").blocks == ()
    add(job, "d.jpg", "during")
    assert before_and_after(job, "owner").blocks == ()
    assert section_of(job, "pictures", "owner").title == "Pictures"
    for name, moment in (("x.jpg", "before"), ("y.jpg", "before"), ("p.jpg", "after"), ("q.jpg", "after")):
        add(job, name, moment)
    assert files(before_and_after(job, "owner")) == [["x.jpg", "q.jpg"]]


def test_at_most_three_pairs_stand_at_the_head(job):
    for view in ("side", "nib", "cap", "clip"):
        add(job, f"{view}0.jpg", "before", view)
        add(job, f"{view}1.jpg", "after", view)
    assert [pair[0] for pair in files(before_and_after(job, "owner"))] == ["side0.jpg", "nib0.jpg", "cap0.jpg"]
    assert files(section_of(job, "pictures", "owner")) == [["clip0.jpg", "clip1.jpg"]]


def test_a_picture_that_not_everybody_may_see_is_in_no_pair_for_publication(job):
    add(job, "a0.jpg", "before", "side")
    add(job, "own.jpg", "after", "side", public="no")
    add(job, "unsaid.jpg", "during", public="")
    assert files(before_and_after(job, "everybody")) == [["a0.jpg"]]
    assert section_of(job, "pictures", "everybody").blocks == ()
    assert files(before_and_after(job, "owner")) == [["a0.jpg", "own.jpg"]]
    assert files(section_of(job, "pictures", "owner")) == [["unsaid.jpg"]]


def test_the_caption_says_when_what_and_in_what_light(job):
    add(job, "a.jpg", "during", "side", light_and_scale="raking light", drawn="yes")
    add(job, "b.jpg", "after", drawn="no")
    first, second = photo_of(job, "a.jpg"), photo_of(job, "b.jpg")
    assert (first.caption, first.alt, first.drawn) == (
        "During the work, side: Shows a.jpg. Raking light.", "shows a.jpg", True,
    )  # fmt: skip
    assert (second.caption, second.drawn) == ("After: Shows b.jpg.", False)
    assert photo_of(job, "none.jpg") is None
    add(job, "a.jpg", "after")
    assert photo_of(job, "a.jpg").caption == "After: Shows a.jpg."


def test_a_caption_stands_under_it_and_what_it_shows_is_for_those_who_cannot_see_it(job):
    add(job, "a.jpg", "before", "side", caption="as it came", taken_on="2026-03-09")
    add(job, "b.jpg", "after", shows="")
    first, second = photo_of(job, "a.jpg"), photo_of(job, "b.jpg")
    assert (first.caption, first.alt, first.said) == (
        "Before, side, 9\u00a0March 2026: As it came.", "shows a.jpg", "as it came",
    )  # fmt: skip
    assert (second.caption, second.alt, second.said) == ("After.", "The pen after the work", "The pen after the work")


def test_each_of_a_pair_is_told_what_it_lies_beside(job):
    add(job, "a.jpg", "before", "side")
    add(job, "b.jpg", "after", "side")
    [block] = before_and_after(job, "owner").blocks
    assert [(p.file, p.beside, p.place) for p in block.photos] == [("a.jpg", "b.jpg", "before"), ("b.jpg", "a.jpg", "after")]  # fmt: skip
    add(job, "b.jpg", "after", "side", public="no")
    [block] = before_and_after(job, "everybody").blocks
    assert [(p.file, p.beside, p.place) for p in block.photos] == [("a.jpg", "", "")]


def test_beside_other_entries_a_picture_goes_by_its_own_words_and_a_drawing_is_said_to_be_one(job):
    assert photo_among(job, "a.jpg", "the lip") == Photo("a.jpg", "the lip", "The lip.", drawn=False)
    add(job, "a.jpg", "during", drawn="yes")
    assert photo_among(job, "a.jpg", "the lip") == Photo("a.jpg", "shows a.jpg", "Shows a.jpg.", drawn=True)


def test_pictures_beside_other_entries_stand_once_in_the_words_of_their_own_entry(job):
    for name in ("a.jpg", "b.jpg"):
        put(job, name)
    add(job, "c.jpg", "during")
    named = [("a.jpg", "first"), (None, "none"), ("c.jpg", "not this"), ("a.jpg", "second"), ("b.jpg", "")]
    [block] = photos_beside(job, "owner", iter(named))
    assert [(photo.file, photo.alt) for photo in block.photos] == [
        ("a.jpg", "first"),
        ("c.jpg", "shows c.jpg"),
        ("b.jpg", ""),
    ]
    assert photos_beside(job, "owner", ()) == []
    [block] = photos_beside(job, "everybody", named)
    assert [photo.file for photo in block.photos] == ["c.jpg"]  # the others are not among the public ones
