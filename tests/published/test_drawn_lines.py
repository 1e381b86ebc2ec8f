"""Lines drawn by renderers that are not ours, against the width they were told to draw."""

import math
import shutil
import subprocess

import numpy as np
import pytest
from outside import Outside

from pentools import measure_lines

WIDTHS = (0.25, 0.4, 0.6, 1.0, 1.6)
_ENCODE = np.vectorize(lambda x: 12.92 * x if x <= 0.0031308 else 1.055 * x ** (1 / 2.4) - 0.055)
CODES = np.round(255 * _ENCODE(np.linspace(0, 1, 4097))).astype(np.uint8)


def strokes():
    """Ends and width of each line [mm], on a page of 60 by 45 mm."""
    for row, width in enumerate(WIDTHS):
        a = math.radians(-6 + 3.5 * row)
        yield (
            (30 - 24 * math.cos(a), 6 + 8 * row - 24 * math.sin(a) / 8),
            (30 + 24 * math.cos(a), 6 + 8 * row + 24 * math.sin(a) / 8),
            width,
        )


def scanned(cover, dpi, path, *, finer, blur_um=30.0, noise=0.006, pale=0.0):
    """A scan of what was drawn: blurred, averaged, in the usual curve, with a file that says its curve and resolution."""
    import cv2
    from PIL import Image, PngImagePlugin

    if pale:  # ink that loses some of its darkness inwards, over 60 µm
        depth = cv2.distanceTransform((cover > 0.5).astype(np.uint8), cv2.DIST_L2, 5) * 25400 / dpi / finer
        cover = cover * (1 - pale * (1 - np.exp(-depth / 60)))
    said = PngImagePlugin.PngInfo()
    said.add(b"sRGB", b"\0")
    light = 0.82 - 0.78 * cover.astype(np.float32)
    light = cv2.GaussianBlur(light, (0, 0), blur_um / (25400 / dpi / finer))
    size = (light.shape[1] // finer, light.shape[0] // finer)
    light = cv2.resize(light[: size[1] * finer, : size[0] * finer], size, interpolation=cv2.INTER_AREA)
    light = light + np.random.default_rng(11).normal(0, noise, light.shape)
    Image.fromarray(CODES[np.round(4096 * np.clip(light, 0, 1)).astype(int)]).save(path, dpi=(dpi, dpi), pnginfo=said)


def agg(dpi):
    """Drawn by matplotlib's Agg."""
    import matplotlib as mpl
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=(60 / 25.4, 45 / 25.4), dpi=dpi)
    canvas = FigureCanvasAgg(figure)
    axes = figure.add_axes((0, 0, 1, 1), xlim=(0, 60), ylim=(45, 0))
    axes.axis("off")
    with mpl.rc_context({"path.snap": False, "path.simplify": False}):
        for start, end, width in strokes():
            axes.plot([start[0], end[0]], [start[1], end[1]], "k-", linewidth=width / 25.4 * 72, solid_capstyle="butt")
        canvas.draw()
    return 1 - np.asarray(canvas.buffer_rgba())[..., 0] / np.float32(255)


def poppler(dpi, folder):
    """A PDF drawn by poppler, in black and white at a high resolution."""
    from PIL import Image

    tool = shutil.which("pdftoppm")
    if tool is None:
        pytest.skip("poppler is not here")
    from matplotlib.figure import Figure

    figure = Figure(figsize=(60 / 25.4, 45 / 25.4))
    axes = figure.add_axes((0, 0, 1, 1), xlim=(0, 60), ylim=(45, 0))
    axes.axis("off")
    for start, end, width in strokes():
        axes.plot([start[0], end[0]], [start[1], end[1]], "k-", linewidth=width / 25.4 * 72, solid_capstyle="butt")
    figure.savefig(folder / "page.pdf")
    subprocess.run([tool, "-r", str(dpi), "-gray", folder / "page.pdf", folder / "page"], check=True)
    with Image.open(next(folder.glob("page-*.pgm"))) as opened:
        return 1 - np.asarray(opened) / np.float32(255)


def pillow(dpi):
    """Polygons drawn by Pillow, each with the width that it covers, which is its own to an element or so."""
    from PIL import Image, ImageDraw

    px = dpi / 25.4
    page, widths = np.zeros((round(45 * px), round(60 * px)), bool), []
    for (x1, y1), (x2, y2), width in strokes():
        long = math.hypot(x2 - x1, y2 - y1)
        u, v = (y1 - y2) / long * width / 2, (x2 - x1) / long * width / 2
        alone = Image.new("1", page.shape[::-1])
        corners = [(x1 + u, y1 + v), (x2 + u, y2 + v), (x2 - u, y2 - v), (x1 - u, y1 - v)]
        ImageDraw.Draw(alone).polygon([(x * px - 0.5, y * px - 0.5) for x, y in corners], fill=1)
        covered = np.asarray(alone)
        page |= covered
        widths.append(covered.sum() / px**2 / long)
    return page.astype(np.float32), widths


def held(source, what, path, bias_um, spread_um, widths=WIDTHS):
    found = {stroke["p50_um"]: stroke for stroke in measure_lines(path).data["strokes"]}
    assert len(found) == len(widths)
    off = np.array([mine - 1000 * told for mine, told in zip(sorted(found), widths, strict=True)])
    for mine, told in zip(sorted(found), widths, strict=True):
        Outside(source, what).agree(
            mine, 1000 * told, within=2 * spread_um, because="goal of the kit: twice its spread"
        )
        assert abs(mine - 1000 * told) < 2 * found[mine]["u_um"]
    assert abs(off.mean()) < bias_um
    assert off.std() < spread_um
    assert not any(stroke["skips"] for stroke in found.values())


@pytest.mark.parametrize(("dpi", "bias_um", "spread_um"), [(300, 3.0, 5.0), (600, 1.5, 3.0), (1200, 1.5, 3.0)])
def test_agg(tmp_path, dpi, bias_um, spread_um):
    finer = 2400 // dpi
    scanned(agg(2400), dpi, tmp_path / "a.png", finer=finer)
    held("matplotlib-agg", f"width of lines at {dpi} dots an inch", tmp_path / "a.png", bias_um, spread_um)


@pytest.mark.parametrize("pale", [0.3, 0.5])
def test_ink_that_pales_inwards_is_within_its_doubt(tmp_path, pale):
    scanned(agg(2400), 600, tmp_path / "a.png", finer=4, pale=pale)
    strokes = sorted(measure_lines(tmp_path / "a.png").data["strokes"], key=lambda stroke: stroke["p50_um"])
    assert len(strokes) == len(WIDTHS)
    for stroke, told in zip(strokes, WIDTHS, strict=True):
        Outside("matplotlib-agg", f"width of lines whose ink pales by {pale:.0%}").agree(
            stroke["p50_um"], 1000 * told, within=2 * stroke["u_um"], because="twice its own standard uncertainty"
        )
    assert 7 < np.median([stroke["u_um"] for stroke in strokes]) < 20


def test_poppler(tmp_path):
    scanned(poppler(2400, tmp_path), 600, tmp_path / "a.png", finer=4)
    held("poppler", "width of lines at 600 dots an inch", tmp_path / "a.png", 1.5, 3.0)


@pytest.mark.parametrize(("dpi", "bias_um", "spread_um"), [(300, 3.0, 5.0), (600, 1.5, 3.0), (1200, 1.5, 3.0)])
def test_pillow(tmp_path, dpi, bias_um, spread_um):
    cover, widths = pillow(4800)
    assert max(abs(1000 * (np.array(widths) - WIDTHS))) < 6  # µm; elements of 5.3
    scanned(cover, dpi, tmp_path / "a.png", finer=4800 // dpi)
    held("pillow", f"width covered by polygons at {dpi} dots an inch", tmp_path / "a.png", bias_um, spread_um, widths)


def test_a_distance_transform_agrees_to_its_own_grain(tmp_path):
    """SciPy's distance transform on the mask: twice the largest depth is the width to about an element."""
    from PIL import Image
    from scipy import ndimage

    scanned(agg(2400), 600, tmp_path / "a.png", finer=4, noise=0.0)
    with Image.open(tmp_path / "a.png") as opened:
        dark = np.asarray(opened) < 175  # half of the light, in the usual curve
    labels, count = ndimage.label(dark)
    depth = ndimage.distance_transform_edt(dark)
    broad = sorted(2 * np.median(np.sort(depth[labels == i])[-400:]) * 25400 / 600 for i in range(1, count + 1))
    mine = sorted(stroke["p50_um"] for stroke in measure_lines(tmp_path / "a.png").data["strokes"])
    for ours, theirs in zip(mine, broad, strict=True):
        Outside("scipy-edt", "width of lines by a distance transform").agree(
            ours, float(theirs), within=50, because="a mask's edge is known to an element"
        )
