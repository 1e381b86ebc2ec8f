"""What stands in texts for everybody that is the owner's or the bench's own, by its place, and what a reason was given for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from pentools.calc.base.findings import Finding
from pentools.numbers import capital
from pentools.record.matching import Found, found_in
from pentools.record.ordinary import is_ordinary_word
from pentools.record.registry import all_stages
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.ending_kinds import PICTURE
from pentools.record.stages.job.intake_kinds import ARRIVAL, PASSED
from pentools.record.view import once_a_state
from pentools.record.wording import fold, seen_text, words_of

if TYPE_CHECKING:
    from pentools.fields import Field
    from pentools.record.forms import Logged
    from pentools.record.job import Job
    from pentools.record.kinds import Kind, Stage

__all__ = ["Found", "OwnText", "found_in", "is_ordinary", "own_fields", "passed_over", "strangers_found"]

_TEXT_KINDS = frozenset({"text", "long text", "items"})


@dataclass(frozen=True, slots=True)
class OwnText:
    """A text somebody wrote that is for everybody, with its place and, where that helps to find it, its first words."""

    place: str
    text: str
    beginning: str = ""


def own_fields(job: Job) -> Iterator[OwnText]:
    """Every field for everybody that holds a text, with its place: ``Limits: one thing left, Why``."""
    for stage in all_stages():
        for kind in stage.kinds:
            logged = job.log(kind) if kind.log else job.log(kind)[-1:]
            for number, one in enumerate(logged, 1):
                which = f" ({number} of {len(logged)})" if len(logged) > 1 else ""
                for field in kind.fields:
                    value = getattr(one.values, field.name)
                    if field.audience == "everybody" and field.kind in _TEXT_KINDS and value is not None:
                        text = "; ".join(value) if isinstance(value, tuple) else str(value)
                        yield OwnText(_place(stage, kind, field, one, which), text)


def _place(stage: Stage, kind: Kind[Any], field: Field, logged: Logged[Any], which: str) -> str:
    if kind is PICTURE and logged.values.photo:
        return f"the caption of {logged.values.photo}"
    return f"{capital(stage.key)}: {kind.title[:1].lower()}{kind.title[1:]}{which}, {field.label}"


def strangers_found(job: Job) -> tuple[Finding, ...]:
    """Fields for everybody that say what is the owner's or the bench's own; none before the owner agreed to publication."""
    if consents(job).get("publish") is not True:
        return ()
    told = {
        (own.place, found.word): Finding("warning", "job.stranger", place=own.place, word=found.word, about=found.about)
        for own in own_fields(job)
        for found in found_in(job, own.text)
        if not passed_over(job, found, own.place)
    }
    return tuple(told.values())


def is_ordinary(job: Job, found: Found) -> bool:
    """Whether what was found is one word that the kit's own sentences or the pen's description use, such as green or May."""
    if found.kind != "name" or " " in found.key:
        return False
    return is_ordinary_word(found.key) or found.key in _of_the_pen(job)


@once_a_state
def _of_the_pen(job: Job) -> frozenset[str]:
    """Words of the pen's description written small: a name would have its capital."""
    arrival = job.newest(ARRIVAL)
    texts = " ".join(text for text in (arrival.pen, arrival.material) if text)
    return frozenset(word.folded for word in words_of(seen_text(texts)) if word.shown.islower())


def passed_over(job: Job, found: Found, place: str) -> bool:
    """Whether a reason was given to show this: for the word wherever it stands, at its place, or among its words.

    Notes
    -----
    A reason without a place covers the word everywhere. One with the words around it covers it among those words only,
    so that a new sentence is asked about anew; an ordinary word written small (green, mark, may) is then covered
    wherever it is written small.
    """
    for logged in job.log(PASSED):
        passed = logged.values
        key = " ".join(word.folded for word in words_of(seen_text(passed.word or "")))
        if key != found.key or not key:
            continue
        if passed.around:
            small = (passed.word or "").islower() and found.word.islower() and is_ordinary(job, found)
            if passed.around == found.around or small:
                return True
        elif not passed.place or fold(passed.place.strip()) == fold(place):
            return True
    return False
