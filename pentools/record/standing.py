"""Every job on a bench in a line: which pen it is, what comes next, and what it waits for."""

from __future__ import annotations

import datetime as dt
import logging
import re
import unicodedata
from dataclasses import dataclass

from pentools.errors import InputError, PentoolsError
from pentools.record.ahead import ahead_of
from pentools.record.bench import MOST_LETTERS, Bench
from pentools.record.job import Job, create_job, jobs_on, open_job
from pentools.record.stages.job.ending_kinds import ENDINGS
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.release import ending
from pentools.record.view import SPOILT, why_not

__all__ = ["Standing", "job_name_for", "new_pen", "standing_on"]

_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Standing:
    """Where a job stands.

    Parameters
    ----------
    name : str
        The job's name.
    pen : str
        The pen in a few words; empty where nothing was said of it.
    next : str
        The next step, as a clause; how it ended for a job that has; why it cannot be read for one that cannot.
    waits : tuple of str
        What is held now, each with its reason.
    state : {"open", "ended", "unread"}
        Whether it goes on.
    """

    name: str
    pen: str
    next: str
    waits: tuple[str, ...] = ()
    state: str = "open"


def standing_on(bench: Bench) -> tuple[Standing, ...]:
    """Every job on a bench: those that go on, then those that cannot be read, then those that have ended.

    Raises
    ------
    RecordError
        If the bench folder cannot be looked into; a job that cannot be read stands in nobody's way.
    """
    order = ("open", "unread", "ended")
    return tuple(sorted((_standing(bench, name) for name in jobs_on(bench)), key=lambda one: order.index(one.state)))


def _standing(bench: Bench, name: str) -> Standing:
    try:
        return _of(open_job(name, bench=bench))
    except PentoolsError as error:
        return Standing(name, "", str(error), state="unread")
    except SPOILT as error:
        return Standing(name, "", why_not(error), state="unread")
    except Exception as error:  # noqa: BLE001 - one job must not hide the others
        _log.debug("a job could not be looked at", exc_info=True)
        return Standing(name, "", f"Something unexpected went wrong ({type(error).__name__}).", state="unread")


def _of(job: Job) -> Standing:
    pen, end = (job.newest(ARRIVAL).pen or "").strip(), ending(job)
    if end is not None:
        return Standing(job.name, pen, dict(ENDINGS)[end], state="ended")
    ahead = ahead_of(job)
    return Standing(job.name, pen, ahead.words, tuple(f"{what} waits: {why}" for what, why in ahead.waits))


def job_name_for(bench: Bench, pen: str, today: dt.date) -> str:
    """A name for a new job: the year, a number that is free, and the pen in plain letters.

    Parameters
    ----------
    pen : str
        The pen in a few words.
    today : date
        The day it is laid out.

    Returns
    -------
    str
        Such as ``2026-014-green-piston-filler``.

    Raises
    ------
    InputError
        If nothing was said of the pen.
    """
    if not pen.strip():
        raise InputError("the pen", "described in a few words", pen, "Type it like: black lever filler, 1920s.")
    plain = unicodedata.normalize("NFKD", pen).encode("ascii", "ignore").decode().lower()
    words = re.sub(r"[^a-z0-9]+", "-", plain).strip("-") or "pen"
    taken = [int(found[1]) for name in jobs_on(bench) if (found := re.match(rf"{today.year}-(\d+)(?:-|$)", name))]
    start = f"{today.year}-{max(taken, default=0) + 1:03d}-"
    return (start + words)[: MOST_LETTERS // 2].rstrip("-")


def new_pen(bench: Bench, pen: str, today: dt.date) -> Job:
    """Lay out a job for a pen that has arrived, with what was said of it as its first entry.

    Raises
    ------
    InputError, RecordError
        As `job_name_for` and `create_job` do.
    """
    job = create_job(bench, job_name_for(bench, pen, today))
    job.add(ARRIVAL.stage, ARRIVAL.key, {"pen": pen, "arrived_on": today.isoformat()})
    return job
