"""From an older job to the one that goes on from it: facts taken over once, and the link for whoever counts returns."""

from __future__ import annotations

import datetime as dt
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Any

from pentools.errors import InputError, PentoolsError
from pentools.record.bench import open_bench_folder
from pentools.record.each import ask_each
from pentools.record.entries import new_entry
from pentools.record.job import Job, create_job, open_job
from pentools.record.stages.job.coming_back import continued_on
from pentools.record.stages.job.coming_back_kinds import RETURN, TAKEN_OVER
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER
from pentools.record.stages.job.work_kinds import MATERIAL
from pentools.record.stages.repairs.work import mended
from pentools.record.stages.seal.kinds import MEASURE, PLACES, SEALANT, TRIAL, place_words
from pentools.record.stages.treatment.opening_kinds import MATERIAL as MADE_OF
from pentools.record.stages.weighing.kinds import DIMENSIONS

if TYPE_CHECKING:
    import os

    import pandas as pd

    from pentools.record.kinds import Kind

__all__ = ["ReturnLink", "goes_on_from", "link_of", "lots_at", "returns", "start_from", "take_over", "ways_at"]

_STAYS = {"arrived_on", "mass_g", "pieces", "private_note"}
"""What of an arrival is of its own day, and of an owner of its own job."""
_SEALS = ("seals", "filler", "section")


@dataclass(frozen=True, slots=True)
class ReturnLink:
    """A pen that came back, as a ledger counts it.

    Parameters
    ----------
    job, older : str
        The job, and the one it goes on from.
    part, cause, failed : str or None
        The part that failed (a key of the parts), why, and the owner's words.
    covered : bool or None
        Whether it was covered; None where nobody said.
    days : int or None
        From the older job's release to the arrival of this one; None where either day is not on record.
    lots : tuple of str
        Lots of what the older job put in at that part; empty where the part or the lots are not on record.
    ways : tuple of str
        Keys of the ways it was mended, and sealants by place (``shellac at sac``).
    """

    job: str
    older: str
    part: str | None
    cause: str | None
    failed: str | None
    covered: bool | None
    days: int | None
    lots: tuple[str, ...]
    ways: tuple[str, ...]


def start_from(bench: str | os.PathLike[str] | None, name: str, older: str) -> Job:
    """Lay out a new job that goes on from an older one on the same bench.

    Parameters
    ----------
    bench : path or None
        The bench folder, as `open_bench_folder` takes it.
    name, older : str
        The new job's name, and the older one's.

    Raises
    ------
    InputError, RecordError
        As `create_job` and `take_over` do; nothing is laid out where the older job is not there.
    """
    where = open_bench_folder(bench)
    open_job(older, bench=where)
    job = create_job(where, name)
    take_over(job, older)
    return job


def take_over(job: Job, name: str) -> Job:
    """Go on from an older job on the same bench: what is known of the pen and not on record here yet is taken over.

    Parameters
    ----------
    job : Job
        The new job.
    name : str
        The older job's name.

    Returns
    -------
    Job
        The older job.

    Raises
    ------
    InputError
        If it is the same job, or the older one goes on from this one.
    RecordError
        If there is no such job, or it cannot be read.

    Notes
    -----
    Taken over: the owner without the private note, the arrival without day, mass and pieces, what each part is made of, the filler's dimensions,
    what was measured for the seals, what was promised and what was fitted. Each entry says in its remark whence it is.
    """
    older = goes_on_from(job, name)
    said = f"{TAKEN_OVER}{name}"
    for kind in (OWNER, ARRIVAL, DIMENSIONS):
        if older.log(kind) and not job.log(kind):
            _copy(job, kind, older.log(kind)[-1].entry.data, said)
    for log in (MADE_OF, MEASURE):
        if not job.log(log):
            for data in _newest_each(older, log):
                _copy(job, log, data, said)
    known = job.record.latest(RETURN.stage, RETURN.key)
    if known is None or not known.data.get("fitted"):
        job.record.append(
            new_entry(RETURN.stage, RETURN.key, {**_promise(older), **(known.data if known else {}), "older": name}, note=said, replaces=known.id if known else None)
        )  # fmt: skip
    return older


def goes_on_from(job: Job, name: str) -> Job:
    """The older job of that name, if this one can go on from it.

    Raises
    ------
    InputError
        If it is the same job, or the older one goes on from this one.
    RecordError
        If there is no such job, or it cannot be read.
    """
    if name == job.name:
        raise InputError("the older job", "another job", name)
    older = open_job(name, bench=job.bench)
    if job.name in _line_of(older):
        raise InputError("the older job", f"one that does not go on from {job.name}", name)
    return older


def _line_of(job: Job) -> tuple[str, ...]:
    """The older jobs that a job goes on from, one after the other; each once."""
    found: list[str] = []
    name = continued_on(job)
    while name and name not in found:
        found.append(name)
        try:
            name = continued_on(open_job(name, bench=job.bench))
        except PentoolsError:
            break
    return tuple(found)


def _copy(job: Job, kind: Kind[Any], data: dict[str, Any], note: str) -> None:
    names = {field.name for field in kind.fields if field.kind != "photo"}
    kept = {name: value for name, value in data.items() if name in names}
    kept = {name: value for name, value in kept.items() if name not in _STAYS}
    if kept:
        job.record.append(new_entry(kind.stage, kind.key, kept, note=note))


def _newest_each(job: Job, kind: Kind[Any]) -> list[dict[str, Any]]:
    """The newest entry a part or place; a part that was altered is as it was measured last."""
    name = "part" if kind is MADE_OF else "place"
    newest = {logged.entry.data.get(name): logged.entry.data for logged in job.log(kind)}
    return [{key: value for key, value in data.items() if key != "altered"} for data in newest.values()]


def _promise(older: Job) -> dict[str, Any]:
    result = older.newest(RESULT)
    found: dict[str, Any] = {"promised_until": result.promise_until, "promised": result.follow_up}
    put_in = _put_in(older)
    fitted = list(dict.fromkeys(f"{where}: {what}" if where else what for where, what, _ in put_in))
    lots = list(dict.fromkeys(f"{where}: {lot}" for where, _, lot in put_in if lot))
    found |= {"fitted": [line.replace(";", ",") for line in fitted], "lots": [line.replace(";", ",") for line in lots]}
    return {name: value for name, value in found.items() if value}


def _put_in(older: Job) -> list[tuple[str, str, str]]:
    """What the older job put in and what holds it: where, what, and its lot."""
    parts = MATERIAL.field("part")
    added = [logged.values for logged in older.log(MATERIAL) if logged.values.way == "added" and logged.values.what]
    found = [(parts.shown(v.part) if v.part else "", v.what or "", v.lot or "") for v in added]
    sealed = {logged.values.place: logged.values for logged in older.log(SEALANT)}
    found += [
        (place_words(place), SEALANT.field("sealant").shown(v.sealant), v.lot or "")
        for place, v in sealed.items()
        if v.sealant not in (None, "none")
    ]
    return found + [(parts.shown(one.values.part), one.row.label, one.values.lot or "") for one in mended(older)]


def link_of(job: Job) -> ReturnLink | None:
    """How a job hangs together with the one it goes on from; None where it goes on from none.

    Returns
    -------
    ReturnLink or None
        Lots and ways are read from the older job as it lies on the bench; empty where it is not there.
    """
    back = job.newest(RETURN)
    if back.older is None:
        return None
    try:
        older: Job | None = open_job(back.older, bench=job.bench)
    except PentoolsError:
        older = None
    lots = () if older is None or back.part is None else lots_at(older, back.part)
    ways = () if older is None or back.part is None else ways_at(older, back.part)
    days = None if older is None else _days(older.newest(RESULT).released_on, job.newest(ARRIVAL).arrived_on)
    return ReturnLink(job.name, back.older, back.part, back.cause, back.failed, back.covered, days, lots, ways)


def _days(released: str | None, arrived: str | None) -> int | None:
    if released is None or arrived is None:
        return None
    return (dt.date.fromisoformat(arrived) - dt.date.fromisoformat(released)).days


def lots_at(older: Job, part: str) -> tuple[str, ...]:
    """The lots of what a job put in at a part, each once."""
    added = [logged.values for logged in older.log(MATERIAL) if logged.values.way == "added"]
    found = [values.lot for values in added if values.part == part]
    found += [one.values.lot for one in mended(older) if one.values.part == part]
    if part in _SEALS:
        found += [logged.values.lot for logged in older.log(TRIAL) if logged.values.happened == "pulls back"]
        found += [logged.values.lot for logged in older.log(SEALANT)]
    return tuple(dict.fromkeys(lot for lot in found if lot))


def ways_at(older: Job, part: str) -> tuple[str, ...]:
    """The ways a part was mended, and for a seal the sealants by place, each once."""
    found = [one.row.key for one in mended(older) if one.values.part == part]
    if part in _SEALS:
        sealed = [logged.values for logged in older.log(SEALANT)]
        found += [f"{v.sealant} at {v.place}" for v in sealed if v.sealant not in (None, "none") and v.place in PLACES]
    return tuple(dict.fromkeys(found))


def returns(bench: str | os.PathLike[str] | None = None) -> pd.DataFrame:
    """Every pen on a bench that came back.

    Parameters
    ----------
    bench : str, path or None
        The bench folder; the usual one by default.

    Returns
    -------
    pandas.DataFrame
        One row a return, with the columns of `ReturnLink`; a job that cannot be read is left out (`pentools check`
        says why).
    """
    import pandas as pd

    links = [link for _, link in ask_each(open_bench_folder(bench), link_of)]
    columns = list(ReturnLink.__dataclass_fields__)
    return pd.DataFrame([asdict(link) for link in links if link is not None], columns=columns)
