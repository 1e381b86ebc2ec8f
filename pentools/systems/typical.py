"""A pen's dimensions made complete: what was measured, and typical proportions for what was not.

The typical proportions are judged from pens in general (from memory); they only give a drawing its look.
"""

from __future__ import annotations

from pentools.systems.proportions import Proportions
from pentools.systems.registry import system_named
from pentools.systems.shape import PenShape

__all__ = ["proportions_of"]


class _Filling:
    """Takes what was measured, and fills the rest in from a rule."""

    def __init__(self, shape: PenShape) -> None:
        self.shape = shape
        self.values: dict[str, float] = {}
        self.assumed: set[str] = set()

    def take(self, name: str, typical: float, low: float = 0.3, high: float = 1e3) -> float:
        measured = self.shape.measured(name)
        if measured is None:
            self.assumed.add(name)
        self.values[name] = max(min(typical, high), low) if measured is None else measured
        return self.values[name]


def proportions_of(shape: PenShape) -> Proportions:
    """Complete a pen's dimensions.

    Parameters
    ----------
    shape : PenShape
        What was measured.

    Returns
    -------
    Proportions
        Measured values untouched; the others from typical proportions to what was measured.

    Notes
    -----
    Good for drawing only: no calculation may read an assumed value from here.

    Examples
    --------
    >>> full = proportions_of(PenShape("lever-sac", barrel_diameter_mm=12.0))
    >>> full["barrel_diameter"], "barrel_diameter" in full.assumed, "bore" in full.assumed
    (12.0, False, True)
    """
    fill = _Filling(shape)
    _diameters(fill, shape)
    _lengths(fill, shape)
    _mechanism(fill, shape)
    return Proportions(fill.values, frozenset(fill.assumed))


def _diameters(fill: _Filling, shape: PenShape) -> None:
    measured_bore, sac, head = shape.bore_mm, shape.sac_outside_mm, shape.head_diameter_mm
    tube, cartridge = shape.tube_diameter_mm, shape.cartridge_diameter_mm
    inner = measured_bore or max(
        (value * share for value, share in ((head, 1.02), (sac, 1.22), (tube, 1.05), (cartridge, 1.08)) if value),
        default=None,
    )
    outer = shape.barrel_diameter_mm or (shape.cap_diameter_mm * 0.9 if shape.cap_diameter_mm else None)
    barrel = fill.take("barrel_diameter", outer or (inner * 1.42 if inner else 12.0), (inner or 0.0) + 1.4)
    bore_high = barrel - 1.2
    bore = fill.take(
        "bore", inner or barrel * system_named(shape.system).typical.bore_share, max(_rod_low(shape), 2.0), bore_high
    )
    section = fill.take("section_diameter", barrel * 0.82, min(bore * 0.95, barrel))
    fill.take("feed_diameter", section * 0.54, 1.5, section - 1.6)
    fill.take("cap_diameter", barrel * 1.13, barrel + 0.8)
    fill.take("thread_diameter", barrel * 0.97, 0.5, barrel)


def _rod_low(shape: PenShape) -> float:
    """Smallest bore that a measured rod or groove allows [mm]."""
    return max(shape.rod_mm or 0.0, shape.groove_diameter_mm or 0.0) * 1.25 + 0.4


def _lengths(fill: _Filling, shape: PenShape) -> None:
    system = system_named(shape.system)
    barrel = fill.values["barrel_diameter"]
    typical_mm = {
        "nib_length": min(max(1.65 * barrel, 10.0), 24.0),
        "section_length": min(max(1.3 * barrel, 9.0), 20.0) if system.has_section else 0.0,
        "end_length": system.typical.end_mm,
    }
    share = _share_left(shape, typical_mm)
    nib, section, end = (fill.take(name, share * length, 0.0) for name, length in typical_mm.items())
    for name, length in typical_mm.items():
        if length == 0.0:
            fill.values[name] = 0.0
            fill.assumed.discard(name)
    section, end = fill.values["section_length"], fill.values["end_length"]
    left = shape.open_length_mm - nib - section - end if shape.open_length_mm else None
    capped = shape.capped_length_mm - nib - section - end - 8.0 if shape.capped_length_mm else None
    depth = shape.barrel_depth_mm + 3.0 if shape.barrel_depth_mm else None
    inside = max(shape.sac_length_mm or 0.0, (shape.stroke_mm or 0.0) + 14.0, shape.cartridge_length_mm or 0.0) + 10.0
    typical = left or capped or depth or max(system.typical.barrel_mm, inside)
    length = fill.take("barrel_length", typical, 24.0)
    fill.take("open_length", nib + section + length + end)
    fill.take("barrel_depth", length - 3.0, 5.0, length)
    thread = fill.take("thread_length", 6.0, 0.5, length * 0.3)
    needed = nib + section + thread + 10.2
    fill.take("capped_length", nib + section + length + end + 8.0)
    fill.take("cap_length", needed if needed > 44.0 else 0.5 * (needed + 44.0), needed)
    fill.take("lever_length", 0.32 * length, 5.0, 24.0)


def _share_left(shape: PenShape, typical_mm: dict[str, float]) -> float:
    """What the assumed lengths must be multiplied with so that a measured total comes out."""
    if shape.open_length_mm is None or shape.barrel_length_mm is None:
        return 1.0
    known = sum(shape.measured(name) or 0.0 for name, typical in typical_mm.items() if typical > 0.0)
    open_ones = sum(typical for name, typical in typical_mm.items() if shape.measured(name) is None)
    left = shape.open_length_mm - shape.barrel_length_mm - known
    return min(max(left / open_ones, 0.5), 1.8) if open_ones > 0.0 else 1.0


def _mechanism(fill: _Filling, shape: PenShape) -> None:
    bore, length = fill.values["bore"], fill.values["barrel_length"]
    head = fill.take("head_diameter", bore * system_named(shape.system).typical.head_share, 1.5, bore)
    fill.take("head_length", min(0.62 * bore, 6.0), (shape.groove_width_mm or 0.0) + 1.2)
    fill.take("groove_diameter", head * 0.62, max((shape.rod_mm or 0.0) + 0.2, 0.8), head - 0.6)
    fill.take("groove_width", fill.values["head_length"] * 0.45, 0.3, fill.values["head_length"] - 0.6)
    rod = fill.take("rod", min(0.32 * bore, 3.2), 0.5, 0.7 * bore)
    fill.take("stroke", 0.55 * length, 2.0, length - 20.0)
    sac = fill.take("sac_outside", bore * 0.80, 2.0, bore - 0.4)
    fill.take("sac_wall", 0.55, 0.2, sac / 5.0)
    fill.take("sac_length", length - 18.0, 8.0, length - 10.0)
    fill.take("nipple", sac * 0.86, 1.6, min(sac, bore) - 0.3)
    fill.take("breather_diameter", min(2.0, bore * 0.26), 0.5)
    fill.take("breather_length", length * 0.5, 2.0, length)
    fill.take("tube_diameter", bore * 0.94, rod, bore)
    fill.take("cartridge_diameter", min(7.4, bore * 0.92), 2.0, bore)
    fill.take("cartridge_length", min(56.0, length - 12.0), 15.0, length)
