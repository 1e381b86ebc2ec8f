"""The jobs that a new one is like: which circle of them is near enough and large enough, and who stands outside and why."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from pentools.books.learning.time_taken import DOUBTS, FINISHED, JobTime
from pentools.calc.books.differ import Difference, difference
from pentools.calc.books.few import FEWEST, TOO_FEW
from pentools.numbers import capital, in_words
from pentools.record.stages.job.works import WORKS
from pentools.systems.registry import SYSTEMS

__all__ = ["Circle", "Moved", "circle_of", "counted_jobs", "left_out", "narrowed"]

_WORK = dict(WORKS)
_FACTORS: tuple[tuple[str, str, Callable[[JobTime], object]], ...] = (
    ("material", "what the barrel is made of", lambda job: job.material),
    ("faults", "a fault that stops it from working", lambda job: job.grave),
    ("polish", "polishing", lambda job: job.polish),
    ("nib", "work on the nib", lambda job: job.nib),
)
"""What may move an estimate: key, in words, and how a job stands to it."""
_APART = (
    0.01  # how often chance alone may narrow the circle; judged: narrowing by chance makes a range too sure of itself
)


@dataclass(frozen=True, slots=True)
class Circle:
    """The like jobs that a figure rests on.

    Parameters
    ----------
    key : str
        Which circle: ``system and work``, ``family and work``, ``work``, ``system``, ``family`` or ``all``.
    words : str
        What its jobs have in common, such as "lever sac filler, a new sac".
    why : str
        Why it is not a nearer one, as a sentence; empty for the nearest.
    jobs : mapping of str to JobTime
        The jobs, by name.
    """

    key: str
    words: str
    why: str
    jobs: Mapping[str, JobTime]


@dataclass(frozen=True, slots=True)
class Moved:
    """What moved the estimate, or did not.

    Parameters
    ----------
    key, words : str
        What it is.
    told : str
        How it stands, as a clause.
    difference : Difference or None
        What the jobs show; None where there are too few with it or without.
    counted : bool
        Whether only jobs that are like this one in it were taken.
    """

    key: str
    words: str
    told: str
    difference: Difference | None
    counted: bool


def left_out(job: JobTime) -> str:
    """Why a job's minutes are not built on, as a clause; empty where they are."""
    if job.ending not in FINISHED:
        return {"": "it is not finished", "stopped": "it was stopped", "returned": "it went home unrepaired"}.get(
            job.ending, "it did not end as mended"
        )
    if job.older:
        return "it came back from an earlier job"
    return DOUBTS.get(job.doubt, "") if job.doubt else ""


def counted_jobs(jobs: Mapping[str, JobTime], without: str = "") -> dict[str, JobTime]:
    """The jobs that figures of time rest on, without the one in hand.

    Returns
    -------
    dict
        Those that ended as done or done with limits, did not come back from an earlier job, and whose minutes are not
        plainly incomplete (`DOUBTS`).
    """
    return {name: job for name, job in jobs.items() if name != without and not left_out(job)}


def circle_of(job: JobTime, jobs: Mapping[str, JobTime]) -> Circle:
    """The nearest circle of like jobs that has three.

    Parameters
    ----------
    job : JobTime
        The one in hand.
    jobs : mapping of str to JobTime
        From `counted_jobs`.

    Returns
    -------
    Circle
        The widest one, all jobs, where none has three.
    """
    missed: list[str] = []
    for key, words, is_like in _circles(job):
        found = {name: one for name, one in jobs.items() if is_like(one)}
        if len(found) >= FEWEST or key == "all":
            return Circle(key, words, _why(job, missed), found)
        missed.append(f"“{words}” has {len(found) or 'none'}")
    raise AssertionError("the widest circle takes all")


def _circles(job: JobTime) -> list[tuple[str, str, Callable[[JobTime], bool]]]:
    system = SYSTEMS[job.system].label if job.system in SYSTEMS else ""
    work = _WORK.get(job.work, job.work)
    found: list[tuple[str, str, Callable[[JobTime], bool]]] = []
    if system and work:
        found.append(("system and work", f"{system}, {work}", lambda o: (o.system, o.work) == (job.system, job.work)))
        words = f"of one family with the {system}, {work}"
        found.append(("family and work", words, lambda o: (o.family, o.work) == (job.family, job.work)))
    if work:
        found.append(("work", f"any pen, {work}", lambda o: o.work == job.work))
    elif system:
        found.append(("system", f"{system}, any work", lambda o: o.system == job.system))
        found.append(("family", f"of one family with the {system}, any work", lambda o: o.family == job.family))
    found.append(("all", "any pen, any work", lambda _: True))
    return found


def _why(job: JobTime, missed: list[str]) -> str:
    unsaid = [words for words, told in (("the filling system", job.system), ("the kind of work", job.work)) if not told]
    said = [f"{capital(in_words(unsaid))} {'is' if len(unsaid) == 1 else 'are'} not on record."] if unsaid else []
    said += [f"It takes three: {in_words(missed)}."] if missed else []
    return " ".join(said)


def narrowed(job: JobTime, circle: Circle) -> tuple[Mapping[str, JobTime], tuple[Moved, ...]]:
    """The circle's jobs that are like this one in what is seen to move the time; all of them where nothing is.

    Returns
    -------
    jobs : mapping of str to JobTime
        Three or more, unless the circle has fewer.
    moved : tuple of Moved
        Everything that might move it in which the circle's jobs are not all like this one, with how it stands.
    """
    jobs, told = dict(circle.jobs), []
    factors = [factor for factor in _FACTORS if any(factor[2](one) != factor[2](job) for one in jobs.values())]
    for key, words, stands in factors:
        mine = stands(job)
        if key == "material" and not mine:
            told.append(Moved(key, words, "it is not named", None, counted=False))
            continue
        same = {name: one for name, one in jobs.items() if stands(one) == mine}
        other = {name: one for name, one in jobs.items() if name not in same}
        if not other:
            continue  # those that differed were left out already
        found = difference(
            [one.whole_min for one in same.values()],
            [one.whole_min for one in other.values()],
            1 - _APART / len(factors),
        )
        counted = found is not None and found.shown and circle.key != "all"
        told.append(Moved(key, words, _told(len(same), len(other), found), found, counted=counted))
        jobs = same if counted else jobs
    return jobs, tuple(told)


def _told(same: int, other: int, found: Difference | None) -> str:
    if found is None:
        verb = "is" if same < 2 else "are"
        return f"{same or 'none'} of the like jobs {verb} as this one, {other} not: {TOO_FEW}"
    if not found.shown:
        return f"{same} as this one, {other} not: no difference shows"
    ends = f"{found.low:.2g} to {found.high:.2g}"
    return f"the {same} took {found.ratio:.2g} times ({ends}) as long as the {other} others"
