"""The formulas of an O-ring in its groove, one function each: section loss, squeeze, stretch, fill."""

from __future__ import annotations

import math

from pentools.errors import InputError

__all__ = [
    "aerospace_loss_share",
    "constant_volume_section_mm",
    "flattened_width_mm",
    "gland_fill_share",
    "outside_compression_share",
    "squeeze_share",
    "stretch_share",
]

ROUND = math.pi / 4


def constant_volume_section_mm(inside_mm: float, section_mm: float, seat_mm: float) -> float:
    """Section of a ring stretched over a seat, its volume kept and its section round.

    Parameters
    ----------
    inside_mm, section_mm : float
        Free inside diameter and section [mm], above 0.
    seat_mm : float
        Diameter that it is stretched over [mm].

    Returns
    -------
    float
        Section on the seat [mm]; the free section where the seat is not larger than the ring.

    Raises
    ------
    InputError
        If inside diameter or section is not above 0.

    Notes
    -----
    (G + W')·W'² = (ID + W)·W², solved by Newton steps to 1e-12. Good for any stretch a groove can ask for; the
    aerospace curve (`aerospace_loss_share`) says about one and a half times as much at small stretches.

    Examples
    --------
    >>> round(constant_volume_section_mm(4.47, 1.78, 4.5), 4)
    1.7763
    """
    if seat_mm <= inside_mm and inside_mm > 0 and section_mm > 0:
        return section_mm
    if not (inside_mm > 0 and section_mm > 0):
        raise InputError("inside diameter and section", "above 0 mm", f"{inside_mm:g} and {section_mm:g} mm")
    volume = (inside_mm + section_mm) * section_mm**2
    used = section_mm
    for _ in range(50):
        step = ((seat_mm + used) * used**2 - volume) / (used * (2 * seat_mm + 3 * used))
        used -= step
        if abs(step) < 1e-12 * section_mm:
            break
    return used


def aerospace_loss_share(stretch: float, inside_over_section: float) -> float:
    """Share of the section lost by stretching, after the aerospace gland standard's curve.

    Parameters
    ----------
    stretch : float
        Stretch [1]; at or below 0 nothing is lost.
    inside_over_section : float
        Free inside diameter over section [1].

    Returns
    -------
    float
        Share of the section that is lost [1].

    Notes
    -----
    With X and R in per cent: X up to 3: R = 0.01 + 1.06 X - 0.1 X²; above: R = 0.56 + 0.59 X - 0.0046 X²
    (SAE AS4716 appendix A as held in one open list, whose slip of a digit is corrected: the branches meet at 3 %).
    For inside/section up to 2.95: R = 100 X/(315 e^(-ID/CS) + 165 + X), same list, provisional; the two lines do not
    meet (at 5 % and 2.95: 2.7 against 3.4). Made for stretches up to about 25 %; kept as the pessimist.

    Examples
    --------
    >>> round(100 * aerospace_loss_share(0.05, 5.2), 2)
    3.39
    """
    x = 100 * stretch
    if x <= 0:
        return 0.0
    if inside_over_section <= 2.95:
        return x / (315 * math.exp(-inside_over_section) + 165 + x)
    if x <= 3:
        return (0.01 + 1.06 * x - 0.1 * x**2) / 100
    return (0.56 + 0.59 * x - 0.0046 * x**2) / 100


def squeeze_share(depth_mm: float, section_mm: float) -> float:
    """Squeeze of a section in a gland.

    Parameters
    ----------
    depth_mm : float
        Radial room [mm].
    section_mm : float
        Section as it sits there [mm].

    Returns
    -------
    float
        1 - depth/section [1]; below 0 it does not touch.

    Examples
    --------
    >>> round(squeeze_share(1.40, 1.78), 4)
    0.2135
    """
    return 1 - depth_mm / section_mm


def stretch_share(inside_mm: float, seat_mm: float) -> float:
    """Stretch at the inside diameter: (seat - inside)/inside.

    Parameters
    ----------
    inside_mm : float
        Free inside diameter [mm].
    seat_mm : float
        Groove diameter or rod [mm].

    Returns
    -------
    float
        Stretch [1]; below 0 the ring is loose.

    Examples
    --------
    >>> stretch_share(10.0, 10.5)
    0.05
    """
    return (seat_mm - inside_mm) / inside_mm


def outside_compression_share(inside_mm: float, section_mm: float, outer_mm: float) -> float:
    """How much larger the free ring is than the hole it goes into.

    Parameters
    ----------
    inside_mm, section_mm : float
        Free inside diameter and section [mm].
    outer_mm : float
        Bore or housing bore [mm].

    Returns
    -------
    float
        (outside - outer)/outside [1]; below 0 the free ring does not touch the hole.

    Notes
    -----
    1 to 3 % is the usual limit of a ring in a housing, beyond which it buckles (notes on handbooks). That is for rings
    thin for their diameter: in a pen the squeeze itself makes most of the figure.
    """
    outside = inside_mm + 2 * section_mm
    return (outside - outer_mm) / outside


def gland_fill_share(section_mm: float, depth_mm: float, width_mm: float, area_factor: float = ROUND) -> float:
    """Share of the groove that the ring fills.

    Parameters
    ----------
    section_mm : float
        Section [mm].
    depth_mm, width_mm : float
        Gland depth and groove width [mm].
    area_factor : float
        Area of the section over its square [1]: pi/4 for a round ring, 0.8215 for one with four lobes.

    Returns
    -------
    float
        Ring area over gland area [1].

    Raises
    ------
    InputError
        If depth or width is not above 0.

    Examples
    --------
    >>> round(gland_fill_share(2.0, 1.6, 3.2), 4)
    0.6136
    """
    if not (depth_mm > 0 and width_mm > 0):
        raise InputError("gland depth and width", "above 0 mm", f"{depth_mm:g} and {width_mm:g} mm")
    return area_factor * section_mm**2 / (depth_mm * width_mm)


def flattened_width_mm(section_mm: float, depth_mm: float) -> float:
    """Width of a section pressed flat between two walls.

    Parameters
    ----------
    section_mm : float
        Section before squeezing [mm].
    depth_mm : float
        Distance of the walls [mm], above 0.

    Returns
    -------
    float
        Width along the groove [mm].

    Notes
    -----
    A flat middle with half-round ends of the same area: (A - pi/4 h²)/h + h. Derived here; good up to about 30 %.

    Examples
    --------
    >>> round(flattened_width_mm(1.78, 1.50), 2)
    1.98
    """
    if depth_mm >= section_mm:
        return section_mm
    return ROUND * (section_mm**2 - depth_mm**2) / depth_mm + depth_mm
