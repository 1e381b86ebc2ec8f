"""Width along strokes: raw edges, which cuts are fit to be measured, and the blur taken out again."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from pentools.calc.nib.arrays import Flags, Floats, Ints, run_bounds, run_ids, running_mean
from pentools.calc.nib.edge_model import EdgeFit, Expected, fit_edges
from pentools.calc.nib.profiles import STEP, Cuts, edges_of

__all__ = ["Blurred", "Raw", "Usual", "deblurred", "raw_widths"]

_BAND_MM = 2.0  # the blur and the darkness of ink are fitted to stretches of this length
_KEPT_PX = 2.5
_INK_ALIKE = 0.15  # ink of a narrow stroke that differs more from that of broad ones is not held to it
_INK_SURE = 0.03
_BROAD_BLURS, _HIDING_BLURS = 6.0, 10.0
_HIDDEN = 1.6  # a narrow stroke of such ink reads so much further off than a broad one
# judged by drawn lines whose ink pales by 30 and 50 % inwards: what both leave open, in blurs
_PALING, _MISFIT = 5.0, 25.0
_CLEAN = 0.25  # ink beside a stroke, as a share of its own, above which something else lies there


@dataclass(frozen=True, slots=True)
class Raw:
    """Edges as they were read.

    Parameters
    ----------
    low, high : array
        Places of the edges [px from the middle].
    plateau : array
        How dark the ink is about there [1].
    blur : array
        A first estimate of the blur [px], one a point.
    found : array of bool
        Whether both edges are there.
    clean : array of bool
        Whether nothing else lies beside the stroke.
    """

    low: Floats
    high: Floats
    plateau: Floats
    blur: Floats
    found: Flags
    clean: Flags


@dataclass(frozen=True, slots=True)
class Blurred:
    """What the fits of a page's stretches give back to its points.

    Parameters
    ----------
    width : array
        Width with the blur taken out [px], one a point.
    blur : array
        Blur of the page at that point, the reading's own smoothing taken out [px].
    ink : array
        Ink at the edge [1].
    unlike : array
        What is unsure of the edge because its ink pales inwards or does not fit a blurred edge, in blurs [1].
    """

    width: Floats
    blur: Floats
    ink: Floats
    unlike: Floats


@dataclass(frozen=True, slots=True)
class Usual:
    """What the broad strokes of a page show, for those that are too narrow to show it themselves.

    Parameters
    ----------
    blur : float or None
        Blur [px]; None before any broad stroke was measured.
    ink : float or None
        Ink at the edge [1].
    unlike : float
        What is unsure of their edges, in blurs [1]: a narrow stroke of such ink hides it.
    """

    blur: float | None = None
    ink: float | None = None
    unlike: float = 0.0


def raw_widths(cuts: Cuts, half: Floats, bounds: Ints, reach: int) -> tuple[Raw, Cuts]:
    """Edges at half of the ink's darkness, cut by cut.

    Parameters
    ----------
    cuts : Cuts
        Ink across strokes, runs end to end.
    half : array
        Half of the width there, roughly [px].
    bounds : array of int
        Where each run begins, and where the last one ends [1].
    reach : int
        Neighbours to either side that a cut is averaged with [1], 0 or more.

    Returns
    -------
    raw : Raw
        Edges and what they rest on.
    smooth : Cuts
        The averaged cuts.
    """
    smooth = Cuts(running_mean(cuts.ink, bounds, reach).astype(np.float32, copy=False), cuts.first)
    ink = smooth.ink
    across = cuts.first + STEP * np.arange(ink.shape[1])
    inner = np.abs(across)[None, :] <= np.maximum(half, 1.0)[:, None]
    top = np.where(inner, ink, 0.0).max(axis=1)
    plateau = _plateau(top, bounds)
    low, high, found = edges_of(smooth, 0.5 * plateau)
    blur = _first_blur(smooth, low, high, plateau, found=found, bounds=bounds)
    beside = [
        _mean_between(smooth, *span)
        for span in (
            (low - 3.5 * blur - 1.5, low - 2.2 * blur - 0.5),
            (high + 2.2 * blur + 0.5, high + 3.5 * blur + 1.5),
        )
    ]
    clean = np.maximum(*beside) < _CLEAN * plateau
    return Raw(low, high, plateau, blur, found, clean), smooth


def _plateau(top: Floats, bounds: Ints) -> Floats:
    """Darkness of the ink about each point: the mean of what is inked there, else that of the whole run."""
    ids = run_ids(bounds)
    usual = np.array([np.median(top[a:b]) for a, b in pairwise(bounds)])[ids]
    inked = (top > 0.6 * usual).astype(float)
    share = running_mean(inked, bounds, 12)
    total = running_mean(np.where(inked > 0, top, 0.0), bounds, 12)
    return np.where(share > 0.3, total / np.maximum(share, 0.3), usual)


def _first_blur(cuts: Cuts, low: Floats, high: Floats, plateau: Floats, *, found: Flags, bounds: Ints) -> Floats:
    """Blur by how steep the edges are, one for a run."""
    steep = 0.5 * (_at(cuts, low + 0.5) - _at(cuts, low - 0.5) + _at(cuts, high - 0.5) - _at(cuts, high + 0.5))
    blur = plateau / (np.maximum(steep, 0.05 * plateau) * np.sqrt(2 * np.pi))
    usual = [float(np.median(blur[a:b][found[a:b]])) if found[a:b].any() else 1.2 for a, b in pairwise(bounds)]
    return np.clip(np.array(usual), 0.5, 8.0)[run_ids(bounds)]


def _at(cuts: Cuts, place: Floats) -> Floats:
    """Ink at places of each cut [px from the middle], by straight interpolation; place has one or more columns."""
    columns = place if place.ndim == 2 else place[:, None]
    wide = cuts.ink.shape[1]
    at = np.clip((columns - cuts.first) / STEP, 0.0, wide - 1.001)
    left = at.astype(np.int64)
    share = at - left
    left += wide * np.arange(len(left))[:, None]
    flat = cuts.ink.ravel()
    here = flat.take(left)
    found = here + (flat.take(left + 1) - here) * share
    return found if place.ndim == 2 else found[:, 0]


def _mean_between(cuts: Cuts, start: Floats, end: Floats) -> Floats:
    share = np.linspace(0.0, 1.0, 5)
    return _at(cuts, start[:, None] + share * (end - start)[:, None]).mean(axis=1)


def deblurred(
    cuts: Cuts, raw: Raw, good: Flags, bounds: Ints, *, um: tuple[float, Floats], threshold: float, usual: Usual
) -> tuple[Blurred, Usual]:
    """Widths with what blur and pale ink do to them taken out, stretch by stretch.

    Parameters
    ----------
    cuts : Cuts
        The averaged cuts.
    raw : Raw
        Their edges.
    good : array of bool
        Which cuts may be measured.
    bounds : array of int
        Where each run begins, and where the last one ends [1].
    um : (float, array)
        Size of a picture element [µm], and the way between points [px], one a run.
    threshold : float
        Share of the way from paper to ink at which the edge is taken [1], 0.2 to 0.8.
    usual : Usual
        What broader strokes of the page showed.

    Returns
    -------
    blurred : Blurred
        One a point; nan where a stretch has no good cut.
    usual : Usual
        What these showed, for narrower ones.
    """
    stretch = _stretches(bounds, um[1] * um[0])
    count = int(stretch[-1]) + 1 if len(stretch) else 0
    held = np.bincount(stretch[good], minlength=count)
    blur0 = _mean_by(raw.blur, stretch, good, count)
    widths = _mean_by(raw.high - raw.low, stretch, good, count)
    mean = float(np.nanmedian(blur0)) if held.any() else 1.0
    across = np.arange(-max(3.6 * mean, 3.5), max(5.0 * mean, 5.0), STEP)
    readings = _aligned(cuts, raw, good, stretch=stretch, across=across, widths=widths)
    some = held > 0
    fit, usual = _fitted(across, readings[some], widths[some], blur0[some], usual)
    shift = _shift(across, readings[some], fit, threshold)
    unlike = _unlike(fit)
    unlike = np.where(widths[some] > _HIDING_BLURS * fit.blur, unlike, np.maximum(unlike, _HIDDEN * usual.unlike))
    return _back(raw, stretch, some, fit, (shift, unlike)), usual


def _stretches(bounds: Ints, step_um: Floats) -> Ints:
    """The stretch of each point: runs cut into equal parts of about `_BAND_MM`."""
    lengths = np.diff(bounds)
    parts = np.maximum(1, np.round(lengths * step_um / (1000 * _BAND_MM))).astype(np.int64)
    first = run_bounds(parts)[:-1]
    ids = run_ids(bounds)
    within = np.arange(len(ids)) - bounds[:-1][ids]
    return first[ids] + np.minimum(within * parts[ids] // np.maximum(lengths[ids], 1), parts[ids] - 1)


def _mean_by(values: Floats, stretch: Ints, good: Flags, count: int) -> Floats:
    held = np.bincount(stretch[good], minlength=count)
    total = np.bincount(stretch[good], values[good], minlength=count)
    return np.where(held > 0, total / np.maximum(held, 1), np.nan)


def _aligned(cuts: Cuts, raw: Raw, good: Flags, *, stretch: Ints, across: Floats, widths: Floats) -> Floats:
    """Mean ink at places inwards of the raw edges, both edges of all good cuts of a stretch."""
    rows = np.nonzero(good)[0]
    some = Cuts(cuts.ink[rows], cuts.first)
    both = 0.5 * (_at(some, raw.low[rows, None] + across) + _at(some, raw.high[rows, None] - across))
    count = len(widths)
    held = np.maximum(np.bincount(stretch[rows], minlength=count), 1)
    order = np.argsort(stretch[rows], kind="stable")
    total = np.zeros((count, len(across)))
    np.add.at(total, stretch[rows][order], both[order])
    mean = total / held[:, None]
    # not beyond the middle, nor where a cut ends
    return np.where(across[None, :] <= np.maximum(0.5 * widths, 1.0)[:, None], mean, np.nan)


def _fitted(across: Floats, readings: Floats, widths: Floats, blur: Floats, usual: Usual) -> tuple[EdgeFit, Usual]:
    """Two fits: each stretch by itself, then narrow ones with the blur and the ink that broad ones show."""
    rows = len(readings)
    free = Expected(blur, np.full(rows, 0.5), np.full(rows, 0.5), np.full(rows, np.inf), _pale(across, readings, blur))
    first = fit_edges(across, readings, widths, free)
    broad = widths > _BROAD_BLURS * first.blur
    if broad.sum() >= 3:
        unlike = float(np.median(_unlike(first)[broad]))
        usual = Usual(float(np.median(first.blur[broad])), float(np.median(first.ink[broad])), unlike)
    if usual.blur is None or usual.ink is None:
        return first, usual
    alike = ~broad & (np.abs(first.ink / usual.ink - 1) < _INK_ALIKE)
    held = Expected(
        np.where(broad, first.blur, usual.blur),
        np.where(broad, 0.5, 0.05),
        np.full(rows, usual.ink),
        np.where(alike, _INK_SURE, np.inf),
        free.pale,
    )
    return fit_edges(across, readings, widths, held), usual


def _pale(across: Floats, readings: Floats, blur: Floats) -> Flags:
    """Where the ink's darkness plainly changes from near the edge to further in."""
    near = across[None, :] - np.maximum(2.2 * blur, 2.0)[:, None]
    there = np.isfinite(readings)
    filled = np.where(there, readings, 0.0)
    rim, inner = (near > 0) & (near <= 1.0) & there, (near > 1.5) & there
    means = [np.where(part, filled, 0.0).sum(axis=1) / np.maximum(part.sum(axis=1), 1) for part in (rim, inner)]
    return rim.any(axis=1) & inner.any(axis=1) & (np.abs(means[0] - means[1]) > 0.02 * np.maximum(means[0], 0.02))


def _shift(across: Floats, readings: Floats, fit: EdgeFit, threshold: float) -> Floats:
    """How far inside its raw place the edge lies at the threshold [px]."""
    # a curve that is drawn through few elements cuts their corners: what ink the fit leaves over near the edge is put back
    step = across[1] - across[0]
    near = np.abs(across[None, :] - fit.inward[:, None]) <= _KEPT_PX
    inward = fit.inward - np.where(near, fit.left, 0.0).sum(axis=1) * step / np.maximum(fit.ink, 0.02)
    if threshold == 0.5:
        return inward
    half, wanted = (_crossing(across, readings, fit.bare + level * fit.ink) for level in (0.5, threshold))
    own = _without_reading(fit.blur) / fit.blur
    return inward + (wanted - half) * own


def _crossing(across: Floats, readings: Floats, level: Floats) -> Floats:
    over = readings >= level[:, None]
    at = np.maximum(np.argmax(over, axis=1), 1)
    rows = np.arange(len(readings))
    low, high = readings[rows, at - 1], readings[rows, at]
    share = (level - low) / np.where(high > low, high - low, 1.0)
    return across[at - 1] + np.clip(share, 0.0, 1.0) * (across[at] - across[at - 1])


def _without_reading(blur: Floats) -> Floats:
    """The blur without what the straight interpolation (1/6 px²) and the smoothing of a cut (1/8 px²) add."""
    return np.sqrt(np.maximum(blur**2 - 1 / 6 - 1 / 8, 0.01))


def _unlike(fit: EdgeFit) -> Floats:
    """What an edge leaves open that is not like a blurred one, in blurs [1]."""
    return _PALING * fit.paling + _MISFIT * fit.residual / np.maximum(np.abs(fit.ink), 0.05)


def _back(raw: Raw, stretch: Ints, some: Flags, fit: EdgeFit, read: tuple[Floats, Floats]) -> Blurred:
    def spread(values: Floats) -> Floats:
        whole = np.full(len(some), np.nan)
        whole[some] = values
        return whole[stretch]

    shift, unlike = read
    width = raw.high - raw.low - 2.0 * spread(shift)
    return Blurred(width, spread(_without_reading(fit.blur)), spread(fit.ink), spread(unlike))
