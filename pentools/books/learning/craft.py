"""What each job says of the craft: how far the pen fills, which seal held, how fast a grade cut, what came back and why."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

import msgspec

from pentools.books.asked import Question
from pentools.errors import InputError
from pentools.record.after_work import filled_now
from pentools.record.coming_back import lots_at, ways_at
from pentools.record.stages.common import PARTS
from pentools.record.stages.finish.rates import job_log
from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.release import ended_on, ending
from pentools.record.stages.seal.kinds import SEALANT
from pentools.record.stages.seal.measure import bore_mm, measured, places_in_use
from pentools.record.stages.seal.trials import trials
from pentools.record.view import SPOILT
from pentools.systems.registry import SYSTEMS

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["CRAFT", "CutRate", "HeldSize", "JobCraft", "craft_of"]


class HeldSize(msgspec.Struct, frozen=True):
    """A seal that held when it was tried dry: where, the bore there and its own size [mm]."""

    place: str
    bore_mm: float
    size_mm: float


class CutRate(msgspec.Struct, frozen=True):
    """How fast a grade took a material off [µm/min]."""

    material: str
    grade: str
    um_per_min: float


class JobCraft(msgspec.Struct, frozen=True, omit_defaults=True, gc=False):
    """What a job says of the craft.

    `share` [1] and `ml` [mL] are of the last filling after the work; `lots` and `ways` hold what was put in and done at a
    part as (part, lot or way).
    """

    system: str = ""
    ending: str = ""
    ended: dt.date | None = None
    share: float | None = None
    ml: float | None = None
    seal: str = ""
    held: tuple[HeldSize, ...] = ()
    rates: tuple[CutRate, ...] = ()
    lots: tuple[tuple[str, str], ...] = ()
    ways: tuple[tuple[str, str], ...] = ()
    older: str = ""
    part: str = ""
    cause: str = ""


def craft_of(job: Job) -> JobCraft:
    """What a job's record says of the craft."""
    system, back = job.newest(ARRIVAL).system, job.newest(RETURN)
    share, volume = filled_now(job)
    held = tuple(_held(job))
    parts = [part for part, _ in PARTS]
    return JobCraft(
        system=system if system in SYSTEMS else "",
        ending=ending(job) or "",
        ended=ended_on(job),
        share=share,
        ml=volume,
        seal=held[-1].place if held else _sealed(job),
        held=held,
        rates=tuple(_rates(job)),
        lots=tuple((part, lot) for part in parts for lot in lots_at(job, part)),
        ways=tuple((part, way) for part in parts for way in ways_at(job, part)),
        older=back.older or "",
        part=back.part or "",
        cause=back.cause or "",
    )


CRAFT = Question("craft", JobCraft, craft_of)


def _held(job: Job) -> Iterator[HeldSize]:
    """Of each place that was tried dry the last size that held, where its bore was measured."""
    for place in places_in_use(job):
        bores = bore_mm(measured(job, place))
        try:
            held = [t.size_mm for t in trials(job, place) if t.dry and t.happened == "pulls back" and t.size_mm]
        except InputError:  # measurements that contradict each other say nothing of a size
            continue
        if bores and held:
            yield HeldSize(place, round(math.fsum(bores) / len(bores), 4), round(held[-1], 4))


def _sealed(job: Job) -> str:
    """The place that was sealed last, where no trial says more; empty where none was."""
    sealed = [logged.values.place for logged in job.log(SEALANT)]
    return sealed[-1] or "" if sealed else ""


def _rates(job: Job) -> Iterator[CutRate]:
    """Of each measured run of one grade how fast it cut, where the removal is told from its uncertainty."""
    try:
        stages = job_log(job)
    except SPOILT:
        return
    for stage in stages:
        row = stage.row
        if stage.usable and row.basis == "min":
            name = f"{row.grade.scale} {row.grade.name}"
            yield CutRate(row.material, name, round(row.removed_um / row.amount, 4))
