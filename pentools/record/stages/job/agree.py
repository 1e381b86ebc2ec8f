"""Agreement: what is proposed and what else could be done, what it may cost, and what the owner said yes and no to."""

from __future__ import annotations

import datetime as dt
import itertools
from collections.abc import Iterator
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.errors import InputError
from pentools.record.kinds import Stage, StageState
from pentools.record.registry import STAGES
from pentools.record.spending import Money, read_money
from pentools.record.stages.job.agree_kinds import ACTIONS, ANSWER, ESTIMATE, NOT_APPLICABLE, PROPOSAL, SURVEY
from pentools.units import Reading

if TYPE_CHECKING:
    from collections.abc import Mapping

    from pentools.fields import Value
    from pentools.record.entries import Entry
    from pentools.record.job import Job

__all__ = [
    "AGREE",
    "ceiling",
    "check_estimate",
    "consents",
    "departures_without_yes",
    "not_applicable",
    "yes_and_no",
]

_PRICES = ("parts_cost", "price_low", "price_high", "ceiling")
_HOURS = ("hours_low", "hours_likely", "hours_high")


def consents(job: Job) -> dict[str, bool]:
    """What the owner said to each kind of action.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    dict
        A key of `ACTIONS` to yes or no; without those that were not answered.

    Notes
    -----
    The newest word counts, wherever it was entered: among the answers, as the consent to publish at intake, or as
    the consent to polish at the finish. A yes from a person who may not decide does not count; a no always does.
    """
    said = sorted(_words(job), key=lambda word: word[0])
    return {action: agreed for _, action, agreed in said}


def yes_and_no(job: Job) -> tuple[frozenset[str], frozenset[str]]:
    """The kinds of action that the owner said yes to, and those with a no.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of frozenset
        Keys of `ACTIONS`.
    """
    said = consents(job)
    return frozenset(a for a, yes in said.items() if yes), frozenset(a for a, yes in said.items() if not yes)


def _words(job: Job) -> Iterator[tuple[dt.datetime, str, bool]]:
    for stage, kind, field, action in (
        ("intake", "consent", "publish", "publish"),
        ("finish", "consent to polish", "agreed", "polish"),
    ):
        if stage in STAGES:
            for entry, values in job.log(stage, kind)[-1:]:
                if isinstance(agreed := values[field], bool):
                    yield entry.time, action, agreed
    for entry, values in job.log("agree", "answer"):
        if values["agreed"] is False or (values["agreed"] is True and values["authority"] is not False):
            yield entry.time, str(values["action"]), values["agreed"]


def ceiling(job: Job) -> str | None:
    """The most that was agreed on, as typed in the estimate; None where none was named there."""
    value = job.values("agree", "estimate")["ceiling"]
    return None if value is None else str(value)


def not_applicable(job: Job) -> dict[str, str]:
    """What guidance asks for and was marked as not applicable: key to reason."""
    return {str(values["asked"]): str(values["why"]) for _, values in job.log("agree", "not applicable")}


def departures_without_yes(job: Job) -> tuple[tuple[str, bool], ...]:
    """Departures from the proposal that the owner has not said yes to.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of (str, bool)
        What was done otherwise, and whether the owner said no to it. A departure is agreed if its own entry says
        when, or if an answer "a departure from the proposal" was entered after it; the newest such answer counts.
    """
    answers = [
        (entry, values)
        for entry, values in job.log("agree", "answer")
        if values["action"] == "departure" and not (values["agreed"] is True and values["authority"] is False)
    ]
    found = []
    for departure, values in job.log("work log", "departure"):
        later = [said for entry, said in answers if entry.time >= departure.time]
        newest = later[-1] if later else None
        refused = newest is not None and newest["agreed"] is False
        if refused or (values["agreed_on"] is None and newest is None):
            found.append((str(values["what"]), refused))
    return tuple(found)


def check_estimate(values: Mapping[str, Value]) -> None:
    """Refuse an estimate that cannot be read or is out of order.

    Parameters
    ----------
    values : mapping of str to Value
        Values of the estimate's fields.

    Raises
    ------
    InputError
        If an amount cannot be read or the currencies differ, or if a lower end lies above its upper end.
    """
    money = {name: _money(name, values[name]) for name in _PRICES if values[name] is not None}
    currencies = {amount.currency for amount in money.values()}
    if len(currencies) > 1:
        raise InputError("currency", "one for all amounts", ", ".join(sorted(c or "none" for c in currencies)))
    hours = [(name, value.value) for name in _HOURS if isinstance(value := values[name], Reading)]
    prices = [(name, money[name].amount) for name in ("price_low", "price_high", "ceiling") if name in money]
    for run in (hours, prices):
        for (_, low), (name, high) in itertools.pairwise(run):
            if high < low:
                label = ESTIMATE.field(name).label
                raise InputError(label, f"at least {low:g}", f"{high:g}", "From the least to the most.")


def _money(name: str, value: Value) -> Money:
    found = read_money(str(value))
    if found is None:
        raise InputError(ESTIMATE.field(name).label, "an amount with its currency", str(value), "Such as 150 EUR.")
    return found


def _state(job: Job) -> StageState:
    if not job.record.live("agree"):
        return StageState("not begun")
    if not job.record.live("agree", "proposal"):
        return StageState("open", "nothing has been proposed yet")
    if not job.record.live("agree", "answer"):
        return StageState("open", "the owner has not answered yet")
    if departures_without_yes(job):
        return StageState("open", "a departure waits for the owner's yes")
    return StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    found = [
        Finding("warning", "job.departure:refused" if refused else "job.departure", what=what)
        for what, refused in departures_without_yes(job)
    ]
    if not job.record.live("agree"):
        return tuple(found)
    found += _on_estimate(job)
    parts = dict(PROPOSAL.field("part").choices)
    for _, values in job.log("agree", "proposal"):
        named = parts.get(str(values["part"]), str(values["part"]))
        if (values["permanent"] is not None or values["reversible"] is False) and values["permanent_told"] is not True:
            found.append(Finding("warning", "job.permanent", named=named))  # fmt: skip
        if values["alternative"] is None or values["leave_it"] is None:
            missing = " and ".join(
                words
                for name, words in (("alternative", "another way"), ("leave_it", "leaving it"))
                if values[name] is None
            )
            found.append(Finding("note", "job.alternatives", named=named, missing=missing))
    found += [
        Finding("warning", "job.authority", action=_action(values))
        for _, values in _newest_answers(job)
        if values["agreed"] is True and values["authority"] is False
    ]  # fmt: skip
    if job.record.live("agree", "proposal") and job.record.live("work log") and not job.record.live("agree", "answer"):
        found.append(Finding("warning", "job.answer"))
    return tuple(found)


def _on_estimate(job: Job) -> list[Finding]:
    try:
        check_estimate(job.values("agree", "estimate"))
    except InputError as error:
        return [Finding("warning", "job.estimate", error=str(error))]
    return []


def _newest_answers(job: Job) -> list[tuple[Entry, dict[str, Value]]]:
    newest = {str(values["action"]): (entry, values) for entry, values in job.log("agree", "answer")}
    return list(newest.values())


def _action(values: Mapping[str, Value]) -> str:
    return dict(ACTIONS).get(str(values["action"]), str(values["action"]))


AGREE = Stage(
    "agree",
    "Proposal and agreement",
    "What is proposed for each part, what else could be done, what it may cost, and the owner's yes or no to each kind of action.",
    (SURVEY, PROPOSAL, ESTIMATE, ANSWER, NOT_APPLICABLE),
    panel="pentools.panels.stages.job.agree:AgreePanel",
    section="pentools.writeup.sections.job.agree:section",
    state=_state,
    checks=_checks,
)
