"""The letter's title, from how the job ended and the pen in its owner's words, and the line under it."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from pentools.numbers import capital, in_words
from pentools.record.after_work import now_ml
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.ending_kinds import LIMIT, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.work_kinds import WORK
from pentools.writeup.letter.row import sentences
from pentools.writeup.words import date_in_words

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["letter_title", "pen_in_short", "status_line"]

_BEFORE_IT = re.compile(r"^(?:an?|the|my|our|your)\s+", re.IGNORECASE)
_WRITES = re.compile(r"\b(?:writes|wrote|written)\b", re.IGNORECASE)
_NOT = re.compile(r"\b(?:not|no|never|cannot|hardly|only|nor|until|once|used to)\b|n[’']t\b", re.IGNORECASE)


def pen_in_short(job: Job) -> str:
    """The pen in the words of the intake, up to the first comma; "pen" where it is not described."""
    words = re.split(r"[,;(]", job.newest(ARRIVAL).pen or "")[0].strip()
    return _BEFORE_IT.sub("", words) or "pen"


def letter_title(job: Job) -> str:
    """What the letter says first.

    Returns
    -------
    str
        Such as "Your green piston filler writes again"; that it writes or fills only where the record says so.
    """
    pen = pen_in_short(job)
    end = job.newest(RESULT).ending
    if end is None:
        return f"Your {pen} is still on the bench"
    if end == "stopped":
        return f"The work on your {pen} was stopped"
    if end == "returned":
        return f"Your {pen} comes home unrepaired"
    if _said_to_write(job):
        return f"Your {pen} writes again"
    return f"Your {pen} fills again" if now_ml(job) is not None else f"Your {pen} is ready"


def status_line(job: Job) -> str:
    """How the job ended and when, with the parts that limits were written for; empty while it is open."""
    result = job.newest(RESULT)
    if result.ending is None:
        return ""
    labels = dict(PARTS)
    parts = dict.fromkeys(labels.get(logged.values.part or "", "") for logged in job.log(LIMIT))
    named = in_words(part for part in parts if part)
    words = {
        "done": "Done",
        "done with limits": "Done with limits" + (f": {named}" if named else ""),
        "stopped": "Stopped: it will not go on for now",
        "returned": "Returned unrepaired",
    }[result.ending]
    released = f"released {date_in_words(result.released_on)}" if result.released_on else ""
    return capital("; ".join(part for part in (words, released) if part)) + "."


def _said_to_write(job: Job) -> bool:
    """Whether the restorer says that it writes: in the summary, or of the nib and the tests."""
    texts = [job.newest(RESULT).summary or ""]
    texts += [logged.values.done or "" for logged in job.log(WORK) if logged.values.activity in ("nib", "test")]
    said = (one for text in texts for one in sentences(text))
    return any(_WRITES.search(one) and not _NOT.search(one) for one in said)
