"""What to cut where no ring goes: flat and cup washers on a thin rod, cork rings, felt and stacked packing."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["Packing", "WasherFit", "cork_ring", "head_washer", "rod_packing"]

STEP_MM = 0.1
FLAT_OVER_BORE_MM = (0.1, 0.3)
CUP_OVER_BORE_MM = (0.2, 0.5)
THICKNESS_MM = 0.64
SHEET_MM = 0.79
HOLE_UNDER_SHARE = 0.06
CORK_SANDING_MM = 0.4
LEAST_OVERHANG_MM = 0.15
OUT_OF_ROUND_MM = 0.1
LEAST_CORK_MM = 1.0
CORK_OVER_BORE_MM = (0.1, 0.3)
CORK_UNDER_SEAT_MM = 0.3
PACKING_OVER_HOUSING_MM = 0.1
PRESSED_MOST = 0.25
PRESSED_FOR = 1.08


@dataclass(frozen=True, slots=True)
class WasherFit:
    """A washer or ring to cut.

    Parameters
    ----------
    kind : {"flat", "cup", "cork"}
        What it is.
    outside_mm, outside_low_mm, outside_high_mm : float
        Outside diameter to start with, and its window [mm].
    hole_mm : float
        Hole to cut [mm].
    thickness_mm : float or None
        Thickness [mm]; None where the seat decides it.
    ladder_mm : tuple of float
        Trial sizes: two below, the start, two above [mm].
    cut_mm : float
        Outside diameter to cut before sanding in [mm]; as `outside_mm` where nothing is sanded.
    findings : tuple of Finding
        What to know.
    """

    kind: str
    outside_mm: float
    outside_low_mm: float
    outside_high_mm: float
    hole_mm: float
    thickness_mm: float | None
    ladder_mm: tuple[float, ...]
    cut_mm: float
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Packing:
    """Rings to stack round a rod in its housing.

    Parameters
    ----------
    kind : {"felt", "stacked"}
        A wound or cut felt, or slit rings one on the other.
    hole_mm, outside_mm : float
        Hole and outside diameter of a ring [mm].
    count : int
        How many rings fill the housing.
    pressed_share : float
        How much the stack is pressed when the housing is closed [1].
    findings : tuple of Finding
        What to know.
    """

    kind: str
    hole_mm: float
    outside_mm: float
    count: int
    pressed_share: float
    findings: tuple[Finding, ...]


def _length(name: str, value: float, low: float, high: float) -> None:
    if not low <= value <= high:
        raise InputError(name, f"{low:g} to {high:g} mm", f"{value:g} mm", "Was it typed in another unit?")


def head_washer(
    bore_mm: float, rod_mm: float, *, backing_mm: float | None = None, kind: str = "flat", ovality_mm: float = 0.0
) -> WasherFit:
    """A flat or cup washer on the thin rod of a plunger.

    Parameters
    ----------
    bore_mm : float
        Bore where the washer runs, not where it widens [mm], 2 to 20.
    rod_mm : float
        Rod or stud that carries the washer [mm], 0.5 to 10, below the bore.
    backing_mm : float or None
        Diameter of the backing washer or head behind it [mm].
    kind : {"flat", "cup"}
        Flat sheet, or a cup with a lip.
    ovality_mm : float
        Largest less smallest bore reading [mm].

    Returns
    -------
    WasherFit
        Outside diameter window, hole, thickness, trial ladder.

    Raises
    ------
    InputError
        If a size is out of range, the rod or the backing washer does not go into the bore, or the kind is not known.

    Notes
    -----
    Start 0.1 to 0.3 mm above the bore for a flat washer, 0.2 to 0.5 mm for a cup (judged: no figure in print; a
    repairer's page says only "slightly larger than the backing washer", too small gives no suction, too large catches
    and tears). Hole about 6 % under the rod so that the washer does not creep over the nut (a page says undersize;
    the share is judged). Thickness about 0.025 in (0.64 mm), sheet of 1/32 in usable (same page). Trial before
    sealing, one size up where there is no suction: common practice, no source.

    Examples
    --------
    >>> fit = head_washer(8.3, 1.6)
    >>> fit.outside_mm, fit.hole_mm
    (8.5, 1.5)
    """
    if kind not in ("flat", "cup"):
        raise InputError("washer", "flat or cup", kind)
    _length("bore", bore_mm, 2, 20)
    _length("rod", rod_mm, 0.5, 10)
    if rod_mm >= bore_mm:
        raise InputError("rod", f"below the bore of {bore_mm:g} mm", f"{rod_mm:g} mm", "Were the two mixed up?")
    if not 0 <= ovality_mm < 1:
        raise InputError("ovality", "0 to below 1 mm", f"{ovality_mm:g} mm")
    if backing_mm is not None and not rod_mm < backing_mm < bore_mm:
        raise InputError("backing washer", f"between rod and bore, {rod_mm:g} to {bore_mm:g} mm", f"{backing_mm:g} mm")
    over = FLAT_OVER_BORE_MM if kind == "flat" else CUP_OVER_BORE_MM
    low, high = (bore_mm + extra + ovality_mm / 2 for extra in over)
    start = round((low + high) / 2 / STEP_MM) * STEP_MM
    findings = [
        *_washer_warnings(start, backing_mm, ovality_mm),
        Finding("note", "seal.trial:washer"),
        Finding("note", "seal.thickness", best=THICKNESS_MM, usable=SHEET_MM),
    ]
    hole = round(rod_mm * (1 - HOLE_UNDER_SHARE), 2)
    return WasherFit(
        kind, round(start, 2), low, high, hole, THICKNESS_MM, _ladder(start), round(start, 2), tuple(findings)
    )  # fmt: skip


def _ladder(start: float) -> tuple[float, ...]:
    """Two sizes below, the start, two above."""
    return tuple(round(start + step * STEP_MM, 2) for step in (-2, -1, 0, 1, 2))


def _washer_warnings(start: float, backing: float | None, ovality: float) -> list[Finding]:
    found = []
    if ovality > OUT_OF_ROUND_MM:
        found.append(Finding("warning", "seal.ovality:washer", ovality=ovality))
    overhang = None if backing is None else (start - backing) / 2
    if overhang is not None and overhang > 2 * THICKNESS_MM:
        found.append(Finding("warning", "seal.overhang:flips", overhang=overhang))
    elif overhang is not None and overhang < LEAST_OVERHANG_MM:
        found.append(Finding("warning", "seal.overhang:stiff", overhang=overhang))
    return found


def cork_ring(bore_mm: float, seat_mm: float, *, length_mm: float | None = None) -> WasherFit:
    """A cork ring for a piston head.

    Parameters
    ----------
    bore_mm : float
        Bore of this very pen [mm], 3 to 25: old celluloid bores have shrunk, each in its own way.
    seat_mm : float
        Diameter of the seat that carries the cork [mm], 1 to below the bore less 1 mm.
    length_mm : float or None
        Length of the seat [mm].

    Returns
    -------
    WasherFit
        Outside after sanding, outside to cut, hole, trial ladder.

    Raises
    ------
    InputError
        If a size is out of range or no wall is left.

    Notes
    -----
    Hole slightly under its seat, outside slightly above the bore, sanded in on a turning mandrel with P240 to P360
    and then finer; the usual first failure is a ring that came out too small (three posts on cork gaskets). The
    figures 0.1 to 0.3 mm above the bore, 0.4 mm left for sanding and 0.3 mm under the seat are judged. Soak about
    30 s in hot candle wax or grease it; boiled water softens it before it is fitted (same posts).
    """
    _length("bore", bore_mm, 3, 25)
    _length("seat", seat_mm, 1, 24)
    if seat_mm > bore_mm - 1:
        raise InputError(
            "seat",
            f"at most {bore_mm - 1:g} mm, so that 0.5 mm of cork is left",
            f"{seat_mm:g} mm",
            "Were seat and bore mixed up?",
        )
    low, high = (bore_mm + extra for extra in CORK_OVER_BORE_MM)
    start = round((low + high) / 2, 2)
    cut, wall = round(start + CORK_SANDING_MM, 2), (bore_mm - seat_mm) / 2
    thin = [Finding("warning", "seal.thin", wall=wall)] if wall < LEAST_CORK_MM else []
    findings = [
        *thin, Finding("note", "seal.sanding", cut=cut), Finding("note", "seal.soak"), Finding("warning", "seal.hot-wax")
    ]  # fmt: skip
    hole = round(seat_mm - CORK_UNDER_SEAT_MM, 2)
    return WasherFit("cork", start, low, high, hole, length_mm, _ladder(start), cut, tuple(findings))


def rod_packing(
    rod_mm: float, housing_mm: float, length_mm: float, *, thickness_mm: float = 1.5, kind: str = "stacked"
) -> Packing:
    """Slit rings or felt round a rod in its housing.

    Parameters
    ----------
    rod_mm : float
        Rod [mm], 0.5 to 12.
    housing_mm : float
        Housing bore [mm], at least 1 mm above the rod.
    length_mm : float
        Free length of the housing [mm], 1 to 30.
    thickness_mm : float
        Thickness of one ring [mm], 0.3 to 5.
    kind : {"felt", "stacked"}
        What it is made of.

    Returns
    -------
    Packing
        Ring sizes, their number and how far they are pressed.

    Raises
    ------
    InputError
        If a size is out of range or the kind is not known.

    Notes
    -----
    Felt in early thick-rod fillers, slit rings stacked with their slits apart so that the rod need not come out (a
    repairer's page). Pressed by about 10 to 20 % when closed, hole at the rod's size, outside 0.1 mm above the
    housing: judged.
    """
    if kind not in ("felt", "stacked"):
        raise InputError("packing", "felt or stacked", kind)
    for name, value, low, high in (
        ("rod", rod_mm, 0.5, 12),
        ("housing length", length_mm, 1, 30),
        ("ring thickness", thickness_mm, 0.3, 5),
    ):
        _length(name, value, low, high)
    if housing_mm < rod_mm + 1:
        raise InputError(
            "housing bore",
            f"at least {rod_mm + 1:g} mm, 1 mm above the rod",
            f"{housing_mm:g} mm",
            "Were the two mixed up?",
        )
    count = max(math.ceil(PRESSED_FOR * length_mm / thickness_mm), 1)
    pressed = 1 - length_mm / (count * thickness_mm)
    findings = []
    if pressed > PRESSED_MOST:
        findings.append(Finding("warning", "seal.pressed", count=count, thickness=thickness_mm, pressed=pressed))
    if kind == "stacked" and count > 1:
        findings.append(Finding("note", "seal.slits"))
    findings.append(Finding("note", "seal.trial:packing"))
    if kind == "felt":
        findings.append(Finding("note", "seal.felt"))
    outside = round(housing_mm + PACKING_OVER_HOUSING_MM, 2)
    return Packing(kind, rod_mm, outside, count, pressed, tuple(findings))
