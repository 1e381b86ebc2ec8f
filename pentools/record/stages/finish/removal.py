"""Stock taken so far, three ways: by diameter, by mass, and by the plan; held against what the zone can spare."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.calc.base.uncertainty import rounded_pair
from pentools.calc.finish.limits import Interval
from pentools.calc.finish.removal import RemovalCheck, compare_removal, removed_by_diameter_um, removed_by_mass_um
from pentools.record.stages.finish.plan import Progress, progress_of
from pentools.record.stages.finish.rates import diameter_u_mm, mass_per_um_of, mass_u_g, measured

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["Measured", "RemovedSoFar", "removed_so_far"]


@dataclass(frozen=True, slots=True)
class Measured:
    """Stock taken at one place, measured.

    Parameters
    ----------
    way : {"diameter", "mass"}
        How.
    place : str
        Where, or what was weighed.
    before, after : float
        First and last diameter [mm] or mass [g].
    removed_um, u_um : float
        Stock removed a side and its standard uncertainty [µm].
    """

    way: str
    place: str
    before: float
    after: float
    removed_um: float
    u_um: float

    @property
    def shown(self) -> str:
        """Stock removed with twice its standard uncertainty, both rounded to one place [µm]."""
        return " ± ".join(rounded_pair(self.removed_um, 2 * self.u_um))


@dataclass(frozen=True, slots=True)
class RemovedSoFar:
    """Stock taken so far.

    Parameters
    ----------
    by_diameter, by_mass : tuple of Measured
        Where there is a first and a last reading of the same.
    by_plan_um : Interval or None
        Estimated from the steps done [µm a side]; None where nothing can be estimated of any of them.
    check : RemovalCheck or None
        Whether the surest diameter and the surest mass agree.
    findings : tuple of Finding
        Agreement, and the budget.
    """

    by_diameter: tuple[Measured, ...]
    by_mass: tuple[Measured, ...]
    by_plan_um: Interval | None
    check: RemovalCheck | None
    findings: tuple[Finding, ...]

    @property
    def surest(self) -> Measured | None:
        """The measurement with the least uncertainty; None where nothing was measured twice."""
        return min((*self.by_diameter, *self.by_mass), key=lambda m: m.u_um, default=None)


def removed_so_far(job: Job, progress: Progress | None = None) -> RemovedSoFar:
    """How much has been taken off a job's pen.

    Parameters
    ----------
    progress : Progress or None
        Its progress, where it was worked out already.

    Returns
    -------
    RemovedSoFar
        Empty where nothing was done or measured.
    """
    progress = progress if progress is not None else progress_of(job)
    diameters, masses = measured(job)
    by_diameter = tuple(
        Measured(
            "diameter", place, seen[0].value, seen[-1].value, removed_by_diameter_um(seen[0].value, seen[-1].value),
            500 * math.hypot(diameter_u_mm(job, seen[0]), diameter_u_mm(job, seen[-1])),
        )
        for place, seen in diameters.items() if len(seen) > 1
    )  # fmt: skip
    per_um = mass_per_um_of(job)
    by_mass = tuple(
        Measured(
            "mass", what, seen[0].value, seen[-1].value, removed_by_mass_um(seen[0].value, seen[-1].value, per_um),
            1000 * math.hypot(mass_u_g(job, seen[0]), mass_u_g(job, seen[-1])) / per_um,
        )
        for what, seen in masses.items() if len(seen) > 1 and per_um is not None
    )  # fmt: skip
    check = None
    if by_diameter and by_mass:
        one, other = min(by_diameter, key=lambda m: m.u_um), min(by_mass, key=lambda m: m.u_um)
        check = compare_removal(one.removed_um, other.removed_um, diameter_u_um=one.u_um, mass_u_um=other.u_um)
    planned = progress.removed_um if progress is not None and progress.estimated else None
    found = RemovedSoFar(by_diameter, by_mass, planned, check, ())
    return RemovedSoFar(by_diameter, by_mass, planned, check, _findings(found, progress))


def _findings(removed: RemovedSoFar, progress: Progress | None) -> tuple[Finding, ...]:
    found = [removed.check.finding] if removed.check is not None else []
    if progress is None:
        return tuple(found)
    budget, zone = progress.plan.budget_high_um, progress.plan.limits.zone.name
    surest, planned = removed.surest, removed.by_plan_um
    if surest is not None and surest.removed_um > budget:
        taken = surest.removed_um
        found.append(
            Finding("stop", "finish.budget-spent:measured", taken=taken, way=surest.way, zone=zone, budget=budget)
        )
    elif surest is None and planned is not None and planned.high > budget:
        found.append(Finding("stop", "finish.budget-spent:estimated", taken=planned.typical, zone=zone, budget=budget))
    if surest is not None and planned is not None:
        more = math.inf if progress.not_estimated else 0.0  # what was not counted took something too
        low, high = planned.low - 2 * surest.u_um, planned.high + 2 * surest.u_um + more
        if not low <= surest.removed_um <= high:
            differs = Finding(
                "warning", "finish.plan-differs", way=surest.way, taken=surest.shown, low=planned.low, high=planned.high
            )
            found.append(differs)
    if surest is not None and abs(surest.removed_um) < 2 * surest.u_um:
        found.append(
            Finding("note", "finish.not-resolved", way=surest.way, taken=surest.removed_um, limit=2 * surest.u_um)
        )
    if progress.not_estimated:
        found.append(Finding("note", "finish.not-counted", steps=progress.not_estimated))
    return tuple(found)
