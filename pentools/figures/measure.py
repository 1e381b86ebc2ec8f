"""Which small drawing shows where the calliper goes, for a stage of a job."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["fill_test_drawing"]


def fill_test_drawing(job: Job) -> Drawing | None:
    """The balance with the pen empty and filled: what the fill test weighs.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    Drawing or None
        The drawing.
    """
    from pentools.figures.pen.measure_here import weighing_drawing

    system = job.values("intake", "arrival")["system"]
    return weighing_drawing(str(system) if system is not None else None)
