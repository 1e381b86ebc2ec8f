"""The proposal to send: what was found, what is proposed and what else could be done, what it costs, and room for a yes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from pentools.numbers import capital, plain
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree import answers_of, consents, without_authority
from pentools.record.stages.job.agree_kinds import (
    ACTIONS,
    ANSWER,
    ESTIMATE,
    MENDABLE,
    PROPOSAL,
    SURVEY,
    Answer,
    Proposal,
)
from pentools.record.stages.job.intake_kinds import OWNER, REQUEST
from pentools.record.stages.job.release import ending
from pentools.writeup.forms import Files
from pentools.writeup.papers.sheet import NOT_ENTERED, Paper, Row, paper_files, rows_of, told
from pentools.writeup.sections.job.agree import answers_in_words
from pentools.writeup.sections.job.condition import gravest
from pentools.writeup.words import THIN, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["proposal_files", "proposal_paper"]

_LONG_H, _SAME_MIN = 2.0, 0.01
_TO_ASK = ("heat", "soak", "polish", "sealant", "replace part", "nib work")
_ASK = "Where it is needed, may these be done?"
_WAYS = ("Yes, as it is proposed", "Yes, with this change:", "No, send it back as it is")
_BLANKS = ("Date", "By letter, e-mail or telephone", "Name", "Signature")


def proposal_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:  # noqa: ARG001 - the owner's, from the record
    """The proposal's one file, from the record alone."""
    return paper_files(job, proposal_paper(job))


def proposal_paper(job: Job) -> Paper:
    """The proposal as the record stands: of each part the newest word counts."""
    makers = (_asked, _found, _proposed, _for_good, _risk, _otherwise, _left, _price, _answer)
    owner = told(OWNER, job.newest(OWNER), "owner")
    return Paper(
        "proposal", "A proposal for your pen", sentence(f"For {owner}") if owner else "", rows_of(job, *makers)
    )


def _asked(job: Job) -> Row:
    request = job.newest(REQUEST)
    asked, expects, must_not = (told(REQUEST, request, name) for name in ("asked", "expectations", "must_not"))
    lines = [sentence(asked) if asked else ""]
    lines += [f"You expect: {sentence(expects)}"] if expects else []
    lines += [f"Not to be done: {sentence(must_not)}"] if must_not else []
    return Row("You asked", tuple(line for line in lines if line))


def _found(job: Job) -> Row:
    survey = job.newest(SURVEY)
    conclusion, grade, not_examined = (told(SURVEY, survey, name) for name in ("conclusion", "grade", "not_examined"))
    lines = [sentence(conclusion) if conclusion else "", " ".join(
        part for part in (gravest(job), f"Condition: {grade}." if grade else "") if part
    )]  # fmt: skip
    lines += [f"Not examined: {sentence(not_examined)}"] if not_examined else []
    return Row("What was found", tuple(line for line in lines if line) or (sentence(NOT_ENTERED),))


def _newest(job: Job) -> tuple[Proposal, ...]:
    """The newest proposal for each part, in the order in which the parts were first written of."""
    found: dict[str | None, Proposal] = {}
    for logged in job.log(PROPOSAL):
        found[logged.values.part] = logged.values
    return tuple(found.values())


def _by_part(job: Job, words: Callable[[Proposal], str]) -> tuple[tuple[str, str], ...]:
    names = dict(PARTS)
    said = ((names.get(one.part or "", "a part that is not named"), words(one)) for one in _newest(job))
    return tuple((capital(name), text) for name, text in said if text)


def _proposed(job: Job) -> Row:
    parts = _by_part(job, _steps)
    return Row("What is proposed", () if parts else ("Nothing has been proposed yet.",), parts)


def _steps(one: Proposal) -> str:
    proposed, materials = told(PROPOSAL, one, "proposed"), told(PROPOSAL, one, "materials")
    doubt = {"yes": ""}.get(one.mendable or "yes", dict(MENDABLE).get(one.mendable or "", ""))
    return " ".join(
        part
        for part in (
            sentence(proposed),
            f"Materials: {materials.rstrip('. ')}." if materials else "",
            f"Can it be mended: {doubt}." if doubt else "",
        )
        if part
    )


def _for_good(job: Job) -> Row:
    """What cannot be undone; that all can be is said only where it was entered of every part."""
    lasting = _by_part(job, lambda one: sentence(_lasting(one)))
    found = _newest(job)
    if not lasting and found and all(one.reversible is True for one in found):
        return Row("For good", ("All of it can be undone.",))
    return Row("For good", parts=lasting)


def _lasting(one: Proposal) -> str:
    permanent = told(PROPOSAL, one, "permanent")
    return permanent or ("what is done here cannot be undone" if one.reversible is False else "")


def _risk(job: Job) -> Row:
    return Row("Risk", parts=_by_part(job, lambda one: sentence(told(PROPOSAL, one, "risk"))))


def _otherwise(job: Job) -> Row:
    return Row("Other ways", parts=_by_part(job, lambda one: sentence(told(PROPOSAL, one, "alternative"))))


def _left(job: Job) -> Row:
    return Row("If nothing is done", parts=_by_part(job, lambda one: sentence(told(PROPOSAL, one, "leave_it"))))


def _price(job: Job) -> Row:
    estimate = job.newest(ESTIMATE)
    low, high, parts, most = (
        told(ESTIMATE, estimate, name) for name in ("price_low", "price_high", "parts_cost", "ceiling")
    )
    limit = told(REQUEST, job.newest(REQUEST), "price_limit")
    big = _span(job, low, high)
    lines = [f"Parts and materials: {parts}."] if parts else []
    lines += [f"Never more than {most} without a new yes from you."] if most else []
    if limit and limit != most:
        lines.append(f"The limit you named: {limit}.")
    hours = _hours(job)
    lines += [hours] if hours else []
    if not big and not lines:
        return Row("Price", (sentence(NOT_ENTERED),))
    return Row("Price", (" ".join(lines),) if lines else (), big=big)


def _span(job: Job, low: str, high: str) -> str:
    """Two amounts as "100 to 140 EUR"; as they were entered where they cannot be read or differ in currency."""
    if not low or not high:
        return f"from {low}" if low else f"up to {high}" if high else ""
    first, last = job.money(low), job.money(high)
    if first is None or last is None or first.currency != last.currency or not low.endswith(first.currency):
        return f"{low} to {high}"
    return high if low == high else f"{low.removesuffix(first.currency).strip()} to {high}"


def _hours(job: Job) -> str:
    estimate = job.newest(ESTIMATE)
    names = ("hours_low", "hours_likely", "hours_high")
    low, likely, high = (_time(getattr(estimate, n).value) if told(ESTIMATE, estimate, n) else "" for n in names)
    span = f"{low} to {high}" if low and high else f"at least {low}" if low else f"at most {high}" if high else ""
    told_likely = f"most likely {likely}" if likely else ""
    both = ", ".join(part for part in (span, told_likely) if part)
    return f"Time at the bench: {both}." if both else ""


def _time(hours: float) -> str:
    """A time as it was entered: whole minutes below two hours, else hours."""
    minutes = 60 * hours
    short = hours < _LONG_H and abs(minutes - round(minutes)) < _SAME_MIN and minutes % 30
    return f"{round(minutes)}{THIN}min" if short else f"{plain(hours, 3)}{THIN}h"


def _answer(job: Job) -> Row:
    """What was answered; where nothing was yet, or something newer was proposed, room for a yes with its date and way."""
    whole = [logged.values for logged in answers_of(job) if logged.values.action == "proposal"]
    said = (_said(whole[-1]),) if whole else ()
    proposed = bool(job.log(PROPOSAL))
    if whole and not _open(job):
        return Row("Your answer", tuple(line for line in (*said, answers_in_words(job)) if line))
    if not proposed or ending(job) is not None:
        return Row("Your answer", said or ((sentence(NOT_ENTERED),) if proposed else ()))
    newer = (
        ("Something was proposed since then; please answer it below.",)
        if whole and not without_authority(whole[-1])
        else ()
    )
    given = consents(job)
    names, words = dict(ACTIONS), {True: "yes", False: "no", None: ""}
    asked = tuple((names[key], words[given.get(key)]) for key in _TO_ASK)
    contact = job.bench.strings("bench", "contact")
    ask = (f"Please answer to {', '.join(contact)}.",) if contact else ()
    return Row("Your answer", (*said, *newer, *ask), ticks=_WAYS, asks=_ASK, answers=asked, blanks=_BLANKS)


def _open(job: Job) -> bool:
    """Whether no answer that counts was entered after the newest proposal."""
    proposed = [job.line_of(logged.entry) for logged in job.log(PROPOSAL)]
    answered = [
        job.line_of(logged.entry)
        for logged in answers_of(job)
        if logged.values.action in ("proposal", "departure") and not without_authority(logged.values)
    ]
    return max(answered, default=-1) < max(proposed, default=0)


def _said(answer: Answer) -> str:
    word = "Yes" if answer.agreed else "No"
    on, by, channel, terms = (told(ANSWER, answer, name) for name in ("answered_on", "by", "channel", "terms"))
    when = f", on {on}" if on else ""
    who = f", given by {by}" if by else ""
    how = f", {_way(channel)}" if channel else ""
    authority = " (by somebody who may not decide: it does not count)" if without_authority(answer) else ""
    return f"{word}{when}{how}{who}{authority}.{f' “{terms}”' if terms else ''}"


def _way(channel: str) -> str:
    return channel if channel.startswith(("by ", "in ", "on ")) else f"by {channel}"
