"""The lines sum through the command line."""

import json

import numpy as np
import pytest
from PIL import Image

from pentools.cli import main
from pentools.sums.nib.drawn_page import drawn_page


def lines(capsys, path, *more):
    code = main(["sums", "lines", str(path), *more, "--json"])
    out = capsys.readouterr()
    assert code == 0, out.err
    return json.loads(out.out)


def refused(capsys, path, *more):
    assert main(["sums", "lines", str(path), *more]) == 2
    out = capsys.readouterr()
    assert "Traceback" not in out.err
    return out.err


@pytest.fixture
def scan(tmp_path):
    def save(codes=None, name="scan.png", **more):
        Image.fromarray(drawn_page() if codes is None else codes).save(tmp_path / name, **more)
        return tmp_path / name

    return save


def test_the_drawn_page_comes_back(capsys, scan):
    data = lines(capsys, scan(dpi=(600, 600)))
    assert data["scale_um_per_px"] == pytest.approx(25400 / 600, rel=1e-4)
    assert len(data["strokes"]) == 7
    assert data["light"]["width_um"] == pytest.approx(420, abs=2)
    assert data["variation_ratio"] == pytest.approx(data["p95_um"] / data["p5_um"], abs=0.02)
    assert data["variation_ratio"] < data["p95_um"] / data["p5_um"]  # its scatter is taken off
    skipped = [stroke["skips"] for stroke in data["strokes"] if stroke["skips"]]
    assert sorted(round(skip["length_um"], -1) for skip in skipped[0]) == pytest.approx([400, 900], abs=20)
    assert (data["skips"], data["skips_per_m"]) == (2, None)
    pressed = max(data["strokes"], key=lambda stroke: stroke["ratio"])
    assert (pressed["p5_um"], pressed["p95_um"]) == pytest.approx((423, 947), abs=8)
    for stroke in data["strokes"]:
        assert stroke["u_um"] > 0
        assert stroke["p5_um"] <= stroke["p50_um"] == stroke["width_um"] <= stroke["p95_um"]
    assert not [f for f in data["findings"] if f["level"] in ("warning", "stop")]
    assert "mm ±" in data["sentence"]


def test_the_sample_is_that_page(capsys, scan):
    assert lines(capsys, "sample")["median_width_um"] == pytest.approx(
        lines(capsys, scan(dpi=(600, 600)))["median_width_um"], abs=0.01
    )


def test_twice_the_dots_is_half_the_size(capsys, scan):
    one, half = lines(capsys, scan(dpi=(600, 600))), lines(capsys, scan(dpi=(1200, 1200)))
    assert half["median_width_um"] == pytest.approx(one["median_width_um"] / 2, rel=0.01)


def test_the_threshold_is_said_and_counts(capsys, scan):
    path = scan(dpi=(600, 600))
    narrow = lines(capsys, path, "--threshold", "0.6")
    assert narrow["threshold"] == 0.6
    assert 10 < lines(capsys, path)["median_width_um"] - narrow["median_width_um"] < 30


@pytest.mark.parametrize("path", [["--curve", "linear"], [], "chunk"])
def test_a_curve_that_the_file_does_not_name_is_a_doubt(capsys, scan, path):
    from PIL import PngImagePlugin

    from pentools.calc.nib.tone import decoding

    raw = np.round(255 * decoding("srgb", 255)[drawn_page()]).astype(np.uint8)  # codes in proportion to light
    info = PngImagePlugin.PngInfo()
    if path == "chunk":
        info.add(b"gAMA", (100000).to_bytes(4, "big"))
    data = lines(capsys, scan(raw, dpi=(600, 600), pnginfo=info), *(path if path != "chunk" else []))
    off = data["light"]["width_um"] - 420
    assert abs(off) < 2 * data["light"]["u_um"]
    unsaid = "curve-unsaid" in [f["topic"] for f in data["findings"]]
    if path == []:
        assert (off > 20, unsaid, data["u_um"] > 15) == (True, True, True)
    else:
        assert (abs(off) < 2, unsaid, data["u_um"] < 6) == (True, False, True)
        assert data["u_um"] == pytest.approx(lines(capsys, "sample")["u_um"], rel=0.2)


@pytest.mark.parametrize("more", [{"dpi": (72, 72)}, {"dpi": (96, 96)}, {}])
def test_no_scale_is_refused(capsys, scan, more):
    assert "scale must be known" in refused(capsys, scan(**more))


def test_a_camera_s_dots_are_no_scale(capsys, scan):
    exif = Image.Exif()
    exif.get_ifd(0x8769)[33434] = 0.01
    assert "camera" in refused(capsys, scan(name="a.jpg", exif=exif, dpi=(300, 300)))


def test_a_blank_page_is_refused(capsys, scan):
    noise = np.random.default_rng(2).normal(230, 2, (800, 900)).astype(np.uint8)
    assert "strokes must be on the page" in refused(capsys, scan(noise, dpi=(600, 600)))


@pytest.mark.parametrize("size", [34, 100])
def test_a_page_of_print_is_refused_or_warned_of_whatever_its_size(capsys, scan, size):
    from PIL import ImageDraw, ImageFont

    page = Image.new("L", (1800, 1600), 232)
    font = ImageFont.load_default(size=size)
    for row in range(40, 1500, round(1.5 * size)):
        ImageDraw.Draw(page).text((60, row), "a hand writes on summer evenings " * 4, fill=40, font=font)
    path = scan(np.asarray(page), dpi=(300, 300))
    if size == 34:
        assert "like print" in refused(capsys, path)
    else:
        found = [f["topic"] for f in lines(capsys, path)["findings"] if f["level"] == "warning"]
        assert "printed-text" in found


def test_light_on_dark_is_measured_and_said(capsys, scan):
    from pentools.calc.nib.tone import decoding

    light = decoding("srgb", 255)[drawn_page()]
    dark = np.interp(0.84 - light, decoding("srgb", 255), np.arange(256)).round().astype(np.uint8)
    data = lines(capsys, scan(dark, dpi=(600, 600)))
    assert data["light"]["width_um"] == pytest.approx(420, abs=3)
    assert "light-on-dark" in [f["topic"] for f in data["findings"]]


def test_coarse_scans_are_warned_of(capsys, scan):
    small = np.asarray(Image.fromarray(drawn_page()).reduce(3))
    data = lines(capsys, scan(small, dpi=(200, 200)))
    assert {"coarse"} <= {f["topic"] for f in data["findings"] if f["level"] == "warning"}
