"""What the pen does now: what it draws and how it stood the rest, and nothing that was measured before the work."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.books.learning.beside_others import beside_others
from pentools.calc.base.uncertainty import format_value
from pentools.numbers import in_words, percent
from pentools.record.after_work import changed_at, drawn_at_first, now_ml
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.nib.paper import writes
from pentools.record.stages.nib.words import writes_in_words
from pentools.record.stages.seal.kinds import TEST
from pentools.record.stages.weighing.kinds import LEAK_CHECK
from pentools.writeup.letter.row import Row
from pentools.writeup.orders import without_orders
from pentools.writeup.words import THIN, sentence

if TYPE_CHECKING:
    from pentools.record.forms import Logged
    from pentools.record.job import Job
    from pentools.record.stages.weighing.kinds import LeakCheck
    from pentools.sums.base import SumAnswer

__all__ = ["at_rest", "it_writes", "now_row"]

_SHARES = {
    "as usual": ", as is usual",
    "short": ", less than a sound one draws",
    "more than full": ", more than it can hold: one of the measurements is wrong",
    "cannot tell": "; whether that is short cannot be told",
}


def now_row(job: Job) -> Row | None:
    """What it draws, also beside others of this bench, how it stood the rest and what it writes, and plainly what was not tried.

    Returns
    -------
    Row or None
        None for a pen that went home unrepaired and was never weighed, and for one still on the bench.
    """
    end = job.newest(RESULT).ending
    worked = end in ("done", "done with limits")
    big, first = _volume(job)
    rest = at_rest(job)
    said = [
        first or ("Not weighed after the work." if worked else ""),
        _at_first(job) if first else "",
        beside_others(job) if first and worked else "",
        rest or ("Not tried for leaks after the work." if worked else ""),
    ]
    lines = " ".join(part for part in said if part)
    label = "What it does now" if end else "What it does so far"
    found = tuple(line for line in (lines, it_writes(job)) if line)
    return Row(label, found, big) if found else None


def it_writes(job: Job) -> str:
    """What its nib writes after the work, ±, on what; empty where nobody tried, and for what was seen before the work."""
    found = writes(job, "after")
    return writes_in_words(found) if found is not None else ""


def _volume(job: Job) -> tuple[str, str]:
    """The volume as it stands large, and the words after it."""
    answer = now_ml(job)
    if answer is None:
        return "", ""
    data = answer.data
    if not data["gain_told"]:
        return "", without_orders(answer.sentence)
    big = _ml(answer)
    share = data["share_filled"]
    if not isinstance(share, float):
        return big, "at a filling."
    return big, f"at a filling: {percent(share)} of {data['expected_holds']}{_SHARES.get(str(data['verdict']), '')}."


def _at_first(job: Job) -> str:
    answer = drawn_at_first(job)
    return f"Before the work it drew {_ml(answer)}." if answer is not None and answer.data["gain_told"] else ""


def _ml(answer: SumAnswer) -> str:
    return format_value(answer.data["volume_ml"], answer.data["expanded_uncertainty_ml"], "mL")


def at_rest(job: Job) -> str:
    """How it stood filled after the work: the last leak check, else the last night of the seals' own tests; empty where neither was done."""
    since = -1 if (first := changed_at(job)) is None else first
    checks = [logged for logged in job.log(LEAK_CHECK) if job.place_of(logged.entry) > since]
    if checks:
        return _check(checks[-1])
    nights = [n for n in job.log(TEST) if n.values.test == "overnight" and job.place_of(n.entry) > since]
    if not nights or not nights[-1].values.overnight_seen:
        return ""
    night = nights[-1].values
    hours = f"{night.rested.value:g}{THIN}h" if night.rested is not None else "A night"
    where = "it was dry" if night.overnight_seen == "dry" else f"it was damp: {night.overnight_seen}"
    return f"{hours} at rest, filled: {where}."


def _check(logged: Logged[LeakCheck]) -> str:
    check = logged.values
    hours = f"{check.rested.value:g}{THIN}h" if check.rested is not None else "Some time"
    lay = f" ({check.how})" if check.how else ""
    places = in_words(check.damp or ())
    if check.dry is True:
        doubt = f", though damp was noted: {places}" if places else ""
        return f"{hours} at rest, filled{lay}: dry all over{doubt}."
    if check.dry is None and not places:
        return ""
    return sentence(f"{hours} at rest, filled{lay}: it leaked{f', {places}' if places else ''}")
