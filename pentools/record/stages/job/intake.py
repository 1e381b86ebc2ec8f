"""Intake: whose pen it is, what arrived, what is asked, and what may be shown."""

from __future__ import annotations

from pentools.calc.base.findings import Finding
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.came_with_kinds import CAME_WITH
from pentools.record.stages.job.coming_back import return_findings
from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.intake_kinds import ARRIVAL, CONSENT, OWNER, PASSED, REQUEST

__all__ = ["INTAKE", "may_publish"]


def may_publish(job: Job) -> bool:
    """Whether the owner agreed that the story may be published; the newest word counts, here or at the agreement."""
    return consents(job).get("publish") is True


def _missing(job: Job) -> list[str]:
    return [kind.title.lower() for kind in (OWNER, ARRIVAL, REQUEST) if not job.log(kind)]


def _state(job: Job) -> StageState:
    missing = _missing(job)
    if len(missing) == 3 and not job.log(CONSENT):
        return StageState("not begun")
    return StageState("open", "still to ask: " + ", ".join(missing)) if missing else StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    found = []
    if job.log(OWNER) and "publish" not in consents(job):
        found.append(Finding("note", "job.not-asked-to-publish"))
    if job.log(ARRIVAL):
        arrival = job.newest(ARRIVAL)
        if arrival.mass_g is None:
            found.append(Finding("note", "job.arrival-mass"))
        if arrival.system is None:
            found.append(Finding("warning", "job.system-missing"))
    return (*found, *return_findings(job))


INTAKE = Stage(
    "intake",
    "Intake",
    "Whose pen this is, what came in the parcel, what is asked, and what may be shown of it.",
    (OWNER, ARRIVAL, REQUEST, CONSENT, RETURN, CAME_WITH, PASSED),
    panel="pentools.panels.stages.job.intake:IntakePanel",
    section="pentools.writeup.sections.job.intake:section",
    state=_state,
    checks=_checks,
)
