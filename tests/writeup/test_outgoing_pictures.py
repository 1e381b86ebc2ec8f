"""Every picture of every form, read by readers that are not ours: nothing that was planted in the files is left.

ExifRead reads what cameras write; ExifTool, where the machine has it, all there is.
"""

import base64
import io
import json
import re
import shutil
import struct
import subprocess
from pathlib import Path

import exifread
import numpy as np
import pytest
from PIL import Image, ImageCms

from pentools.writeup.blocks import Photo
from pentools.writeup.forms import files_of, page_forms
from pentools.writeup.photos import PhotoBook, left_out
from pentools.writeup.write import write_pages

SAMPLES = Path(__file__).resolve().parents[2] / "sample_jobs"
SECRET = "Secretplace51N"


def planted(source, orientation=1):
    """A photograph with position, words, a comment, a small picture of itself and a named profile in it."""
    exif = Image.Exif()
    exif[0x010F], exif[0x013B], exif[0x0112] = f"{SECRET}make", f"{SECRET}artist", orientation
    exif.get_ifd(0x8825).update({1: "N", 2: (51.0, 12.0, 3.0), 29: "2026:03:09", 27: f"{SECRET}gps"})
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes() + f"{SECRET}icc".encode()
    with Image.open(source) as opened:
        picture = opened.convert("RGB")
    held = io.BytesIO()
    xmp = f'<x:xmpmeta xmlns:x="adobe:ns:meta/">{SECRET}xmp</x:xmpmeta>'.encode()
    picture.save(
        held, "JPEG", quality=92, exif=exif.tobytes(), comment=f"{SECRET}comment", xmp=xmp, icc_profile=profile
    )
    content = held.getvalue()
    words = f"{SECRET}iptc".encode()
    iptc = b"Photoshop 3.0\x008BIM\x04\x04\0\0" + struct.pack(">I", len(words) + 5) + b"\x1c\x02\x78" + struct.pack(">H", len(words)) + words  # fmt: skip
    return content[:2] + b"\xff\xed" + struct.pack(">H", len(iptc) + 2) + iptc + content[2:]


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "piston", "material": "celluloid"})
    for name, source, moment in (
        ("a.jpg", "before", "before"),
        ("b.jpg", "after", "after"),
        ("c.jpg", "after", "during"),
    ):
        content = planted(SAMPLES / "green-piston" / "photos" / f"side-{source}.jpg", 6 if name == "c.jpg" else 1)
        (job.folder / "photos" / name).write_bytes(content)
        scale = {"known_mm": "20 mm", "known_px": "200"} if name == "a.jpg" else {}
        said = {"photo": name, "moment": moment, "view": "side", "shows": f"the pen {moment}", "public": "yes"}
        job.add("pictures", "picture", said | scale)
    job.add("release", "result", {"ending": "done", "summary": "It writes."})
    return job


def pictures_of(files):
    """Every picture in a form: those that lie in its pages, and those that are files."""
    for name, content in files.items():
        if isinstance(content, bytes):
            yield name, content
        else:
            for number, data in enumerate(re.findall(r"data:image/(?:jpeg|png);base64,([A-Za-z0-9+/=]+)", content)):
                yield f"{name} {number}", base64.b64decode(data)


def outgoing(job):
    for form in page_forms(("letter", "record", "story", "post", "pictures")):
        found = dict(pictures_of(files_of(form, job, None)))
        yield form.key, found


def test_what_is_planted_is_found_by_the_reader_before_and_gone_after(job):
    before = (job.folder / "photos" / "a.jpg").read_bytes()
    for word in ("make", "artist", "gps", "comment", "xmp", "icc", "iptc"):
        assert f"{SECRET}{word}".encode() in before
    assert {"GPS GPSLatitude", "Image Make", "Image Artist"} <= set(exifread.process_file(io.BytesIO(before)))
    count = {}
    for form, pictures in outgoing(job):
        count[form] = len(pictures)
        for name, content in pictures.items():
            assert not exifread.process_file(io.BytesIO(content)), f"{form} {name}"
            assert SECRET.encode() not in content
            with Image.open(io.BytesIO(content)) as picture:
                assert set(picture.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density", "dpi"}
                assert max(picture.size) <= 2 * 1600
    # the pair and the one during the work in each; the contact sheet has the halves too
    assert (count["letter"] >= 2, count["record"] >= 3, count["story"] >= 2, count["post"] >= 2, count["pictures"]) == (True, True, True, True, 4)  # fmt: skip


@pytest.mark.skipif(shutil.which("exiftool") is None, reason="this machine has no ExifTool")
def test_a_second_reader_finds_nothing_either(job, tmp_path):
    def groups(path):
        told = json.loads(
            subprocess.run(["exiftool", "-json", "-G0", "-a", "-u", path], capture_output=True, check=True).stdout
        )
        return {key.partition(":")[0] for key in told[0]} - {
            "SourceFile",
            "ExifTool",
            "File",
            "JFIF",
            "Composite",
            "PNG",
        }, told[0]

    source = tmp_path / "source.jpg"
    source.write_bytes((job.folder / "photos" / "a.jpg").read_bytes())
    assert {"EXIF", "IPTC", "ICC_Profile", "XMP"} <= groups(source)[0] | {"XMP"}
    for form, pictures in outgoing(job):
        for name, content in pictures.items():
            path = tmp_path / f"{form}-{re.sub(r'[^a-z0-9]', '-', name)}"
            path.write_bytes(content)
            found, told = groups(path)
            assert found == set(), f"{form} {name}: {told}"
            assert SECRET not in json.dumps(told)


def test_the_pair_on_the_pages_is_aligned_and_carries_the_bar_of_the_one_with_a_scale(job):
    book = PhotoBook(job, "owner")
    one = book.shown(Photo("a.jpg", "x", beside="b.jpg", place="before"), 800)
    two = book.shown(Photo("b.jpg", "x", beside="a.jpg", place="after"), 800)
    assert (one.width_px, one.height_px) == (two.width_px, two.height_px)
    halves = book.shown(Photo("a.jpg", "x", beside="b.jpg", place="halves"), 800)
    assert (halves.width_px, halves.height_px) == (one.width_px, one.height_px)
    with Image.open(io.BytesIO(one.content)) as picture:
        low = picture.convert("RGB").crop((0, picture.height * 3 // 4, picture.width, picture.height))
    # 20 mm over 200 px of 1500: 0.1 mm a pixel, 0.19 mm in 800 px; a bar of 20 mm is 107 px long
    ink = np.abs(np.asarray(low).astype(int) - (31, 58, 95)).sum(axis=2) < 90
    assert max(_longest(row) for row in ink.tolist()) == pytest.approx(107, abs=4)


def _longest(row):
    """The longest run of ink in a row of a picture."""
    best = run = 0
    for value in row:
        run = run + 1 if value else 0
        best = max(best, run)
    return best


def test_pictures_that_cannot_be_aligned_stand_as_they_are(job):
    (job.folder / "photos" / "b.jpg").write_bytes((SAMPLES / "mixed-dates" / "photos" / "side-after.jpg").read_bytes())
    book = PhotoBook(job, "owner")
    assert book.shown(Photo("b.jpg", "x", beside="a.jpg", place="after")) == book.embed("b.jpg")
    assert book.shown(Photo("a.jpg", "x", beside="b.jpg", place="halves")) is None
    assert book.why_apart("a.jpg", "b.jpg")


def test_half_of_a_picture_that_everybody_may_not_see_is_shown_to_nobody_else(job):
    job.add("pictures", "picture", {"photo": "b.jpg", "moment": "after", "public": "no"})
    book = PhotoBook(job, "everybody")
    assert book.shown(Photo("a.jpg", "x", beside="b.jpg", place="halves")) is None
    assert book.shown(Photo("a.jpg", "x", beside="b.jpg", place="before")) == book.embed("a.jpg")
    assert book.shown(Photo("b.jpg", "x", beside="a.jpg", place="after")) is None


def test_a_picture_that_stands_on_no_page_is_said_as_the_pages_are_written(job):
    (job.folder / "photos" / "c.jpg").write_bytes(b"")
    assert left_out(job) == (
        "photos/c.jpg is left out of the pages. It is empty, 0 bytes. Copy it anew from the camera.",
    )
    said = []
    write_pages(job, ["letter"], progress=said.append)
    assert left_out(job)[0] in said


def test_a_scale_that_only_the_second_has_is_carried_over_to_the_pair(new_job):
    job = new_job()
    for name, moment, width, more in (
        ("a.jpg", "before", 1500, {}), ("b.jpg", "after", 750, {"known_mm": "20 mm", "known_px": "100"}),
    ):  # fmt: skip
        with Image.open(SAMPLES / "green-piston" / "photos" / f"side-{moment}.jpg") as opened:
            opened.resize((width, width * 690 // 1500)).save(job.folder / "photos" / name, quality=92)
        job.add("pictures", "picture", {"photo": name, "moment": moment, "view": "side", **more})
    made = PhotoBook(job, "owner").shown(Photo("a.jpg", "x", beside="b.jpg", place="before"), 800)
    with Image.open(io.BytesIO(made.content)) as picture:
        low = np.asarray(picture.convert("RGB").crop((0, picture.height * 3 // 4, picture.width, picture.height)))
    # 0.2 mm a pixel of 750 is 0.1 of 1500: 20 mm are 200 px of 1500, 107 of 800
    ink = np.abs(low.astype(int) - (31, 58, 95)).sum(axis=2) < 90
    assert max(_longest(row) for row in ink.tolist()) == pytest.approx(107, abs=4)


def test_each_of_the_pair_is_itself(job):
    def colours(made):
        with Image.open(io.BytesIO(made.content)) as picture:
            return np.asarray(picture.convert("RGB").resize((60, 30))).astype(int)[4:22, 6:54]

    book = PhotoBook(job, "owner")
    one = colours(book.shown(Photo("a.jpg", "x", beside="b.jpg", place="before"), 800))
    two = colours(book.shown(Photo("b.jpg", "x", beside="a.jpg", place="after"), 800))
    before, after = colours(book.embed("a.jpg", 800)), colours(book.embed("b.jpg", 800))
    assert np.abs(one - before).mean() < 0.5 * np.abs(one - after).mean()
    assert np.abs(two - after).mean() < 0.5 * np.abs(two - before).mean()
    halves = colours(book.shown(Photo("a.jpg", "x", beside="b.jpg", place="halves"), 800))
    assert np.abs((halves - one)[:, :20]).mean() < 1
    assert np.abs((halves - two)[:, -20:]).mean() < 1
