"""Pictures: one before and one after are asked for, and every file named must be there."""

from PIL import Image


def picture(job, name, moment):
    job.add("pictures", "picture", {"photo": name, "moment": moment, "shows": "the pen"})


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
