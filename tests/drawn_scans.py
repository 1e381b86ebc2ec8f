"""Draw the scans of the sample jobs: invented strokes on invented paper, and each picture says that it is drawn.

python tests/drawn_scans.py            writes them into sample_jobs/*/scans
"""

import math
from pathlib import Path

from PIL import Image, ImageDraw, ImageFilter, ImageFont, PngImagePlugin

ROOT = Path(__file__).resolve().parents[1]
DPI = 600
FINER = 4
"""Each element is drawn in so many squared."""
PAPER, INK = 0.90, 0.03
"""Light that paper and ink send back; they are blurred as light, and only then made into codes."""
SAYS = 206
"""The code of the words that say it is drawn: too pale to be taken for a stroke."""
SCANS = {
    "green-piston": ("nib-after.png", 0.58, 0.05),
    "lever-with-limits": ("nib-after.png", 0.66, 0.015),
}
"""Sample -> the scan's name, the width of its strokes [mm] and how far they swell to either side [mm]."""


def code(light):
    """The code of a light by the usual curve of screens and scanners, both 0 to 1 (IEC 61966-2-1)."""
    return 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055


def stroke(draw, start, length_mm, width_mm, swell_mm, wave_mm):
    """A stroke across the page: a gentle wave, its width swelling and falling along it."""
    px = DPI * FINER / 25.4
    for step in range(int(length_mm * 40)):
        x = step / 40
        y = wave_mm * math.sin(2 * math.pi * x / 14)
        half = (width_mm + swell_mm * math.sin(2 * math.pi * x / 9)) / 2
        cx, cy = (start[0] + x) * px, (start[1] + y) * px
        draw.ellipse(
            (cx - half * px + 0.5, cy - half * px + 0.5, cx + half * px - 0.5, cy + half * px - 0.5),
            fill=round(255 * INK),
        )


def drawn(width_mm, swell_mm, size_mm=(70, 46)):
    """A page of eight strokes with the words that it is drawn."""
    px = DPI * FINER / 25.4
    page = Image.new("L", (round(size_mm[0] * px), round(size_mm[1] * px)), round(255 * PAPER))
    draw = ImageDraw.Draw(page)
    for row in range(8):
        stroke(draw, (6, 6 + 4.2 * row), 56, width_mm, swell_mm, 0.0 if row % 2 else 0.7)
    page = page.filter(ImageFilter.GaussianBlur(0.02 * px)).resize(
        (page.width // FINER, page.height // FINER), Image.Resampling.BOX
    )
    page = page.point([round(255 * code(light / 255)) for light in range(256)])
    words = ImageDraw.Draw(page)
    font = ImageFont.load_default(size=34)
    words.text(
        (6 * DPI / 25.4, 40.5 * DPI / 25.4),
        "Drawn, not scanned: an invented pen's strokes, 600 dots an inch",
        fill=SAYS,
        font=font,
    )
    return page


def main():
    for job, (name, width, swell) in SCANS.items():
        folder = ROOT / "sample_jobs" / job / "scans"
        folder.mkdir(exist_ok=True)
        said = PngImagePlugin.PngInfo()
        said.add(b"sRGB", b"\0")
        drawn(width, swell).save(folder / name, dpi=(DPI, DPI), optimize=True, pnginfo=said)


if __name__ == "__main__":
    main()
