"""The pictures panel: small upright views without what a camera wrote in, and a word where a file is no picture."""

import base64
import io
import re

from PIL import Image

from pentools.panels.bench import BenchSheet

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
