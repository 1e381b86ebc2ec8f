"""Hold points: steps that must not start until something is known or done, and how they are released.

The logic is in `pentools.calc.base.hold_points`; here its facts are gathered from the record, and its answer is put into
the words of the bench. Stages name their hold as data and never ask it: this stands above them.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal

from pentools.calc.base.findings import Finding
from pentools.calc.base.hold_points import STEPS, JobFacts, Step, Topic, hold_point
from pentools.errors import InputError
from pentools.money import in_money
from pentools.numbers import in_words
from pentools.record.entries import Entry
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.spending import price_past_ceiling, spending_of
from pentools.record.stages.closing.closing import closed_untested, closing_untested
from pentools.record.stages.closing.work import fits_dry
from pentools.record.stages.common import PARTS
from pentools.record.stages.finish.kinds import MASKS
from pentools.record.stages.finish.kinds import STEP as POLISH
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.ending_kinds import EARLY, RESULT
from pentools.record.stages.job.limits import limits_written
from pentools.record.stages.nib.kinds import ADJUST, FEED_SETTING, SMOOTHED
from pentools.record.stages.nib.paper import flex_past_limit
from pentools.record.stages.repairs.kinds import OUT, REPAIR, Repair
from pentools.record.stages.repairs.released import repairs_in_the_way
from pentools.record.stages.repairs.work import WELD, curing
from pentools.record.stages.seal.kinds import MEASURE, SEALANT
from pentools.record.stages.seal.trials import dry_fit_passed
from pentools.record.stages.treatment.cleaning_kinds import BATH, RINSE, SOAK_STARTED
from pentools.record.stages.treatment.facts import material_is_named
from pentools.record.stages.treatment.opening_kinds import HEAT_PASS
from pentools.record.stages.weighing.kinds import LEAK_CHECK
from pentools.record.view import SPOILT, once_a_state, why_not
from pentools.tables.part_repairs import repair_choices, repair_row

__all__ = ["HOLDS", "HoldPoint", "held", "job_facts", "passed_by", "release_reason", "released_step", "state_of"]


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
    "polish cure": "a weld has not stood its time yet",
    "repair unknown": "what the part is made of is not named, and it decides what it bears (name it at Opening)",
    "repair unfit": "it is not for what the part is made of",
    "repair treatment": "the table of limits forbids it on what the part is made of",
    "repair refused": "the owner said no to it",
    "repair consent": "the owner’s yes to it is not recorded (Agreement)",
    "repair test spot": "it was not tried on a hidden place",
    "repair test failed": "the trial on a hidden place did not come out as it should",
    "repair rubbing": "no rubbing of the imprint was made",
    "send out refused": "the owner said no to sending it out",
    "send out consent": "the owner’s yes to sending it out is not recorded (Agreement)",
    "nib work consent": "the owner’s consent to work on the nib is not recorded",
    "nib work refused": "the owner said no to work on the nib",
    "flex limit": "the nib was driven to its limit, or loaded past what gold bears",
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
    done : callable
        Whether the record holds entries that should have waited for it.
    one_by_one : bool
        Whether a release lets go only what it names, and not every such step of the job.
    """

    key: Step
    step: str
    done: Callable[[Job], bool]
    one_by_one: bool = False


def _released(job: Job) -> bool:
    """Whether the pen went out as mended."""
    return job.newest(RESULT).ending not in (None, *EARLY)


def _warmed(job: Job) -> bool:
    """Whether a joint was heated, or a feed set by heat."""
    return bool(job.log(HEAT_PASS)) or any(logged.values.way != "cold" for logged in job.log(FEED_SETTING))


def _sealed(job: Job) -> bool:
    """Whether sealant was put on; what was altered since at the same place is measured and tried anew."""
    altered = [logged for logged in job.log(MEASURE) if logged.values.altered is True]
    return any(
        logged.values.sealant not in (None, "none")
        and not any(a.values.place == logged.values.place and a.entry.time > logged.entry.time for a in altered)
        for logged in job.log(SEALANT)
    )


HOLDS: dict[str, HoldPoint] = {
    "heat": HoldPoint("heat", "heat", _warmed),
    "soak": HoldPoint("soak", "soaking", lambda job: any(job.log(kind) for kind in (BATH, SOAK_STARTED, RINSE))),
    "polish": HoldPoint("polish", "polishing", lambda job: bool(job.log(POLISH))),
    "sealant": HoldPoint("sealant", "sealant", _sealed),
    "repair": HoldPoint("repair", "mending a part", lambda job: bool(job.log(REPAIR)), one_by_one=True),
    "send out": HoldPoint("send out", "sending a part out", lambda job: bool(job.log(OUT))),
    "nib work": HoldPoint("nib work", "work on the nib", lambda job: bool(job.log(ADJUST) or job.log(SMOOTHED))),
    "flex": HoldPoint("flex", "loading the nib to its limit", flex_past_limit),
    "close": HoldPoint("close", "closing it up", closed_untested),
    "spend": HoldPoint("spend", "spending past the ceiling", lambda job: spending_of(job).past()),
    "release": HoldPoint("release", "releasing the pen", _released),
}


@once_a_state
def job_facts(job: Job) -> JobFacts:
    """What the record says of everything that a hold point asks for; what nobody said counts as not done."""
    said = consents(job)
    money = spending_of(job)
    return JobFacts(
        material_named=material_is_named(job),
        consents=frozenset(key for key, yes in said.items() if yes),
        refusals=frozenset(key for key, yes in said.items() if not yes),
        masks_on=job.newest(MASKS).masks is True,
        dry_fit_passed=dry_fit_passed(job) or fits_dry(job),
        leak_test_done=bool(job.log(LEAK_CHECK)),
        limits_written=limits_written(job),
        flexed_past_limit=flex_past_limit(job),
        untested=bool(closing_untested(job)),
        ended_early=job.newest(RESULT).ending in EARLY,
        spent=float(money.in_all()),
        ceiling=None if money.ceiling is None else float(money.ceiling),
        releases={key: release_reason(job, key) for key in STEPS if job.record.releases(key)},
    )


def _reason(key: Step, job: Job, amount: Decimal = Decimal(0), repair: Repair | None = None) -> str:
    facts = replace(job_facts(job), releases={})
    if key == "polish":  # a weld goes on setting while nothing is entered
        facts = replace(facts, curing=any(one.row.treatment == WELD for one in curing(job)))
    if key == "repair":
        facts = replace(facts, repair=repairs_in_the_way(job, repair))
    if amount:
        facts = replace(facts, spent=float(spending_of(job).in_all(amount)))
    state = hold_point(key, facts)
    said = [_said(key, topic, job, amount) for topic in state.topics]
    return in_words(said)


def _said(key: Step, topic: Topic, job: Job, amount: Decimal) -> str:
    if topic == "ceiling":
        return _spent_in_words(job, amount)
    return closing_untested(job) if topic == "untested" else _WORDS[f"{key} {topic}"]


def _spent_in_words(job: Job, amount: Decimal) -> str:
    money = spending_of(job)
    total, most = (in_money(sum_, money.currency) for sum_ in (money.in_all(amount), money.ceiling or Decimal(0)))
    with_tax = " with tax" if money.on_top else ""
    return (
        f"{total}{with_tax} {'would be' if amount else 'are'} past the agreed ceiling of {most} (ask the owner first)"
    )


def held(job: Job, key: str, *, amount: Decimal = Decimal(0), repair: Repair | None = None) -> str:
    """Why a step is held.

    Parameters
    ----------
    key : str
        The hold point.
    amount : Decimal
        For spending: the sum about to be spent, 0 or more, in the ceiling's currency.
    repair : Repair or None
        For mending a part: the entry about to be made; None asks about those on record.

    Returns
    -------
    str
        The reason in words; empty where the step may go on, because nothing stands in the way or because the
        hold was released with a reason. What cannot be told because entries contradict each other is held.

    Raises
    ------
    InputError
        If there is no such hold point.
    """
    if key not in HOLDS:
        raise InputError("hold point", "one of " + ", ".join(HOLDS), key)
    if not HOLDS[key].one_by_one and job.record.releases(key):
        return ""
    try:
        return _reason(HOLDS[key].key, job, amount, repair)
    except SPOILT as error:
        return f"whether it may go on cannot be told ({why_not(error).rstrip('.')})"


def release_reason(job: Job, key: str) -> str:
    """The reason that was given when a hold was released; empty where it was not."""
    releases = job.record.releases(key)
    return str(releases[-1].data.get("reason", "")) if releases else ""


def released_step(release: Entry) -> str:
    """What a release lets go, in words: the step, and of a repair the part and the way."""
    hold, about = str(release.data.get("hold", "")), str(release.data.get("about", ""))
    step = HOLDS[hold].step if hold in HOLDS else hold
    if about not in dict(repair_choices()):
        return step
    row = repair_row(about)
    return f"{step} ({dict(PARTS)[row.part]}, {row.label})"


def state_of(job: Job, stage: Stage) -> StageState:
    """Where a stage stands: as its own entries say, or held where it is not done and its hold point stands.

    Open, with the reason, where its entries contradict each other.
    """
    try:
        state = stage.state_of(job)
    except SPOILT as error:
        state = StageState("open", f"cannot be told: {why_not(error).rstrip('.')}")
    waits = state.word == "open" or (state.word == "not begun" and stage.held_from_start)
    reason = held(job, stage.hold) if stage.hold and waits else ""
    return StageState("held", reason) if reason else state


def passed_by(job: Job) -> tuple[Finding, ...]:
    """Entries that should have waited for a hold point: another program made them, or it stood later.

    Returns
    -------
    tuple of Finding
        One a hold point that stands, was not released, and has such entries; and one for a price past the ceiling.
    """
    found = [
        Finding("warning", "job.ceiling" if hold.key == "spend" else f"job.{hold.key}-held", reason=reason)
        for hold in HOLDS.values()
        if hold.done(job) and (reason := held(job, hold.key))
    ]
    price = job.newest(RESULT).price
    if price_past_ceiling(job, price) and not job.record.releases("spend"):
        money = spending_of(job)
        found.append(
            Finding(
                "warning", "job.price-past", price=price, ceiling=in_money(money.ceiling or Decimal(0), money.currency)
            )
        )
    return tuple(found)
