"""A parcel of several pens: what is shared is entered once, with its first pen, and taken over by the others."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pentools.errors import InputError
from pentools.record.bench import open_bench_folder
from pentools.record.coming_back import start_from
from pentools.record.entries import new_entry
from pentools.record.job import Job, open_job, start_job
from pentools.record.stages.job.agree_kinds import ANSWER, YES
from pentools.record.stages.job.came_with_kinds import CAME_WITH
from pentools.record.stages.job.coming_back_kinds import TAKEN_OVER
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER
from pentools.record.stages.job.posting_kinds import ARRIVED, PARCEL
from pentools.record.stages.job.release import ending

if TYPE_CHECKING:
    import os
    from collections.abc import Iterator

    from pentools.record.entries import Entry
    from pentools.record.kinds import Kind

__all__ = ["hand_on", "is_taken_over", "join", "lead_of", "leads", "start"]

_SHARED: dict[str, tuple[str, ...]] = {
    OWNER.key: ("owner", "contact", "address", "may_decide"),
    ARRIVAL.key: ("arrived_on",),
    PARCEL.key: ("carried", "sent_on", "packed", "number", "border"),
    ARRIVED.key: ("arrived_on", "state", "said"),
}
"""What of an entry is the parcel's; value, insurance, mass and whether it is empty are each pen's own."""
_OWN_WORD = "departure"
"""A yes to what was done otherwise is given for one pen."""


def start(bench: str | os.PathLike[str] | None, name: str, *, continues: str = "", came_with: str = "") -> Job:
    """Lay out a new job, perhaps for a pen that was here before or that came in a parcel with others.

    Parameters
    ----------
    bench : path or None
        The bench folder, as `open_bench_folder` takes it.
    name : str
        The new job's name.
    continues : str
        The older job of the same pen, as `start_from` takes it; empty where it was not here before.
    came_with : str
        The job of any pen of the same parcel; empty where it came alone.

    Raises
    ------
    InputError, RecordError
        As `create_job`, `start_from` and `join` do; nothing is laid out where a job that is named is not there.
    """
    if came_with:
        open_job(came_with, bench=open_bench_folder(bench))
    job = start_from(bench, name, continues) if continues else start_job(bench, name)
    if came_with:
        join(job, came_with)
    return job


def lead_of(job: Job) -> str | None:
    """The job of the parcel's first pen, which may be this one; None where a pen came alone."""
    return job.newest(CAME_WITH).lead


def join(job: Job, other: str) -> Job:
    """Say that a pen came in a parcel with another, and take over what they share.

    Parameters
    ----------
    other : str
        The job of any pen of that parcel.

    Returns
    -------
    Job
        The job of the parcel's first pen; it is marked as such.

    Raises
    ------
    InputError
        If it is the same job, or other pens came with this one.
    RecordError
        If there is no such job, or it cannot be read.
    """
    lead = leads(job, other)
    if lead_of(lead) is None:
        lead.record.append(new_entry(CAME_WITH.stage, CAME_WITH.key, {"lead": lead.name}, note=f"came with {job.name}"))
    if lead_of(job) != lead.name:
        job.record.append(new_entry(CAME_WITH.stage, CAME_WITH.key, {"lead": lead.name}))
    hand_on(lead, job)
    return lead


def leads(job: Job, other: str) -> Job:
    """The first pen of the parcel that another one belongs to, if a job can be of it.

    Raises
    ------
    InputError
        If it is the same job, or other pens came with this one.
    RecordError
        If there is no such job, or it cannot be read.
    """
    named = open_job(other, bench=job.bench)
    lead = open_job(lead_of(named) or other, bench=job.bench)
    if job.name in (lead.name, other):
        advice = "Name it in the other job." if other == job.name else f"{other} came with this one already."
        raise InputError("the pen it came with", "that of another job", other, advice)
    if lead_of(job) == job.name:
        raise InputError(
            "the pen it came with", "none, because other pens came with this one", other,
            f"Name {job.name} in the job {lead.name} instead.",
        )  # fmt: skip
    return lead


def is_taken_over(entry: Entry) -> bool:
    """Whether an entry was copied from another job."""
    return entry.note.startswith(TAKEN_OVER)


def hand_on(lead: Job, job: Job) -> int:
    """Let a pen of a parcel have what its first pen's job says of owner, yes, posting and arrival.

    Returns
    -------
    int
        How many entries were added or taken back; nothing is done twice.

    Notes
    -----
    What was entered in the job itself is left alone. Of the yes everything goes along but a departure; the price agreed
    is then one for the whole parcel. A yes that is taken back or corrected in the first job is so here too. A posting
    goes only to a job that has ended, and an arrival with damage to none: each pen says that for itself.
    """
    said = f"{TAKEN_OVER}{lead.name}"
    count = 0
    for kind in (OWNER, ARRIVAL, PARCEL, ARRIVED):
        data = _shared(lead, kind)
        if data and _may_go(job, kind, data) and _differs(job, kind, data, said):
            job.record.append(new_entry(kind.stage, kind.key, data, note=said))
            count += 1
    return count + _hand_on_words(lead, job, said)


def _shared(lead: Job, kind: Kind[Any]) -> dict[str, Any]:
    logged = lead.log(kind)
    data = logged[-1].entry.data if logged else {}
    return {name: data[name] for name in _SHARED[kind.key] if data.get(name) is not None}


def _may_go(job: Job, kind: Kind[Any], data: dict[str, Any]) -> bool:
    if kind is PARCEL:
        return ending(job) is not None
    return kind is not ARRIVED or (data.get("state") in ("whole", "marked", "lost") and bool(job.log(PARCEL)))


def _differs(job: Job, kind: Kind[Any], data: dict[str, Any], said: str) -> bool:
    """Whether nothing of the kind is on record, or only something older that was taken over from there."""
    logged = job.log(kind)
    return not logged or (logged[-1].entry.note == said and logged[-1].entry.data != data)


def _words_of(lead: Job, kind: Kind[Any]) -> Iterator[dict[str, Any]]:
    for logged in lead.log(kind):
        data = dict(logged.entry.data)
        if data.get("action") == _OWN_WORD:
            continue
        for name in ("to", "not_to"):
            if data.get(name):
                data[name] = [action for action in data[name] if action != _OWN_WORD]
        if kind is ANSWER or data.get("to") or data.get("not_to"):
            yield data


def _hand_on_words(lead: Job, job: Job, said: str) -> int:
    """Every yes and no, in the order in which they were said; one that no longer stands in the first job is taken back."""
    count = 0
    for kind in (YES, ANSWER):
        wanted = list(_words_of(lead, kind))
        there = [logged.entry for logged in job.log(kind) if logged.entry.note == said]
        for entry in there:
            if entry.data not in wanted:
                job.withdraw(entry, f"It no longer stands in job {lead.name}.")
                count += 1
        for data in wanted:
            if all(entry.data != data for entry in there):
                job.record.append(new_entry(kind.stage, kind.key, data, note=said))
                count += 1
    return count
