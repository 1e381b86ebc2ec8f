"""Hold points: steps that must not start until something is known or done, and how they are released."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.errors import InputError

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["HOLDS", "HoldPoint", "held", "release_reason"]


@dataclass(frozen=True, slots=True)
class HoldPoint:
    """One hold point.

    Parameters
    ----------
    key : str
        Its name in the record.
    step : str
        The step that is held, in words.
    reason : callable
        Gives the reason why it is held in a job; empty where nothing stands in the way.
    """

    key: str
    step: str
    reason: Callable[[Job], str]


def _before_release(job: Job) -> str:
    from pentools.record.stages.limits import limits_written

    ending = job.values("release", "result")["ending"]
    if ending in ("stopped", "returned"):
        return ""
    missing = []
    if not job.record.live("fill test", "leak check"):
        missing.append("the leak check has not been done")
    if not limits_written(job):
        missing.append("the limits have not been written")
    return " and ".join(missing)


def _before_polish(job: Job) -> str:
    from pentools.record.stages.finish import POLISH_HOLD

    return POLISH_HOLD.reason(job)


HOLDS: dict[str, HoldPoint] = {
    "release": HoldPoint("release", "releasing the pen", _before_release),
    "polish": HoldPoint("polish", "polishing", _before_polish),
}


def held(job: Job, key: str) -> str:
    """Why a step is held.

    Parameters
    ----------
    job : Job
        The job.
    key : str
        The hold point.

    Returns
    -------
    str
        The reason in words; empty where the step may go on, because nothing stands in the way or because the
        hold was released with a reason.

    Raises
    ------
    InputError
        If there is no such hold point.
    """
    if key not in HOLDS:
        raise InputError("hold point", "one of " + ", ".join(HOLDS), key)
    if job.record.releases(key):
        return ""
    return HOLDS[key].reason(job)


def release_reason(job: Job, key: str) -> str:
    """The reason that was given when a hold was released; empty where it was not."""
    releases = job.record.releases(key)
    return str(releases[-1].data.get("reason", "")) if releases else ""
