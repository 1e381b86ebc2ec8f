"""The dry trials: what each came to, which size to try next, and whether a dry fit has passed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.calc.seal.formulas import constant_volume_section_mm
from pentools.calc.seal.gland import Gland, Ring
from pentools.calc.seal.sac_fit import SacFit
from pentools.calc.seal.trials import LadderStep, Trial, next_trial_size
from pentools.calc.seal.washers import WasherFit
from pentools.errors import InputError
from pentools.record.forms import Logged
from pentools.record.stages.job.work_kinds import MATERIAL
from pentools.record.stages.seal.kinds import MEASURE, PLACES, TRIAL
from pentools.record.stages.seal.kinds import Trial as TrialEntry
from pentools.record.stages.seal.measure import candidates, gland_of, in_mm, work_out
from pentools.record.view import once_a_state

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["NextTrial", "TrialDone", "dry_fit_passed", "fitted_unlisted", "next_trial", "passed_places", "trials"]

SIZES_FROM_TABLES = 9
SAME_SIZE_MM = 0.02


@dataclass(frozen=True, slots=True)
class TrialDone:
    """One trial at a place.

    Parameters
    ----------
    entry_id : str
        Its entry.
    what : str
        The size in words.
    size_mm : float or None
        What the ladder goes by [mm]: outside diameter in place; None where nothing was measured.
    happened : str
        Its outcome, a key of `pentools.calc.seal.trials.OUTCOMES`.
    dry : bool
        Whether it was tried without sealant.
    """

    entry_id: str
    what: str
    size_mm: float | None
    happened: str
    dry: bool


@dataclass(frozen=True, slots=True)
class NextTrial:
    """What to try next at a place.

    Parameters
    ----------
    step : LadderStep
        The ladder so far: next size, bracket, findings.
    what : str
        The next size in words; empty where there is none.
    ring : Ring or None
        The ring to try, for a ring.
    sizes_mm : tuple of float
        The sizes there are to choose from [mm].
    from_stock : bool
        Whether they are the bench's own, measured rings.
    """

    step: LadderStep
    what: str
    ring: Ring | None
    sizes_mm: tuple[float, ...]
    from_stock: bool


def _ring_size_mm(gland: Gland, inside: float, section: float) -> float:
    """Outside diameter of a ring in place, unsqueezed: it grows with tightness."""
    return max(gland.inner_mm, inside) + 2 * constant_volume_section_mm(inside, section, gland.inner_mm)


@once_a_state
def trials(job: Job, place: str) -> tuple[TrialDone, ...]:
    """The trials at a place that still count, in their order.

    Parameters
    ----------
    place : str
        A key of `PLACES`.

    Returns
    -------
    tuple of TrialDone
        Without those from before the part was altered.
    """
    order = {entry.id: number for number, entry in enumerate(job.record.live("seal"))}
    measures = [logged for logged in job.log(MEASURE) if logged.values.place == place]
    since = max((order[m.entry.id] for m in measures if m.values.altered is True), default=-1)
    gland = gland_of(job, place)
    found = [logged for logged in job.log(TRIAL) if logged.values.place == place]
    return tuple(_done(logged, gland) for logged in found if order[logged.entry.id] >= since)


def _done(logged: Logged[TrialEntry], gland: Gland | None) -> TrialDone:
    values = logged.values
    size = in_mm(values.outside)
    if gland is not None and values.section is not None:
        inside = gland.inner_mm if values.inside is None else values.inside.value
        size = _ring_size_mm(gland, inside, values.section.value)
    return TrialDone(logged.entry.id, values.what or "", size, values.happened or "", values.dry is True)


def _sizes(job: Job, place: str) -> tuple[dict[float, tuple[str, Ring | None]], float | None, bool]:
    """Sizes to choose from with their words, the size to start with, and whether they are the bench's own."""
    fit = candidates(job, place)
    if fit is not None:
        limits = fit.duty.limits
        usable = [
            c
            for c in fit.candidates
            if -limits.loose.offered <= c.fit.stretch_share <= limits.stretch.offered and not _too_wide(c.findings)
        ]
        own = [c for c in usable if c.designation.startswith("own ")]
        at_hand = bool(own) and usable[0] is own[0]  # none of the tables fits better than the best at hand
        chosen = own if at_hand else usable[:SIZES_FROM_TABLES]
        found: dict[float, tuple[str, Ring | None]] = {}
        for candidate in chosen:
            ring = candidate.fit.ring
            words = f"{ring.designation} ({ring.inside_mm:.2f} × {ring.section_mm:.2f} mm)"
            found.setdefault(round(_ring_size_mm(fit.gland, ring.inside_mm, ring.section_mm), 3), (words, ring))
        return found, next(iter(found), None), at_hand
    answer = work_out(job, place)
    result = None if answer is None else answer.result
    if isinstance(result, WasherFit):
        return {mm: (f"{result.kind} of {mm:.2f} mm", None) for mm in result.ladder_mm}, result.outside_mm, False
    if isinstance(result, SacFit):
        material = "latex" if answer is None else str(answer.data["material"])
        kind = "sac" if material == "latex" else f"{material} sac"
        sacs: dict[float, tuple[str, Ring | None]] = {
            round(c.size.outside_mm, 2): (f"{kind} {c.size.label}, {c.size.outside_mm:.2f} mm", None)
            for c in result.choices
        }
        sacs.setdefault(round(result.outside_mm, 2), (f"{kind} of {result.outside_mm:.2f} mm", None))
        return sacs, round(result.outside_mm, 2), False
    return {}, None, False


def _too_wide(findings: tuple[Finding, ...]) -> bool:
    return any(f.level == "stop" and f.topic in ("fill", "outside") for f in findings)


@once_a_state
def next_trial(job: Job, place: str) -> NextTrial | None:
    """The size to try next at a place, by bisection over the stock.

    Parameters
    ----------
    place : str
        A key of `PLACES`.

    Returns
    -------
    NextTrial or None
        None where nothing was measured that a size could be taken from.

    Raises
    ------
    InputError
        If the measurements contradict each other.

    Notes
    -----
    Of rings the bench's own come first; where it has none that goes on, the best of the tables stand in. The ladder
    goes by the outside diameter in place: seat and twice the section that is left after stretching. Trials with
    sealant, and trials of which nothing was measured, do not count.
    """
    words, start, own = _sizes(job, place)
    tried = [Trial(t.size_mm, t.happened) for t in trials(job, place) if t.size_mm is not None and t.dry]
    if not words:
        return None
    step = next_trial_size(tuple(words), tried, start)
    what, ring = words.get(step.next_mm, ("", None)) if step.next_mm is not None else ("", None)
    return NextTrial(step, what, ring, tuple(sorted(words)), own)


def fitted_unlisted(job: Job) -> TrialEntry | None:
    """What held in a dry trial last and does not stand among the parts put in yet; None where there is nothing."""
    listed = {(logged.values.what or "").casefold() for logged in job.log(MATERIAL)}
    passed = passed_places(job)
    for logged in reversed(job.log(TRIAL)):
        values = logged.values
        held = values.happened == "pulls back" and passed.get(values.place or "", False)
        if held and values.what is not None:
            return None if any(_names(what, values.what) for what in listed) else values
    return None


def _names(listed: str, tried: str) -> bool:
    return tried.casefold() in listed


def passed_places(job: Job) -> dict[str, bool]:
    """Every place that was tried dry, and whether its dry fit has passed.

    Returns
    -------
    dict
        Place to True where some size pulled back when it was last tried dry.
    """
    found = {}
    for place in PLACES:
        dry = [t for t in _trials_or_none(job, place) if t.dry]
        if dry:
            found[place] = any(_holds(trial, dry[number + 1 :]) for number, trial in enumerate(dry))
    return found


def _holds(trial: TrialDone, later: Sequence[TrialDone]) -> bool:
    """Whether it pulled back, and did so again whenever the same size was tried later."""
    return trial.happened == "pulls back" and all(t.happened == "pulls back" for t in later if _same_size(t, trial))


def _same_size(one: TrialDone, other: TrialDone) -> bool:
    if one.size_mm is not None and other.size_mm is not None:
        return abs(one.size_mm - other.size_mm) <= SAME_SIZE_MM
    return one.what.casefold() == other.what.casefold()


def _trials_or_none(job: Job, place: str) -> tuple[TrialDone, ...]:
    """The trials at a place, also where its measurements contradict each other."""
    try:
        return trials(job, place)
    except InputError:
        return tuple(_done(logged, None) for logged in job.log(TRIAL) if logged.values.place == place)


@once_a_state
def dry_fit_passed(job: Job) -> bool:
    """Whether sealant may go on: a dry trial pulled back, and no place that was tried is still failing.

    Returns
    -------
    bool
        False while nothing was tried dry.
    """
    places = passed_places(job)
    return bool(places) and all(places.values())
