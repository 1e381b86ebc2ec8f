"""Flex as a stiffness: the load on a kitchen scale against the width of the line, far from the nib's limit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.base.line import fit_line
from pentools.calc.base.uncertainty import COVERAGE, format_value
from pentools.errors import InputError

__all__ = ["G0", "Ceiling", "Flex", "flex_stiffness", "opening_ratio", "printed_stiffness"]

G0 = 0.00980665
"""Newton in one gram-force, by definition of the standard acceleration of gravity."""
GF_AS_HUNDREDTH = 0.01 / G0
"""What a table in N/mm comes out at where 100 gf was taken as 1 N: 2 % too high."""


@dataclass(frozen=True, slots=True)
class Ceiling:
    """How far a nib may be loaded.

    Parameters
    ----------
    most_gf, warn_gf : float
        Loads on a gold nib that are refused and warned of [gf].
    gold : bool or None
        Whether the nib is of gold; None where nobody knows, and then it counts as gold.
    """

    most_gf: float
    warn_gf: float
    gold: bool | None = None


@dataclass(frozen=True, slots=True)
class Flex:
    """How stiff a nib is.

    Parameters
    ----------
    n_per_mm, uncertainty_n_per_mm : float
        Load for each millimetre of width and its standard uncertainty [N/mm].
    expanded_n_per_mm : float
        Its ±, about 95 %.
    width_at_rest_mm : float
        The line's width without a load, by the fit [mm].
    extra_mm, extra_gf, extra_expanded_gf : float
        An extra width [mm], the load that makes it [gf] and its ± [gf].
    straight_share : float or None
        Largest distance of a reading from the line, as a share of the largest load [1]; None for two readings.
    straight : bool or None
        Whether the readings lie on a line within what they are known to; None for two.
    readings : int
        How many pairs.
    findings : tuple of Finding
        The result in words first, then what to doubt.
    """

    n_per_mm: float
    uncertainty_n_per_mm: float
    expanded_n_per_mm: float
    width_at_rest_mm: float
    extra_mm: float
    extra_gf: float
    extra_expanded_gf: float
    straight_share: float | None
    straight: bool | None
    readings: int
    findings: tuple[Finding, ...]


def flex_stiffness(
    loads_gf: Sequence[float],
    widths_mm: Sequence[float],
    ceiling: Ceiling,
    *,
    load_share: float = 0.08,
    width_u_mm: float = 0.025,
    extra_mm: float = 0.5,
) -> Flex:
    """The stiffness of a nib from loads and widths.

    Parameters
    ----------
    loads_gf : sequence of float
        Load of each line [gf], two or more, unlike.
    widths_mm : sequence of float
        Width of each line [mm], as many.
    ceiling : Ceiling
        How far this nib may be loaded.
    load_share : float
        Standard uncertainty of a load as a share of it [1], 0 or more: how far the hand wanders.
    width_u_mm : float
        Standard uncertainty of a width [mm], 0 or more.
    extra_mm : float
        The extra width at which nibs are compared [mm], above 0.

    Returns
    -------
    Flex
        Slope, what makes the extra width, and what to doubt.

    Raises
    ------
    InputError
        If loads and widths are not as many, fewer than two or all alike, an uncertainty is negative, the extra width
        is not above 0, or the line does not widen under load by more than it is known to.

    Notes
    -----
    k = g₀ ΔF/Δw by least squares of load on width. Each point's doubt is √((s F)² + (k u_w)²), carried through the
    slope's weights; for two readings with little at rest that is (u_k/k)² = (u_F/F)² + 2 (u_w/Δw)². The scatter about
    the line takes its place where it is wider, with Student's t. Good below the nib's limit only: that is never tried.

    Examples
    --------
    >>> flex = flex_stiffness([15, 50, 150, 200], [0.2, 0.5, 1.4, 1.85], Ceiling(150, 100, gold=False))
    >>> round(flex.n_per_mm, 4), round(flex.width_at_rest_mm, 3)
    (1.0969, 0.06)
    """
    _check(loads_gf, widths_mm, load_share, width_u_mm, extra_mm)
    line = fit_line(widths_mm, loads_gf)
    mean = math.fsum(widths_mm) / len(widths_mm)
    sxx = math.fsum((w - mean) ** 2 for w in widths_mm)
    doubts = [math.hypot(load_share * f, line.slope * width_u_mm) for f in loads_gf]
    u = math.sqrt(math.fsum(((w - mean) / sxx * d) ** 2 for w, d in zip(widths_mm, doubts, strict=True)))
    factor = COVERAGE
    several = len(loads_gf) > 2
    if several and line.slope_uncertainty > u:
        u, factor = line.slope_uncertainty, line.coverage(0.9545)
    if not line.slope > factor * u:
        raise InputError(
            "loads and widths", "a line that widens under load by more than it is known to",
            f"{line.slope:.3g} gf ± {factor * u:.3g} for a millimetre",
            "Take a lighter and a firmer load, a line of each measured at three places.",
        )  # fmt: skip
    off = [abs(f - line.intercept - line.slope * w) for f, w in zip(loads_gf, widths_mm, strict=True)]
    straight = all(o <= COVERAGE * d for o, d in zip(off, doubts, strict=True)) if several else None
    stiff, wide = G0 * line.slope, G0 * factor * u
    load, load_wide = line.slope * extra_mm, factor * u * extra_mm
    said = {"said": format_value(stiff, wide, "N/mm"), "load_said": format_value(load, load_wide, "gf")}
    found = [Finding("ok", "nib.flex", extra=extra_mm, **said), *_doubts(loads_gf, ceiling, straight)]
    return Flex(
        stiff, G0 * u, wide, -line.intercept / line.slope, extra_mm, load, load_wide,
        max(off) / max(loads_gf) if several else None, straight, len(loads_gf), tuple(found),
    )  # fmt: skip


def _check(loads: Sequence[float], widths: Sequence[float], load_share: float, width_u: float, extra: float) -> None:
    if len(loads) != len(widths):
        raise InputError("widths", f"as many as the loads, {len(loads)}", len(widths))
    if len(loads) < 2 or len(set(loads)) < 2 or len(set(widths)) < 2:
        raise InputError(
            "loads and widths", "two or more, unlike", f"{len(loads)}", "A line at rest, and one under a light load."
        )
    if min(load_share, width_u, *loads, *widths) < 0 or not extra > 0:
        raise InputError("loads, widths and their doubts", "zero or more, the extra width above 0", "a value below")


def _doubts(loads: Sequence[float], ceiling: Ceiling, straight: bool | None) -> list[Finding]:
    found = [Finding("warning", "nib.flex-bent")] if straight is False else []
    if ceiling.gold is False:
        return found
    most, said = max(loads), ceiling.gold is True
    if most > ceiling.most_gf:
        return [
            Finding(
                "stop", "nib.flex-load:past" if said else "nib.flex-load:past-taken", load=most, limit=ceiling.most_gf
            ),
            *found,
        ]
    if most > ceiling.warn_gf:
        return [
            Finding(
                "warning",
                "nib.flex-load:near" if said else "nib.flex-load:near-taken",
                load=most,
                limit=ceiling.most_gf,
            ),
            *found,
        ]
    return found


def printed_stiffness(flex: Flex, printed_n_per_mm: float) -> Finding:
    """Whether a stiffness that stands printed for the same readings is what they give.

    Parameters
    ----------
    flex : Flex
        What the readings give.
    printed_n_per_mm : float
        What is printed [N/mm], above 0.

    Returns
    -------
    Finding
        It agrees within 1 %, it took 100 gf as 1 N, or it is another.

    Raises
    ------
    InputError
        If the printed figure is not above 0.
    """
    if not printed_n_per_mm > 0:
        raise InputError("printed stiffness", "above 0 N/mm", printed_n_per_mm)
    ratio = printed_n_per_mm / flex.n_per_mm
    values = {"printed": printed_n_per_mm, "found": flex.n_per_mm}
    if abs(ratio - 1) <= 0.01:
        return Finding("ok", "nib.flex-printed:agrees", **values)
    if abs(ratio / GF_AS_HUNDREDTH - 1) <= 0.005:
        return Finding("warning", "nib.flex-printed:unit", **values)
    return Finding("warning", "nib.flex-printed:other", ratio=ratio, **values)


def opening_ratio(length: float = 1.0, width: float = 1.0, thickness: float = 1.0) -> float:
    """How much further a tine opens than another under the same load.

    Parameters
    ----------
    length, width, thickness : float
        Its length, width and thickness over those of the other [1], above 0.

    Returns
    -------
    float
        Opening over that of the other [1]: l³/(b t³). Changes multiply; they never add.

    Raises
    ------
    InputError
        If a ratio is not above 0.

    Notes
    -----
    A cantilever of even section; good for comparing tines of one shape, small bends, below the yield.

    Examples
    --------
    >>> round(0.84 * opening_ratio(thickness=0.35 / 0.4), 2)
    1.25
    """
    if not min(length, width, thickness) > 0:
        raise InputError("ratios of a tine", "above 0", min(length, width, thickness))
    return length**3 / (width * thickness**3)
