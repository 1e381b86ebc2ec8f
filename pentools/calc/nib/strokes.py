"""A stroke as it was measured: its width with its doubt, how it swells, and where it skipped."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from pentools.calc.nib.arrays import Floats

__all__ = ["Doubt", "Skip", "Stroke", "stroke_of", "weighted_percentiles"]

_REPEAT_UM = 2.0  # judged: two readings of one even line on one scan agree to this
_PER_PX = 0.04  # judged: and to this share of a picture element
_THRESHOLD_SHARE = 0.02  # judged: how sure the darkness of ink and paper beside an edge are
_GRAIN_UM = 400.0  # judged: at this distance the grain of most papers is no longer alike
_FINE_BLURS = 5.0
_FINE_PX = 2.2


@dataclass(frozen=True, slots=True)
class Skip:
    """A place where the pen ran on without ink.

    Parameters
    ----------
    length_um : float
        Its length along the stroke [µm].
    at_mm : float
        Where it begins, from the stroke's own beginning [mm].
    x_px, y_px : float
        Its middle on the page [px].
    """

    length_um: float
    at_mm: float
    x_px: float
    y_px: float


@dataclass(frozen=True, slots=True)
class Stroke:
    """One stroke.

    Parameters
    ----------
    width_um : float
        Width square to the stroke, the middle one of all its cuts [µm].
    u_um : float
        Its standard uncertainty [µm].
    p5_um, p50_um, p95_um : float
        Widths that 5, 50 and 95 of 100 cuts stay under [µm].
    length_mm : float
        Ink from end to end along the middle, gaps counted with it [mm].
    measured_mm : float
        Length over which the width could be read [mm].
    ratio, ratio_floor : float
        p95 over p5 once the scatter of paper and picture is taken off, and what an even line of this scatter would show
        with it [1].
    own_share : float
        How much of the spread of its widths is the pen's own [1], 0 to 1; the rest is that scatter.
    blur_um : float
        Blur of the picture at its edges, one standard deviation [µm].
    ink : float
        Share of the paper's light that its edges take away [1], 0 to 1.
    skips : tuple of Skip
        Empty gaps, in their order.
    pale_places : int
        Gaps that are not quite empty [1].
    too_fine : bool
        Whether it is narrower than this picture resolves.
    closed : bool
        Whether it runs back into itself.
    track : array
        Column, row [px], way [mm] and width [µm] of every cut that was measured; shape (n, 4).
    """

    width_um: float
    u_um: float
    p5_um: float
    p50_um: float
    p95_um: float
    length_mm: float
    measured_mm: float
    ratio: float
    ratio_floor: float
    own_share: float
    blur_um: float
    ink: float
    skips: tuple[Skip, ...]
    pale_places: int
    too_fine: bool
    closed: bool
    track: Floats = field(compare=False, repr=False)

    @property
    def own_widths_um(self) -> Floats:
        """Its widths with the scatter of paper and picture taken off [µm], shape (n,)."""
        return self.p50_um + self.own_share * (self.track[:, 3] - self.p50_um)


@dataclass(frozen=True, slots=True)
class Doubt:
    """What a page's widths are unsure by, its blur apart.

    Parameters
    ----------
    scale_share : float
        Standard uncertainty of the scale [1], 0 or more.
    um_per_px : float
        Size of a picture element [µm], above 0.
    tone_blurs : float
        Standard uncertainty by the tone curve, in blurs [1]: 0 where the curve is known.
    threshold : float
        Share of the way from paper to ink where edges are taken [1].
    """

    scale_share: float
    um_per_px: float
    tone_blurs: float = 0.0
    threshold: float = 0.5

    def of_width(self, width_um: float, blur_um: float, scatter_um: float, unlike: float = 0.0) -> float:
        """Standard uncertainty of a width [µm].

        Parameters
        ----------
        width_um : float
            The width [µm], above 0.
        blur_um : float
            Blur, one standard deviation [µm], 0 or more.
        scatter_um : float
            Standard uncertainty of the mean of its cuts [µm], 0 or more.
        unlike : float
            What is unsure because its ink pales inwards or fits no blurred edge, in blurs [1], 0 or more.

        Notes
        -----
        Scale, threshold (0.051 blurs for every per cent of the way from paper to ink), tone curve and repeatability,
        and what an edge leaves open that is not like a blurred one, added in squares. Of a line under 5 blurs a further share of what the blur was reckoned to add.
        """
        parts = [
            width_um * self.scale_share,
            5.1 * _THRESHOLD_SHARE * blur_um,
            self.tone_blurs * blur_um,
            _REPEAT_UM,
            _PER_PX * self.um_per_px,
            scatter_um,
            unlike * blur_um,
        ]
        if width_um < _FINE_BLURS * blur_um:
            parts.append(0.5 * blur_um * math.exp(-0.5 * (width_um / (2 * max(blur_um, 1e-9))) ** 2) + 2.0)
        return math.hypot(*parts)


def weighted_percentiles(values: Floats, weights: Floats, shares: tuple[float, ...]) -> tuple[float, ...]:
    """Values that given shares of the whole weight stay under.

    Parameters
    ----------
    values : array
        One or more values, in any unit.
    weights : array
        Their weights [1], above 0.
    shares : tuple of float
        Shares [1], 0 to 1.

    Returns
    -------
    tuple of float
        In the unit of the values.

    Examples
    --------
    >>> weighted_percentiles(np.array([1.0, 2.0, 3.0]), np.ones(3), (0.5,))
    (2.0,)
    """
    order = np.argsort(values)
    sorted_values, own = values[order], weights[order]
    at = (np.cumsum(own) - 0.5 * own) / own.sum()
    return tuple(float(v) for v in np.interp(shares, at, sorted_values))


def stroke_of(
    track: Floats,
    step_um: float,
    blur_um: float,
    ink: tuple[float, float],
    doubt: Doubt,
    *,
    length_mm: float,
    closed: bool,
    gaps: tuple[tuple[Skip, ...], int],
) -> Stroke:
    """A stroke from its cuts.

    Parameters
    ----------
    track : array
        Column, row [px], way [mm] and width [µm]; shape (n, 4), 3 or more rows.
    step_um : float
        Way between two cuts [µm], above 0.
    blur_um : float
        Blur, one standard deviation [µm].
    ink : (float, float)
        Share of light that its edges take away [1], and how unlike a blurred edge they are, in blurs [1].
    doubt : Doubt
        What the page's widths are unsure by.
    length_mm : float
        Ink from end to end [mm].
    closed : bool
        Whether it runs back into itself.
    gaps : (tuple of Skip, int)
        Its empty gaps, and how many more are only pale.

    Returns
    -------
    Stroke
        With percentiles, ratio and doubt.
    """
    widths = track[:, 3]
    p5, p50, p95 = (float(v) for v in np.percentile(widths, [5, 50, 95]))
    scatter = _scatter(widths, step_um)
    floor = (p50 + 1.645 * scatter) / max(p50 - 1.645 * scatter, 1e-6)
    # variances add: what the scatter explains of the spread from p5 to p95 is not the pen's
    own = math.sqrt(max(0.0, 1 - (3.29 * scatter / max(p95 - p5, 1e-9)) ** 2))
    ratio = (p50 + own * (p95 - p50)) / (p50 + own * (p5 - p50))
    fine = p50 < max(_FINE_BLURS * blur_um, _FINE_PX * doubt.um_per_px)
    # cuts nearer than a fifth of a millimetre share their noise
    free = max(1.0, len(widths) * step_um / 200.0)
    u = doubt.of_width(p50, blur_um, 1.25 * scatter / math.sqrt(free), ink[1])
    return Stroke(
        p50, u, p5, p50, p95, length_mm, len(widths) * step_um / 1000, ratio, floor, own, blur_um, ink[0], *gaps,
        fine, closed, track,
    )  # fmt: skip


def _scatter(widths: Floats, step_um: float) -> float:
    """Scatter of widths about their own slow change.

    From second differences over a way and over twice that: where a line swells the second is four times the first, where it
    only scatters both are alike, so that swelling is no scatter.
    """
    lag = max(2, round(_GRAIN_UM / step_um))
    if len(widths) < 12:
        return float(np.std(widths))
    if len(widths) < 6 * lag:
        return _second_difference(widths, min(lag, len(widths) // 3))
    near, far = (_second_difference(widths, way) for way in (lag, 2 * lag))
    return math.sqrt(max(0.0, (16 * near**2 - far**2) / 15))


def _second_difference(widths: Floats, lag: int) -> float:
    """What second differences over so many cuts say of the scatter of one cut."""
    second = widths[2 * lag :] - 2 * widths[lag:-lag] + widths[: -2 * lag]
    return float(1.4826 * np.median(np.abs(second - np.median(second))) / math.sqrt(6.0))
