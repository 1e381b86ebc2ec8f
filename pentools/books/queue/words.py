"""The queue as lines to read and as objects to hand on."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from pentools.books.queue.queue import STATE_WORDS, Line, queue_on
from pentools.numbers import in_words
from pentools.record.bench import open_bench_folder

if TYPE_CHECKING:
    import os

    import pandas as pd

__all__ = ["DUE", "TO_WORK_ON", "as_json", "day_words", "groups_of", "in_lines", "queue", "said_of"]

TO_WORK_ON, DUE = "to work on now", "follow-ups due"
_LONG_ENDED = 365
_NOTICE = (
    "Uncollected: what notices are due, and when, is for your own law and terms to say; the kit only counts the days."
)


_NO_LINE = Line("", "", "bench", False, None, "")


def as_json(line: Line) -> dict[str, Any]:
    """A line of the queue as a JSON object."""
    days = {name: getattr(line, name) for name in ("since", "by", "promised_by")}
    return {
        "job": line.job,
        "pen": line.pen or None,
        "state": line.state,
        "state_words": STATE_WORDS[line.state],
        "ready": line.ready,
        **{name: None if day is None else day.isoformat() for name, day in days.items()},
        "next": line.next,
        "until": line.until or None,
        "holds": [{"step": step, "reason": why} for step, why in line.holds],
        "waits_for": list(line.waits_for),
        "overdue": list(line.overdue),
        "in_danger": bool(line.danger),
        "danger": line.danger or None,
        "follow_up": line.follow_up or None,
        "days_uncollected": line.days_here,
        "parcel": line.parcel or None,
        "ending": line.ending or None,
        "open": f"pentools open {line.job}",
    }


def queue(bench: str | os.PathLike[str] | None = None, today: dt.date | None = None) -> pd.DataFrame:
    """Where every pen on a bench stands on a day, what can be worked on first.

    Parameters
    ----------
    bench : str, path or None
        The bench folder; the usual one by default.
    today : date, datetime or None
        The day asked about, as `queue_on` takes it; this moment by default.

    Returns
    -------
    pandas.DataFrame
        One row a job: job, pen, state, ready, since, by, promised_by, next, until, holds, waits_for, overdue, in_danger,
        follow_up, days_uncollected and more; days and moments as text, lists as lists.
    """
    import pandas as pd

    lines = queue_on(open_bench_folder(bench), today or dt.datetime.now().astimezone())
    return pd.DataFrame([as_json(line) for line in lines], columns=list(as_json(_NO_LINE)))


def day_words(day: dt.date, today: dt.date) -> str:
    """A day as it is read in a list: without its year where that is this one."""
    return f"{day.day} {day:%b}" if day.year == today.year else f"{day.day} {day:%b %Y}"


def groups_of(lines: Sequence[Line]) -> dict[str, list[Line]]:
    """The lines under their headings, in the order in which they are read; ended jobs only where something is due."""
    found: dict[str, list[Line]] = {}
    for line in lines:
        if line.state == "ended":
            continue
        head = TO_WORK_ON if line.ready and line.state in ("bench", "test", "clock") else STATE_WORDS[line.state]
        found.setdefault(head, []).append(line)
    due = [line for line in lines if line.follow_up]
    order = [TO_WORK_ON, *STATE_WORDS.values()]
    sorted_ = {head: found[head] for head in sorted(found, key=order.index)}
    return sorted_ | ({DUE: due} if due else {})


def said_of(line: Line, today: dt.date, *, follow_up: bool = False) -> str:
    """What is said of a pen in one line, without its job."""
    if follow_up:
        return _sentence(line.pen, line.follow_up)
    parts = [_sentence(line.pen, "" if line.state in ("posting", "posted") else line.next)]
    if line.waits_for and line.state not in ("posting", "bench"):
        parts.append(f"Waits for {'; '.join(line.waits_for)}.")
    if line.since is not None:
        days = (today - line.since).days
        counted = "" if days < 0 else " (today)" if days == 0 else f" ({days} day{'' if days == 1 else 's'})"
        parts.append(f"Since {day_words(line.since, today)}{counted}.")
    if line.promised_by is not None:
        parts.append(f"Promised by {day_words(line.promised_by, today)}{': ' + line.danger if line.danger else ''}.")
    late = [what for what in line.overdue if not what.startswith("promised")]
    if late:
        parts.append("Uncollected." if line.state == "posting" else f"Late: {'; '.join(late)}.")
    if line.parcel:
        parts.append("First of its parcel." if line.parcel == line.job else f"Came with {line.parcel}.")
    if line.holds:
        parts.append(f"Held: {in_words(step for step, _ in line.holds)}.")
    return " ".join(part for part in parts if part)


def _sentence(pen: str, text: str) -> str:
    said = text.rstrip(".")
    if not pen:
        return f"{said[:1].upper()}{said[1:]}." if said else ""
    return f"{pen}: {said}." if said else f"{pen}."


def in_lines(lines: Sequence[Line], today: dt.date, *, why: bool = False) -> Iterator[str]:
    """The queue as it is printed: a heading a group, a line a pen.

    Parameters
    ----------
    why : bool
        Whether the reasons of the hold points stand under their pens.
    """
    if not lines:
        yield "The bench is empty. Start a job with: pentools new JOB"
        return
    width = min(40, max(len(line.job) for line in lines))
    for head, group in groups_of(lines).items():
        shown = [one for one in group if (one.days_here or 0) <= _LONG_ENDED]
        yield f"{head[:1].upper()}{head[1:]} ({len(group)})"
        for line in shown:
            yield f"  {line.job:<{width}}  {said_of(line, today, follow_up=head == DUE)}"
            if why:
                yield from (f"  {'':<{width}}    {step} waits: {reason}" for step, reason in line.holds)
        if len(shown) < len(group):
            yield f"  and {len(group) - len(shown)} that ended more than a year ago (--json lists them)"
    ended = sum(line.state == "ended" for line in lines)
    if ended:
        yield f"Ended: {ended}."
    if any("uncollected" in late for line in lines for late in line.overdue):
        yield _NOTICE
    yield "Open one with: pentools open JOB"
