"""The drawings and series that stand on a page: asked of the figures' layer, and only when a page needs them."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

from pentools.errors import InputError
from pentools.record.stages.dating.identify import dating
from pentools.record.stages.weighing.rest import leak_of
from pentools.record.view import once_a_state

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job
    from pentools.sums.base import SumAnswer

__all__ = [
    "budget_chart",
    "capacity_chart",
    "evidence_chart",
    "fillings_chart",
    "heat_charts",
    "leak_chart",
    "minutes_chart",
    "pen_in_section",
    "pen_with_faults",
    "seal_ladder",
    "series_chart",
]

Shown = TypeVar("Shown")
MOST_KEPT = 24
_CHARTS: dict[tuple[str, str], Drawing | None] = {}


def capacity_chart(answer: SumAnswer) -> Drawing | None:
    """What the pen draws against what it should hold."""
    from pentools.figures.weighing.filling import capacity_figure

    return _kept("capacity", repr(answer.data), lambda: capacity_figure(answer))


def budget_chart(answer: SumAnswer) -> Drawing | None:
    """How much each source of doubt gives to the uncertainty."""
    from pentools.figures.weighing.filling import budget_figure

    return _kept("budget", repr(answer.data), lambda: budget_figure(answer))


@once_a_state
def evidence_chart(job: Job) -> Drawing | None:
    """What each piece of evidence allows, and what all of it has in common."""
    from pentools.figures.dating.identify import evidence_figure

    return evidence_figure(dating(job))


@once_a_state
def seal_ladder(job: Job, place: str) -> Drawing | None:
    """The sizes that were tried for one seal, in their order; see `pentools.figures.seal.rings.ladder_drawing`."""
    from pentools.figures.seal.rings import ladder_drawing

    return ladder_drawing(job, place, ahead=False)


def series_chart(job: Job) -> Drawing | None:
    """Repeated fills, or weighings after single strokes."""
    from pentools.figures.weighing.series import fill_series_figure

    return _kept("series", _state_of(job), lambda: fill_series_figure(job))


@once_a_state
def fillings_chart(job: Job) -> Drawing | None:
    """Repeated fills, from dry and from drained apart."""
    from pentools.figures.weighing.series import fillings_figure

    return fillings_figure(job)


@once_a_state
def heat_charts(job: Job) -> tuple[Drawing, ...]:
    """The heatings of each joint against its limits."""
    from pentools.figures.treatment.heat import heat_figures

    return _if_it_adds_up(lambda: heat_figures(job)) or ()


def leak_chart(job: Job) -> Drawing | None:
    """Mass against time of the pen at rest."""
    from pentools.figures.weighing.leak import leak_figure

    answer = leak_of(job)
    return None if answer is None else _kept("leak", repr(answer.data), lambda: leak_figure(answer))


def minutes_chart(job: Job) -> Drawing | None:
    """Minutes of work by activity."""
    from pentools.figures.job.work_log import minutes_figure

    return _kept("minutes", _state_of(job), lambda: minutes_figure(job))


@once_a_state
def pen_in_section(job: Job) -> Drawing | None:
    """The pen in section with its filling mechanism brought out."""
    from pentools.figures.pen_from_record import pen_drawing

    title = "The pen in section, with its filling mechanism brought out"
    return _if_it_adds_up(lambda: pen_drawing(job, highlight=("filler",), marks=(), title=title))


@once_a_state
def pen_with_faults(job: Job) -> Drawing | None:
    """The pen in section with the faulty parts marked."""
    from pentools.figures.pen_from_record import pen_drawing

    return _if_it_adds_up(lambda: pen_drawing(job))


def _state_of(job: Job) -> str:
    """What a drawing of a job depends on: its record so far and the bench's facts."""
    entries = job.record.entries
    return f"{job.record.path} {len(entries)} {entries[-1].id if entries else ''} {job.bench.facts}"


def _kept(name: str, state: str, draw: Callable[[], Drawing | None]) -> Drawing | None:
    """A chart, drawn once for both pages of a job."""
    key = (name, state)
    if key not in _CHARTS:
        while len(_CHARTS) >= MOST_KEPT:
            del _CHARTS[next(iter(_CHARTS))]
        _CHARTS[key] = _if_it_adds_up(draw)
    return _CHARTS[key]


def _if_it_adds_up(draw: Callable[[], Shown | None]) -> Shown | None:
    """What was drawn or counted; none where the entries contradict each other, which the section says in words."""
    try:
        return draw()
    except InputError:
        return None
