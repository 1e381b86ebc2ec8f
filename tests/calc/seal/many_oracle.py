"""An oracle for the ranking: the same gland worked out a second way, many bores against many rings on arrays."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from pentools.calc.seal.gland import Ring
from pentools.calc.seal.judge import Duty
from pentools.errors import InputError

Floats = NDArray[np.float64]


__all__ = ["ManyFits", "seal_fit_many"]

# as in print, not as in the table: stretch 5 %, fill 90 %; looseness 2 % is judged
STRETCH_LIMIT, LOOSE_LIMIT, FILL_TOP = 0.05, 0.02, 0.90


@dataclass(frozen=True, slots=True)
class ManyFits:
    """Rings against bores: one row a bore, one column a ring.

    Parameters
    ----------
    rings : tuple of Ring
        The columns.
    least, nominal, most : array
        Squeeze in the worst cases and nominal [1].
    stretch : array
        Nominal stretch [1].
    excess : array
        How far bounds are passed in the worst case, in all [1]; 0 where the ring fits.
    best : array of int
        The best ring of each bore, by excess and then margin.
    """

    rings: tuple[Ring, ...]
    least: Floats
    nominal: Floats
    most: Floats
    stretch: Floats
    excess: Floats
    best: NDArray[np.intp]

    def designations(self) -> tuple[str, ...]:
        """The best ring of each bore by name, empty where none fits."""
        rows = range(len(self.best))
        return tuple(
            self.rings[int(self.best[i])].designation if self.excess[i, self.best[i]] == 0 else "" for i in rows
        )


def seal_fit_many(
    outers_mm: Sequence[float],
    inners_mm: float | Sequence[float],
    rings: Sequence[Ring],
    duty: Duty,
    *,
    width_mm: float | None = None,
    half_width_mm: float = 0.03,
    ovality_mm: float = 0.0,
) -> ManyFits:
    """Fit every ring to every gland, nominal and in the worst case.

    Parameters
    ----------
    outers_mm : sequence of float
        Bores, or housing bores [mm].
    inners_mm : float or sequence of float
        Groove diameter or rod [mm]: one for all, or one for each bore.
    rings : sequence of Ring
        The rings.
    duty : Duty
        What the seals do.
    width_mm : float or None
        Groove width [mm]; None leaves the fill out.
    half_width_mm : float
        Half-width of one caliper reading [mm].
    ovality_mm : float
        Largest less smallest bore reading [mm].

    Returns
    -------
    ManyFits
        Arrays of squeeze, stretch and excess, and the best ring of each bore.

    Raises
    ------
    InputError
        If there are no rings or bores, the counts differ, or an inner diameter is not below its outer one.

    Notes
    -----
    The same worst cases as `pentools.calc.seal.gland.fit_ring`; heads that rest on the wall are not looked at.
    """
    outer = np.asarray(outers_mm, dtype=float).reshape(-1, 1)
    inner = (
        np.broadcast_to(np.asarray(inners_mm, dtype=float).reshape(-1, 1), outer.shape)
        if np.ndim(inners_mm) == 0 or np.size(inners_mm) == outer.size
        else None
    )
    if not rings or not outer.size:
        raise InputError("rings and bores", "at least one of each", f"{len(rings)} and {outer.size}")
    if inner is None:
        raise InputError("inner diameters", f"one, or as many as the bores, {outer.size}", np.size(inners_mm))
    spread = half_width_mm + ovality_mm / 2
    if not bool(np.all((inner - half_width_mm > 0) & (inner + half_width_mm < outer - spread))):
        raise InputError(
            "inner diameters", "above 0 and below the bores, with the caliper's uncertainty", "a gland without room"
        )
    inside, section, di, ds = (
        np.array([values])
        for values in zip(
            *((r.inside_mm, r.section_mm, r.inside_half_width_mm, r.section_half_width_mm) for r in rings), strict=True
        )
    )

    def squeeze(seat: Floats, hole: Floats, hole_inside: Floats, thickness: Floats) -> tuple[Floats, Floats]:
        depth = (hole - seat) / 2
        return 1 - depth / _sections(hole_inside, thickness, seat), depth

    nominal, _ = squeeze(inner, outer, inside, section)
    least, _ = squeeze(inner - half_width_mm, outer + spread, inside - di, section - ds)
    most, tight = squeeze(inner + half_width_mm, outer - spread, inside + di, section + ds)
    stretch = (inner - inside) / inside
    excess = np.maximum(duty.floor - least, 0) + np.maximum(most - duty.ceiling, 0)
    excess += np.maximum(stretch - STRETCH_LIMIT, 0) + 2 * np.maximum(-stretch - LOOSE_LIMIT, 0)
    if width_mm is not None:
        fill = math.pi / 4 * (section + ds) ** 2 / (tight * max(width_mm - half_width_mm, 0.01))
        excess += np.maximum(fill - FILL_TOP, 0)
    margin = np.minimum(least - duty.floor, duty.ceiling - most)
    # one number to sort by: excess first, then the margin, which is below 1
    best = np.argmin(np.round(excess, 3) * 1e6 - margin, axis=1)
    return ManyFits(tuple(rings), least, nominal, most, stretch, excess, best)


def _sections(inside: Floats, section: Floats, seat: Floats) -> Floats:
    """Constant-volume sections by Newton steps on arrays; free sections where nothing is stretched."""
    stretched = np.maximum(seat, inside)
    volume = (inside + section) * section**2
    used = np.broadcast_to(section, stretched.shape).copy()
    for _ in range(8):
        used -= ((stretched + used) * used**2 - volume) / (used * (2 * stretched + 3 * used))
    return used
