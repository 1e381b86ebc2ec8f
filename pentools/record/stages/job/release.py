"""Release: how the job ended, how to care for the pen, and what to do if something comes up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.job.ending_kinds import ENDINGS, RESULT

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["ENDINGS", "RELEASE_STAGE", "ending", "suggested_care"]


def ending(job: Job) -> str | None:
    """How the job ended (a key of `ENDINGS`); None while it is open."""
    found = job.values("release", "result")["ending"]
    return str(found) if found is not None else None


def suggested_care(job: Job) -> str:
    """A draft of the care text from the filling system and the material: common practice, no source."""
    arrival = job.values("intake", "arrival")
    system = str(arrival["system"] or "")
    material = str(arrival["material"] or "").lower()
    lines = [
        "Use water-based fountain pen ink only. Flush with plain cool water when you change ink or put the pen away."
    ]
    if "sac" in system or system in ("bulb", "diaphragm-pump", "sleeve-squeeze") or "pneumatic" in system:
        lines.append("Do not flush it with ammonia: it ages the rubber.")
    if system in ("piston", "syringe", "plunger-vacuum"):
        lines.append(
            "If it is not used, leave a little water in it for the first weeks, so that the seal does not dry out."
        )
    if "casein" in material:
        lines.append("Never soak it: the barrel swells in water.")
    elif "hard rubber" in material or "ebonite" in material:
        lines.append("Keep it out of sunlight and do not soak it: the surface browns.")
    elif "cellul" in material or "unknown" in material or not material:
        lines.append("Keep it away from heat, flame and closed plastic boxes; let it breathe.")
    lines.append("Keep it nib up when it is carried, and let it warm up uncapped before a flight or after the cold.")
    return " ".join(lines)


def _state(job: Job) -> StageState:
    if ending(job) is not None:
        return StageState("done", str(ending(job)))
    reason = job.held("release")
    return StageState("held", reason) if reason else StageState("not begun")


def _checks(job: Job) -> tuple[Finding, ...]:
    end = ending(job)
    if end is None:
        return (Finding("note", "Release: the job is open; a page made now says so at its head.", "open-job"),)
    has_limits = bool(job.record.live("limits", "limit"))
    if end == "done" and has_limits:
        return (
            Finding(
                "warning",
                "Release: the result is “done”, but things left are listed. Is it “done with limits”?",
                "ending-limits",
            ),
        )
    if end == "done with limits" and not has_limits:
        return (
            Finding(
                "warning", "Release: the result is “done with limits”, but no limit is written down.", "ending-limits"
            ),
        )
    return ()


RELEASE_STAGE = Stage(
    "release",
    "Release",
    "How the job ended, how to care for the pen, and what to watch for.",
    (RESULT,),
    panel="pentools.panels.stages.job.release:ReleasePanel",
    section="pentools.writeup.sections.job.release:section",
    state=_state,
    checks=_checks,
)
