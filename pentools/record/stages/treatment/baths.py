"""What the cleaning comes to: soaks with their clocks, baths against their limits, and what is still drying."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.treatment.soak import Soak, SoakState, soak_clock
from pentools.numbers import capital
from pentools.record.entries import now
from pentools.record.kinds import as_dict
from pentools.record.stages.common import PARTS
from pentools.record.stages.treatment.cleaning_kinds import (
    BATH,
    BATHS,
    DRYING,
    FLUSH_MIX,
    SOAK_ENDED,
    SOAK_STARTED,
)
from pentools.record.stages.treatment.facts import limit_for
from pentools.record.view import once_a_state
from pentools.sums.treatment.mix import MIX

if TYPE_CHECKING:
    from pentools.calc.treatment.limits import TreatmentLimit
    from pentools.record.job import Job
    from pentools.sums.base import SumAnswer
    from pentools.units import Reading

__all__ = [
    "BATHS",
    "Drying",
    "SoakRun",
    "bath_findings",
    "bath_of",
    "baths_done",
    "cleaning_findings",
    "cleaning_sentence",
    "drying_of",
    "first_words",
    "mix_of",
    "past_limit",
    "running_soaks",
    "soaks_of",
]

_LABELS, _PARTS = dict(BATHS), dict(PARTS)


@dataclass(frozen=True, slots=True)
class SoakRun:
    """One soak, running or over.

    Parameters
    ----------
    part, bath : str
        Keys of the part and of what it is in.
    started : datetime
        When it went in.
    ended : datetime or None
        When it came out; None while it runs.
    limit_min : float or None
        Longest time [min]: the shorter of the table's and the bench's own; None where there is neither.
    strength : str
        Strength, or what else is in it; empty where that was not said.
    came_out : str
        What came out of it.
    """

    part: str
    bath: str
    started: dt.datetime
    ended: dt.datetime | None
    limit_min: float | None
    strength: str = ""
    came_out: str = ""

    @property
    def label(self) -> str:
        """Part and bath in words."""
        return f"{_PARTS[self.part]} in {_LABELS[self.bath]}"

    @property
    def minutes(self) -> float | None:
        """How long it was in [min]; None while it runs."""
        return None if self.ended is None else (self.ended - self.started).total_seconds() / 60

    def clock(self, moment: dt.datetime) -> SoakState:
        """Where it stands at a moment (or stood at its end)."""
        soak = Soak(self.label, self.started.timestamp(), self.limit_min)
        return soak_clock(soak, max((self.ended or moment).timestamp(), self.started.timestamp()))


@dataclass(frozen=True, slots=True)
class Drying:
    """A part that dries.

    Parameters
    ----------
    part : str
        Key of the part.
    until : datetime
        Earliest moment of the next step.
    over : bool
        Whether that moment is past.
    """

    part: str
    until: dt.datetime
    over: bool

    @property
    def sentence(self) -> str:
        """When the next step may begin, in words."""
        name = _PARTS[self.part]
        return f"{name} dry" if self.over else f"{name} dries until {self.until:%d %b %H:%M}"


@once_a_state
def soaks_of(job: Job) -> tuple[SoakRun, ...]:
    """All soaks of a job in order; an end belongs to the last soak of the same part that still runs."""
    found: list[SoakRun] = []
    ends = {logged.entry.id: logged.values for logged in job.log(SOAK_ENDED)}
    starts = {logged.entry.id: logged.values for logged in job.log(SOAK_STARTED)}
    for entry in job.record.live("clean"):
        start, end = starts.get(entry.id), ends.get(entry.id)
        if start is not None and start.part is not None and start.bath is not None:
            limit = _limit_min(job, start.part, start.bath, start.limit)
            found.append(SoakRun(start.part, start.bath, entry.time, None, limit, start.strength or ""))
        if end is not None:
            running = [i for i, soak in enumerate(found) if soak.part == end.part and soak.ended is None]
            if running:
                found[running[-1]] = replace(found[running[-1]], ended=entry.time, came_out=end.came_out or "")
    return tuple(found)


def _limit_min(job: Job, part: str, bath: str, own: Reading | None) -> float | None:
    limits = (limit_for(job, part, bath).max_minutes, None if own is None else own.value)
    return min((limit for limit in limits if limit is not None), default=None)


def running_soaks(job: Job) -> tuple[SoakRun, ...]:
    """The soaks that have no end yet."""
    return tuple(soak for soak in soaks_of(job) if soak.ended is None)


@once_a_state
def baths_done(job: Job) -> tuple[tuple[str, str, float | None, str], ...]:
    """Baths and soaks that are over: part, bath, minutes [min] or None, what came out."""
    found = [bath for logged in job.log(BATH) if (bath := bath_of(job, logged.entry.id)) is not None]
    return (*found, *((s.part, s.bath, s.minutes, s.came_out) for s in soaks_of(job) if s.ended is not None))


def bath_of(job: Job, entry_id: str) -> tuple[str, str, float | None, str] | None:
    """The bath that one entry holds, as `baths_done` gives it; None where there is none of that id."""
    said = next((logged.values for logged in job.log(BATH) if logged.entry.id == entry_id), None)
    if said is None or said.part is None or said.bath is None:
        return None
    return said.part, said.bath, None if said.minutes is None else said.minutes.value, said.came_out or ""


def past_limit(job: Job, part: str, bath: str, minutes: float | None) -> Finding | None:
    """What a bath says against the limit of its part; None where it was within.

    Parameters
    ----------
    part, bath : str
        Keys of the part and of what it was in.
    minutes : float or None
        How long [min], 0 or more; None where it was not noted.

    Returns
    -------
    Finding or None
        A warning where it went past its limit, or was never allowed.
    """
    limit = limit_for(job, part, bath)
    what, most = f"{_PARTS[part]} in {_LABELS[bath]}", limit.max_minutes
    if limit.verdict == "never":
        return Finding("warning", "treatment.never", what=what, why=limit.reason)
    if most is not None and minutes is not None and minutes > most:
        return Finding("warning", "treatment.too-long", what=what, minutes=minutes, limit=most)
    return None


def bath_findings(job: Job) -> tuple[Finding, ...]:
    """What the baths that are over say against the limits: one for each that went past its limit, or was never allowed."""
    found = (past_limit(job, part, bath, minutes) for part, bath, minutes, _ in baths_done(job))
    return tuple(finding for finding in found if finding is not None)


def drying_of(job: Job, moment: dt.datetime | None = None) -> tuple[Drying, ...]:
    """What dries, and until when; the newest entry of each part counts.

    Parameters
    ----------
    moment : datetime or None
        The moment asked about; now by default.

    Returns
    -------
    tuple of Drying
        The one that is dry last comes last.
    """
    at = moment or now()
    newest: dict[str, Drying] = {}
    for logged in job.log(DRYING):
        part, hours, ago = logged.values.part, logged.values.hours, logged.values.begun_ago
        if part is None or hours is None:
            continue
        begun = logged.entry.time - dt.timedelta(hours=0.0 if ago is None else ago.value)
        until = begun + dt.timedelta(hours=hours.value)
        newest[part] = Drying(part, until, until <= at)
    return tuple(sorted(newest.values(), key=lambda dry: dry.until))


@once_a_state
def mix_of(job: Job) -> SumAnswer | None:
    """The flush mix as it was entered; None where none was.

    Returns
    -------
    SumAnswer or None
        The answer of the mix sum.

    Raises
    ------
    InputError
        If a figure is out of its range.
    """
    said = job.newest(FLUSH_MIX)
    return None if said.ammonia is None else MIX.run(as_dict(FLUSH_MIX, said))


def cleaning_findings(job: Job, moment: dt.datetime | None = None) -> tuple[Finding, ...]:
    """Everything worth knowing about the cleaning now, gravest first.

    Parameters
    ----------
    moment : datetime or None
        The moment asked about; now by default.

    Returns
    -------
    tuple of Finding
        Running clocks, baths past their limits, the flush mix, and what still dries.
    """
    at = moment or now()
    found = [soak.clock(at).finding for soak in running_soaks(job)]
    found += bath_findings(job)
    mix = mix_of(job)
    found += mix.findings if mix is not None else ()
    found += [Finding("note", "treatment.drying", dry=dry.sentence) for dry in drying_of(job, at) if not dry.over]
    return gravest_first(found)


def cleaning_sentence(job: Job, moment: dt.datetime | None = None) -> str:
    """Where the cleaning stands, as one sentence: the clock that is due first, else what dries, else what was done.

    Parameters
    ----------
    moment : datetime or None
        The moment asked about; now by default.

    Returns
    -------
    str
        What to know before the next touch.
    """
    at = moment or now()
    running = [(soak, soak.clock(at)) for soak in running_soaks(job)]
    if running:
        soak, state = min(running, key=lambda pair: float("inf") if pair[1].left_min is None else pair[1].left_min)
        due = "" if not soak.limit_min else f" It comes out at {soak.started + dt.timedelta(minutes=soak.limit_min):%H:%M}."  # fmt: skip
        return f"{capital(state.finding.text)}{due}"
    wet = [dry for dry in drying_of(job, at) if not dry.over]
    if wet:
        return f"The {wet[-1].sentence}; until then nothing is sealed, weighed or warmed."
    count = len(baths_done(job))
    if not count:
        return "Nothing has been in a bath yet. Choose the part and what it would go into, and its limit stands here."
    return f"{count} bath{'s' if count > 1 else ''} so far, all over and dry."


def first_words(limit: TreatmentLimit) -> str:
    """A limit as the panel shows it before anything is saved."""
    minutes = f" At most {limit.max_minutes:g} min." if limit.verdict != "never" and limit.max_minutes else ""
    return f"{limit.sentence}{minutes}"
