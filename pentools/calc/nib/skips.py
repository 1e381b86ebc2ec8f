"""Along a stroke: where its ink begins and ends, and where the pen left the paper empty between."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Floats, Ints, run_bounds, runs_of
from pentools.calc.nib.edge_model import normal_share
from pentools.calc.nib.profiles import Lines
from pentools.calc.nib.sampling import read_at

__all__ = ["Core", "Gap", "core_along", "gaps_in", "inked_span"]

_FINE = 0.5  # way between two readings along a stroke [px]
_ACROSS = (-0.6, -0.3, 0.0, 0.3, 0.6)  # of the half width
_EMPTY = 0.18  # ink that an empty gap may still show once its blur is reckoned, as a share of the stroke's own


@dataclass(frozen=True, slots=True)
class Core:
    """Ink along the middle of strokes.

    Parameters
    ----------
    along : array
        Way from a stroke's first point [px].
    ink : array
        Missing light, mean over the inner part of the stroke's width [1].
    bounds : array of int
        Where each stroke begins, and where the last one ends [1].
    """

    along: Floats
    ink: Floats
    bounds: Ints


@dataclass(frozen=True, slots=True)
class Gap:
    """A stretch without ink.

    Parameters
    ----------
    start, end : float
        Where the ink falls under half of its darkness [px along the stroke].
    length : float
        Ink that is missing, as a length [px].
    empty : bool
        Whether nothing is left there but blur.
    """

    start: float
    end: float
    length: float
    empty: bool


def core_along(light: Floats, level: Floats, lines: Lines) -> Core:
    """Read the page along the middle of strokes.

    Parameters
    ----------
    light : array
        Linear brightness of the page, 0 to `tone.FULL`.
    level : array
        Brightness of bare paper at each point of the strokes, in the same count.
    lines : Lines
        The strokes.

    Returns
    -------
    Core
        Readings half an element apart.
    """
    counts = np.maximum(2, np.round(np.diff(lines.bounds) * lines.step / _FINE)).astype(np.int64)
    bounds = run_bounds(counts)
    firsts, lasts = lines.bounds[:-1], lines.bounds[1:] - 1
    at = (
        np.concatenate([np.linspace(a, b, n) for a, b, n in zip(firsts, lasts, counts, strict=True)])
        if len(counts)
        else np.zeros(0)
    )
    along = (
        np.concatenate(
            [np.linspace(0.0, (b - a) * s, n) for a, b, n, s in zip(firsts, lasts, counts, lines.step, strict=True)]
        )
        if len(counts)
        else np.zeros(0)
    )
    own = np.arange(len(lines.half))
    x, y = (np.interp(at, own, lines.points[:, i]) for i in (0, 1))
    nx, ny = (np.interp(at, own, lines.normals[:, i]) for i in (0, 1))
    half, paper = np.interp(at, own, lines.half), np.interp(at, own, level)
    ink = np.zeros(len(at))
    for share in _ACROSS:
        off = share * np.maximum(half - 1.0, 0.0)
        ink += 1.0 - read_at(light, x + off * nx, y + off * ny).astype(np.float64) / paper
    return Core(along, ink / len(_ACROSS), bounds)


def inked_span(along: Floats, share: Floats) -> tuple[float, float] | None:
    """Where ink begins and ends.

    Parameters
    ----------
    along : array
        Way [px], rising.
    share : array
        Ink as a share of the stroke's own darkness [1].

    Returns
    -------
    (float, float) or None
        Beginning and end [px]; None where there is no ink.
    """
    inked = np.nonzero(share > 0.5)[0]
    if not len(inked):
        return None
    first, last = int(inked[0]), int(inked[-1])
    start = along[first] if first == 0 else _between(along, share, first - 1)
    end = along[last] if last == len(along) - 1 else _between(along, share, last)
    return float(start), float(end)


def gaps_in(along: Floats, share: Floats, span: tuple[float, float], blur_px: float) -> tuple[Gap, ...]:
    """Stretches between beginning and end where ink is missing.

    Parameters
    ----------
    along : array
        Way [px], rising.
    share : array
        Ink as a share of the stroke's own darkness [1].
    span : (float, float)
        Beginning and end of the ink [px].
    blur_px : float
        One standard deviation of the blur [px], above 0.

    Returns
    -------
    tuple of Gap
        In their order along the stroke.

    Notes
    -----
    The length is the missing ink, which a symmetric blur leaves as it is. An empty gap of length g is still grey in
    its middle by 1 - (2 P(g / 2 s) - 1); more ink than that and 0.18 is a pale place, no gap.
    """
    inside = (along >= span[0]) & (along <= span[1])
    return tuple(_gap(along, share, first, after, blur_px) for first, after in runs_of(inside & (share < 0.5)))


def _gap(along: Floats, share: Floats, first: int, after: int, blur_px: float) -> Gap:
    start = _between(along, share, max(first - 1, 0))
    end = _between(along, share, min(after - 1, len(along) - 2))
    reach = 3.0 * blur_px + 1.0
    window = (along >= start - reach) & (along <= end + reach)
    step = float(along[1] - along[0])
    missing = float(np.sum(1.0 - np.minimum(share[window], 1.0)) * step)
    # ink beside the gap is not quite even: what is missing there on both sides is no gap
    near = ((along >= start - reach - 8) & (along < start - reach)) | (
        (along > end + reach) & (along <= end + reach + 8)
    )
    pale = float(np.mean(1.0 - np.minimum(share[near], 1.0))) if near.any() else 0.0
    length = max(missing - min(pale, 0.3) * 2 * reach, 0.5 * (end - start))
    grey = 2.0 - 2.0 * float(normal_share(np.array([length / (2 * blur_px)]))[0])
    return Gap(start, end, length, float(share[first:after].min()) <= grey + _EMPTY)


def _between(along: Floats, share: Floats, at: int) -> float:
    """Where half is passed between one reading and the next."""
    low, high = share[at], share[at + 1]
    part = (0.5 - low) / (high - low) if high != low else 0.5
    return float(along[at] + min(max(part, 0.0), 1.0) * (along[at + 1] - along[at]))
