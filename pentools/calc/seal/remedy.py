"""When no ring fits: the groove diameter or the bore sleeve with which the nearest ring would."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from pentools.calc.base.findings import Finding
from pentools.calc.seal.formulas import constant_volume_section_mm, stretch_share
from pentools.calc.seal.gland import Gland, Ring, fit_ring
from pentools.calc.seal.judge import Duty, judge_fit
from pentools.errors import InputError

__all__ = ["Remedy", "as_measured", "nearest_remedies", "wanted_ring"]

MEASURED_INSIDE_MM = 0.05
MEASURED_SECTION_MM = 0.02
LEAST_WALL_MM = 0.25
LEAST_GROOVE_MM = 1.0
LEAST_RING_MM = 0.5


@dataclass(frozen=True, slots=True)
class Remedy:
    """One change that lets one ring fit.

    Parameters
    ----------
    ring : Ring
        The ring.
    gland : Gland
        The gland after the change.
    groove_mm : float or None
        New groove diameter [mm]; None where it stays.
    sleeve_mm : float or None
        New inside diameter of the bore or housing: a sleeve's, or bored out where it is larger [mm]; None where it stays.
    width_mm : float
        Least groove width for a fill of at most 85 % [mm].
    change_mm : float
        Size of the change in diameter [mm]; what a lathe cannot take off (a larger groove, a sleeve) counts twice.
    squeeze_share, stretch_share : float
        Nominal squeeze and stretch after the change [1].
    undoable : bool
        Whether it can be undone: a sleeve can come out again, what was turned or bored away does not come back.
    finding : Finding
        The change, to be said.
    """

    ring: Ring
    gland: Gland
    groove_mm: float | None
    sleeve_mm: float | None
    width_mm: float
    change_mm: float
    squeeze_share: float
    stretch_share: float
    undoable: bool
    finding: Finding

    @property
    def sentence(self) -> str:
        """The change in words."""
        return self.finding.text


def as_measured(ring: Ring) -> Ring:
    """A ring whose nominal size was confirmed by measuring: inside to 0.05 mm, section to 0.02 mm.

    Parameters
    ----------
    ring : Ring
        The ring with its table tolerances.

    Returns
    -------
    Ring
        The same with the smaller half-widths (judged, for light caliper readings at four places).
    """
    return replace(
        ring,
        inside_half_width_mm=min(ring.inside_half_width_mm, MEASURED_INSIDE_MM, ring.inside_mm / 4),
        section_half_width_mm=min(ring.section_half_width_mm, MEASURED_SECTION_MM, ring.section_mm / 4),
    )


def nearest_remedies(gland: Gland, rings: Sequence[Ring], duty: Duty, count: int = 5) -> tuple[Remedy, ...]:
    """The smallest changes with which a ring fits.

    Parameters
    ----------
    gland : Gland
        The gland as it is.
    rings : sequence of Ring
        Rings at hand.
    duty : Duty
        What the seal does.
    count : int
        How many to give, 1 or more.

    Returns
    -------
    tuple of Remedy
        Least change first; may be empty. A packing's rod is never altered, only its housing.

    Raises
    ------
    InputError
        If the count is below 1.

    Notes
    -----
    The new diameter gives the middle of the duty's band with the section after stretching; it is kept only if the
    ring, measured to 0.05 mm inside and 0.02 mm in its section, then fits in the worst case with the same caliper.
    Groove width is left to be cut as said. Groove and sleeve together are tried where neither alone will do. A change
    in diameter below twice the half-width of that dimension is none, since two readings cannot tell it (judged); a
    sleeve needs a wall of 0.25 mm and a groove 1 mm of core (judged: what a home lathe and a thin tube allow).
    """
    if count < 1:
        raise InputError("count", "1 or more", count)
    single: list[Remedy] = []
    double: list[Remedy] = []
    for ring in rings:
        known = as_measured(ring)
        single += _checked(known, gland, duty, None, _outer_for(known, gland.inner_mm, duty))
        if gland.kind != "piston":
            continue
        single += _checked(known, gland, duty, _groove_for(known, gland, duty), None)
        seat = ring.inside_mm * 1.02
        if 0.4 * gland.inner_mm < seat < gland.inner_mm:
            double += _checked(known, gland, duty, seat, _outer_for(known, seat, duty))
    found = single or double
    found.sort(key=lambda remedy: (remedy.change_mm, remedy.ring.designation))
    return tuple(found[:count])


def wanted_ring(gland: Gland, duty: Duty) -> tuple[float, float] | None:
    """A ring that would lie in the middle of the band: inside diameter and section, to 0.05 mm [mm].

    Parameters
    ----------
    gland : Gland
        The gland as it is.
    duty : Duty
        What the seal does.

    Returns
    -------
    tuple of float or None
        2 % stretched on its seat; None where even that ring would not be offered.

    Notes
    -----
    It stands in no list: it is what to look for, or to have made.
    """
    inside = gland.inner_mm / (1 + duty.limits.stretch.good)
    section = gland.depth_mm / (1 - duty.middle)
    for _ in range(30):  # the section on the seat hangs on the free one
        section *= gland.depth_mm / (1 - duty.middle) / constant_volume_section_mm(inside, section, gland.inner_mm)
    inside, section = round(20 * inside) / 20, round(20 * section) / 20
    if min(inside, section) < LEAST_RING_MM:
        return None
    ring = as_measured(Ring("wanted", inside, section, MEASURED_INSIDE_MM, MEASURED_SECTION_MM))
    offered = judge_fit(fit_ring(ring, gland), duty).verdict in ("fits", "with a reservation")
    return (inside, section) if offered else None


def _outer_for(ring: Ring, seat: float, duty: Duty) -> float:
    """Bore for the middle of the band on a given seat."""
    return seat + 2 * (1 - duty.middle) * constant_volume_section_mm(ring.inside_mm, ring.section_mm, seat)


def _groove_for(ring: Ring, gland: Gland, duty: Duty) -> float:
    """Groove for the middle of the band: a fixed point, since the section depends on it."""
    groove = gland.outer_mm - 2 * (1 - duty.middle) * ring.section_mm
    limits = duty.limits
    if not -limits.loose.fits <= stretch_share(ring.inside_mm, groove) <= 2 * limits.stretch.fits:
        return 0.0
    for _ in range(30):
        groove = gland.outer_mm - 2 * (1 - duty.middle) * constant_volume_section_mm(
            ring.inside_mm, ring.section_mm, groove
        )
    return groove


def _checked(ring: Ring, gland: Gland, duty: Duty, groove: float | None, outer_new: float | None) -> list[Remedy]:
    inner = gland.inner_mm if groove is None else groove
    outer = gland.outer_mm if outer_new is None else outer_new
    if not _can_be_made(gland, groove, outer_new) or outer - inner < 8 * gland.half_width_mm:
        return []
    if not -duty.limits.loose.fits <= stretch_share(ring.inside_mm, inner) <= duty.limits.stretch.fits:
        return []
    if gland.guide_mm is not None and not inner < gland.guide_mm < outer:
        return []  # the head itself would not pass
    # its width is cut to suit, so it is not judged here; a new bore is round
    changed = replace(
        gland, inner_mm=inner, outer_mm=outer, width_mm=None, ovality_mm=gland.ovality_mm if outer_new is None else 0.0
    )
    fit = fit_ring(ring, changed)
    if judge_fit(fit, duty).verdict != "fits":
        return []
    thick, tight = ring.section_mm + ring.section_half_width_mm, fit.most.depth_mm
    width = math.pi / 4 * thick**2 / (duty.limits.fill.good * tight) + gland.width_half_mm
    added = max(inner - gland.inner_mm, 0.0) + max(gland.outer_mm - outer, 0.0)
    change = abs(inner - gland.inner_mm) + abs(outer - gland.outer_mm) + added
    undoable = not (inner < gland.inner_mm or outer > gland.outer_mm)
    finding = Finding(
        "note", "seal.remedy:undoable" if undoable else "seal.remedy:lasting",
        ring=f"{ring.designation} ({ring.inside_mm:.2f} × {ring.section_mm:.2f} mm)", width=width,
        changes=_changes(gland, groove, outer_new),
    )  # fmt: skip
    squeeze = fit.nominal.squeeze_share
    return [Remedy(ring, changed, groove, outer_new, width, change, squeeze, fit.stretch_share, undoable, finding)]


def _can_be_made(gland: Gland, groove: float | None, outer: float | None) -> bool:
    """Whether the calliper can tell each change, and a lathe can make it."""
    if groove is not None and (groove < LEAST_GROOVE_MM or abs(groove - gland.inner_mm) < 2 * gland.inner_half_mm):
        return False
    if outer is None:
        return True
    if abs(outer - gland.outer_mm) < 2 * gland.outer_half_mm or (gland.kind == "piston" and outer > gland.outer_mm):
        return False
    return outer > gland.outer_mm or gland.outer_mm - outer >= 2 * LEAST_WALL_MM


def _changes(gland: Gland, groove: float | None, outer: float | None) -> list[str]:
    """What has to be done, each as a clause."""
    parts = []
    if groove is not None:
        verb = "turned down to" if groove < gland.inner_mm else "built up, or a new head made, to"
        parts.append(f"the groove were {verb} {groove:.2f} mm (now {gland.inner_mm:.2f})")
    hole = "bore" if gland.kind == "piston" else "housing"
    if outer is not None and outer > gland.outer_mm:
        parts.append(f"the {hole} were bored out to {outer:.2f} mm (now {gland.outer_mm:.2f})")
    elif outer is not None:
        wall = (gland.outer_mm - outer) / 2
        parts.append(f"the {hole} were sleeved to {outer:.2f} mm inside (a wall of {wall:.2f} mm)")
    return parts
