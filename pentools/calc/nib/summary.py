"""What a page of strokes comes to: one width with its doubt, light and pressed strokes, the ratio, skips, and advice."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from pentools.calc.base.findings import Finding
from pentools.calc.nib.arrays import Floats
from pentools.calc.nib.strokes import Doubt, Stroke, weighted_percentiles

__all__ = ["Kind", "PageLines", "summed_up", "widths_read"]

_TWO_KINDS = 1.3  # pressed strokes are at least this much wider than light ones
_LEAST_SHARE = 0.08
_FINE_SHARE = 0.25


@dataclass(frozen=True, slots=True)
class Kind:
    """Strokes of one kind.

    Parameters
    ----------
    count : int
        How many [1].
    length_mm : float
        Measured length of all [mm].
    width_um, u_um : float
        Their middle width and its standard uncertainty [µm].
    """

    count: int
    length_mm: float
    width_um: float
    u_um: float


@dataclass(frozen=True, slots=True)
class PageLines:
    """A page of strokes.

    Parameters
    ----------
    strokes : tuple of Stroke
        Longest first.
    median_width_um, u_um : float
        Middle width of all that was measured, by length, and its standard uncertainty [µm].
    p5_um, p95_um : float
        Widths that 5 and 95 of 100 parts of the length stay under [µm].
    variation_ratio, ratio_floor : float
        p95 over p5 once the scatter of paper and picture is taken off, and what even lines would show with it [1].
    length_mm, measured_mm : float
        Ink from end to end, and the length that could be measured [mm].
    skips : int
        Empty gaps [1].
    skips_per_m : float or None
        The same to a metre of stroke; None under half a metre.
    blur_um : float
        Blur of the page, one standard deviation [µm].
    light, pressed : Kind or None
        Where strokes fall into two kinds; else None.
    doubt : Doubt
        Scale, threshold and what is known of the tones.
    findings : tuple of Finding
        What to doubt.
    """

    strokes: tuple[Stroke, ...]
    median_width_um: float
    u_um: float
    p5_um: float
    p95_um: float
    variation_ratio: float
    ratio_floor: float
    length_mm: float
    measured_mm: float
    skips: int
    skips_per_m: float | None
    blur_um: float
    light: Kind | None
    pressed: Kind | None
    doubt: Doubt
    findings: tuple[Finding, ...]


def summed_up(strokes: tuple[Stroke, ...], doubt: Doubt) -> PageLines:
    """A page from its strokes.

    Parameters
    ----------
    strokes : tuple of Stroke
        One or more.
    doubt : Doubt
        What the widths are unsure by.

    Returns
    -------
    PageLines
        With findings about the strokes themselves.
    """
    widths, weights = widths_read(strokes)
    p5, p50, p95 = weighted_percentiles(widths, weights, (0.05, 0.5, 0.95))
    own = weighted_percentiles(np.concatenate([stroke.own_widths_um for stroke in strokes]), weights, (0.05, 0.95))
    measured = np.array([stroke.measured_mm for stroke in strokes])
    blur, u, floor = (
        weighted_percentiles(np.array([getattr(s, name) for s in strokes]), measured, (0.5,))[0]
        for name in ("blur_um", "u_um", "ratio_floor")
    )
    length = float(sum(stroke.length_mm for stroke in strokes))
    skips = sum(len(stroke.skips) for stroke in strokes)
    light, pressed = _two_kinds(strokes)
    per_m = 1000 * skips / length if length >= 500 else None
    page = PageLines(
        strokes, p50, u, p5, p95, own[1] / own[0], floor, length, float(measured.sum()), skips, per_m, blur, light, pressed, doubt, (),
    )  # fmt: skip
    return _advised(page)


def widths_read(strokes: tuple[Stroke, ...]) -> tuple[Floats, Floats]:
    """Every width that was read [µm], and the length of line that each stands for [mm], both of shape (cuts,)."""
    widths = np.concatenate([stroke.track[:, 3] for stroke in strokes])
    return widths, np.concatenate([np.full(len(s.track), s.measured_mm / len(s.track)) for s in strokes])


def _two_kinds(strokes: tuple[Stroke, ...]) -> tuple[Kind | None, Kind | None]:
    """Light and pressed strokes: the cut that leaves each side most alike, where the two then lie apart."""
    order = sorted(strokes, key=lambda stroke: stroke.p50_um)
    widths = np.log([stroke.p50_um for stroke in order])
    weights = np.array([stroke.measured_mm for stroke in order])
    best, cut = np.inf, 0
    for at in range(1, len(order)):
        spread = sum(_squares(widths[part], weights[part]) for part in (slice(at), slice(at, None)))
        if spread < best:
            best, cut = spread, at
    if not cut:
        return None, None
    light, pressed = _kind(order[:cut]), _kind(order[cut:])
    share = min(light.length_mm, pressed.length_mm) / float(weights.sum())
    steps = np.diff(widths)
    apart = float(steps[cut - 1])
    alone = apart > 2 * max(np.delete(steps, cut - 1), default=0.0)  # a ladder of widths is no two kinds
    return (light, pressed) if share >= _LEAST_SHARE and apart > np.log(_TWO_KINDS) and alone else (None, None)


def _squares(values: Floats, weights: Floats) -> float:
    mean = float((values * weights).sum() / weights.sum())
    return float((weights * (values - mean) ** 2).sum())


def _kind(strokes: list[Stroke]) -> Kind:
    weights = np.array([stroke.measured_mm for stroke in strokes])
    width, u = (
        weighted_percentiles(np.array([getattr(s, n) for s in strokes]), weights, (0.5,))[0] for n in ("p50_um", "u_um")
    )
    return Kind(len(strokes), float(weights.sum()), width, u)


def _advised(page: PageLines) -> PageLines:
    found: list[Finding] = []
    fine = sum(stroke.measured_mm for stroke in page.strokes if stroke.too_fine)
    if fine > _FINE_SHARE * page.measured_mm:
        thin = [stroke for stroke in page.strokes if stroke.too_fine]
        widest = max(stroke.p50_um for stroke in thin)
        found.append(
            Finding("warning", "nib.too-fine", width=widest / 1000, blur=page.blur_um, px=page.doubt.um_per_px)
        )
    if page.skips:
        lengths = [skip.length_um / 1000 for stroke in page.strokes for skip in stroke.skips]
        found.append(Finding("note", "nib.skips", count=page.skips, longest=max(lengths)))
    pale = sum(stroke.pale_places for stroke in page.strokes)
    if pale:
        found.append(Finding("note", "nib.pale-places", count=pale))
    if page.variation_ratio <= page.ratio_floor:
        found.append(Finding("note", "nib.ratio-floor", ratio=page.variation_ratio, floor=page.ratio_floor))
    return replace(page, findings=tuple(found))
