"""Hold points: which step must wait, why, and whether a recorded release lets it go.

Pure logic on a handful of facts about the job; where the facts come from is the caller's business.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, get_args

from pentools.errors import InputError

__all__ = ["STEPS", "HoldState", "JobFacts", "Step", "held_steps", "hold_point"]

Step = Literal["heat", "soak", "polish", "sealant", "spend", "release"]
STEPS: tuple[Step, ...] = get_args(Step)


@dataclass(frozen=True, slots=True)
class JobFacts:
    """What is known of a job when a step is about to begin.

    Parameters
    ----------
    material_named : bool
        Whether the material of the part is named ("unknown" is not a name).
    consents, refusals : frozenset of str
        Kinds of action the owner said yes and no to ("heat", "soak", "polish", …).
    masks_on : bool
        Whether imprint, plating and threads are masked.
    dry_fit_passed : bool
        Whether the parts were put together dry and fitted.
    leak_test_done, limits_written : bool
        Whether the leak test was done, and what the pen cannot do is written down.
    ended_early : bool
        Whether the job was stopped or the pen is returned unrepaired, so that nothing is left to test.
    spent, ceiling : float or None
        Money spent or promised so far, and the agreed most, in the job's currency; no ceiling: None.
    releases : mapping of str to str
        Step to the reason for which its hold was released.
    """

    material_named: bool = False
    consents: frozenset[str] = frozenset()
    refusals: frozenset[str] = frozenset()
    masks_on: bool = False
    dry_fit_passed: bool = False
    leak_test_done: bool = False
    limits_written: bool = False
    ended_early: bool = False
    spent: float = 0.0
    ceiling: float | None = None
    releases: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class HoldState:
    """Whether a step must wait.

    Parameters
    ----------
    step : str
        The step.
    held : bool
        Whether it must wait.
    reasons : tuple of str
        What stands in the way, one sentence each, released or not.
    release_reason : str
        Why the hold was released; empty where it was not, or where nothing stood in the way.
    topics : tuple of str
        What each reason is about, in a word: "material", "refused", "consent", "masks", "dry fit", "ceiling",
        "leak check" or "limits".
    """

    step: Step
    held: bool
    reasons: tuple[str, ...]
    release_reason: str = ""
    topics: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """The state in words."""
        if not self.reasons:
            return f"{self.step}: nothing stands in the way."
        why = " ".join(self.reasons)
        if self.held:
            return f"{self.step} is held. {why} It can be released with a reason, which stays in the record."
        return f"{self.step} was released: {self.release_reason}. {why}"


def hold_point(step: Step, facts: JobFacts, *, amount: float = 0.0) -> HoldState:
    """Whether a step is held.

    Parameters
    ----------
    step : {"heat", "soak", "polish", "sealant", "spend", "release"}
        The step about to begin.
    facts : JobFacts
        What is known of the job.
    amount : float
        For spending: the sum about to be spent, 0 or more, in the job's currency.

    Returns
    -------
    HoldState
        Whether it is held and why; a release with a reason lets it go, and the reasons stay in sight.

    Raises
    ------
    InputError
        If there is no such step, or the amount is negative.

    Examples
    --------
    >>> hold_point("heat", JobFacts()).held
    True
    >>> hold_point("heat", JobFacts(releases={"heat": "owner insists, in writing"})).held
    False
    """
    if step not in STEPS:
        raise InputError("step", "one of " + ", ".join(STEPS), step)
    if amount < 0:
        raise InputError("amount", "0 or more", amount)
    found = _reasons(step, facts, amount)
    released = facts.releases.get(step, "").strip()
    if not found:
        return HoldState(step, False, ())
    reasons, topics = tuple(text for _, text in found), tuple(topic for topic, _ in found)
    return HoldState(step, not released, reasons, released, topics)


def held_steps(facts: JobFacts) -> tuple[HoldState, ...]:
    """All steps that are held now.

    Parameters
    ----------
    facts : JobFacts
        What is known of the job.

    Returns
    -------
    tuple of HoldState
        In the order of `STEPS`; released ones are left out.
    """
    return tuple(state for state in (hold_point(step, facts) for step in STEPS) if state.held)


def _reasons(step: Step, facts: JobFacts, amount: float) -> tuple[tuple[str, str], ...]:
    ruin = f"The material is not named, and {step} can ruin what it turns out to be."
    material = (not facts.material_named, "material", ruin)
    refused = (step in facts.refusals, "refused", f"The owner said no to {step}.")
    asked = ("polish" not in facts.consents, "consent", "The owner has not said yes to polishing.")
    over = facts.ceiling is not None and facts.spent + amount > facts.ceiling
    past = f"{facts.spent + amount:g} would be past the agreed ceiling of {facts.ceiling or 0:g}."
    sealed = "No dry fit has passed: sealed too early, it has to come apart again."
    checks: dict[Step, tuple[tuple[bool, str, str], ...]] = {
        "heat": (material, refused),
        "soak": (material, refused),
        "polish": (
            refused if refused[0] else asked,
            material,
            (not facts.masks_on, "masks", "Imprint, plating and threads are not masked."),
        ),
        "sealant": (refused, (not facts.dry_fit_passed, "dry fit", sealed)),
        "spend": ((over, "ceiling", past),),
        "release": (
            (not facts.ended_early and not facts.leak_test_done, "leak check", "The leak test has not been done."),
            (
                not facts.ended_early and not facts.limits_written,
                "limits",
                "What the pen cannot do is not written down.",
            ),
        ),
    }
    return tuple((topic, text) for stands, topic, text in checks[step] if stands)
