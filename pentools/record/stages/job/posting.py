"""Posting: how the pen was packed and sent, what it was insured for, and how it arrived."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from pentools.calc.base.findings import Finding
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import OWNER
from pentools.record.stages.job.posting_kinds import ARRIVED, CARRIED, PARCEL, STATES

__all__ = ["POSTING", "declared_value", "insured_since", "insured_value", "posting_findings", "posting_sentence"]

_NUMBERED = ("registered", "insured", "courier")


def declared_value(job: Job) -> str:
    """The value declared at intake as an amount, such as ``180 EUR``; empty where none can be read from it."""
    money = job.money(job.newest(OWNER).declared_value)
    return "" if money is None else f"{money.amount.normalize():f} {money.currency}"


def insured_value(job: Job) -> tuple[str, str]:
    """What the pen is insured for and on what basis: as posted, else as declared at intake; empty where nobody said."""
    parcel, owner = job.newest(PARCEL), job.newest(OWNER)
    return parcel.insured or owner.declared_value or "", parcel.basis or owner.value_basis or ""


def insured_since(job: Job) -> dt.date | None:
    """The day on which the value that a pen is insured for was said; None where none was."""
    for kind, name in ((PARCEL, "insured"), (OWNER, "declared_value")):
        value = getattr(job.newest(kind), name)
        if value is not None:
            said = [
                entry
                for entry in job.record.entries
                if (entry.stage, entry.kind, entry.data.get(name)) == (kind.stage, kind.key, value)
            ]
            return min(entry.time for entry in said).date() if said else None
    return None


def posting_sentence(job: Job) -> str:
    """Where the pen is, in one sentence."""
    parcel, arrived = job.newest(PARCEL), job.newest(ARRIVED)
    if arrived.state == "lost":
        return "It did not arrive."
    if arrived.state is not None:
        when = f" on {arrived.arrived_on}" if arrived.arrived_on else ""
        return f"It arrived{when}: {dict(STATES)[arrived.state]}."
    if parcel.carried == "hand":
        return f"Handed over on {parcel.sent_on}." if parcel.sent_on else "Handed over."
    if parcel.carried is not None:
        since = f" since {parcel.sent_on}" if parcel.sent_on else ""
        return f"On its way{since}: {dict(CARRIED)[parcel.carried]}."
    return "It has not been sent."


def _state(job: Job) -> StageState:
    parcel, arrived = job.newest(PARCEL), job.newest(ARRIVED)
    if parcel.carried is None and arrived.state is None:
        return StageState("not begun")
    over = arrived.state not in (None, "damaged", "lost") or (parcel.carried == "hand" and arrived.state is None)
    return StageState("done" if over else "open", posting_sentence(job).rstrip("."))


def posting_findings(job: Job) -> tuple[Finding, ...]:
    """What is odd or missing about the parcel."""
    return (*_on_parcel(job), *_on_arrival(job))


def _on_parcel(job: Job) -> Iterator[Finding]:
    parcel, result = job.newest(PARCEL), job.newest(RESULT)
    if parcel.carried is None:
        return
    if result.ending is None:
        yield Finding("warning", "job.posted-early")
    if parcel.empty is False:
        yield Finding("warning", "job.posted-full")
    insured, declared = job.money(parcel.insured), job.money(job.newest(OWNER).declared_value)
    if (
        insured is not None
        and declared is not None
        and insured.currency == declared.currency
        and insured.amount < declared.amount
    ):
        yield Finding("warning", "job.insured-short", insured=parcel.insured, declared=declared_value(job))
    if parcel.insured is not None and not insured_value(job)[1]:
        yield Finding("note", "job.insured-basis")
    if parcel.carried in _NUMBERED and parcel.number is None:
        yield Finding("note", "job.parcel-number", carried=dict(CARRIED)[parcel.carried])
    if parcel.weighs is not None and result.mass_g is not None and parcel.weighs.value <= result.mass_g.value:
        yield Finding("warning", "job.parcel-light", parcel=parcel.weighs.value, pen=result.mass_g.value)


def _on_arrival(job: Job) -> Iterator[Finding]:
    arrived, sent = job.newest(ARRIVED), job.newest(PARCEL).sent_on
    if arrived.state in ("damaged", "lost"):
        yield Finding("warning", f"job.arrived:{arrived.state}", said=arrived.said or "nothing")
    if sent is not None and arrived.arrived_on is not None and arrived.arrived_on < sent:
        yield Finding("warning", "job.arrived-before", arrived=arrived.arrived_on, sent=sent)


POSTING = Stage(
    "posting",
    "Posting",
    "How it was packed and sent, what it was insured for, and how it arrived.",
    (PARCEL, ARRIVED),
    panel="pentools.panels.stages.job.posting:PostingPanel",
    state=_state,
    checks=posting_findings,
)
