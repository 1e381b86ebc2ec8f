"""The style sheet: colours that can be read, and nothing that is fetched or run."""

import re
from importlib import resources

import pytest

STYLE = resources.files("pentools.writeup").joinpath("style.css").read_text(encoding="utf-8")
COLOURS = dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", STYLE))


def luminance(colour):
    """Relative luminance as WCAG 2.2 defines it."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_measure_itself():
    # WCAG 2.2, definition of contrast ratio: black on white is 21:1
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") < 4.5


@pytest.mark.parametrize("ground", ["paper", "tint"])
@pytest.mark.parametrize("colour", ["text", "ink", "brass", "jade", "oxblood", "slate"])
def test_every_text_colour_can_be_read_on_every_ground(colour, ground):
    # WCAG 2.2, success criterion 1.4.3, level AA for text of ordinary size: 4.5:1
    assert contrast(COLOURS[colour], COLOURS[ground]) >= 4.5


def test_the_style_sheet_fetches_nothing():
    assert "url(" not in STYLE
    assert "@import" not in STYLE
    assert "</" not in STYLE
