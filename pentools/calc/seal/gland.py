"""An O-ring in its groove: squeeze, stretch and the section it costs, fill, clearances, and how sure each is.

One set of formulas serves both glands: a ring on a piston head (it sits on the groove, the bore squeezes it) and a
ring in a packing (it sits on the rod, the housing squeezes it).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.seal.formulas import (
    aerospace_loss_share,
    constant_volume_section_mm,
    flattened_width_mm,
    gland_fill_share,
    outside_compression_share,
    squeeze_share,
    stretch_share,
)
from pentools.errors import InputError

__all__ = ["Gland", "GlandState", "Halves", "Ring", "RingFit", "fit_ring", "squeeze_slopes"]


@dataclass(frozen=True, slots=True)
class Ring:
    """A round ring as bought or as measured.

    Parameters
    ----------
    designation : str
        Its name: dash number, ``4.5x1.78`` or the bench's own.
    inside_mm, section_mm : float
        Inside diameter and section [mm].
    inside_half_width_mm, section_half_width_mm : float
        Tolerance, or half-width of the measurement, both ways [mm].
    measured : bool
        Whether the sizes were measured on the ring itself.
    at_hand : bool
        Whether it lies in the drawer: of rings that fit alike it is the first to try.
    """

    designation: str
    inside_mm: float
    section_mm: float
    inside_half_width_mm: float = 0.0
    section_half_width_mm: float = 0.0
    measured: bool = False
    at_hand: bool = False

    def __post_init__(self) -> None:
        """Refuse what cannot be a ring."""
        for name, value, spread in (
            ("inside diameter", self.inside_mm, self.inside_half_width_mm),
            ("section", self.section_mm, self.section_half_width_mm),
        ):
            if not (value > 0 and 0 <= spread < value):
                raise InputError(
                    f"{name} of ring {self.designation}",
                    "above 0 mm and above its own tolerance",
                    f"{value:g} ± {spread:g} mm",
                )


@dataclass(frozen=True, slots=True)
class Halves:
    """How far each dimension of a gland can be wrong, where that was said of it: half-widths [mm], None for the calliper's.

    Parameters
    ----------
    inner_mm, outer_mm, width_mm, guide_mm : float or None
        Of the groove diameter or rod, of the bore or housing, of the groove's width, of the head or guide hole.
    """

    inner_mm: float | None = None
    outer_mm: float | None = None
    width_mm: float | None = None
    guide_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Gland:
    """Where the ring goes.

    Parameters
    ----------
    kind : {"piston", "packing"}
        On a piston head, or round a rod in a housing.
    inner_mm : float
        Groove diameter of the head, or rod [mm].
    outer_mm : float
        Bore, or housing bore [mm].
    width_mm : float or None
        Groove width [mm]; None where it was not measured.
    guide_mm : float or None
        Head diameter, or the hole that guides the rod [mm]; None where it was not measured.
    half_width_mm : float
        Half-width of one calliper reading [mm].
    ovality_mm : float
        Largest less smallest reading of the outer diameter [mm].
    halves : Halves
        Half-widths of single dimensions where they differ from the calliper's.
    """

    kind: str
    inner_mm: float
    outer_mm: float
    width_mm: float | None = None
    guide_mm: float | None = None
    half_width_mm: float = 0.03
    ovality_mm: float = 0.0
    halves: Halves = Halves()

    def __post_init__(self) -> None:
        """Refuse what cannot be a gland."""
        piston = self.kind == "piston"
        if self.kind not in ("piston", "packing"):
            raise InputError("gland", "piston or packing", self.kind)
        inner, outer = ("groove diameter", "bore") if piston else ("rod", "housing bore")
        for name, value in ((inner, self.inner_mm), (outer, self.outer_mm)):
            if not 0.3 <= value <= 200:
                raise InputError(name, "0.3 to 200 mm", f"{value:g} mm")
        if self.inner_mm >= self.outer_mm:
            raise InputError(
                inner, f"below the {outer} of {self.outer_mm:g} mm", f"{self.inner_mm:g} mm", "Were the two mixed up?"
            )
        if self.width_mm is not None and not 0.2 <= self.width_mm <= 50:
            raise InputError("groove width", "0.2 to 50 mm", f"{self.width_mm:g} mm")
        if self.guide_mm is not None and not self.inner_mm < self.guide_mm < self.outer_mm:
            name = "head diameter" if piston else "guide hole"
            raise InputError(
                name, f"between {inner} and {outer}, {self.inner_mm:g} to {self.outer_mm:g} mm", f"{self.guide_mm:g} mm"
            )
        self._check_spreads(inner, outer)

    def _check_spreads(self, inner: str, outer: str) -> None:
        room = self.depth_mm / 2
        for name, value in (
            ("calliper's uncertainty", self.half_width_mm),
            (f"uncertainty of the {inner}", self.inner_half_mm),
            (f"uncertainty of the {outer}", self.outer_half_mm),
            ("ovality", self.ovality_mm),
        ):
            if not 0 <= value < room:
                raise InputError(
                    name,
                    f"0 mm to below half the gland's depth of {self.depth_mm:.2f} mm",
                    f"{value:g} mm",
                    "Measure it again: at that spread nothing can be said of a ring.",
                )
        if self.width_mm is not None and not 0 <= self.width_half_mm < self.width_mm:
            raise InputError(
                "uncertainty of the groove width", f"below its {self.width_mm:g} mm", f"{self.width_half_mm:g} mm"
            )

    @property
    def inner_half_mm(self) -> float:
        """Half-width of the groove diameter or rod [mm]."""
        return self.half_width_mm if self.halves.inner_mm is None else self.halves.inner_mm

    @property
    def outer_half_mm(self) -> float:
        """Half-width of one reading of the bore or housing [mm]."""
        return self.half_width_mm if self.halves.outer_mm is None else self.halves.outer_mm

    @property
    def width_half_mm(self) -> float:
        """Half-width of the groove's width [mm]."""
        return self.half_width_mm if self.halves.width_mm is None else self.halves.width_mm

    @property
    def guide_half_mm(self) -> float:
        """Half-width of the head's diameter or of the guide hole [mm]."""
        return self.half_width_mm if self.halves.guide_mm is None else self.halves.guide_mm

    @property
    def spread_mm(self) -> float:
        """Half-width of the bore or housing with half its ovality [mm]."""
        return self.outer_half_mm + self.ovality_mm / 2

    @property
    def depth_mm(self) -> float:
        """Radial room for the ring [mm]."""
        return (self.outer_mm - self.inner_mm) / 2

    @property
    def clearance_mm(self) -> float | None:
        """Radial gap between head and bore, or rod and guide [mm]; None where it was not measured."""
        if self.guide_mm is None:
            return None
        return (self.outer_mm - self.guide_mm) / 2 if self.kind == "piston" else (self.guide_mm - self.inner_mm) / 2


@dataclass(frozen=True, slots=True)
class GlandState:
    """Ring and gland in one case, ready to be drawn.

    Parameters
    ----------
    inner_mm, outer_mm : float
        Diameters of the gland [mm].
    depth_mm : float
        Radial room where the ring is looked at, offset included [mm].
    section_mm : float
        Section after stretching, before squeezing [mm].
    squeeze_share : float
        Squeeze [1]; below 0 it does not touch.
    offset_mm : float
        How far the head (or rod) stands off centre [mm].
    """

    inner_mm: float
    outer_mm: float
    depth_mm: float
    section_mm: float
    squeeze_share: float
    offset_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class RingFit:
    """How a ring sits in a gland.

    Parameters
    ----------
    ring, gland
        What was compared.
    least, nominal, most : GlandState
        The worst cases and the nominal case of the squeeze.
    eccentric_least, eccentric_most : GlandState or None
        The worst cases on the two sides of a head that rests on the wall; None where no clearance was measured.
    squeeze_uncertainty_share : float
        Standard uncertainty (k = 1) of the nominal squeeze, root-sum-square [1].
    stretch_share, stretch_least_share, stretch_most_share : float
        Stretch at the inside diameter [1]; below 0 the ring is loose on its seat.
    pessimist_share, pessimist_least_share : float
        Squeeze, nominal and least, with the section loss of the aerospace curve [1].
    outside_share : float
        Compression at the ring's outside, free outside diameter against bore or housing [1].
    fill_share, fill_most_share : float or None
        Gland fill, nominal and most [1]; None without a groove width.
    side_clearance_mm : float or None
        Groove width left beside the squeezed ring [mm]; None without a groove width.
    """

    ring: Ring
    gland: Gland
    least: GlandState
    nominal: GlandState
    most: GlandState
    eccentric_least: GlandState | None
    eccentric_most: GlandState | None
    squeeze_uncertainty_share: float
    stretch_share: float
    stretch_least_share: float
    stretch_most_share: float
    pessimist_share: float
    pessimist_least_share: float
    outside_share: float
    fill_share: float | None
    fill_most_share: float | None
    side_clearance_mm: float | None

    @property
    def section_loss_share(self) -> float:
        """Section lost by stretching at constant volume [1]."""
        return 1 - self.nominal.section_mm / self.ring.section_mm

    @property
    def eccentric_share(self) -> float | None:
        """Squeeze on the far side of a head that rests on the wall, all readings as read [1]; None without a clearance."""
        gap = self.gland.clearance_mm
        return None if gap is None else squeeze_share(self.nominal.depth_mm + gap, self.nominal.section_mm)

    @property
    def squeeze_interval(self) -> tuple[float, float]:
        """Squeeze less and plus twice its standard uncertainty [1]."""
        s, u = self.nominal.squeeze_share, self.squeeze_uncertainty_share
        return s - 2 * u, s + 2 * u


def _state(inner: float, outer: float, inside: float, section: float, offset: float = 0.0) -> GlandState:
    used = constant_volume_section_mm(inside, section, inner)
    depth = (outer - inner) / 2 + offset
    return GlandState(inner, outer, depth, used, squeeze_share(depth, used), offset)


def fit_ring(ring: Ring, gland: Gland) -> RingFit:
    """How a ring sits in a gland, nominal, in the worst case and root-sum-square.

    Parameters
    ----------
    ring : Ring
        The ring with its tolerances.
    gland : Gland
        The gland with its half-widths and ovality.

    Returns
    -------
    RingFit
        Squeeze with its bounds, stretch, fill, clearances [1, mm].

    Notes
    -----
    Each dimension brings its own half-width. Depth h = (outer - inner)/2, squeeze s = 1 - h/W' with W' from the constant-volume torus where the ring is
    stretched; a ring that is loose on its seat keeps its free section (the gain is below half the looseness and is
    left out). Worst cases: outer largest with inner, section and inside smallest, and the reverse; half of the ovality
    is added to the bore's half-width. Root-sum-square: half-widths taken as rectangular, a/√3 (JCGM 100, from
    memory); slopes ds/dB = -1/(2W'), ds/dG = 1/(2W') + (h/W'²) dW'/dG, and h/W'² times dW'/dW, dW'/dID.
    A head on the wall has the depth h ± e, e the radial gap. Good for pressures up to one atmosphere, where the ring
    is not pushed into the gap; friction, swelling and set are not in it.

    Examples
    --------
    >>> fit = fit_ring(Ring("008", 4.47, 1.78, 0.13, 0.08), Gland("piston", 4.50, 7.40, 2.4))
    >>> round(fit.nominal.squeeze_share, 4), round(fit.least.squeeze_share, 4), round(fit.most.squeeze_share, 4)
    (0.1837, 0.1212, 0.2366)
    """
    inside, section = ring.inside_mm, ring.section_mm
    di, ds = ring.inside_half_width_mm, ring.section_half_width_mm
    inner, outer = gland.inner_mm, gland.outer_mm
    nominal = _state(inner, outer, inside, section)
    least_case = (inner - gland.inner_half_mm, outer + gland.spread_mm, inside - di, section - ds)
    most_case = (inner + gland.inner_half_mm, outer - gland.spread_mm, inside + di, section + ds)
    least, most = _state(*least_case), _state(*most_case)
    wide, tight = _offsets(gland)
    stretch = stretch_share(inside, inner)
    pessimist = section * (1 - aerospace_loss_share(stretch, inside / section))
    thin_stretch, thin_ratio = stretch_share(inside - di, least_case[0]), (inside - di) / (section - ds)
    thin = (section - ds) * (1 - aerospace_loss_share(thin_stretch, thin_ratio))
    fill = fill_most = side = None
    if gland.width_mm is not None:
        fill = gland_fill_share(section, nominal.depth_mm, gland.width_mm)
        fill_most = gland_fill_share(section + ds, most.depth_mm, max(gland.width_mm - gland.width_half_mm, 0.01))
        side = gland.width_mm - flattened_width_mm(nominal.section_mm, nominal.depth_mm)
    return RingFit(
        ring, gland, least, nominal, most,
        None if wide is None else _state(*least_case, wide), None if tight is None else _state(*most_case, -tight),
        _uncertainty(ring, gland, nominal),
        stretch, stretch_share(inside + di, least_case[0]), stretch_share(inside - di, most_case[0]),
        squeeze_share(nominal.depth_mm, pessimist), squeeze_share(least.depth_mm, thin),
        outside_compression_share(inside, section, outer),
        fill, fill_most, side,
    )  # fmt: skip


def _offsets(gland: Gland) -> tuple[float | None, float | None]:
    """How far a head (or rod) can stand off centre, when the room is widest and when it is tightest [mm]."""
    gap = gland.clearance_mm
    if gap is None:
        return None, None
    # the gap grows with the bore (or with the guide hole) and shrinks with the head (or rod)
    wall = gland.spread_mm if gland.kind == "piston" else gland.inner_half_mm
    half, other = gland.guide_half_mm / 2, wall / 2
    return gap + half + other, max(gap + half - other, 0.0)


def squeeze_slopes(ring: Ring, gland: Gland, nominal: GlandState) -> tuple[float, float, float, float]:
    """Change of squeeze with outer diameter, inner diameter, section and inside diameter.

    Parameters
    ----------
    nominal : GlandState
        Their nominal case.

    Returns
    -------
    tuple of float
        Four slopes [1/mm] in that order; see `fit_ring`.
    """
    used, seat = nominal.section_mm, gland.inner_mm
    lever = nominal.depth_mm / used**2
    if seat > ring.inside_mm:
        below = used * (2 * seat + 3 * used)
        by_seat = -(used**2) / below
        by_section = (2 * ring.inside_mm * ring.section_mm + 3 * ring.section_mm**2) / below
        by_inside = ring.section_mm**2 / below
    else:
        by_seat, by_section, by_inside = 0.0, 1.0, 0.0
    return -1 / (2 * used), 1 / (2 * used) + lever * by_seat, lever * by_section, lever * by_inside


def _uncertainty(ring: Ring, gland: Gland, nominal: GlandState) -> float:
    by_outer, by_inner, by_section, by_inside = squeeze_slopes(ring, gland, nominal)
    total = (by_outer * gland.outer_half_mm) ** 2 + (by_outer * gland.ovality_mm / 2) ** 2
    total += (by_inner * gland.inner_half_mm) ** 2
    total += (by_section * ring.section_half_width_mm) ** 2 + (by_inside * ring.inside_half_width_mm) ** 2
    return math.sqrt(total / 3)
