"""The scale by a ruler and by the kit's own sheet, both drawn by renderers that are not ours."""

import shutil
import subprocess

import pytest
from drawn_bars import RULES, drawn
from drawn_lines import codes
from outside import Outside

from pentools import measure_lines, write_sheet


@pytest.mark.parametrize(("dpi", "degrees"), [(300, 0.0), (600, 4.0)])
def test_a_ruler_drawn_by_agg(tmp_path, dpi, degrees):
    from PIL import Image

    Image.fromarray(codes(drawn(RULES["mm"], dpi=dpi, degrees=degrees))).save(tmp_path / "a.png")
    data = measure_lines(tmp_path / "a.png", scale="bar").data
    Outside("matplotlib-agg", f"scale by a ruler at {dpi} dots an inch").agree(
        data["scale_um_per_px"],
        25400 / dpi,
        within=0.0005 * 25400 / dpi,
        because="a quarter of the card's goal of 0.2 %",
    )
    assert data["scale_from"] == "ruler"
    assert len(data["strokes"]) == 2  # not the ruler's own
    assert data["median_width_um"] == pytest.approx(500, abs=2 * data["u_um"])


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_printed_sheet_rasterised_by_poppler(tmp_path, paper):
    from PIL import Image, ImageDraw

    tool = shutil.which("pdftoppm")
    if tool is None:
        pytest.skip("poppler is not here")
    write_sheet(tmp_path / "sheet.pdf", paper=paper)
    subprocess.run([tool, "-r", "300", "-gray", "-singlefile", tmp_path / "sheet.pdf", tmp_path / "sheet"], check=True)
    with Image.open(tmp_path / "sheet.pgm") as opened:
        page = opened.copy()
    draw = ImageDraw.Draw(page)
    for row in range(4):  # 6 elements of 84.67 µm
        draw.line([(200, 692 + 71 * row), (1900, 692 + 71 * row)], fill=30, width=6)
    page.save(tmp_path / "a.png", dpi=(300, 300))
    for scale in ("bar", "dpi"):
        answer = measure_lines(tmp_path / "a.png", scale=scale)
        Outside("poppler", f"scale of the sheet's bar, {paper}, {scale}").agree(
            answer.data["scale_um_per_px"],
            25400 / 300,
            within=0.0005 * 25400 / 300,
            because="a quarter of the card's goal of 0.2 %",
        )
        assert [round(s["length_mm"]) for s in answer.data["strokes"]] == [
            144
        ] * 4  # neither words nor fields nor guides
        assert not [f for f in answer.findings if f.level == "warning"]
    page.resize((page.width, page.height)).save(tmp_path / "b.png", dpi=(310, 310))
    assert "bar-differs:file" in [f.key.split(".")[1] for f in measure_lines(tmp_path / "b.png", scale="bar").findings]
