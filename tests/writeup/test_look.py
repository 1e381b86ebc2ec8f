"""The style sheet: colours that can be read, and nothing that is fetched or run."""

import re
from importlib import resources

import pytest
from contrast import contrast

STYLE = resources.files("pentools.writeup").joinpath("style.css").read_text(encoding="utf-8")
COLOURS = dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", STYLE))


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
