"""What carries a chapter: one figure, one sentence under it, and nothing where nothing was entered."""

import pytest
from writeup.samples import LEAD, sample

from pentools.record.registry import STAGES
from pentools.writeup.blocks import FigureBlock, Photos
from pentools.writeup.tale.carriers import carried, chapter_title, rest_of_pictures, weight_of


@pytest.mark.parametrize("key", STAGES)
def test_nothing_entered_nothing_carried(new_job, key):
    found = carried(new_job(), key, "everybody")
    assert (found.figure, found.sentence, found.alone) == (None, "", "")
    assert chapter_title(key)


def test_each_chapter_of_the_lead_sample_is_carried_by_what_tells_it():
    job = sample(LEAD)
    titles = {
        key: found.figure.drawing.title
        for key in STAGES
        if isinstance((found := carried(job, key, "everybody")).figure, FigureBlock)
    }
    assert titles == {
        "identify": "All evidence on original parts allows 1935 to 1945",
        "condition": "10 faults were noted; the gravest is at the head seal: lost.",
        "seal": "The cork on the head holds dry: second ring, at 9.4 mm, after three that did not do.",
        "fill test": "From 1.12 mL at first, 3 refills agree at 1.75 mL",
    }
    under = {
        key: carried(job, key, "everybody").sentence for key in ("condition", "open", "clean", "seal", "fill test")
    }
    assert under["condition"] == "The gravest: perished cork; it cannot be saved."
    assert under["open"].startswith("It came apart in 8 steps")
    assert under["clean"].startswith("Cleaned in cool water")
    assert under["seal"] == "After the dry fit had passed, it was sealed with silicone grease at the cork on the head (can be undone)."  # fmt: skip
    assert "1.748" in under["fill test"]


def test_pump_strokes_carry_the_fill_test_of_a_pump_filler():
    figure = carried(sample("short-breather"), "fill test", "everybody").figure
    assert "stops rising after stroke 7" in figure.drawing.title


def test_what_restorer_and_owner_said_stands_alone_only(small_job):
    assert carried(small_job, "intake", "everybody").alone == "What was asked: “That it writes again.”"
    assert carried(small_job, "limits", "everybody").alone == "A hairline at the lip."
    assert carried(small_job, "release", "everybody").alone == "It writes."
    for key in ("intake", "limits", "release", "work log"):
        assert carried(small_job, key, "everybody").sentence == ""


def test_that_nothing_was_left_is_said_only_where_it_was_said_and_nothing_was(new_job):
    job = new_job()
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    assert carried(job, "limits", "everybody").alone == "Nothing that was found was left unmended."
    job.add("limits", "nothing left", {"nothing_left": "no"})
    assert carried(job, "limits", "everybody").alone == ""
    job.add("limits", "limit", {"part": "cap", "left": "A hairline at the lip", "why": "it is old"})
    job.add("limits", "nothing left", {"nothing_left": "yes"})
    assert carried(job, "limits", "everybody").alone == "A hairline at the lip."


def test_pictures_that_stand_elsewhere_are_not_shown_again(small_job):
    files = [photo.file for photo in rest_of_pictures(small_job, "everybody", set())]
    assert files == ["side-a.jpg", "side-b.jpg"]
    assert [p.file for p in carried(small_job, "pictures", "everybody", {"side-a.jpg"}).figure.photos] == ["side-b.jpg"]
    assert carried(small_job, "pictures", "everybody", {"side-a.jpg", "side-b.jpg"}).figure is None


def test_a_picture_that_may_not_be_seen_carries_nothing(small_job):
    small_job.add("limits", "limit", {"part": "cap", "left": "x", "why": "y", "photo": "side-a.jpg"})
    assert isinstance(carried(small_job, "limits", "everybody").figure, Photos)
    small_job.add("pictures", "picture", {"photo": "side-a.jpg", "moment": "after", "shows": "x", "public": "no"})
    assert carried(small_job, "limits", "everybody").figure is None
    assert isinstance(carried(small_job, "limits", "owner").figure, Photos)


def test_entries_that_contradict_each_other_carry_nothing(small_job):
    small_job.add("fill test", "weighing", {"state": "drained", "mass": "30 g"})
    small_job.add("fill test", "weighing", {"state": "filled", "mass": "20 g"})
    assert carried(small_job, "fill test", "everybody").figure is None


def test_the_pictures_weigh_most_and_a_stage_without_a_figure_least():
    assert max(STAGES, key=weight_of) == "pictures"
    assert weight_of("work log") == 0


def test_what_was_weighed_before_the_work_is_not_what_it_draws(new_job):
    job = new_job()
    for state, mass in (("dry", "16.55 g"), ("filled", "17.85 g")):
        job.add("fill test", "weighing", {"state": state, "mass": mass})
    assert "It draws" in carried(job, "fill test", "everybody").sentence
    job.add("work log", "work", {"activity": "seal", "minutes": "9 min", "done": "A new cork."})
    found = carried(job, "fill test", "everybody")
    assert found.sentence == "This was weighed before the work."
    assert found.tells == frozenset()


def test_a_picture_that_was_said_to_belong_to_a_stage_carries_it_once_and_only_where_it_may_be_seen(small_job):
    said = {"photo": "side-a.jpg", "moment": "during", "shows": "Filling it.", "belongs_to": "fill test"}
    small_job.add("pictures", "picture", said)
    assert isinstance(carried(small_job, "fill test", "everybody").figure, FigureBlock)
    found = carried(small_job, "fill test", "owner")
    assert [photo.file for photo in found.figure.photos] == ["side-a.jpg"]
    assert found.sentence
    assert isinstance(carried(small_job, "fill test", "owner", {"side-a.jpg"}).figure, FigureBlock)
    assert not isinstance(carried(small_job, "release", "owner").figure, Photos)


def test_a_stage_without_an_entry_is_carried_by_a_picture_said_to_belong_to_it(small_job):
    assert carried(small_job, "clean", "owner").figure is None
    said = {"photo": "side-a.jpg", "moment": "during", "shows": "It soaks.", "belongs_to": "clean"}
    small_job.add("pictures", "picture", said)
    assert [photo.file for photo in carried(small_job, "clean", "owner").figure.photos] == ["side-a.jpg"]
