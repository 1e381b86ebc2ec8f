"""Parcels of several pens: which pens came together, what they share, and the price that holds for all of them."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING

import msgspec

from pentools.books.asked import Question, ask_bench
from pentools.record.came_with import hand_on, is_taken_over, lead_of
from pentools.record.job import open_job
from pentools.record.stages.job.agree import agreed_price

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.job import Job

__all__ = ["hand_on_to_all", "members", "parcel_of", "parcels_on", "shares_price"]


class _Came(msgspec.Struct, frozen=True):
    lead: str | None


def _came(job: Job) -> _Came:
    return _Came(lead_of(job))


CAME = Question("came with", _Came, _came)


def parcel_of(job: Job) -> str | None:
    """The name of the job of the parcel's first pen; None where the pen came alone.

    Returns
    -------
    str or None
        Of the first pen its own name.
    """
    return lead_of(job)


def parcels_on(bench: Bench) -> Mapping[str, tuple[str, ...]]:
    """Every parcel of several pens on a bench: the first pen's job to all its jobs, the first one first."""
    found: dict[str, list[str]] = {}
    for name, came in ask_bench(bench, CAME).answers.items():
        if came.lead is not None:
            found.setdefault(came.lead, []).append(name)
    return MappingProxyType(
        {lead: tuple(sorted(names, key=lambda name: (name != lead, name))) for lead, names in sorted(found.items())}
    )


def members(bench: Bench, lead: str) -> tuple[str, ...]:
    """The jobs of a parcel that lie on the bench, its first pen's first.

    Parameters
    ----------
    lead : str
        The job of the first pen, as `parcel_of` names it.
    """
    return parcels_on(bench).get(lead, ())


def shares_price(job: Job) -> bool:
    """Whether the price that the owner agreed to is one for the whole parcel.

    Returns
    -------
    bool
        True where the yes that names it was taken over from the first pen's job, or is that job's own; a price that
        was agreed in a job of its own is for that pen alone.
    """
    lead, price = lead_of(job), agreed_price(job)
    return lead is not None and price is not None and (lead == job.name or is_taken_over(price.entry))


def hand_on_to_all(job: Job) -> dict[str, int]:
    """Let every other pen of a parcel have what its first pen's job says of owner, yes, posting and arrival.

    Returns
    -------
    dict of str to int
        Job to the number of entries that were added or taken back there; empty where the pen came alone.
    """
    lead = lead_of(job)
    if lead is None:
        return {}
    first = job if lead == job.name else open_job(lead, bench=job.bench)
    others = [name for name in members(job.bench, lead) if name != lead]
    return {name: hand_on(first, job if name == job.name else open_job(name, bench=job.bench)) for name in others}
