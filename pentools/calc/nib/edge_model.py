"""What stands behind an edge that a scanner has blurred: where it is, how blurred, and how dark the ink beside it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Flags, Floats

__all__ = ["EdgeFit", "Expected", "fit_edges", "normal_share"]

_ROUNDS = 12
_STILL = 1e-6  # a fit that moves less than this has ended [1, px]
_READ = 0.01  # how far a mean reading may be off [1]
_SLOPE_PRIOR = 0.06  # how much of its darkness ink is thought to lose over one blur [1]


@dataclass(frozen=True, slots=True)
class EdgeFit:
    """Fitted edges, one a row of readings.

    Parameters
    ----------
    inward : array
        How far inside the provisional edge the edge lies [px].
    blur : array
        One standard deviation of the blur [px].
    ink, bare : array
        Ink at the edge, and what is missing of the paper's light beside it [1].
    paling : array
        Share of its darkness that the ink loses, or gains, over one blur inwards [1].
    residual : array
        Scatter of the readings about the fit [1].
    left : array
        What each reading has over the fit [1]; 0 where there is none.
    """

    inward: Floats
    blur: Floats
    ink: Floats
    bare: Floats
    paling: Floats
    residual: Floats
    left: Floats


@dataclass(frozen=True, slots=True)
class Expected:
    """What is known of edges before they are fitted, one a row.

    Parameters
    ----------
    blur : array
        The blur [px], above 0.
    blur_sure : array
        One standard deviation of it as a share of it [1], above 0.
    ink : array
        Ink at the edge [1].
    ink_sure : array
        One standard deviation of it as a share of it [1], above 0; infinite where nothing is known.
    pale : array of bool
        Where ink may grow paler or darker inwards.
    """

    blur: Floats
    blur_sure: Floats
    ink: Floats
    ink_sure: Floats
    pale: Flags


def normal_share(z: Floats) -> Floats:
    """The share of a normal distribution below z standard deviations [1].

    Notes
    -----
    The error function by a rational approximation good to 1.5e-7 (Abramowitz and Stegun, Handbook of Mathematical
    Functions, 7.1.26).

    Examples
    --------
    >>> normal_share(np.array([0.0, 1.0])).round(6).tolist()
    [0.5, 0.841345]
    """
    x = np.abs(z) / np.sqrt(2.0)
    t = 1.0 / (1.0 + 0.3275911 * x)
    poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
    erf = 1.0 - poly * np.exp(-x * x)
    return 0.5 * (1.0 + np.sign(z) * erf)


def _density(z: Floats) -> Floats:
    return np.exp(-0.5 * z * z) / np.sqrt(2.0 * np.pi)


def fit_edges(across: Floats, readings: Floats, widths: Floats, expected: Expected) -> EdgeFit:
    """Fit a blurred edge to readings across it, the far edge of the stroke taken along.

    Parameters
    ----------
    across : array
        Places of the readings [px], inwards from the provisional edge.
    readings : array
        Missing light [1], one row an edge; nan where there is none.
    widths : array
        Distance of the provisional edges of the stroke [px], one a row, above 0.
    expected : Expected
        What holds the fit where the readings say little.

    Returns
    -------
    EdgeFit
        One a row.

    Notes
    -----
    Model: bare + ink (P(u) - P(v)) + slope s (u P(u) + p(u)), u = (x - e)/s, v = (x - w + e)/s; least squares by
    Gauss-Newton, the slope and the blur held by what is usual. Good for widths of 2.5 blurs and more.
    """
    there = np.isfinite(readings)
    data = np.where(there, readings, 0.0)
    top = np.maximum(np.where(there, readings, 0.0).max(axis=1, initial=0.0), 0.05)
    zero = np.zeros(len(data))
    now = np.stack([zero, top, zero, zero, expected.blur], axis=1)
    held_at = np.stack([zero, expected.ink, zero, zero, expected.blur], axis=1)
    prior = _held(expected, top)
    for _ in range(_ROUNDS):
        model, steep = _model(now, across, widths)
        steep = np.where(there[:, :, None], steep, 0.0)
        off = np.where(there, data - model, 0.0)
        turned = steep.transpose(0, 2, 1)
        right = (turned @ off[:, :, None])[:, :, 0] + prior * (held_at - now)
        left = turned @ steep + (prior + 1e-9)[:, :, None] * np.eye(5)
        before = now.copy()
        now = _kept_in(now + _small(np.linalg.solve(left, right[:, :, None])[:, :, 0], now), widths)
        if np.abs(now - before).max(initial=0.0) < _STILL:
            break
    model, _ = _model(now, across, widths)
    count = np.maximum(there.sum(axis=1), 1)
    left = np.where(there, data - model, 0.0)
    paling = np.abs(now[:, 2]) * now[:, 4] / np.maximum(np.abs(now[:, 1]), 0.02)
    return EdgeFit(now[:, 3], now[:, 4], now[:, 1], now[:, 0], paling, np.sqrt((left**2).sum(axis=1) / count), left)


def _held(expected: Expected, top: Floats) -> Floats:
    """How firmly each number is held, against readings that scatter by about a hundredth."""
    zero = np.zeros_like(top)
    # a slope of b darkness a pixel loses b * blur over one blur
    slope = np.where(expected.pale, (_READ * expected.blur / (_SLOPE_PRIOR * top)) ** 2, 1e6)
    blur = (2 * _READ * top / (expected.blur_sure * expected.blur)) ** 2
    ink = (_READ / (expected.ink_sure * np.maximum(expected.ink, 0.05))) ** 2
    return np.stack([zero, ink, slope, zero, blur], axis=1)


def _small(move: Floats, now: Floats) -> Floats:
    """A step that does not leap."""
    limit = np.stack([np.full(len(now), 9.0)] * 3 + [np.full(len(now), 0.7), 0.3 * now[:, 4]], axis=1)
    return np.clip(move, -limit, limit)


def _kept_in(now: Floats, widths: Floats) -> Floats:
    now[:, 3] = np.clip(now[:, 3], -3.0, np.minimum(3.0, 0.4 * widths))
    now[:, 4] = np.clip(now[:, 4], 0.25, 12.0)
    return now


def _model(now: Floats, across: Floats, widths: Floats) -> tuple[Floats, Floats]:
    """The model at each place, and how it changes with bare, ink, slope, edge and blur."""
    bare, ink, slope, edge, blur = (now[:, i : i + 1] for i in range(5))
    u = (across[None, :] - edge) / blur
    v = (across[None, :] - widths[:, None] + edge) / blur
    pu, pv, du, dv = normal_share(u), normal_share(v), _density(u), _density(v)
    ramp = blur * (u * pu + du)
    model = bare + ink * (pu - pv) + slope * ramp
    by_edge = -ink * (du + dv) / blur - slope * pu
    by_blur = -ink * (u * du - v * dv) / blur + slope * du
    return model, np.stack([np.ones_like(pu), pu - pv, ramp, by_edge, by_blur], axis=2)
