"""The drawings that stand on a page: each asked for from the figures' layer, and only when a page needs it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job
    from pentools.sums.base import SumAnswer

__all__ = [
    "budget_chart",
    "capacity_chart",
    "leak_chart",
    "minutes_chart",
    "pen_in_section",
    "pen_with_faults",
    "series_chart",
]


def capacity_chart(answer: SumAnswer) -> Drawing | None:
    """What the pen draws against what it should hold."""
    from pentools.figures.fill_test import capacity_figure

    return capacity_figure(answer)


def budget_chart(answer: SumAnswer) -> Drawing | None:
    """How much each source of doubt gives to the uncertainty."""
    from pentools.figures.fill_test import budget_figure

    return budget_figure(answer)


def series_chart(job: Job) -> Drawing | None:
    """Repeated fills, or weighings after single strokes."""
    from pentools.figures.fill_test import fill_series_figure

    return fill_series_figure(job)


def leak_chart(job: Job) -> Drawing | None:
    """Mass against time of the pen at rest."""
    from pentools.figures.fill_test import leak_figure

    return leak_figure(job)


def minutes_chart(job: Job) -> Drawing | None:
    """Minutes of work by activity."""
    from pentools.figures.work_log import minutes_figure

    return minutes_figure(job)


def pen_in_section(job: Job) -> Drawing | None:
    """The pen in section with its filling mechanism brought out."""
    from pentools.figures.pen_from_record import pen_drawing

    return pen_drawing(
        job, highlight=("filler",), marks=(), title="The pen in section, with its filling mechanism brought out"
    )


def pen_with_faults(job: Job) -> Drawing | None:
    """The pen in section with the faulty parts marked."""
    from pentools.figures.pen_from_record import pen_drawing

    return pen_drawing(job)
