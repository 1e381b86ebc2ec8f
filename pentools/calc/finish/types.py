"""What a planned progression is made of: limits in, steps with their removal out, ready to be drawn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Catalogue, Grade
from pentools.calc.finish.limits import NOT_SAID, Interval, Material, Medium, Zone
from pentools.calc.finish.rate import RateLine
from pentools.errors import InputError

__all__ = ["TRIM", "Alternative", "Blend", "Drawer", "PlanLimits", "Progression", "SetAside", "Step", "blend_width"]

TRIM = ("not said", "solid", "plated", "none")


@dataclass(frozen=True, slots=True)
class PlanLimits:
    """Everything a progression is planned within.

    Parameters
    ----------
    material : Material
        What is worked.
    zone : Zone
        Where on the pen.
    media : mapping of str to Medium
        Bands of the ratio and cut, by medium.
    wall_mm : float or None
        Thinnest wall measured there [mm]; cuts the budget to a tenth of it.
    spent_um : float
        Stock already taken there by earlier work [µm a side].
    stock_factor : float
        s: how many times the last grade's scratch depth each stage takes; 2, or 3 to be cautious.
    scratch_share : Interval or None
        k of this bench's own; None: the material's.
    rates : RateLine or None
        Rates from the bench's log; None: the rule of thumb.
    time_limit_min : float
        Longest first stage [min] that is still reasonable.
    judged_by : {"both", "particle", "finish"}
        Which size must get smaller at every step.
    trim : {"not said", "solid", "plated", "none"}
        What metal trim the pen has; plated trim is never unmasked, and what is not said is taken as plated.
    unmask_um : float
        Coarsest particle let onto solid trim [µm].
    last_steps_on_trim : int
        At most so many last steps go over the trim.
    defect_length_mm : float or None
        Length of the defect [mm], for the area to work.
    """

    material: Material
    zone: Zone
    media: Mapping[str, Medium]
    wall_mm: float | None = None
    spent_um: float = 0.0
    stock_factor: float = 2.0
    scratch_share: Interval | None = None
    rates: RateLine | None = None
    time_limit_min: float = 15.0
    judged_by: str = "both"
    trim: str = "not said"
    unmask_um: float = 5.0
    last_steps_on_trim: int = 3
    defect_length_mm: float | None = None

    def __post_init__(self) -> None:
        if self.trim not in TRIM:
            raise InputError("trim", "one of " + ", ".join(TRIM), self.trim)
        if not 0 <= self.spent_um <= 1000:
            raise InputError("stock already taken", "0 to 1000 µm a side", self.spent_um)
        if not 0 < self.time_limit_min <= 600:
            raise InputError("time limit", "above 0, to 600 min", self.time_limit_min)

    @property
    def k(self) -> Interval:
        """The scratch share that is used."""
        return self.scratch_share or self.material.scratch_share

    @property
    def zone_said(self) -> bool:
        """Whether it is known where on the pen the work is, or the surface decides it."""
        return self.zone.name != NOT_SAID.name

    def allows(self, grade: Grade) -> bool:
        """Whether material and zone let a grade touch the surface."""
        return self.material.allows(grade.medium) and grade.particle_um <= self.coarsest_um * 1.001

    @property
    def coarsest_um(self) -> float:
        """The coarsest particle that material and zone allow [µm]."""
        zone = self.zone.coarsest_um
        return self.material.coarsest_um if zone is None else min(zone, self.material.coarsest_um)


@dataclass(frozen=True, slots=True)
class Drawer:
    """What the bench has, and what there is.

    Parameters
    ----------
    owned : tuple of Grade
        Grades at hand, used or not.
    catalogue : Catalogue or None
        All grades, to name one that is missing; None: none is named.
    """

    owned: tuple[Grade, ...]
    catalogue: Catalogue | None = None

    def holds(self, grade: Grade) -> bool:
        """Whether a grade of that scale and name is at hand."""
        return any((g.scale, g.name) == (grade.scale, grade.name) for g in self.owned)


@dataclass(frozen=True, slots=True)
class Step:
    """One stage of a progression.

    Parameters
    ----------
    number : int
        From 1.
    grade : Grade
        With what; particle, finish and spread are in it.
    ratio : float or None
        Finish size of the stage before over this one's; None for the first.
    removed_um, cumulative_um : Interval
        Stock taken in this stage, and up to its end [µm a side].
    minutes : Interval
        Time for it [min].
    calibrated : bool
        Whether the time rests on the bench's own log.
    unmask : bool
        Whether trim is unmasked before this stage.
    wet : bool
        Wet or dry.
    direction, inspect, note : str
        Which way to stroke, what to look for before going on, what to know.
    """

    number: int
    grade: Grade
    ratio: float | None
    removed_um: Interval
    cumulative_um: Interval
    minutes: Interval
    calibrated: bool
    unmask: bool
    wet: bool
    direction: str
    inspect: str
    note: str


@dataclass(frozen=True, slots=True)
class Blend:
    """How wide to work so that no dip shows.

    Parameters
    ----------
    run_out_mm : float
        Distance over which the depth runs out on each side [mm].
    area_low_mm, area_high_mm : float or None
        Length of the area to work [mm]; None where the defect's length is not known.
    """

    run_out_mm: float
    area_low_mm: float | None
    area_high_mm: float | None


@dataclass(frozen=True, slots=True)
class SetAside:
    """An owned grade that the plan does not use.

    Parameters
    ----------
    grade : Grade
        The grade.
    reason : str
        Why, as a sentence.
    """

    grade: Grade
    reason: str


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another way, with its numbers.

    Parameters
    ----------
    kind : {"reduce", "coarser start", "finer start"}
        What is done otherwise.
    start : Grade
        Grade it starts with.
    removed_um : Interval
        Total stock [µm a side].
    left_um : float
        Depth of the defect that stays [µm].
    first_minutes : float
        Time of the first stage [min].
    within_budget : bool
        Whether the upper end of the total is inside the budget.
    text : str
        The same as a sentence.
    """

    kind: str
    start: Grade
    removed_um: Interval
    left_um: float
    first_minutes: float
    within_budget: bool
    text: str


@dataclass(frozen=True, slots=True)
class Progression:
    """A planned progression.

    Parameters
    ----------
    limits : PlanLimits
        What it was planned within.
    defect_um : Interval
        Depth to take out [µm].
    finish : Interval
        Finish-equivalent size wanted at the end [µm]; what lies between its ends is that finish too.
    steps : tuple of Step
        The stages in order; empty where nothing may be taken off.
    removed_total_um : Interval
        All stages together [µm a side].
    budget_low_um, budget_high_um : float
        What the zone can still spare [µm a side].
    within_budget : bool
        Whether the upper end of the total is inside the budget; never while the zone is not said.
    blend : Blend
        How wide to work.
    set_aside : tuple of SetAside
        Owned grades that are not used, with the reason.
    alternatives : tuple of Alternative
        Other ways, given when the budget does not hold.
    reduced : Progression or None
        The plan that takes out as much of the defect as the budget allows; None where none is needed or possible.
    findings : tuple of Finding
        Advice, gravest first.
    """

    limits: PlanLimits
    defect_um: Interval
    finish: Interval
    steps: tuple[Step, ...]
    removed_total_um: Interval
    budget_low_um: float
    budget_high_um: float
    within_budget: bool
    blend: Blend
    set_aside: tuple[SetAside, ...]
    alternatives: tuple[Alternative, ...]
    reduced: Progression | None
    findings: tuple[Finding, ...]

    @property
    def finish_um(self) -> float:
        """The finish wanted [µm]."""
        return self.finish.typical

    @property
    def unmask_step(self) -> Step | None:
        """The stage before which trim is unmasked; None where it stays masked."""
        return next((step for step in self.steps if step.unmask), None)


def blend_width(depth_um: float, defect_length_mm: float | None = None) -> Blend:
    """How wide a defect is blended out.

    Parameters
    ----------
    depth_um : float
        Depth of the defect [µm], 0 to 1000.
    defect_length_mm : float or None
        Its length [mm], 0 to 500; None where it was not measured.

    Returns
    -------
    Blend
        Run-out and, with a length, the length of the area to work.

    Raises
    ------
    InputError
        If a figure is outside its range.

    Notes
    -----
    Run-out 20 to 1, length to depth: FAA AC 43.13-1B, 6-117. Area 2 to 3 times the length of the defect: US Navy
    NAVEDTRA 14315. Both were written for flat aircraft parts.

    Examples
    --------
    >>> blend_width(50).run_out_mm
    1.0
    """
    if not 0 <= depth_um <= 1000:
        raise InputError("defect", "0 to 1000 µm deep", depth_um)
    if defect_length_mm is not None and not 0 <= defect_length_mm <= 500:
        raise InputError("defect length", "0 to 500 mm", defect_length_mm)
    run_out = 20 * depth_um / 1000
    if defect_length_mm is None:
        return Blend(run_out, None, None)
    return Blend(run_out, 2 * defect_length_mm, 3 * defect_length_mm)
