"""The one small table of facts, and in a few sentences how they were measured and what anyone who does the same must know."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Set
from typing import TYPE_CHECKING

from pentools.calc.base.uncertainty import format_value
from pentools.calc.dating.findings import date_sentence
from pentools.numbers import capital, in_words
from pentools.record.after_work import now_ml
from pentools.record.stages.common import PARTS
from pentools.record.stages.dating.identify import dating
from pentools.record.stages.job.ending_kinds import ENDINGS, LIMIT, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.work_log import minutes_by_activity
from pentools.record.view import SPOILT
from pentools.words.treatment import CLOSING_LINE
from pentools.writeup.closing import pen_title, volume_in_words
from pentools.writeup.letter.now import at_rest, it_writes
from pentools.writeup.sections.finish.finishing import finish_caution
from pentools.writeup.sections.nib.nib import nib_caution
from pentools.writeup.sections.seal.sealing import seal_caution
from pentools.writeup.sections.treatment.cleaning import cleaning_caution
from pentools.writeup.sections.treatment.opening import opening_caution
from pentools.writeup.words import date_in_words, minutes_in_words

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["MOST_FACTS", "facts", "method_sentences"]

MOST_FACTS = 8


def facts(job: Job, told: Set[str] = frozenset()) -> tuple[tuple[str, str], ...]:
    """What is known of the pen and the work, from public fields, without what the story has told.

    Parameters
    ----------
    told : set of str
        What figures and sentences have told: "made", "draws", "rest", "writes", "time".

    Returns
    -------
    tuple of (label, value)
        At most `MOST_FACTS`; only what is known.
    """
    pen = set(_words(pen_title(job)))
    rows = ((key, label, _if_whole(make, job)) for key, label, make in _FACTS if key not in told)
    # what the pen's own description says is not said again
    found = [(key, label, capital(text)) for key, label, text in rows if text and not pen >= set(_words(text))]
    if len(found) > MOST_FACTS:
        found = [row for row in found if row[0] != "bench"]  # of nine the dates are missed least
    return tuple((label, text) for _, label, text in found)[:MOST_FACTS]


def method_sentences(job: Job) -> tuple[str, ...]:
    """How the figures were reached, how sure they are, and the cautions; each a paragraph."""
    answer = now_ml(job)
    found = [volume_in_words(answer.data)] if answer is not None else []
    found.append(
        "A figure with ± gives an interval that holds the value with about 95\u202f% confidence. What was not measured is not given."
    )
    cautions = [text for make in _CAUTIONS if (text := _if_whole(make, job))]
    if cautions:
        found.append(f"Before anyone does the same. {_without_repeats(cautions)}")
    return tuple(found)


def _if_whole(make: Callable[[Job], str], job: Job) -> str:
    """What a function tells of a job; nothing where the entries it reads were spoilt."""
    try:
        return make(job)
    except SPOILT:
        return ""


def _without_repeats(texts: list[str]) -> str:
    """Cautions as one text; the line that closes each of them is said once, at the end."""
    bodies = [text.removesuffix(CLOSING_LINE).strip() for text in texts]
    return " ".join((*bodies, CLOSING_LINE))


def _words(text: str) -> list[str]:
    return re.findall(r"\w+", text.casefold())


def _fills_by(job: Job) -> str:
    system = job.newest(ARRIVAL).system
    return ARRIVAL.field("system").shown(system) if system else ""


def _made(job: Job) -> str:
    result = dating(job)
    return date_sentence(result) if result is not None else ""


def _draws(job: Job) -> str:
    answer = now_ml(job)
    if answer is None or not answer.data["gain_told"]:
        return ""
    return format_value(answer.data["volume_ml"], answer.data["expanded_uncertainty_ml"], "mL")


def _time(job: Job) -> str:
    minutes = sum(minutes_by_activity(job).values())
    return minutes_in_words(minutes) if minutes else ""


def _bench(job: Job) -> str:
    came, went = job.newest(ARRIVAL).arrived_on, job.newest(RESULT).released_on
    if came and went:
        return f"{date_in_words(came)} to {date_in_words(went)}"
    return f"since {date_in_words(came)}" if came and job.newest(RESULT).ending is None else ""


def _result(job: Job) -> str:
    """How it ended; where it was done with limits, which parts were left."""
    ending = job.newest(RESULT).ending
    if ending is None:
        return "the work is not finished"
    labels = dict(PARTS)
    left = in_words(dict.fromkeys(labels[log.values.part] for log in job.log(LIMIT) if log.values.part))
    words = dict(ENDINGS)[ending]
    return f"{words}: {left} left alone" if left and ending.startswith("done") else words


def _facts_in_order() -> Iterator[tuple[str, str, Callable[[Job], str]]]:
    yield "system", "Fills by", _fills_by
    yield "material", "Made of", lambda job: job.newest(ARRIVAL).material or ""
    yield "made", "Made when", _made
    yield "draws", "Draws now", _draws
    yield "rest", "At rest", at_rest
    yield "writes", "Writes", lambda job: it_writes(job).removeprefix("It writes ")
    yield "time", "Work", _time
    yield "bench", "On the bench", _bench
    yield "result", "Result", _result


_FACTS = tuple(_facts_in_order())
_CAUTIONS = (opening_caution, cleaning_caution, seal_caution, nib_caution, finish_caution)
