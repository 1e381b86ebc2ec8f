"""Pictures: one before and one after are asked for, each view's other too, and every file named must be there and be read."""

import pytest
from PIL import Image

from pentools.record.stages.job.ending_kinds import PICTURE, Picture
from pentools.record.stages.job.pictures import lacking, scale_of, shown_by, views_of
from pentools.units import read_quantity


def picture(job, name, moment, view="", shows="the pen"):
    path = job.folder / "photos" / name
    if not path.exists():
        Image.new("RGB", (8, 8)).save(path)
    job.add("pictures", "picture", {"photo": name, "moment": moment, "shows": shows, "view": view})


def test_one_before_and_one_after_are_asked_for(new_job):
    job = new_job()
    stage = job.stage("pictures")
    Image.new("RGB", (8, 8)).save(job.folder / "photos" / "there.jpg")
    told = [(stage.state_of(job).word, stage.state_of(job).reason, [f.topic for f in stage.checks(job)])]
    for moment in ("after", "during", "before"):
        picture(job, "there.jpg", moment)
        told.append((stage.state_of(job).word, stage.state_of(job).reason, [f.topic for f in stage.checks(job)]))
    assert told == [
        ("not begun", "", ["no-before", "no-after"]),
        ("open", "none before the work", ["no-before"]),
        ("open", "none before the work", ["no-before"]),
        ("done", "", []),
    ]


def test_a_file_that_is_not_there_is_named(new_job):
    job = new_job()
    for name in ("there.jpg", "gone.jpg"):
        Image.new("RGB", (8, 8)).save(job.folder / "photos" / name)
        picture(job, name, "before")
    (job.folder / "photos" / "gone.jpg").unlink()
    found = [f for f in job.stage("pictures").checks(job) if f.topic == "photo-missing"]
    assert [f.level for f in found] == ["warning"]
    assert "gone.jpg" in found[0].text


@pytest.mark.parametrize(("content", "why"), [(b"", "0 bytes"), (b"\0\0\0\x18ftypmp42" + bytes(60), "film")])
def test_a_file_that_no_page_can_show_is_said_with_what_to_do(new_job, content, why):
    job = new_job()
    (job.folder / "photos" / "a.heic").write_bytes(content)
    picture(job, "a.heic", "before")
    found = [f for f in job.stage("pictures").checks(job) if f.topic == "photo-unread"]
    assert [f.level for f in found] == ["warning"]
    assert "photos/a.heic stands on no page." in found[0].text
    assert why in found[0].text


def test_every_view_before_wants_its_after_and_one_line_says_which_lack(new_job):
    job = new_job()
    stage = job.stage("pictures")
    for view in ("side", "nib", "cap lip"):
        picture(job, f"{view}0.jpg", "before", view)
    picture(job, "side1.jpg", "after", " SIDE ")
    picture(job, "imprint1.jpg", "after", "imprint")
    picture(job, "loose.jpg", "after")
    assert (lacking(job, "after"), lacking(job, "before")) == (("nib", "cap lip"), ("imprint",))
    assert stage.state_of(job).reason == "not yet after the work: nib; cap lip"
    # while the work goes on, only what can no longer be taken is missing
    assert [f.text for f in stage.checks(job)] == ["Pictures: shown after the work and not before it: imprint."]
    job.add("release", "result", {"ending": "done", "summary": "It writes."})
    assert [(f.level, f.text) for f in stage.checks(job)] == [(
        "note",
        "Pictures: shown before the work and not after it: nib and cap lip; after it and not before: imprint.",
    )]  # fmt: skip
    for view in ("nib", "cap lip"):
        picture(job, f"{view}1.jpg", "after", view)
    picture(job, "imprint0.jpg", "before", "imprint")
    assert stage.state_of(job).word == "done"
    assert stage.checks(job) == ()


def test_the_checklist_has_a_row_a_view_with_its_pictures(new_job):
    job = new_job()
    picture(job, "a.jpg", "before", "side")
    picture(job, "b.jpg", "during")
    picture(job, "c.jpg", "after", "Side")
    rows = views_of(job)
    assert [(r.view, r.before, r.during, r.after) for r in rows] == [
        ("side", ("a.jpg",), (), ("c.jpg",)), ("", (), ("b.jpg",), ()),
    ]  # fmt: skip


def test_words_for_those_who_cannot_see_it_are_drafted_where_none_were_given(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "piston", "material": "celluloid"})
    picture(job, "a.jpg", "before", "nib from above", shows="")
    picture(job, "b.jpg", "after", shows="")
    picture(job, "c.jpg", "after", shows="the nib, bright")
    assert [shown_by(job, logged.values) for logged in job.log(PICTURE)] == [
        "Nib from above before the work: a drawn test pen", "The pen after the work: a drawn test pen", "the nib, bright",
    ]  # fmt: skip
    assert shown_by(job, Picture()) == "The pen: a drawn test pen"


def test_a_scale_needs_a_length_in_both():
    known = read_quantity("20 mm", "mm", name="length")
    assert scale_of(Picture(known_mm=known, known_px=400)) == 0.05
    for part in ({}, {"known_mm": known}, {"known_px": 400}, {"known_mm": known, "known_px": 5}):
        assert scale_of(Picture(**part)) is None
