"""What a pen is found again by: its words, system, material, parts and sizes; and what was fitted, what failed, how it ended."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import msgspec

from pentools.books.asked import Question
from pentools.books.search.sizes import Size, sizes_of
from pentools.record.forms import Form
from pentools.record.stages.dating.kinds import IDENTITY, MARK
from pentools.record.stages.job.agree_kinds import PROPOSAL, SURVEY
from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.ending_kinds import LIMIT, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, PART_CONDITION, REQUEST
from pentools.record.stages.job.release import ended_on
from pentools.record.stages.job.work_kinds import DEPARTURE, MATERIAL, TIMER_STOP, TOOL, WANTED, WORK
from pentools.record.stages.repairs.kinds import REPAIR
from pentools.record.stages.repairs.work import mended
from pentools.record.stages.seal.kinds import MEASURE, SEALANT, TRIAL, place_words
from pentools.record.stages.seal.kinds import TOOL as SEAL_TOOL
from pentools.record.stages.seal.proof import tool_words
from pentools.record.stages.treatment.facts import materials_of
from pentools.record.stages.treatment.opening_kinds import MATERIAL as MADE_OF
from pentools.record.wording import fold

if TYPE_CHECKING:
    from pentools.fields import Field
    from pentools.record.job import Job
    from pentools.record.kinds import Kind
    from pentools.units import Reading

__all__ = ["KNOWN", "WORDS", "CameOfIt", "Fitted", "Known", "Words", "folded"]

_SEARCHED: tuple[Kind[Any], ...] = (
    MATERIAL, TRIAL, MEASURE, SEALANT, REPAIR, SEAL_TOOL, TOOL, WORK, TIMER_STOP, LIMIT, RETURN, PART_CONDITION, ARRIVAL,
    MADE_OF, MARK, IDENTITY, SURVEY, PROPOSAL, WANTED, DEPARTURE, RESULT, REQUEST,
)  # fmt: skip
"""Kinds whose words are looked through; those that tell of the owner are not among them.

The first in which a word stands is named as the reason."""
_WORDY = ("text", "long text", "items")
_CHOICES = {
    (kind.stage, kind.key, name)
    for kind, name in (
        (ARRIVAL, "system"),
        (MEASURE, "place"),
        (TRIAL, "place"),
        (SEALANT, "sealant"),
        (REPAIR, "method"),
    )
}
"""Choices that say what this pen has; others would find a pen by a word of a list."""
_LEFT_OUT = {(RETURN.key, "older"), (RESULT.key, "price"), (REQUEST.key, "price_limit"), (MATERIAL.key, "cost")}
_WORD = re.compile(r"[^\W_]+")


class Fitted(msgspec.Struct, frozen=True, array_like=True, gc=False):
    """Something that was fitted: where, what, from which lot, and whether a dry trial said that it holds."""

    place: str | None
    what: str
    lot: str | None
    held: bool


class CameOfIt(msgspec.Struct, frozen=True, array_like=True, gc=False):
    """What was fitted (it holds, or held), trials that did not hold as a clause each, and tools made or used."""

    fitted: tuple[Fitted, ...]
    failed: tuple[str, ...]
    tools: tuple[str, ...]


class Known(msgspec.Struct, frozen=True, array_like=True, gc=False):
    """What is known of a pen.

    Parameters
    ----------
    pen, system, material : str or None
        As it arrived; the system's key.
    made_of : str
        Every material named at intake and at the opening, folded.
    body : str
        What the barrel is made of, as the tables name it; "unknown" where nobody is sure.
    parts : tuple of str
        Parts that something was seen at or done to, keys.
    sizes : tuple of Size
        What was measured.
    ending : str or None
        How it ended.
    begun, ended_on : str
        Days; empty where not on record.
    older : str or None
        The job it goes on from.
    came_back : str
        Why it came back then; empty where it goes on from none.
    rest : Raw
        What was fitted, what failed and which tools were used, not taken apart before it is wanted.
    """

    pen: str | None
    system: str | None
    material: str | None
    made_of: str
    body: str
    parts: tuple[str, ...]
    sizes: tuple[Size, ...]
    ending: str | None
    begun: str
    ended_on: str
    older: str | None
    came_back: str
    rest: msgspec.Raw

    @property
    def came_of_it(self) -> CameOfIt:
        """What was fitted, what failed, and which tools were used."""
        return msgspec.msgpack.decode(self.rest, type=CameOfIt)

    @property
    def days(self) -> int | None:
        """Days from arrival to the end; None where either is not on record."""
        if not self.begun or not self.ended_on:
            return None
        return max(0, (dt.date.fromisoformat(self.ended_on) - dt.date.fromisoformat(self.begun)).days)


class Words(msgspec.Struct, frozen=True, array_like=True, gc=False):
    """The words of a pen: folded, to be looked through, and as they stand, each with the title of its form.

    And, since it is asked of every pen, the job that it goes on from, and why it came back.
    """

    folded: str
    pieces: msgspec.Raw
    older: str | None
    came_back: str


def folded(text: str) -> str:
    """A text without case, accents and signs, a blank before every word, so that a word is found by its beginning.

    Examples
    --------
    >>> folded("Cork washer, 9.5 mm (Müller’s)")
    ' cork washer 9 5 mm muller s'
    """
    return "".join(f" {fold(word)}" for word in _WORD.findall(text))


# questions -------------------------------------------------------------------------------------------------


def _words_of(job: Job) -> Words:
    pieces = tuple(dict.fromkeys(_pieces(job)))
    held = msgspec.Raw(msgspec.msgpack.encode(pieces))
    return Words("\n".join(folded(text) for _, text in pieces), held, *_goes_on(job))


def _goes_on(job: Job) -> tuple[str | None, str]:
    back = job.newest(RETURN)
    return back.older, "" if back.older is None else back.failed or "it came back"


def _pieces(job: Job) -> Iterator[tuple[str, str]]:
    for kind in _SEARCHED:
        newest = job.log(kind) if kind.log else job.log(kind)[-1:]
        asked = [field for field in kind.fields if _is_looked_through(kind, field)]
        for logged in newest:
            for field in asked:
                value = getattr(logged.values, field.name)
                if value is not None:
                    yield kind.title, field.shown(value)


def _is_looked_through(kind: Kind[Any], field: Field) -> bool:
    if (kind.stage, kind.key, field.name) in _CHOICES:
        return True
    return field.kind in _WORDY and field.audience != "bench" and (kind.key, field.name) not in _LEFT_OUT


def _known_of(job: Job) -> Known:
    arrival, result, (older, came_back) = job.newest(ARRIVAL), job.newest(RESULT), _goes_on(job)
    entries, ended = job.record.live(), ended_on(job)
    made = [arrival.material or "", *(logged.values.material or "" for logged in job.log(MADE_OF))]
    fitted, failed, tools = dict.fromkeys(_fitted(job)), dict.fromkeys(_failed(job)), dict.fromkeys(_tools(job))
    came = CameOfIt(tuple(fitted), tuple(failed), tuple(tools))
    return Known(
        pen=arrival.pen,
        system=arrival.system,
        material=arrival.material,
        made_of="\n".join(dict.fromkeys(folded(one) for one in made if one)),
        body=materials_of(job, "barrel")[0],
        parts=tuple(dict.fromkeys(_parts(job))),
        sizes=sizes_of(job),
        ending=result.ending,
        begun=arrival.arrived_on or (entries[0].at[:10] if entries else ""),
        ended_on=ended.isoformat() if ended else "",
        older=older,
        came_back=came_back,
        rest=msgspec.Raw(msgspec.msgpack.encode(came)),
    )


_AT_PART = {"section": "section", "inner-cap": "inner-cap", "cap-seat": "cap", "breather": "filler", "collar": "filler"}
"""Place of a seal -> the part it counts to, where that is not the seals."""


def _parts(job: Job) -> Iterator[str]:
    named: tuple[Kind[Any], ...] = (PART_CONDITION, PROPOSAL, MATERIAL, LIMIT, REPAIR, MADE_OF, TOOL)
    for kind in named:
        yield from (logged.values.part for logged in job.log(kind) if logged.values.part)
    sealed: tuple[Kind[Any], ...] = (MEASURE, TRIAL, SEALANT)
    for kind in sealed:
        yield from (_AT_PART.get(logged.values.place or "", "seals") for logged in job.log(kind))


def _fitted(job: Job) -> Iterator[Fitted]:
    """What a dry trial said holds, what was put in, and what was mended; of a size that failed later nothing."""
    newest = {(t.values.place, folded(t.values.what or "")): t.values for t in job.log(TRIAL)}
    for trial in newest.values():
        if trial.happened == "pulls back" and trial.dry is not False:
            yield Fitted(place_words(trial.place), _with_size(trial.what or "", trial.outside), trial.lot, held=True)
    for logged in job.log(MATERIAL):
        put = logged.values
        if put.way == "added" and put.what:
            yield Fitted(_shown(MATERIAL, "part", put), put.what, put.lot, held=False)
    for one in mended(job):
        if not one.row.leaves:
            yield Fitted(REPAIR.field("part").shown(one.values.part), one.row.label, one.values.lot, held=False)


def _with_size(what: str, outside: Reading | None) -> str:
    """What was tried, with its size as it was measured where the words do not say it already."""
    said = outside is None or any(f"{outside.value:{form}}" in what for form in (".2f", ".1f", "g"))
    return what if outside is None or said else f"{what} ({outside.value:.2f} mm)"


def _shown(kind: Kind[Any], name: str, values: Form) -> str | None:
    value = getattr(values, name)
    return None if value is None else kind.field(name).shown(value)


def _failed(job: Job) -> Iterator[str]:
    outcomes = dict(TRIAL.field("happened").choices)
    for logged in job.log(TRIAL):
        trial = logged.values
        if trial.happened not in (None, "pulls back"):
            yield f"{trial.what} at the {place_words(trial.place)}: {outcomes[trial.happened].split(':')[0]}"


def _tools(job: Job) -> Iterator[str]:
    for logged in job.log(SEAL_TOOL):
        yield tool_words(logged.values)
    for used in job.log(TOOL):
        if used.values.tool:
            yield ", ".join(part for part in (used.values.tool, used.values.dimensions) if part)


KNOWN = Question("known", Known, _known_of)
WORDS = Question("words", Words, _words_of)
