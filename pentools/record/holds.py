"""Hold points: steps that must not start until something is known or done, and how they are released.

The logic is in `pentools.calc.base.hold_points`; here its facts are gathered from the record, and its answer is put into
the words of the bench.
"""

from __future__ import annotations

import importlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from pentools.calc.base.hold_points import STEPS, JobFacts, Step, hold_point
from pentools.errors import InputError
from pentools.record.registry import STAGES
from pentools.record.spending import spending_of

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["HOLDS", "HoldPoint", "held", "job_facts", "release_reason"]

# what is said for each thing that stands in the way, by step where that matters
_WORDS: dict[str, str] = {
    "heat material": "the material is not named, and heat can ruin what it turns out to be (name it at Opening)",
    "soak material": "the material is not named, and a soak can ruin what it turns out to be (name it at Opening)",
    "polish material": "the material is not named, and polish can ruin what it turns out to be (name it at intake or at Opening)",
    "polish consent": "the owner’s consent to polish is not recorded",
    "polish refused": "the owner refused consent to polish",
    "polish masks": "the masks are not on",
    "heat refused": "the owner said no to heat",
    "soak refused": "the owner said no to soaking",
    "sealant refused": "the owner said no to sealant",
    "sealant dry fit": "no dry fit has passed; sealed too early, it has to come apart again",
    "release leak check": "the leak check has not been done",
    "release limits": "the limits have not been written",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class HoldPoint:
    """One hold point.

    Parameters
    ----------
    key : str
        Its name in the record.
    step : str
        The step that is held, in words.
    reason : callable
        Gives the reason why it is held in a job; empty where nothing stands in the way.
    """

    key: str
    step: str
    reason: Callable[[Job], str]


def job_facts(job: Job) -> JobFacts:
    """What the record says of everything that a hold point asks for.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    JobFacts
        The facts; what a stage that is not there could say counts as not said.
    """
    from pentools.record.stages.job.limits import limits_written
    from pentools.record.stages.treatment.facts import material_is_named

    agreed = _consents(job)
    money = spending_of(job)
    return JobFacts(
        material_named=material_is_named(job),
        consents=frozenset(key for key, said in agreed.items() if said is True),
        refusals=frozenset(key for key, said in agreed.items() if said is False),
        masks_on="finish" in STAGES and job.values("finish", "masks on")["masks"] is True,
        dry_fit_passed=_of_stage("seal", "dry_fit_passed", job) is True,
        leak_test_done=bool(job.record.live("fill test", "leak check")),
        limits_written=limits_written(job),
        ended_early=job.values("release", "result")["ending"] in ("stopped", "returned"),
        spent=money.spent,
        ceiling=money.ceiling,
        releases={key: release_reason(job, key) for key in STEPS if job.record.releases(key)},
    )


def _of_stage(stage: str, name: str, job: Job) -> Any:
    """What a stage's own function says; None where there is no such stage."""
    if stage not in STAGES:
        return None
    found = getattr(importlib.import_module(STAGES[stage].split(":")[0]), name, None)
    return None if found is None else found(job)


def _consents(job: Job) -> dict[str, bool]:
    """Kinds of action the owner said yes or no to; the agree stage weighs its answers with the finish's own question."""
    agreed = _of_stage("agree", "consents", job)
    return dict(agreed) if isinstance(agreed, Mapping) else {}


def _reason(key: Step, job: Job, amount: float = 0.0) -> str:
    facts = replace(job_facts(job), releases={})
    state = hold_point(key, facts, amount=amount)
    said = [_spent_in_words(job, amount) if topic == "ceiling" else _WORDS[f"{key} {topic}"] for topic in state.topics]
    return ", ".join(said[:-1]) + (" and " if len(said) > 1 else "") + said[-1] if said else ""


def _spent_in_words(job: Job, amount: float) -> str:
    money = spending_of(job)
    total, most = f"{money.spent + amount:.2f} {money.currency}", f"{money.ceiling or 0:.2f} {money.currency}"
    return f"{total} {'would be' if amount else 'are'} past the agreed ceiling of {most} (ask the owner first)"


def _hold(key: Step, step: str) -> HoldPoint:
    return HoldPoint(key, step, lambda job: _reason(key, job))


HOLDS: dict[str, HoldPoint] = {
    "heat": _hold("heat", "heat"),
    "soak": _hold("soak", "soaking"),
    "polish": _hold("polish", "polishing"),
    "sealant": _hold("sealant", "sealant"),
    "spend": _hold("spend", "spending past the ceiling"),
    "release": _hold("release", "releasing the pen"),
}


def held(job: Job, key: str, *, amount: float = 0.0) -> str:
    """Why a step is held.

    Parameters
    ----------
    job : Job
        The job.
    key : str
        The hold point.
    amount : float
        For spending: the sum about to be spent, 0 or more, in the ceiling's currency.

    Returns
    -------
    str
        The reason in words; empty where the step may go on, because nothing stands in the way or because the
        hold was released with a reason.

    Raises
    ------
    InputError
        If there is no such hold point.
    """
    if key not in HOLDS:
        raise InputError("hold point", "one of " + ", ".join(HOLDS), key)
    if job.record.releases(key):
        return ""
    return HOLDS[key].reason(job) if not amount else _reason("spend", job, amount)


def release_reason(job: Job, key: str) -> str:
    """The reason that was given when a hold was released; empty where it was not."""
    releases = job.record.releases(key)
    return str(releases[-1].data.get("reason", "")) if releases else ""
