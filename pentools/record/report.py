"""What conservation guidance asks of a record, held against the record of a job."""

from __future__ import annotations

from collections.abc import Callable

from pentools import tables
from pentools.calc.base.completeness import ReportCompleteness, ReportRow, report_completeness
from pentools.calc.base.findings import Finding
from pentools.record.job import Job
from pentools.record.registry import STAGES, find_stage
from pentools.record.stages.job.agree import not_applicable
from pentools.record.stages.job.agree_kinds import ESTIMATE, PROPOSAL
from pentools.record.stages.job.ending_kinds import EARLY, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER, REQUEST
from pentools.record.stages.job.pictures import moments_of
from pentools.record.stages.job.work_kinds import WORK
from pentools.record.stages.weighing.kinds import WEIGHING

__all__ = ["REPORT_PLACES", "missing_report_fields", "report_conditions", "report_notes"]


REPORT_PLACES: dict[str, tuple[str, ...]] = {
    "identity.maker.maker": ("identify.identity.maker",),
    "identity.dimension.value": tuple(
        f"intake.arrival.{field.name}" for field in ARRIVAL.fields if field.name.endswith("_mm")
    ),
    "identity.mark.text": ("identify.mark.text",),
    "identity.evidence.dates": ("identify.evidence.dates",),
    "identity.evidence.kind": ("identify.evidence.evidence_kind",),
    "condition.examination.methods": ("agree.survey.methods",),
    "condition.triage.grade": ("agree.survey.grade",),
    "proposal.treatment.proposed": ("agree.proposal.proposed",),
    "proposal.treatment.materials": ("agree.proposal.materials",),
    "proposal.treatment.alternative": ("agree.proposal.alternative", "agree.proposal.leave_it"),
    "proposal.estimate.hours": ("agree.estimate.hours_likely",),
    "proposal.estimate.price": ("agree.estimate.price_high",),
    "agreement.answer.answered_on": ("agree.answer.answered_on", "agree.yes.answered_on"),
    "agreement.answer.permanent_told": ("agree.proposal.permanent_told",),
    "opening.step.found": ("open.step.came_off", "open.step.moved", "open.step.broke"),
}
"""Where the record keeps what the table of guidance names otherwise; one of the places is enough."""


def missing_report_fields(job: Job) -> ReportCompleteness:
    """Which of the things that conservation guidance asks for are on record.

    Returns
    -------
    ReportCompleteness
        Every field with its state: present, not applicable (with the reason), or missing.

    Notes
    -----
    A field is present where its place in the record holds anything; whether that is filled in well, nobody can tell
    from here. A ``no`` counts as filled in, but for what must be a yes: that the one who decides may decide, and
    that the owner was told what cannot be undone.
    """
    rows = tables.read(ReportRow, "report_fields")
    known = {row.key for row in rows}
    excused = {"permanent-change": "nothing that is proposed is permanent"} if _all_reversible(job) else {}
    excused |= {key: why for key, why in not_applicable(job).items() if key in known and why.strip()}
    places = {place for row in rows for place in row.place}
    present = [place for place in places if _present(job, place)]
    return report_completeness(rows, present, not_applicable=excused, conditions=report_conditions(job))


def report_conditions(job: Job) -> tuple[str, ...]:
    """Which of "treated", "paid" and "measured" hold for a job.

    Returns
    -------
    tuple of str
        Treated: not ended as stopped or returned. Paid: a price, a limit or an hourly rate is named anywhere.
        Measured: there is a weighing of a filling.
    """
    ending, price = job.newest(RESULT).ending, job.newest(RESULT).price
    estimate, limit = job.newest(ESTIMATE), job.newest(REQUEST).price_limit
    named = (price, limit, estimate.price_high, estimate.ceiling)
    found = {
        "treated": ending not in EARLY,
        "paid": job.bench.rate_per_hour > 0 or any(amount is not None for amount in named),
        "measured": bool(job.log(WEIGHING)),
    }
    return tuple(condition for condition, holds in found.items() if holds)


def report_notes(job: Job) -> tuple[Finding, ...]:
    """What is missing, in at most two notes: what guidance requires, and what would be good to have.

    Returns
    -------
    tuple of Finding
        None for a job with nothing entered yet.
    """
    if not job.record.live():
        return ()
    missing = missing_report_fields(job).missing
    must = [field.field for field in missing if field.level == "must"]
    should = [field.field for field in missing if field.level != "must"]
    found = []
    if must:
        count, verb = ("one thing", "is") if len(must) == 1 else (f"{len(must)} things", "are")
        found.append(Finding("note", "job.report-must", count=count, verb=verb, names="; ".join(must)))
    if should:
        found.append(Finding("note", "job.report-should", names="; ".join(should)))
    return tuple(found)


def _all_reversible(job: Job) -> bool:
    asked = [logged.values for logged in job.log(PROPOSAL)]
    return bool(asked) and all(values.permanent is None and values.reversible is True for values in asked)


def _bench_name(job: Job) -> bool:
    by = (logged.values.by for logged in job.log(WORK))
    return bool(job.bench.text("bench", "name").strip()) or any(name is not None for name in by)


def _page_written(job: Job) -> bool:
    return (job.folder / "writeup" / "client.html").is_file()


# places that are more than one filled field
_SPECIAL: dict[str, Callable[[Job], bool]] = {
    "job.folder.name": lambda job: bool(job.name),
    "bench.facts.restorer": _bench_name,
    "writeup.client.page": _page_written,
    "pictures.picture.before": lambda job: "before" in moments_of(job),
    "pictures.picture.during": lambda job: "during" in moments_of(job),
    "pictures.picture.after": lambda job: "after" in moments_of(job),
    "intake.owner.may_decide": lambda job: any(logged.values.may_decide is True for logged in job.log(OWNER)),
    "agreement.answer.permanent_told": lambda job: any(
        logged.values.permanent_told is True for logged in job.log(PROPOSAL)
    ),
}


def _present(job: Job, place: str) -> bool:
    if place in _SPECIAL:
        return _SPECIAL[place](job)
    return any(_held(job, where) for where in REPORT_PLACES.get(place, (place,)))


def _held(job: Job, place: str) -> bool:
    """Whether any live entry holds something at ``stage.kind.field``; no for a place that this version does not know."""
    stage, kind, field = place.split(".")
    if stage not in STAGES or kind not in {k.key for k in find_stage(stage).kinds}:
        return False
    return any(
        getattr(logged.values, field, None) not in (None, "", ()) for logged in job.log(find_stage(stage).kind(kind))
    )
