"""The scale of a scan: by a card that lies on it, by its file, and what to say where the two differ."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from pentools.calc.base.findings import Finding
from pentools.calc.nib.arrays import Bytes, Flags, Floats
from pentools.calc.nib.bar import Bar, find_bars
from pentools.calc.nib.card import THICK_MM, Card, Search, find_cards, true_corners
from pentools.calc.nib.paper import coarse_factor
from pentools.calc.nib.plane import upright
from pentools.calc.nib.tone import light_of
from pentools.errors import InputError
from pentools.numbers import plain
from pentools.sums.nib.scan_file import Scan

__all__ = ["NO_BAR", "Scaled", "grey_of", "scaled", "tag_um"]

_SCREEN_DPI = 100.0  # no scanner works below this; 72 and 96 are what programs write when they do not know
_COARSE_DPI = 250.0
_TAG_SHARE = 0.003  # judged: a flatbed's own scale; halves of one scan differed by 1.2 % in a published trial
_AGREE = 0.012  # card and file may differ by so much before it is said
_BESIDE_MM = 3.0  # about a card its shadow lies
NO_BAR: Mapping[str, str] = {
    "uneven": "The marks in a row here are not as even as a bar's or a ruler's.",
    "aslant": "Its marks grow closer from one end to the other: lay it flat, whole on the glass, and scan it.",
    "unit": "There are even marks, but not what they stand for: measure them from first to last and say so with --bar-length.",
    "inch": "The marks there are of an inch: use the other edge, or say from first to last with --bar-length.",
    "": "Print the kit's sheet at 100 %, or lay a ruler in millimetres on the page, flat and whole on the picture.",
}
"""Why no bar and no ruler was found, by what `find_bars` says."""
_ADVICE = "Lay a bank card beside the strokes and scan again, or scan with the resolution written into the file."
_NEARLY = {
    "corners": "Something of its shape has sharp corners: a card's are round.",
    "shape": "What has four sides here is not of a card's shape (85.60 to 53.98).",
    "sides": "Something like it has no four straight sides.",
    "": "Lay it flat, whole on the picture, on a ground of another brightness.",
}


@dataclass(frozen=True, slots=True)
class Scaled:
    """A page with its scale.

    Parameters
    ----------
    light : array of uint16
        Linear brightness; turned to straight above where it was seen aslant.
    um_per_px : float
        Size of an element [µm].
    share : float
        Standard uncertainty of that [1].
    kind : {"card", "dpi", "bar", "ruler"}
        What it rests on.
    taken : array of bool or None
        Where a card or a ruler lies or nothing is seen, coarse page.
    card : Card or None
        The card, where one was found.
    bar : Bar or None
        The bar or ruler, where the scale was taken from one.
    findings : tuple of Finding
        What to say of it.
    """

    light: Floats
    um_per_px: float
    share: float
    kind: str
    taken: Flags | None
    card: Card | None
    bar: Bar | None
    findings: tuple[Finding, ...]


def scaled(scan: Scan, wanted: str, bar_mm: float | None = None) -> Scaled:
    """The scale of a scan.

    Parameters
    ----------
    wanted : {"auto", "card", "dpi", "bar"}
        Where it shall be taken from; by itself it is a card, else the file, else a bar or a ruler.
    bar_mm : float or None
        What somebody measured on the bar, from its first to its last mark [mm].

    Returns
    -------
    Scaled
        A card is looked for whatever is wanted, and one that contradicts the file or the bar is said.

    Raises
    ------
    InputError
        If what is wanted is not there, or two cards contradict each other.
    """
    light = light_of(scan.codes, scan.tone)
    search = find_cards(grey_of(scan), light, scan.focal_share, camera=scan.camera)
    tag = tag_um(scan)
    card = _chosen(search, tag)
    if wanted == "bar" or (wanted == "auto" and card is None and tag is None and not scan.camera):
        bar = _bar(scan, light, bar_mm, tag)
        if isinstance(bar, Bar):
            return _by_bar(light, bar, card, tag)
        if wanted == "bar":
            raise InputError("scale", "a bar or a ruler that is found", "none", NO_BAR[bar])
    if wanted == "card" and card is None:
        raise InputError("scale", "a card that is found", "none", _NEARLY[search.nearly])
    if tag is None and (card is None or wanted == "dpi"):
        raise _no_tag(scan, card, search.nearly)
    found = _differ(card, tag)
    if card is not None and wanted != "dpi":
        return _by_card(light, card, found)
    assert tag is not None
    taken = None if card is None else _covered(light.shape, card.corners, tag)
    return Scaled(light, tag, _TAG_SHARE, "dpi", taken, card, None, (*found, *_about_grain(tag)))


def _bar(scan: Scan, light: Floats, bar_mm: float | None, tag: float | None) -> Bar | str:
    """The longest bar or ruler, or why there is none."""
    if scan.camera:
        raise InputError(
            "scale", "a bar or a ruler on a scan", "a camera's picture, which it cannot turn straight", "Use a card."
        )
    search = find_bars(grey_of(scan), light, bar_mm, tag)
    if not search.bars:
        return search.nearly
    sizes = [bar.um_per_px for bar in search.bars]
    apart = max(sizes) / min(sizes) - 1
    if apart > _AGREE:
        count = f"{len(sizes)} that differ by {plain(100 * apart, 2)} %"
        raise InputError("scale", "by one bar or ruler", count, "Leave one on the page.")
    return search.bars[0]


def _by_bar(light: Floats, bar: Bar, card: Card | None, tag: float | None) -> Scaled:
    """By a bar; a file or a card that says otherwise is told."""
    um = bar.um_per_px
    taken = _filled(light.shape, bar.corners, coarse_factor(um))
    found = list(_about_grain(um))
    if card is not None:
        taken |= _covered(light.shape, card.corners, um)
    for other, key in ((None if card is None else card.um_per_px, "card"), (tag, "file")):
        if other is not None and abs(um / other - 1) > max(_AGREE, 3 * bar.u_share):
            values = {"bar": 25400 / um, "other": 25400 / other, "share": abs(um / other - 1)}
            found.append(Finding("warning", f"nib.bar-differs:{key}", **values))
    found.append(Finding("note", f"nib.by-bar:{bar.kind}", long=bar.long_mm, marks=bar.marks, share=2 * bar.u_share))
    return Scaled(light, um, bar.u_share, bar.kind, taken, card, bar, tuple(found))


def grey_of(scan: Scan) -> Bytes:
    """Codes of one brightness, of 8 bits."""
    codes: Bytes = (
        scan.codes.astype(np.uint8, copy=False)
        if scan.codes.dtype == np.uint8
        else (scan.codes // 257).astype(np.uint8)
    )
    if codes.ndim == 2:
        return codes
    import cv2

    found: Bytes = cv2.cvtColor(codes, cv2.COLOR_RGB2GRAY)
    return found


def tag_um(scan: Scan) -> float | None:
    """Size of an element by the file [µm]; None where it says nothing that can be meant."""
    if scan.dpi is None or scan.camera or min(scan.dpi) < _SCREEN_DPI or max(scan.dpi) > 9600:
        return None
    across, down = scan.dpi
    return None if abs(across / down - 1) > 0.005 else 25400 / across


def _no_tag(scan: Scan, card: Card | None, nearly: str) -> InputError:
    advice = "A card lies on it: take the scale from that." if card is not None else _ADVICE
    if card is None and nearly:
        advice = f"{_NEARLY[nearly]} {advice}"
    if scan.dpi is None:
        return InputError("scale", "known", "a file that names no resolution", advice)
    across, down = scan.dpi
    if scan.camera:
        return InputError("scale", "known", "a camera's picture, whose dots an inch mean nothing", advice)
    if abs(across / down - 1) > 0.005:
        return InputError(
            "scale", "one for both ways", f"{plain(across)} dots an inch across and {plain(down)} down", advice
        )
    return InputError("scale", "known", f"{plain(across)} dots an inch, which is no scanner's", advice)


def _chosen(search: Search, tag: float | None) -> Card | None:
    cards = search.cards
    if tag is not None:
        near = [card for card in cards if abs(card.um_per_px / tag - 1) < 0.03]
        cards = tuple(near) or cards
    if len(cards) > 1:
        apart = max(c.um_per_px for c in cards) / min(c.um_per_px for c in cards) - 1
        if apart > _AGREE:
            raise InputError(
                "scale",
                "by one card",
                f"{len(cards)} that differ by {plain(100 * apart, 2)} %",
                "Leave one on the page.",
            )
    return cards[0] if cards else None


def _differ(card: Card | None, tag: float | None) -> tuple[Finding, ...]:
    if card is None or tag is None:
        return ()
    apart = card.um_per_px / tag - 1
    if abs(apart) <= max(_AGREE, 4 * card.u_share):
        return ()
    return (Finding("warning", "nib.scale-differs", card=25400 / card.um_per_px, dpi=25400 / tag, share=abs(apart)),)


def _by_card(light: Floats, card: Card, found: tuple[Finding, ...]) -> Scaled:
    if not card.aslant:
        taken = _covered(light.shape, card.corners, card.um_per_px)
        found = (*found, *_about_grain(card.um_per_px))
        return Scaled(light, card.um_per_px, card.u_share, "card", taken, card, None, found)
    assert card.height_mm is not None
    thick = THICK_MM / card.height_mm
    flat = upright(light, (true_corners(), card.corners), card.um_per_px / (1 + thick), thick, 0.3)
    taken = _covered(flat.light.shape, flat.corners, flat.um_per_px)
    factor = coarse_factor(flat.um_per_px)
    off_paper, lit = _off_paper(flat.light, taken, flat.um_per_px * factor, factor)
    taken |= _coarse(flat.outside, factor) | off_paper
    share = float(np.hypot(card.u_share, flat.u_share))
    told = Finding("note", "nib.aslant", tilt=card.tilt_deg, share=2 * share)
    found = (*found, *_about_grain(flat.um_per_px), told)
    return Scaled(lit, flat.um_per_px, share, "card", taken, card, None, found)


def _about_grain(um_per_px: float) -> tuple[Finding, ...]:
    dpi = 25400 / um_per_px
    return (Finding("warning", "nib.coarse", dpi=dpi),) if dpi < _COARSE_DPI else ()


def _covered(shape: tuple[int, ...], corners: Floats, um_per_px: float) -> Flags:
    """Where a card and its shadow lie, on the coarse page."""
    import cv2

    factor = coarse_factor(um_per_px)
    mask = _filled(shape, corners, factor).astype(np.uint8)
    reach = 2 * max(1, round(1000 * _BESIDE_MM / um_per_px / factor)) + 1
    covered: Flags = cv2.dilate(mask, np.ones((reach, reach), np.uint8)) > 0
    return covered


def _filled(shape: tuple[int, ...], corners: Floats, factor: int) -> Flags:
    """Inside some corners, on the coarse page."""
    import cv2

    mask = np.zeros((shape[0] // factor, shape[1] // factor), np.uint8)
    cv2.fillPoly(mask, [np.round(corners / factor).astype(np.int32)], 1)
    return mask > 0


def _coarse(flags: Flags, factor: int) -> Flags:
    import cv2

    rows, columns = flags.shape[0] // factor, flags.shape[1] // factor
    small = cv2.resize(flags.astype(np.uint8), (columns, rows), interpolation=cv2.INTER_NEAREST)
    rim: Flags = cv2.dilate(small, np.ones((25, 25), np.uint8)) > 0
    return rim


def _off_paper(light: Floats, card: Flags, um_per_px: float, factor: int) -> tuple[Flags, Floats]:
    """What does not belong to the sheet that the card lies on, on the coarse page; and the page with that made as bright as paper."""
    import cv2

    small = cv2.resize(
        light[: card.shape[0] * factor, : card.shape[1] * factor], card.shape[::-1], interpolation=cv2.INTER_AREA
    )
    mm = 1000 / um_per_px
    ring = (cv2.dilate(card.astype(np.uint8), _square(4 * mm)) > 0) & ~card
    bright = float(np.percentile(small[ring], 70))
    sheet = cv2.morphologyEx((small > 0.55 * bright).astype(np.uint8), cv2.MORPH_CLOSE, _square(6 * mm))
    labels = cv2.connectedComponents(sheet | card.astype(np.uint8), connectivity=4)[1]
    own = np.bincount(labels[ring], minlength=2)
    own[0] = 0
    off = cv2.dilate((labels != int(np.argmax(own))).astype(np.uint8), _square(4 * mm))
    lit = light.copy()
    whole = cv2.resize(off, light.shape[::-1], interpolation=cv2.INTER_NEAREST) > 0
    lit[whole] = round(bright)
    found: Flags = off > 0
    return found, lit


def _square(size: float) -> Bytes:
    return np.ones((2 * max(1, round(size / 2)) + 1,) * 2, np.uint8)
