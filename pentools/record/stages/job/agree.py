"""Agreement: what is proposed and what else could be done, what it may cost, and what the owner said yes and no to."""

from __future__ import annotations

import datetime as dt
import itertools
from collections.abc import Iterator, Mapping
from types import MappingProxyType

from pentools.calc.base.findings import Finding
from pentools.errors import InputError
from pentools.money import Money, read_money
from pentools.record.forms import Logged
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.common import PARTS
from pentools.record.stages.finish.kinds import CONSENT as POLISH_CONSENT
from pentools.record.stages.job.agree_kinds import (
    ACTIONS,
    ANSWER,
    ESTIMATE,
    NOT_APPLICABLE,
    PROPOSAL,
    SURVEY,
    YES,
    Answer,
    Estimate,
    Yes,
)
from pentools.record.stages.job.intake_kinds import CONSENT, REQUEST
from pentools.record.stages.job.money_kinds import BILL, INVOICE, RECEIVED
from pentools.record.stages.job.work_kinds import DEPARTURE
from pentools.record.view import once_a_state

__all__ = [
    "AGREE",
    "agreed_price",
    "answers_of",
    "check_estimate",
    "check_yes",
    "consents",
    "departures_without_yes",
    "not_applicable",
    "without_authority",
    "yes_and_no",
]

_PRICES = ("parts_cost", "price_low", "price_high", "ceiling")
_HOURS = ("hours_low", "hours_likely", "hours_high")


@once_a_state
def answers_of(job: Job) -> tuple[Logged[Answer], ...]:
    """Every answer of the owner, one for each thing asked, whether it was entered alone or with others.

    Returns
    -------
    tuple of Logged
        In the order of the record's lines; those of one entry share it, the noes after the yeses.
    """
    together = [Logged(yes.entry, answer) for yes in job.log(YES) for answer in _each(yes.values)]
    return tuple(sorted((*job.log(ANSWER), *together), key=lambda said: job.line_of(said.entry)))


def _each(yes: Yes) -> Iterator[Answer]:
    for agreed, actions in ((True, yes.to), (False, yes.not_to)):
        for action in actions or ():
            yield Answer(
                action=action,
                agreed=agreed,
                answered_on=yes.answered_on,
                channel=yes.channel,
                by=yes.by,
                authority=yes.authority,
                terms=yes.terms,
            )


def agreed_price(job: Job) -> Logged[Yes] | None:
    """The newest yes that names a price, from somebody who may decide; None where there is none."""
    priced = [y for y in job.log(YES) if y.values.at_most is not None and y.values.authority is not False]
    return priced[-1] if priced else None


def check_yes(values: Yes) -> None:
    """Refuse a yes and a no to the same thing.

    Raises
    ------
    InputError
        If something is ticked in both.
    """
    both = set(values.to or ()) & set(values.not_to or ())
    if both:
        names = ", ".join(words for key, words in ACTIONS if key in both)
        raise InputError("No to", "other things than the yes", names, "Take the tick away on one side.")


@once_a_state
def consents(job: Job) -> Mapping[str, bool]:
    """What the owner said to each kind of action.

    Returns
    -------
    mapping
        A key of `ACTIONS` to yes or no; without those that were not answered.

    Notes
    -----
    The newest word counts, wherever it was entered: among the answers, as the consent to publish at intake, or as
    the consent to polish at the finish. A yes from a person who may not decide does not count; a no always does.
    Newest is the later line; where the clock says otherwise (it went back, or two copies were merged), a yes must be
    the newest by both.
    """
    words = list(_words(job))
    by_line, by_clock = (
        {action: agreed for *_, action, agreed in sorted(words, key=lambda word: word[order])} for order in (0, 1)
    )
    return MappingProxyType({action: agreed and by_clock[action] for action, agreed in by_line.items()})


def yes_and_no(job: Job) -> tuple[frozenset[str], frozenset[str]]:
    """The kinds of action that the owner said yes to, and those with a no: keys of `ACTIONS`."""
    said = consents(job)
    return frozenset(a for a, yes in said.items() if yes), frozenset(a for a, yes in said.items() if not yes)


def _words(job: Job) -> Iterator[tuple[int, dt.datetime, str, bool]]:
    """Every yes and no: its line in the record, its time, the action, and what was said."""
    for consent in job.log(CONSENT)[-1:]:
        said = (
            ("publish", consent.values.publish),
            ("pictures", consent.values.pictures),
            ("engraving", consent.values.engraving),
        )
        for action, agreed in said:
            if agreed is not None:
                yield job.line_of(consent.entry), consent.entry.time, action, agreed
    for polish in job.log(POLISH_CONSENT)[-1:]:
        if polish.values.agreed is not None:
            yield job.line_of(polish.entry), polish.entry.time, "polish", polish.values.agreed
    for logged in answers_of(job):
        answer = logged.values
        if answer.action is not None and answer.agreed is not None and not without_authority(answer):
            yield job.line_of(logged.entry), logged.entry.time, answer.action, answer.agreed


def without_authority(answer: Answer) -> bool:
    """Whether it is a yes from somebody who may not decide, which does not count; a no always does."""
    return answer.agreed is True and answer.authority is False


def not_applicable(job: Job) -> dict[str, str]:
    """What guidance asks for and was marked as not applicable: key to reason."""
    marked = [logged.values for logged in job.log(NOT_APPLICABLE)]
    return {mark.asked: mark.why or "" for mark in marked if mark.asked is not None}


def departures_without_yes(job: Job) -> tuple[tuple[str, bool], ...]:
    """Departures from the proposal that the owner has not said yes to.

    Returns
    -------
    tuple of (str, bool)
        What was done otherwise, and whether the owner said no to it. A departure is agreed if its own entry says
        when, or if an answer "a departure from the proposal" was entered after it; the newest such answer counts.
    """
    answers = [
        logged
        for logged in answers_of(job)
        if logged.values.action == "departure" and not without_authority(logged.values)
    ]
    found = []
    for departure in job.log(DEPARTURE):
        later = [said.values for said in answers if said.entry.time >= departure.entry.time]
        newest = later[-1] if later else None
        refused = newest is not None and newest.agreed is False
        if refused or (departure.values.agreed_on is None and newest is None):
            found.append((departure.values.what or "", refused))
    return tuple(found)


def check_estimate(values: Estimate, own_money: str = "") -> None:
    """Refuse an estimate that cannot be read or is out of order.

    Parameters
    ----------
    values : Estimate
        Its hours and amounts.
    own_money : str
        The bench's own currency, for amounts that older entries hold without one.

    Raises
    ------
    InputError
        If an amount cannot be read or the currencies differ, or if a lower end lies above its upper end.
    """
    money = {name: _money(name, typed, own_money) for name in _PRICES if (typed := getattr(values, name)) is not None}
    currencies = {amount.currency for amount in money.values()}
    if len(currencies) > 1:
        raise InputError("currency", "one for all amounts", ", ".join(sorted(currencies)))
    hours = [(name, reading.value) for name in _HOURS if (reading := getattr(values, name)) is not None]
    prices = [(name, float(money[name].amount)) for name in ("price_low", "price_high", "ceiling") if name in money]
    for run in (hours, prices):
        for (_, low), (name, high) in itertools.pairwise(run):
            if high < low:
                label = ESTIMATE.field(name).label
                raise InputError(label, f"at least {low:g}", f"{high:g}", "From the least to the most.")


def _money(name: str, typed: str, own_money: str) -> Money:
    return read_money(typed, own_money, name=ESTIMATE.field(name).label, old=False)


def _state(job: Job) -> StageState:
    if not job.record.live("agree"):
        return StageState("not begun")
    if not job.log(PROPOSAL) and not answers_of(job):
        return StageState("open", "nothing has been proposed yet")
    if not answers_of(job):
        return StageState("open", "the owner has not answered yet")
    if departures_without_yes(job):
        return StageState("open", "a departure waits for the owner's yes")
    return StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    found = [
        Finding("warning", "job.departure:refused" if refused else "job.departure:open", what=what)
        for what, refused in departures_without_yes(job)
    ]
    if not job.record.live("agree"):
        return tuple(found)
    found += [*_on_estimate(job), *_on_proposals(job), *_on_authority(job)]
    if job.log(PROPOSAL) and job.record.live("work log") and not answers_of(job):
        found.append(Finding("warning", "job.answer"))
    return tuple(found)


def _on_proposals(job: Job) -> Iterator[Finding]:
    parts = dict(PARTS)
    for logged in job.log(PROPOSAL):
        asked = logged.values
        part = parts.get(asked.part or "", "a part that is not named")
        if (asked.permanent is not None or asked.reversible is False) and asked.permanent_told is not True:
            yield Finding("warning", "job.permanent", part=part)
        ways = (("another way", asked.alternative), ("leaving it", asked.leave_it))
        if missing := [words for words, way in ways if way is None]:
            verb = "is" if len(missing) == 1 else "are"
            yield Finding("note", "job.alternatives", part=part, missing=missing, verb=verb)


def _on_authority(job: Job) -> Iterator[Finding]:
    newest = {logged.values.action: logged.values for logged in answers_of(job)}
    for action, answer in newest.items():
        if without_authority(answer):
            yield Finding("warning", "job.authority", action=dict(ACTIONS).get(action or "", "something not named"))


def _on_estimate(job: Job) -> list[Finding]:
    own = job.bench.currency
    estimate, yes = job.newest(ESTIMATE), agreed_price(job)
    limit = job.newest(REQUEST).price_limit if yes is None else yes.values.at_most
    try:
        check_estimate(estimate, own)
    except InputError as error:
        return [Finding("warning", "job.estimate", title=ESTIMATE.title.lower(), problem=str(error))]
    if estimate.ceiling is None or limit is None or consents(job).get("proposal") is True:
        return []
    try:
        most, asked = _money("ceiling", estimate.ceiling, own), read_money(limit, own, old=False)
    except InputError:
        return []
    raised = most.currency != asked.currency or most.amount > asked.amount
    return [Finding("warning", "job.limit-raised", ceiling=str(most), limit=str(asked))] if raised else []


AGREE = Stage(
    "agree",
    "Proposal and agreement",
    "What is proposed for each part, what else could be done, what it may cost, and the owner's yes or no to each kind of action.",
    (YES, SURVEY, PROPOSAL, ESTIMATE, ANSWER, RECEIVED, BILL, INVOICE, NOT_APPLICABLE),
    panel="pentools.panels.stages.job.agree:AgreePanel",
    section="pentools.writeup.sections.job.agree:section",
    state=_state,
    checks=_checks,
)
