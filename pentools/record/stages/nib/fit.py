"""Nib, feed and cap from the record: will the nib touch the inner cap, and between what temperatures the feed is set."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.nib.clearance import Clearance, cap_clearance
from pentools.calc.nib.setting import FeedWindow
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.nib.kinds import FEED_SETTING, FIT, FeedSetting, Fit
from pentools.record.stages.treatment.facts import materials_of
from pentools.record.view import once_a_state
from pentools.sums.nib.setting import neighbours_of, window_of
from pentools.systems.registry import system_named
from pentools.tables.nib import figure

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.units import Reading

__all__ = [
    "clearance_of",
    "fit_findings",
    "nipple_of",
    "reach_of",
    "room_now",
    "setting_findings",
    "setting_window",
    "window_for",
]


def reach_of(job: Job, when: str) -> Reading | None:
    """How far the nib stood out of the section, as found or after the work.

    Parameters
    ----------
    when : str
        "found" or "after".

    Returns
    -------
    Reading or None
        As found: what the intake measured, where it was not measured again. None where it is not known.
    """
    said = _newest(job, when, "reach")
    return job.newest(ARRIVAL).nib_mm if said is None and when == "found" else said


@once_a_state
def clearance_of(job: Job, when: str) -> Clearance | None:
    """Room between nib and inner cap; the cap's depth is measured once.

    Parameters
    ----------
    when : str
        "found" or "after".

    Returns
    -------
    Clearance or None
        None where reach or inner cap was not measured.
    """
    reach = reach_of(job, when)
    inner = _newest(job, when, "inner_cap") or _newest(job, "", "inner_cap")
    if reach is None or inner is None:
        return None
    seated = next((f.seated for f in reversed(_fits(job)) if f.seated is not None), None)
    limit, doubt = figure("cap-clearance"), figure("set-depth").typical or 0.0
    return cap_clearance(
        reach.value, inner.value, reach_u_mm=_u(reach, doubt), inner_cap_u_mm=_u(inner, doubt),
        least_mm=limit.low or 0.0, good_mm=limit.typical or 0.0, seated=seated,
    )  # fmt: skip


def room_now(job: Job) -> Clearance | None:
    """Room between nib and inner cap as it is now: after the work, else as found."""
    return clearance_of(job, "after") or clearance_of(job, "found")


def fit_findings(job: Job) -> tuple[Finding, ...]:
    """The verdict on the cap as it is now, and what moved."""
    found = []
    now = room_now(job)
    if now is not None:
        found.append(now.finding)
    before, after = reach_of(job, "found"), reach_of(job, "after")
    if before is not None and after is not None and clearance_of(job, "after") is None:
        found.append(Finding("warning", "nib.reach-moved", before=before.value, after=after.value))
    return gravest_first(found)


def nipple_of(job: Job) -> str:
    """What is on the nipple, by the filling system: a sac, nothing, or not known."""
    system = job.newest(ARRIVAL).system
    if system is None:
        return "unknown"
    return "sac" if "sac" in system_named(system).parts else "none"


@once_a_state
def setting_window(job: Job, *, alone: bool = False, nipple: str = "") -> FeedWindow:
    """The heat window of this pen's feed.

    Parameters
    ----------
    alone : bool
        Whether nib and feed are out of the section.
    nipple : str
        What is on the nipple; empty: by the filling system.

    Returns
    -------
    FeedWindow
        The strictest of feed, section and nipple; what is not named is the strictest.
    """
    # of several materials of a feed the one that is not hard rubber decides
    feeds = sorted(materials_of(job, "feed"), key=lambda name: window_of(name, ()).kind == "open")
    beside = () if alone else neighbours_of(materials_of(job, "section"), nipple or nipple_of(job))
    return window_of(feeds[0], beside)


def window_for(job: Job, said: FeedSetting) -> FeedWindow:
    """The window of a setting as it is entered: one that does not say so was done in the section."""
    return setting_window(job, alone=said.alone is True, nipple=said.nipple or "")


def setting_findings(job: Job) -> tuple[Finding, ...]:
    """Heat on a feed past what it, or its neighbours, bear."""
    found: list[Finding] = []
    for logged in job.log(FEED_SETTING):
        said = logged.values
        if said.way == "cold":
            continue
        window = window_for(job, said)
        if window.kind != "open":
            found += window.findings
        elif said.surface is None:
            found.append(Finding("warning", "nib.setting-unmeasured"))
        elif window.too_hot(said.surface.value):
            found.append(Finding("stop", "nib.setting-hot", surface=said.surface.value, high=window.high_c))
    last = job.log(FEED_SETTING)
    if last and last[-1].values.gap in ("refused", "falls"):
        found.append(Finding("note", "nib.feed-off" if last[-1].values.gap == "falls" else "nib.feed-tight"))
    return gravest_first(found)


def _fits(job: Job) -> list[Fit]:
    return [logged.values for logged in job.log(FIT)]


def _newest(job: Job, when: str, name: str) -> Reading | None:
    found = [getattr(f, name) for f in _fits(job) if not when or f.when == when]
    said: list[Reading] = [reading for reading in found if reading is not None]
    return said[-1] if said else None


def _u(reading: Reading, usual: float) -> float:
    return usual if reading.standard_uncertainty is None else reading.standard_uncertainty
