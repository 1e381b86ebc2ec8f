"""The contact sheet: every picture with its words, half of each of a pair, what is missing and what cannot be shown."""

from pathlib import Path

from PIL import Image
from writeup.pages import Parsed
from writeup.samples import LEAD, sample

from pentools.writeup.contact.page import contact_sheet_files, frames, halves

SAMPLES = Path(__file__).resolve().parents[3] / "sample_jobs"


def page(job):
    return contact_sheet_files(job, None)["pictures.html"]


def add(job, name, moment, view="", **more):
    path = job.folder / "photos" / name
    if not path.exists():
        Image.effect_noise((90, 60), 40).save(path)
    job.add("pictures", "picture", {"photo": name, "moment": moment, "view": view, "shows": f"shows {name}", **more})


def test_every_picture_once_in_order_with_its_newest_words(new_job):
    job = new_job()
    add(job, "a.jpg", "before", "side", taken_on="2026-03-09", caption="As it came")
    add(job, "b.jpg", "during")
    add(job, "a.jpg", "after", "side", drawn="yes")
    told = [(f.number, f.head, f.under, f.photo.alt, f.photo.drawn) for f in frames(job)]
    assert told == [
        ("1", "After, side", "Shows a.jpg.", "shows a.jpg", True), ("2", "During the work", "Shows b.jpg.", "shows b.jpg", False),
    ]  # fmt: skip
    text = Parsed(page(job)).text
    assert "1 · After, side Shows a.jpg. Drawn, not photographed." in text


def test_the_caption_and_the_day_stand_under_it(new_job):
    job = new_job()
    add(job, "a.jpg", "before", "side", taken_on="2026-03-09", caption="As it came")
    [frame] = frames(job)
    assert (frame.head, frame.under) == ("Before, side, 9\u00a0March 2026", "As it came.")
    assert 'alt="shows a.jpg"' in page(job)


def test_a_pair_that_could_be_aligned_is_shown_half_and_half_and_another_is_not(new_job):
    job = sample(LEAD)
    [frame] = halves(job)
    assert (frame.head, frame.under) == (
        "Half of each", "Before, side, 9\u00a0March 2026; After, side, 27\u00a0March 2026.",
    )  # fmt: skip
    assert frame.photo.alt.startswith("Half of each, before and after. Before: The pen before the work")
    assert page(job).count("<img") == 4
    other = new_job()
    add(other, "a.jpg", "before", "side")
    add(other, "b.jpg", "after", "side")
    assert halves(other) == ()


def test_what_is_missing_and_what_cannot_be_shown_is_said(new_job):
    job = new_job()
    assert "No picture is listed yet." in Parsed(page(job)).text
    add(job, "a.jpg", "before", "nib")
    add(job, "b.jpg", "during")
    (job.folder / "photos" / "b.jpg").write_bytes(b"")
    text = Parsed(page(job)).text
    assert "No picture after the work of: nib." in text
    assert "Not shown: photos/b.jpg is left out of the pages. It is empty, 0 bytes." in text
    assert len(frames(job)) == 1
