"""What a bench can learn from its own jobs: time, filling, seals, rates, returns and success, each figure with n and interval."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from pentools.books.asked import ask_bench
from pentools.books.learning.craft import CRAFT, JobCraft
from pentools.books.learning.figures_told import Chapter, Learnt
from pentools.books.learning.like import counted_jobs
from pentools.books.learning.time_taken import FINISHED, TIME, JobTime
from pentools.books.learning.usual_here import usual_here
from pentools.calc.books.few import enough
from pentools.calc.books.median import median_of
from pentools.calc.books.pooled import Pooling, pooled
from pentools.calc.books.share import share_of
from pentools.numbers import fixed, percent
from pentools.record.bench import Bench, open_bench_folder
from pentools.record.stages.job.ending_kinds import ENDINGS
from pentools.record.stages.job.work_kinds import ACTIVITIES
from pentools.record.stages.job.works import WORKS
from pentools.record.stages.seal.places import PLACES, place_words
from pentools.systems.registry import SYSTEMS
from pentools.tables.fillers import difficulty_of, usual_fill

__all__ = ["Learned", "learned_from", "learned_on"]

_NOT_SAID = "not said"
_ACTIVITY, _WORK = dict(ACTIVITIES), dict(WORKS)


@dataclass(frozen=True, slots=True)
class Learned:
    """What was learned, chapter by chapter.

    Parameters
    ----------
    chapters : tuple of Chapter
        Time by work, system and activity; filling; seals; rates; returns by lot and by way; success by difficulty.
    jobs, counted : int
        How many jobs there are, and how many of them the figures of time rest on.
    unread : mapping of str to str
        Jobs that could not be read, each with the reason.
    """

    chapters: tuple[Chapter, ...]
    jobs: int
    counted: int
    unread: Mapping[str, str]

    def chapter(self, key: str) -> Chapter:
        """The chapter of that name."""
        return next(one for one in self.chapters if one.key == key)

    @property
    def lines(self) -> tuple[str, ...]:
        """All of it in words."""
        said = [
            f"{self.jobs} jobs; figures of time rest on the {self.counted} that ended as mended and whose minutes are whole."
        ]
        for chapter in self.chapters:
            said += ["", f"{chapter.title}:", *chapter.lines]
        said += [f"Not read: {name}. {why}" for name, why in self.unread.items()]
        return tuple(said)

    def as_json(self) -> dict[str, Any]:
        """Plain values: each chapter a list of figures, with n and interval or ``said``."""
        return {
            "jobs": self.jobs,
            "counted_for_time": self.counted,
            **{chapter.key: chapter.as_json() for chapter in self.chapters},
            "unread": [{"job": name, "why": why} for name, why in self.unread.items()],
        }


def learned_on(bench: str | os.PathLike[str] | Bench | None = None, year: int | None = None) -> Learned:
    """What a bench can learn from its jobs.

    Parameters
    ----------
    bench : str, path, Bench or None
        The bench; the usual one by default.
    year : int or None
        Only from jobs that ended in it; from all by default.

    Returns
    -------
    Learned
        Every figure with n and interval, or that they are too few to say.

    Raises
    ------
    RecordError
        If the bench cannot be looked into.
    """
    where = bench if isinstance(bench, Bench) else open_bench_folder(bench)
    times, crafts = ask_bench(where, TIME), ask_bench(where, CRAFT)
    return learned_from(times.answers, crafts.answers, year, {**times.unread, **crafts.unread})


def learned_from(
    times: Mapping[str, JobTime],
    crafts: Mapping[str, JobCraft],
    year: int | None = None,
    unread: Mapping[str, str] | None = None,
) -> Learned:
    """What can be learned from what the jobs answered.

    Returns
    -------
    Learned
        Of one year only jobs that ended in it count, but a pen that came back later still counts as come back.
    """
    time = {name: one for name, one in times.items() if year is None or (one.ended and one.ended.year == year)}
    craft = {name: one for name, one in crafts.items() if year is None or (one.ended and one.ended.year == year)}
    counted = counted_jobs(time)
    chapters = (
        _minutes("work", "Minutes by kind of work", {name: one.work for name, one in counted.items()}, counted),
        _minutes("system", "Minutes by filling system", {name: one.system for name, one in counted.items()}, counted),
        _by_activity(counted),
        _filling(craft),
        _held(craft),
        _rates(craft),
        *_returns(craft, crafts),
        _success(craft),
    )
    return Learned(chapters, len(time), len(counted), dict(unread or {}))


def _minutes(about: str, title: str, of: Mapping[str, str], jobs: Mapping[str, JobTime]) -> Chapter:
    groups = _grouped((of[name], one.whole_min) for name, one in jobs.items())
    together, names = pooled(groups), {**_WORK, **_systems(), "": _NOT_SAID}
    figures = tuple(
        Learnt(
            {about: key or _NOT_SAID}, names.get(key, key), len(values), median_of(values), *_leaning(together, key)
        )
        for key, values in _largest(groups)
    )  # fmt: skip
    return Chapter(f"minutes_by_{about}", title, "min", 0, figures)


def _leaning(together: Pooling | None, name: str) -> tuple[dict[str, Any], str]:
    """The shrunk middle of a group that has enough to say anything."""
    if together is None or not enough((one := together.groups[name]).n):
        return {}, ""
    shrunk = {
        "likely": round(one.likely, 1),
        "low": round(one.low, 1),
        "high": round(one.high, 1),
        "lean": round(one.lean, 3),
    }
    ends = f"{fixed(one.low, 0)} to {fixed(one.high, 0)}"
    return {"leaning_on_the_others": shrunk}, f"leaning on the others {fixed(one.likely, 0)} min ({ends})"


def _by_activity(jobs: Mapping[str, JobTime]) -> Chapter:
    groups = _grouped((key, minutes) for one in jobs.values() for key, minutes in one.minutes.items())
    whole = sum(one.whole_min for one in jobs.values())
    figures = tuple(
        Learnt(
            {"activity": name}, _ACTIVITY.get(name, name), len(values), median_of(values),
            {"share_of_all_minutes": round(sum(values) / whole, 4)}, f"{percent(sum(values) / whole)} of all minutes",
        )
        for name, values in _largest(groups)
    )  # fmt: skip
    return Chapter("minutes_by_activity", "Minutes by activity, in jobs that have it", "min", 0, figures)


def _filling(jobs: Mapping[str, JobCraft]) -> Chapter:
    """Shares by system, then by system and seal; beside the system's the usual one, and the bench's own where it has ten."""
    mended = [one for one in jobs.values() if one.ending in FINISHED and one.share is not None and one.system]
    figures = []
    for system, found in _largest(_grouped((one.system, one) for one in mended)):
        shares = [one.share for one in found if one.share is not None]
        more, note = usual_here(shares, usual_fill(system))
        name = _systems().get(system, system)
        figures.append(Learnt({"system": system, "seal": ""}, name, len(shares), median_of(shares), more, note))
        by_seal = _grouped((one.seal, one.share or 0.0) for one in found if one.seal)
        figures += [
            Learnt({"system": system, "seal": seal}, f"{name}, {_place(seal)}", len(values), median_of(values))
            for seal, values in _largest(by_seal)
        ]
    return Chapter("share_filled", "Share filled of what it holds, after the work", "share", 0, tuple(figures))


def _held(jobs: Mapping[str, JobCraft]) -> Chapter:
    over = _grouped((held.place, held.size_mm - held.bore_mm) for one in jobs.values() for held in one.held)
    figures = tuple(
        Learnt({"seal": place}, _place(place), len(sizes), median_of(sizes)) for place, sizes in _largest(over)
    )
    return Chapter("seal_over_bore", "Seal that held when tried dry, its size less the bore", "mm", 2, figures)


def _rates(jobs: Mapping[str, JobCraft]) -> Chapter:
    found = _grouped(((rate.material, rate.grade), rate.um_per_min) for one in jobs.values() for rate in one.rates)
    figures = tuple(
        Learnt({"material": material, "grade": grade}, f"{grade} on {material}", len(values), median_of(values))
        for (material, grade), values in _largest(found)
    )
    return Chapter("removal_rates", "Layer that a grade takes off", "µm/min", 2, figures)


def _returns(jobs: Mapping[str, JobCraft], everything: Mapping[str, JobCraft]) -> tuple[Chapter, Chapter]:
    """How many pens with a lot, or mended a way, came back for that part."""
    came_back: dict[str, set[str]] = {}
    for one in everything.values():
        if one.older and one.part:
            came_back.setdefault(one.older, set()).add(one.part)
    mended = {name: one for name, one in jobs.items() if one.ending in FINISHED}

    def chapter(key: str, title: str, about: str, of: Callable[[JobCraft], Iterable[tuple[str, str]]]) -> Chapter:
        back: dict[str, dict[str, bool]] = {}
        for name, one in mended.items():
            for part, what in of(one):
                kept = back.setdefault(what, {})
                kept[name] = kept.get(name, False) or part in came_back.get(name, ())
        figures = tuple(
            Learnt(
                {about: what},
                what,
                len(pens),
                share_of(sum(pens.values()), len(pens)),
                {"came_back": sum(pens.values())},
            )
            for what, pens in sorted(back.items(), key=lambda row: (-sum(row[1].values()), -len(row[1]), row[0]))
        )
        return Chapter(key, title, "share", 0, figures)

    return (
        chapter("returns_by_lot", "Pens that came back for the part, by its lot", "lot", lambda one: one.lots),
        chapter(
            "returns_by_way",
            "Pens that came back for the part, by how it was mended or sealed",
            "way",
            lambda one: one.ways,
        ),
    )


def _success(jobs: Mapping[str, JobCraft]) -> Chapter:
    """Of each rank of difficulty how many ended as done or done with limits, among those that ended at all."""
    ended = _grouped((difficulty_of(one.system), one.ending) for one in jobs.values() if one.ending and not one.older)
    figures = []
    for rank, endings in sorted(ended.items(), key=lambda row: (row[0] is None, row[0] or 0)):
        counts = {key: endings.count(key) for key, _ in ENDINGS}
        note = ", ".join(f"{count} {words.split(':')[0]}" for (key, words) in ENDINGS if (count := counts[key]))
        mended = sum(counts[key] for key in FINISHED)
        label = f"difficulty {rank}" if rank is not None else "no system named"
        about = {"difficulty": "" if rank is None else str(rank)}
        figures.append(Learnt(about, label, len(endings), share_of(mended, len(endings)), {"endings": counts}, note))
    return Chapter(
        "success_by_difficulty", "Mended, by how hard the filling system is (table)", "share", 0, tuple(figures)
    )


def _grouped(pairs: Iterable[tuple[Any, Any]]) -> dict[Any, list[Any]]:
    groups: dict[Any, list[Any]] = {}
    for key, value in pairs:
        groups.setdefault(key, []).append(value)
    return groups


def _largest(groups: Mapping[Any, list[Any]]) -> list[tuple[Any, list[Any]]]:
    return sorted(groups.items(), key=lambda row: (-len(row[1]), row[0]))


def _systems() -> dict[str, str]:
    return {key: system.label for key, system in SYSTEMS.items()}


def _place(key: str) -> str:
    return place_words(key) if key in PLACES else key
