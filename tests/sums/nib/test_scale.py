"""The scale of a scan: card, file, and where they differ."""

import numpy as np
import pytest
from drawn_bars import RULES, drawn
from drawn_lines import bar, codes, with_card

from pentools.errors import InputError
from pentools.sums.nib.scale import scaled
from pentools.sums.nib.scan_file import Scan

DPI = 300.0
PX_MM = DPI / 25.4


def scan(light, dpi=DPI, camera=False):
    return Scan(codes(light), "srgb", False, None if dpi is None else (dpi, dpi), camera, None, False)


@pytest.fixture(scope="module")
def page():
    return bar(with_card(4.0, px_mm=PX_MM), 100, 500, um=25400 / DPI)


def test_the_card_counts_before_the_file(page):
    found = scaled(scan(page), "auto")
    assert (found.kind, found.findings) == ("card", ())
    assert found.um_per_px == pytest.approx(25400 / DPI, rel=0.001)
    assert found.taken[round(60 * PX_MM), round(70 * PX_MM)]
    assert not found.taken[100, 100]


@pytest.mark.parametrize(("wanted", "kind", "um"), [("auto", "card", 25400 / 300), ("dpi", "dpi", 25400 / 400)])
def test_a_contradiction_is_said_whatever_is_wanted(page, wanted, kind, um):
    found = scaled(scan(page, 400.0), wanted)
    assert (found.kind, found.um_per_px) == (kind, pytest.approx(um, rel=0.001))
    assert [(f.level, f.topic) for f in found.findings] == [("warning", "scale-differs")]
    assert "33.3" in found.findings[0].text or "25" in found.findings[0].text


@pytest.mark.parametrize("dpi", [72.0, 96.0, None])
def test_no_scale_is_refused_and_a_card_helps(page, dpi):
    assert scaled(scan(page, dpi), "auto").kind == "card"
    with pytest.raises(InputError, match="A card lies on it"):
        scaled(scan(page, dpi), "dpi")
    with pytest.raises(InputError, match="Lay a bank card"):
        scaled(scan(np.full((400, 500), 0.8), dpi), "auto")


def test_why_no_card_was_found_is_said():
    sharp = with_card(4.0, px_mm=PX_MM, radius_mm=0.05)
    with pytest.raises(InputError, match="sharp corners"):
        scaled(scan(sharp), "card")
    assert scaled(scan(sharp), "auto").kind == "dpi"


def test_two_scales_in_one_tag_and_a_camera_are_no_scale():
    blank = np.full((400, 500), 0.8)
    odd = Scan(codes(blank), "srgb", False, (600.0, 300.0), False, None, False)
    with pytest.raises(InputError, match="600 dots an inch across and 300 down"):
        scaled(odd, "auto")
    with pytest.raises(InputError, match="camera"):
        scaled(scan(blank, camera=True), "dpi")


def test_a_ruler_gives_the_scale_where_it_is_asked_for_or_nothing_else_does():
    light = drawn(RULES["mm"])
    asked = scaled(scan(light), "bar")
    assert (asked.kind, asked.um_per_px) == ("ruler", pytest.approx(25400 / 300, rel=0.0005))
    assert scaled(scan(light, None), "auto").kind == "ruler"
    assert scaled(scan(light), "auto").kind == "dpi"
    # its strokes are no pen's; the two strokes under it stay
    assert asked.taken[round(8 * PX_MM), round(40 * PX_MM)]
    assert not asked.taken[round(30 * PX_MM) :].any()
    assert scaled(scan(light), "bar", 59.4).um_per_px == pytest.approx(0.99 * 25400 / 300, rel=0.0005)


def test_a_bar_that_contradicts_the_file_or_a_card_is_said(page):
    light = drawn(RULES["mm"])
    assert [f.key for f in scaled(scan(light, 310.0), "bar").findings if f.level == "warning"] == [
        "nib.bar-differs:file"
    ]
    both = np.full((page.shape[0] + light.shape[0], max(page.shape[1], light.shape[1])), 0.8)
    both[: page.shape[0], : page.shape[1]] = page
    both[page.shape[0] :, : light.shape[1]] = light
    found = scaled(scan(both, None), "bar", 63.0)
    assert [f.key for f in found.findings if f.level == "warning"] == ["nib.bar-differs:card"]
    assert found.taken[round(60 * PX_MM), round(70 * PX_MM)]


def test_no_bar_is_refused_with_the_reason(page):
    with pytest.raises(InputError, match="Print the kit's sheet"):
        scaled(scan(page), "bar")
    with pytest.raises(InputError, match="of an inch"):
        scaled(scan(drawn(RULES["inch"])), "bar")
    with pytest.raises(InputError, match="Use a card"):
        scaled(scan(drawn(RULES["mm"]), camera=True), "bar")
