"""Which repairs a released hold lets go: the one way that it was given for, and none besides."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.record.stages.repairs.kinds import REPAIR, Repair
from pentools.record.stages.repairs.work import topics_of
from pentools.record.view import once_a_state

if TYPE_CHECKING:
    from pentools.calc.repairs.fitness import Topic
    from pentools.record.job import Job

__all__ = ["repairs_in_the_way", "topics_against"]

HOLD = "repair"
"""The hold point, as its releases name it."""


@dataclass(frozen=True, slots=True)
class _LetGo:
    """What was let go: ways by name, entries by a release that names none, and whether such a one still waits."""

    ways: frozenset[str]
    entries: frozenset[str]
    next_one: bool


def topics_against(job: Job, values: Repair) -> tuple[Topic, ...]:
    """What stands in the way of a repair, released or not; nothing where its way is of another part."""
    try:
        return topics_of(job, values)
    except InputError:
        return ()  # the stage's own check says so


def repairs_in_the_way(job: Job, repair: Repair | None = None) -> tuple[Topic, ...]:
    """What stands in the way of a repair and was not let go.

    Parameters
    ----------
    repair : Repair or None
        The entry about to be made; None asks about those on record.

    Returns
    -------
    tuple of Topic
        Each once. A release holds for the way that it names. One that names none holds for what waited on record
        when it was given, or, where nothing did, for the next entry that would be held.
    """
    free = _let_go(job)
    if repair is not None:
        return () if repair.method in free.ways or free.next_one else topics_against(job, repair)
    held = [one.values for one in job.log(REPAIR) if one.entry.id not in free.entries]
    found = [topic for values in held if values.method not in free.ways for topic in topics_against(job, values)]
    return tuple(dict.fromkeys(found))


@once_a_state
def _let_go(job: Job) -> _LetGo:
    releases = sorted(job.record.releases(HOLD), key=job.line_of)
    named = [str(release.data.get("about", "")) for release in releases]
    ways = frozenset(name for name in named if name)
    waiting = [
        (job.place_of(one.entry), one.entry.id)
        for one in job.log(REPAIR)
        if one.values.method not in ways and topics_against(job, one.values)
    ]
    entries: set[str] = set()
    next_one = False
    for line in (job.line_of(release) for release, name in zip(releases, named, strict=True) if not name):
        open_ones = [one for one in waiting if one[1] not in entries]
        before = [entry for at, entry in open_ones if at < line]
        after = [entry for at, entry in open_ones if at > line]
        entries.update(before or after[:1])
        next_one = next_one or not (before or after)
    return _LetGo(ways, frozenset(entries), next_one)
