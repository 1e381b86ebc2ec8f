"""The seal stage: measured, chosen, tried dry one size at a time, only then sealed, and proved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.errors import InputError
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.seal.kinds import MEASURE, PLACES, SEALANT, TEST, TOOL, TRIAL, place_words
from pentools.record.stages.seal.measure import (
    candidates,
    gland_of,
    measured,
    odd_readings,
    places_in_use,
    work_out,
)
from pentools.record.stages.seal.proof import (
    earliest_next_step,
    proofs_done,
    results_that_count,
    suspects,
    tools_on_bench,
)
from pentools.record.stages.seal.trials import dry_fit_passed, next_trial, passed_places, trials

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "PLACES",
    "SEAL",
    "candidates",
    "dry_fit_passed",
    "earliest_next_step",
    "fit_words",
    "gland_of",
    "measured",
    "next_trial",
    "passed_places",
    "place_words",
    "places_in_use",
    "proofs_done",
    "results_that_count",
    "seal_findings",
    "suspects",
    "tools_on_bench",
    "trials",
    "work_out",
]  # fmt: skip

CAUTIONS = (
    "Silicone adhesive gives off vinegar as it sets: fresh air, no bare fingers, and keep it off the nib.",
    "Shellac is cut with alcohol, which burns: no flame near, fresh air, and let it dry in the open.",
    "Solvent and hot wax burn too, and celluloid near either is gone in seconds. Old rubber dust: gloves, and wipe it up damp.",
    "A tube driven under force can slip: hold the block, wear eye protection. Follow local codes; ask a licensed professional.",
)

FEW = ("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


def fit_words(job: Job, place: str) -> str:
    """What the trials at a place came to, as one sentence; empty where nothing was tried.

    Parameters
    ----------
    place : str
        A key of `PLACES`.

    Returns
    -------
    str
        How many sizes failed and which one held.
    """
    done = trials(job, place)
    if not done:
        return ""
    where = place_words(place)
    held = [t for t in done if t.dry and t.happened == "pulls back"]
    failed = [t for t in done if t.happened != "pulls back"]
    if passed_places(job).get(place):
        number = FEW[len(failed)] if len(failed) < len(FEW) else str(len(failed))
        count = f"after {number} that did not do" if failed else "at the first trial"
        return f"The {where} holds dry: {held[-1].what}, {count}."
    if not failed:
        return f"The {where} was tried, but not dry."
    sizes = "1 size" if len(failed) == 1 else f"{len(failed)} sizes"
    return f"The {where} does not hold yet: {sizes} tried, the last: {failed[-1].what} ({failed[-1].happened})."


def seal_findings(job: Job) -> tuple[Finding, ...]:
    """What is odd or missing about the seals: dry fits, sealant without one, tests.

    Returns
    -------
    tuple of Finding
        Gravest first.
    """
    found = []
    passed = passed_places(job)
    failing = [place for place, holds in passed.items() if not holds]
    found += [Finding("warning", "seal.dry-fit", sentence=fit_words(job, place)) for place in failing]
    for place in places_in_use(job):
        heading = f"Seal, {place_words(place)}"
        found += [f.under(heading) for f in odd_readings(job, place)]
        try:
            step = next_trial(job, place)
        except InputError as error:
            found.append(Finding("warning", "seal.measure", sentence=str(error)).under(heading))
            continue
        if step is not None:
            found += [f for f in step.step.findings if f.topic == "contradiction"]
    found += _adhesive_findings(job)
    sealed = any(logged.values.sealant != "none" for logged in job.log(SEALANT))
    tree = suspects(job)
    if tree is not None and tree.named:
        found += tree.findings
    elif (sealed or any(passed.values())) and tree is None:
        found.append(Finding("note", "seal.no-test"))
    return gravest_first(found)


def _adhesive_findings(job: Job) -> list[Finding]:
    """A silicone sac on shellac alone comes off."""
    used = {logged.values.sealant for logged in job.log(SEALANT) if logged.values.place == "sac"}
    silicone = measured(job, "sac").material == "silicone"
    return [Finding("warning", "seal.shellac-silicone")] if silicone and used == {"shellac"} else []


def _state(job: Job) -> StageState:
    if not job.record.live("seal"):
        return StageState("not begun")
    passed = passed_places(job)
    if not passed:
        return StageState("open", "nothing was tried dry yet")
    failing = [place_words(place) for place, holds in passed.items() if not holds]
    if failing:
        return StageState("open", f"no dry fit yet: {', '.join(failing)}")
    results = results_that_count(job)
    if not results:
        return StageState("open", "dry fit passed; the tests are still to do")
    tree = suspects(job)
    if tree is not None and tree.clear:
        return StageState("done", f"nothing wrong in {len(results)} tests")
    return StageState("open", "the tests do not clear it yet")


SEAL = Stage(
    "seal",
    "Seal",
    "Measured, chosen by its worst case, tried dry one size at a time; sealant only after a dry fit; then proved.",
    (MEASURE, TRIAL, SEALANT, TEST, TOOL),
    panel="pentools.panels.stages.seal.sealing:SealPanel",
    section="pentools.writeup.sections.seal.sealing:section",
    state=_state,
    checks=seal_findings,
    cautions=CAUTIONS,
)
