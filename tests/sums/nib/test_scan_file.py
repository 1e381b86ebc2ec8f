"""Scans as files: what is read, what is refused in words."""

import numpy as np
import pytest
from PIL import Image, ImageFile, PngImagePlugin

from pentools.errors import InputError
from pentools.sums.nib import scan_file
from pentools.sums.nib.scan_file import read_scan

CODES = np.tile(np.arange(40, 232, dtype=np.uint8), (64, 1))


def saved(tmp_path, name="scan.png", codes=CODES, mode=None, **more):
    path = tmp_path / name
    image = Image.fromarray(codes)
    (image.convert(mode) if mode else image).save(path, **more)
    return path


@pytest.mark.parametrize("name", ["a.png", "a.tif", "a.jpg"])
def test_greys_and_scale_of_every_form(tmp_path, name):
    scan = read_scan(saved(tmp_path, name, dpi=(600, 600)))
    assert scan.codes.shape == CODES.shape
    assert np.abs(scan.codes.astype(int) - CODES).max() <= 3
    assert scan.dpi == pytest.approx((600, 600), abs=0.01)
    assert (scan.tone, scan.tone_said, scan.camera, scan.bilevel) == ("srgb", False, False, False)


@pytest.mark.parametrize("mode", ["RGB", "RGBA", "LA", "CMYK", "P", "1"])
def test_every_mode_is_read(tmp_path, mode):
    name = "a.tif" if mode == "CMYK" else "a.png"
    scan = read_scan(saved(tmp_path, name, np.where(CODES > 128, 255, 0).astype(np.uint8), mode))
    assert scan.codes.shape[:2] == CODES.shape
    assert scan.codes.reshape(64, 192, -1)[0, 0, 0] < 10
    assert scan.codes.reshape(64, 192, -1)[0, -1, 0] > 245
    assert scan.bilevel == (mode == "1")


def test_what_is_see_through_lies_on_white(tmp_path):
    clear = np.zeros((64, 64, 4), np.uint8)
    Image.fromarray(clear).save(tmp_path / "a.png")
    assert (read_scan(tmp_path / "a.png").codes == 255).all()


def test_sixteen_bits(tmp_path):
    wide = (CODES.astype(np.uint16) * 257) + 3
    Image.fromarray(wide).save(tmp_path / "a.tif", dpi=(1200, 1200))
    scan = read_scan(tmp_path / "a.tif")
    assert scan.codes.dtype == np.uint16
    assert (scan.codes == wide).all()


def test_colours_stay_and_grey_colours_become_greys(tmp_path):
    rgb = np.stack([CODES, CODES, np.full_like(CODES, 9)], axis=2)
    assert read_scan(saved(tmp_path, codes=rgb)).codes.shape == (*CODES.shape, 3)
    assert read_scan(saved(tmp_path, mode="RGB")).codes.shape == CODES.shape


@pytest.mark.parametrize("turned", range(1, 9))
@pytest.mark.parametrize("name", ["a.jpg", "a.tif"])
def test_a_page_is_turned_upright_with_its_scale(tmp_path, turned, name):
    from PIL import ImageOps

    exif = Image.Exif()
    exif[274] = turned
    path = saved(tmp_path, name, dpi=(300, 600), exif=exif, **({"quality": 100} if name == "a.jpg" else {}))
    if name == "a.tif" and turned >= 5:
        with pytest.raises(InputError, match="Turn it upright"):
            read_scan(path)
        return
    scan = read_scan(path)
    with Image.open(path) as opened:
        opened.load()  # this turns a TIFF
        upright = np.asarray(ImageOps.exif_transpose(opened) if name == "a.jpg" else opened)
    assert np.abs(scan.codes.astype(int) - upright).max() <= 1
    assert scan.dpi == pytest.approx((600, 300) if turned >= 5 else (300, 600), abs=0.01)


def test_curves_that_files_name(tmp_path):
    def png(name, kind, content):
        info = PngImagePlugin.PngInfo()
        info.add(kind, content)
        return read_scan(saved(tmp_path, name, pnginfo=info))

    assert (png("a.png", b"gAMA", (100000).to_bytes(4, "big")).tone, True) == ("linear", True)
    assert png("b.png", b"gAMA", (45455).to_bytes(4, "big")).tone_said
    assert png("c.png", b"sRGB", b"\0").tone_said
    assert png("d.png", b"gAMA", (50000).to_bytes(4, "big")).tone == pytest.approx(2.0)


def test_a_profile_is_worked_in(tmp_path):
    from PIL import ImageCms

    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    scan = read_scan(saved(tmp_path, mode="RGB", icc_profile=profile))
    assert (scan.tone, scan.tone_said) == ("srgb", True)
    assert np.abs(scan.codes.astype(int) - CODES).max() <= 1
    assert not read_scan(saved(tmp_path, mode="RGB", icc_profile=b"no profile")).tone_said


def test_no_unit_no_scale(tmp_path):
    assert read_scan(saved(tmp_path)).dpi is None
    assert read_scan(saved(tmp_path, "a.jpg")).dpi is None
    Image.fromarray(CODES).save(tmp_path / "a.tif", resolution_unit=1, x_resolution=600, y_resolution=600)
    assert read_scan(tmp_path / "a.tif").dpi is None


def test_a_camera_is_known_by_what_it_writes(tmp_path):
    exif = Image.Exif()
    exif.get_ifd(0x8769).update({33434: 0.01, 41989: 27, 40961: 1})
    scan = read_scan(saved(tmp_path, "a.jpg", exif=exif, dpi=(300, 300)))
    assert (scan.camera, scan.tone_said) == (True, True)
    assert scan.focal_share == pytest.approx(27 / 43.27 * (192**2 + 64**2) ** 0.5 / 192, rel=1e-6)


@pytest.mark.parametrize("name", ["a.png", "a.tif", "a.jpg"])
def test_a_file_cut_short_is_refused_whatever_others_set(tmp_path, name, monkeypatch):
    noise = np.random.default_rng(1).integers(0, 255, (300, 300), dtype=np.uint8)
    path = saved(tmp_path, name, noise)
    path.write_bytes(path.read_bytes()[: path.stat().st_size * 2 // 3])
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", True)
    with pytest.raises(InputError, match="scan must be a PNG, TIFF or JPEG"):
        read_scan(path)
    assert ImageFile.LOAD_TRUNCATED_IMAGES is True


def test_no_picture_no_file_and_a_folder_are_refused(tmp_path):
    (tmp_path / "a.png").write_text("no picture")
    Image.fromarray(CODES).save(tmp_path / "b.gif")
    (tmp_path / "empty.png").write_bytes(b"")
    for name in ("a.png", "b.gif", "empty.png", "nothing.png", "."):
        with pytest.raises(InputError, match="scan must be"):
            read_scan(tmp_path / name)


def test_a_bomb_is_refused_by_its_header(tmp_path, monkeypatch):
    path = saved(tmp_path, codes=np.zeros((400, 400), np.uint8))
    monkeypatch.setattr(scan_file, "LARGEST_PX", 100_000)
    with pytest.raises(InputError, match="million elements"):
        read_scan(path)
    monkeypatch.setattr(Image, "MAX_IMAGE_PIXELS", 50_000)
    with pytest.raises(InputError, match="million elements"):
        read_scan(path)


def test_a_picture_of_a_few_elements_is_refused(tmp_path):
    with pytest.raises(InputError, match="at least 32"):
        read_scan(saved(tmp_path, codes=np.zeros((8, 400), np.uint8)))
