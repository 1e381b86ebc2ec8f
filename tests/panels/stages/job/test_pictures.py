"""The pictures panel: small upright views without what a camera wrote in, and a word where a file is no picture."""

import base64
import datetime as dt
import io
import re
from pathlib import Path

from PIL import Image

from pentools.panels.bench import BenchSheet
from pentools.panels.stages.job.pictures import view_in_name
from pentools.record.stages.job.ending_kinds import PICTURE

NOON = dt.datetime(2026, 3, 9, 12, tzinfo=dt.UTC)

ORIENTATION, DESCRIPTION = 0x0112, 0x010E  # Exif (CIPA DC-008): orientation and image description


def test_a_view_is_small_upright_and_holds_nothing_of_the_camera(job, sheet, put):
    folder = job.folder / "photos"
    folder.mkdir(exist_ok=True)
    exif = Image.Exif()
    exif[ORIENTATION] = 6  # the 0th row is the right-hand side: to be turned by a quarter
    exif[DESCRIPTION] = "taken at the owner's house"
    Image.new("RGB", (800, 400), "grey").save(folder / "a.jpg", exif=exif)
    panel = sheet.panel("pictures")
    assert "No picture is listed yet." in panel.result_text.value
    assert put(panel, "picture", photo="a.jpg", moment="before", shows='the "cap" closed').startswith("saved ")
    assert "1 picture: 1 before, 0 during, 0 after" in panel.result_text.value
    shown = panel.result_table.value
    assert 'alt="the &quot;cap&quot; closed"' in shown
    data = base64.b64decode(re.search(r"base64,([^\"]+)", shown)[1])
    assert b"owner" not in data
    assert Image.open(io.BytesIO(data)).size == (160, 320)


def test_a_file_that_is_gone_or_no_picture_is_said(job):
    folder = job.folder / "photos"
    folder.mkdir(exist_ok=True)
    for name in ("a.jpg", "b.jpg", "c.jpg"):
        Image.effect_noise((64, 64), 40).save(folder / name)
        job.add("pictures", "picture", {"photo": name, "moment": "after", "shows": "the pen"})
    (folder / "a.jpg").unlink()
    (folder / "b.jpg").write_text("not a picture")
    whole = (folder / "c.jpg").read_bytes()
    (folder / "c.jpg").write_bytes(whole[: len(whole) // 2])  # the copying stopped half way
    panel = BenchSheet(job).panel("pictures")
    assert "3 pictures: 0 before, 0 during, 3 after" in panel.result_text.value
    shown = panel.result_table.value
    assert "photos/a.jpg is not there." in shown
    for name in ("b.jpg", "c.jpg"):
        assert f"photos/{name} is not a picture that can be read." in shown


def lay(job, *names, size=(160, 80), exif=None):
    (job.folder / "photos").mkdir(exist_ok=True)
    for name in names:
        Image.effect_noise(size, 40).convert("RGB").save(
            job.folder / "photos" / name, **({} if exif is None else {"exif": exif})
        )


def listed(job):
    return [logged.values for logged in job.log(PICTURE)]


def thumbnails(panel):
    return [(p["file"], p["state"], p["problem"]) for p in panel.picker.pictures]


def test_those_not_listed_yet_stand_first_and_a_press_and_a_moment_list_one(job, sheet):
    lay(job, "a.jpg", "b.jpg", "side-open.jpg")
    panel = sheet.panel("pictures")
    panel.picker.choose("b.jpg")
    panel.moments["before"].click()
    assert [(p.photo, p.moment, p.view, p.shows) for p in listed(job)] == [
        ("b.jpg", "before", None, "The pen before the work: a drawn test pen"),
    ]  # fmt: skip
    assert thumbnails(panel) == [
        ("a.jpg", "not listed yet", ""), ("side-open.jpg", "not listed yet", ""), ("b.jpg", "before", ""),
    ]  # fmt: skip
    assert panel.forms["picture"].status.text.startswith("saved ")
    assert panel.picker.file == ""
    # a name that says the view spares the choice of it
    panel.picker.choose("side-open.jpg")
    panel.moments["after"].click()
    assert (listed(job)[1].view, listed(job)[1].shows) == ("side", "Side after the work: a drawn test pen")


def test_the_draft_follows_moment_and_view_until_it_is_written_over(job, sheet):
    lay(job, "a.jpg")
    panel = sheet.panel("pictures")
    boxes = panel.forms["picture"].boxes
    panel.picker.choose("a.jpg")
    assert boxes["shows"].text == "The pen: a drawn test pen"
    panel.view.value = "cap lip"
    boxes["moment"].text = "during"
    assert boxes["shows"].text == "Cap lip during the work: a drawn test pen"
    boxes["shows"].text = "a hairline"
    panel.view.value = "imprint"
    panel.moments["before"].click()
    assert [(p.moment, p.view, p.shows) for p in listed(job)] == [("before", "imprint", "a hairline")]


def test_a_listed_picture_is_loaded_to_be_corrected_not_listed_twice(job, sheet):
    lay(job, "a.jpg")
    panel = sheet.panel("pictures")
    panel.picker.choose("a.jpg")
    panel.moments["before"].click()
    panel.picker.choose("a.jpg")
    assert panel.forms["picture"].button.description == "Save the correction"
    panel.moments["after"].click()
    assert [(p.photo, p.moment) for p in listed(job)] == [("a.jpg", "after")]


def test_without_a_picture_chosen_a_moment_lists_nothing(job, sheet):
    panel = sheet.panel("pictures")
    panel.moments["before"].click()
    assert "Choose one" in panel.forms["picture"].status.text
    assert listed(job) == []


def test_the_day_is_the_cameras_and_a_note_on_the_file_is_said(job, sheet):
    exif = Image.Exif()
    exif.get_ifd(0x8769)[0x9003] = "2026:03:09 10:14:45"
    lay(job, "a.jpg", exif=exif)
    Image.new("RGB", (9, 9)).save(job.folder / "photos" / "b.jpg", "PNG")
    panel = sheet.panel("pictures")
    panel.picker.choose("a.jpg")
    panel.moments["before"].click()
    assert listed(job)[0].taken_on == "2026-03-09"
    panel.picker.choose("b.jpg")
    assert "Its name ends with .jpg, and it is a PNG." in panel.about.value
    assert panel.forms["picture"].boxes["taken_on"].text == ""


def test_for_everybody_is_asked_where_the_owner_agreed_and_is_no_until_it_is_ticked(job, sheet):
    lay(job, "a.jpg", "b.jpg")
    panel = sheet.panel("pictures")
    assert panel.everybody.layout.display == "none"
    panel.everybody.value = True  # what is not asked does not count
    panel.picker.choose("a.jpg")
    panel.moments["before"].click()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    panel.refresh()
    panel.picker.choose("b.jpg")
    panel.moments["after"].click()
    assert [p.public for p in listed(job)] == [None, True]


def test_files_from_the_computer_go_into_the_folder_and_wait_to_be_listed(job, sheet):
    held = io.BytesIO()
    Image.new("RGB", (40, 20), "grey").save(held, "PNG")
    panel = sheet.panel("pictures")

    def uploaded(name, content):
        return {"name": name, "content": memoryview(content), "type": "image/png", "size": 1, "last_modified": NOON}

    panel.upload.value = (
        uploaded("IMG 7.png", held.getvalue()),
        uploaded("film.mov", b"\0\0\0\x18ftypqt  " + bytes(90)),
    )
    assert thumbnails(panel) == [("IMG-7.png", "not listed yet", "")]
    assert "film" in panel.forms["picture"].status.text
    assert listed(job) == []
    panel.upload.value = (uploaded("IMG 7.png", held.getvalue()),)
    assert panel.picker.file == "IMG-7.png"


def test_a_file_that_no_page_can_show_cannot_be_chosen_nor_typed(job, sheet, put):
    lay(job, "a.jpg")
    (job.folder / "photos" / "b.jpg").write_bytes(b"")
    panel = sheet.panel("pictures")
    assert thumbnails(panel)[1] == ("b.jpg", "not listed yet", "It is empty, 0 bytes. Copy it anew from the camera.")
    panel.picker.choose("b.jpg")
    assert panel.forms["picture"].boxes["photo"].text == ""
    assert "0 bytes" in put(panel, "picture", photo="b.jpg", moment="before")
    assert listed(job) == []


def test_two_ends_and_their_length_are_a_scale_and_half_of_one_is_none(job, sheet, put):
    lay(job, "a.jpg", size=(800, 400))
    panel = sheet.panel("pictures")
    panel.picker.choose("a.jpg")
    panel.measure.value = True
    assert (panel.ends.size, panel.ends_part.layout.display) == ([800, 400], "")
    panel.ends.ends = [[100.0, 50.0], [400.0, 450.0]]
    assert panel.forms["picture"].boxes["known_px"].text == "500"
    assert "A length in it" in put(panel, "picture", moment="before")
    assert listed(job) == []
    assert put(panel, "picture", known_mm="20").startswith("saved ")
    assert (listed(job)[0].known_mm.value, listed(job)[0].known_px) == (20, 500)


def test_the_checklist_says_which_view_is_missing(job, sheet, put):
    lay(job, "a.jpg", "b.jpg", "c.jpg")
    panel = sheet.panel("pictures")
    for photo, moment, view in (("a.jpg", "before", "nib"), ("b.jpg", "before", "side"), ("c.jpg", "after", "Side")):
        put(panel, "picture", photo=photo, moment=moment, view=view)
    assert "Not yet after the work: nib." in panel.result_text.value
    rows = re.findall(r'<tr><th scope="row">(.*?)</th>(.*?)</tr>', panel.views.value)
    assert rows == [
        ("nib", "<td>✓</td><td>–</td><td><strong>missing</strong></td>"), ("side", "<td>✓</td><td>–</td><td>✓</td>"),
    ]  # fmt: skip
    assert panel.view.options[0] == "nib"


def test_the_pair_is_shown_half_and_half_or_why_not(job, sheet, put):
    samples = Path(__file__).resolve().parents[4] / "sample_jobs"
    lay(job)
    for name, source in (("a.jpg", "green-piston/photos/side-before.jpg"), ("b.jpg", "green-piston/photos/side-after.jpg"), ("c.jpg", "mixed-dates/photos/side-after.jpg")):  # fmt: skip
        (job.folder / "photos" / name).write_bytes((samples / source).read_bytes())
    panel = sheet.panel("pictures")
    for photo, moment, view in (("a.jpg", "before", "side"), ("b.jpg", "after", "side"), ("a.jpg", "before", "cap"), ("c.jpg", "after", "cap")):  # fmt: skip
        put(panel, "picture", photo=photo, moment=moment, view=view)
    panel.more_button.value = True
    shown = panel.more_drawings.value
    assert "side: the pages show both in one frame, aligned" in shown
    assert "cap: the pages show them side by side as they are, for" in shown
    assert "pentools writeup test-pen --only pictures" in shown


def test_a_view_is_known_from_a_files_name():
    views = ("nib from above", "side", "nib")
    assert [view_in_name(name, views) for name in ("SIDE_1.jpg", "nib from above 2.jpg", "inside.jpg", "IMG_1.jpg")] == [
        "side", "nib from above", "", "",
    ]  # fmt: skip
