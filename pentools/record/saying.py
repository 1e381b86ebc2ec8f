"""Every stage in one sentence: what matters of it now, for its closed line on the sheet and for its panel."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from pentools.calc.dating.findings import date_sentence
from pentools.numbers import capital
from pentools.record.spending import spending_of
from pentools.record.stages.closing.closing import closing_sentence
from pentools.record.stages.common import PARTS
from pentools.record.stages.dating.identify import dating
from pentools.record.stages.dating.kinds import MARK
from pentools.record.stages.finish.words import finish_sentence
from pentools.record.stages.job.agree import yes_and_no
from pentools.record.stages.job.agree_kinds import ACTIONS
from pentools.record.stages.job.condition import worst_by_part
from pentools.record.stages.job.ending_kinds import ENDINGS, LIMIT, NOTHING_LEFT, PICTURE
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.posting import posting_sentence
from pentools.record.stages.job.release import ending
from pentools.record.stages.job.work_kinds import ACTIVITIES
from pentools.record.stages.job.work_log import minutes_by_activity
from pentools.record.stages.nib.words import nib_sentence
from pentools.record.stages.repairs.repairs import repair_sentence
from pentools.record.stages.seal.measure import places_in_use
from pentools.record.stages.seal.sealing import fit_words
from pentools.record.stages.treatment.baths import cleaning_sentence
from pentools.record.stages.treatment.words import opening_sentence
from pentools.record.stages.weighing.filling import capacity_of
from pentools.record.stages.weighing.kinds import LEAK_CHECK, WEIGHING
from pentools.record.view import SPOILT, why_not

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["say"]


def say(job: Job, stage: str) -> str:
    """What matters of a stage now.

    Parameters
    ----------
    stage : str
        The stage's key.

    Returns
    -------
    str
        One sentence; where the entries cannot be worked out, why.
    """
    try:
        return _SAYS[stage](job) if stage in _SAYS else ""
    except SPOILT as error:
        return why_not(error)


def _intake(job: Job) -> str:
    arrival = job.newest(ARRIVAL)
    if arrival.pen is None:
        return "Nothing is known of this pen yet. Begin with whose it is and what arrived."
    pieces = arrival.pieces or ()
    count = f", in {len(pieces)} pieces" if len(pieces) > 1 else ""
    return f"{capital(arrival.pen)}{count}."


def _identify(job: Job) -> str:
    result = dating(job)
    if result is not None:
        return date_sentence(result)
    marks = len(job.log(MARK))
    found = f"{marks} {'mark' if marks == 1 else 'marks'} noted; no" if marks else "No"
    return f"{found} dating evidence has been entered yet."


def _condition(job: Job) -> str:
    worst = worst_by_part(job)
    if not worst:
        return "No part has been looked at yet."
    names = dict(PARTS)
    grave = [names[part] for part, severity in worst.items() if severity >= 3]
    if grave:
        return f"What keeps it from working: {', '.join(grave)}."
    sound = sum(severity == 0 for severity in worst.values())
    return f"{len(worst)} parts looked at, {sound} of them sound; nothing that stops the pen."


def _agree(job: Job) -> str:
    names = dict(ACTIONS)
    yes, no = ([names[key] for key, _ in ACTIONS if key in said] for said in yes_and_no(job))
    said = [f"{word} to {', '.join(found)}" for word, found in (("yes", yes), ("no", no)) if found]
    money = spending_of(job)
    what = "" if money.hours_counted else " on materials"
    most = (
        f" {money.in_all().normalize():f} of at most {money.ceiling.normalize():f} {money.currency} spent{what}."
        if money.ceiling is not None
        else " No ceiling is agreed."
    )
    return (f"The owner said {'; '.join(said)}." if said else "The owner has not answered yet.") + most


def _work_log(job: Job) -> str:
    totals = minutes_by_activity(job)
    if not totals:
        return "No time has been entered yet."
    most = max(totals, key=lambda key: totals[key])
    total = sum(totals.values())
    return f"{total / 60:.1f} hours so far, most of it {dict(ACTIVITIES)[most]} ({totals[most]:.0f} min)."


def _seal(job: Job) -> str:
    used = places_in_use(job)
    tried = [words for place in used if (words := fit_words(job, place))]
    return tried[-1] if tried else "Nothing was tried dry yet." if used else "Nothing is measured yet."


def _fill_test(job: Job) -> str:
    answer = capacity_of(job)
    if answer is not None:
        return answer.sentence
    started, rested = job.log(WEIGHING), job.log(LEAK_CHECK)
    if rested and not started:
        last = rested[-1].values
        how = "dry all over" if last.dry else "damp"
        return f"{how.capitalize()} after {LEAK_CHECK.field('rested').shown(last.rested)}; it was not weighed."
    return "Now fill it and weigh it again." if started else "Weigh it empty first, then fill it and weigh it again."


def _limits(job: Job) -> str:
    left = [logged.values.left for logged in job.log(LIMIT) if logged.values.left]
    if left:
        return "; ".join(left)
    return "Nothing was left." if job.newest(NOTHING_LEFT).nothing_left else "Not written yet."


def _pictures(job: Job) -> str:
    moments = [logged.values.moment for logged in job.log(PICTURE)]
    if not moments:
        return "No picture yet."
    counts = ", ".join(f"{moments.count(m)} {m}" for m in ("before", "during", "after"))
    return f"{len(moments)} {'picture' if len(moments) == 1 else 'pictures'}: {counts}."


def _release(job: Job) -> str:
    end = ending(job)
    if end is None:
        return "The job is open. A page made now says so at its head."
    return f"The job has ended: {dict(ENDINGS)[end]}."


_SAYS: dict[str, Callable[[Job], str]] = {
    "intake": _intake,
    "identify": _identify,
    "condition": _condition,
    "agree": _agree,
    "open": opening_sentence,
    "clean": cleaning_sentence,
    "repairs": repair_sentence,
    "work log": _work_log,
    "seal": _seal,
    "closing": closing_sentence,
    "fill test": _fill_test,
    "nib": nib_sentence,
    "finish": finish_sentence,
    "limits": _limits,
    "pictures": _pictures,
    "release": _release,
    "posting": posting_sentence,
}
