"""Hold points: which step must wait, why, and whether a recorded release lets it go.

Pure logic on a handful of facts about the job; where the facts come from is the caller's business.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, get_args

from pentools.errors import InputError

__all__ = ["STEPS", "HoldState", "JobFacts", "Step", "Topic", "hold_point"]

Step = Literal[
    "heat", "soak", "polish", "sealant", "repair", "send out", "nib work", "flex", "close", "spend", "release"
]
STEPS: tuple[Step, ...] = get_args(Step)
Topic = Literal[
    "material", "refused", "consent", "masks", "dry fit", "ceiling", "leak check", "limits", "cure",
    "unknown", "unfit", "treatment", "test spot", "test failed", "rubbing", "limit", "untested",
]  # fmt: skip


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
    flexed_past_limit : bool
        Whether the nib was driven to its limit, or loaded past what its metal bears.
    curing : bool
        Whether a solvent weld on the pen has not stood its time yet.
    repair : tuple of Topic
        What stands in the way of the repair in question, as `calc.repairs.fitness` says; empty where nothing does.
    untested : bool
        Whether something untested lies behind a joint that is closed, or is closed next.
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
    flexed_past_limit: bool = False
    curing: bool = False
    repair: tuple[Topic, ...] = ()
    untested: bool = False
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
    topics : tuple of Topic
        What stands in the way, released or not; whoever shows it has the words.
    release_reason : str
        Why the hold was released; empty where it was not, or where nothing stood in the way.
    """

    step: Step
    held: bool
    topics: tuple[Topic, ...] = ()
    release_reason: str = ""


def hold_point(step: Step, facts: JobFacts, *, amount: float = 0.0) -> HoldState:
    """Whether a step is held.

    Parameters
    ----------
    step : {"heat", "soak", "polish", "sealant", "repair", "send out", "nib work", "flex", "close", "spend", "release"}
        The step about to begin.
    facts : JobFacts
        What is known of the job.
    amount : float
        For spending: the sum about to be spent, 0 or more, in the job's currency.

    Returns
    -------
    HoldState
        Whether it is held and by what; a release with a reason lets it go, and what stood in the way stays in sight.

    Raises
    ------
    InputError
        If there is no such step, or the amount is negative.

    Examples
    --------
    >>> hold_point("heat", JobFacts()).topics
    ('material',)
    >>> hold_point("heat", JobFacts(releases={"heat": "owner insists, in writing"})).held
    False
    """
    if step not in STEPS:
        raise InputError("step", "one of " + ", ".join(STEPS), step)
    if amount < 0:
        raise InputError("amount", "0 or more", amount)
    topics = tuple(topic for topic, stands in _checks(step, facts, amount) if stands)
    released = facts.releases.get(step, "").strip() if topics else ""
    return HoldState(step, bool(topics) and not released, topics, released)


def _checks(step: Step, facts: JobFacts, amount: float) -> tuple[tuple[Topic, bool], ...]:
    """What could stand in the way of a step, and whether it does."""
    refused = step in facts.refusals
    unasked = not refused and step not in facts.consents
    unnamed, open_end = not facts.material_named, not facts.ended_early
    asked: dict[Step, tuple[tuple[Topic, bool], ...]] = {
        "heat": (("material", unnamed), ("refused", refused)),
        "soak": (("material", unnamed), ("refused", refused)),
        "polish": (
            ("refused", refused), ("consent", unasked), ("material", unnamed), ("masks", not facts.masks_on), ("cure", facts.curing),
        ),
        "sealant": (("refused", refused), ("dry fit", not facts.dry_fit_passed)),
        "repair": (("refused", refused), *((topic, True) for topic in facts.repair)),
        "send out": (("refused", refused), ("consent", unasked)),
        "nib work": (("refused", refused), ("consent", unasked)),
        "flex": (("limit", facts.flexed_past_limit),),
        "close": (("untested", facts.untested),),
        "spend": (("ceiling", facts.ceiling is not None and facts.spent + amount > facts.ceiling),),
        "release": (("leak check", open_end and not facts.leak_test_done), ("limits", open_end and not facts.limits_written)),
    }  # fmt: skip
    return asked[step]
