"""Which small drawing shows where the balance or the calliper goes, for a stage of a job."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.geometry import SYSTEMS
from pentools.figures.pen.weigh_here import weigh_here
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["fill_test_drawing"]


def fill_test_drawing(job: Job) -> Drawing:
    """The pen on the balance, empty and filled: what the fill test weighs.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    Drawing
        With the latest readings on the balance where there are some.
    """
    system = str(job.values("intake", "arrival")["system"] or "")
    empty = filled = ""
    for _, values in job.log("fill test", "weighing"):
        mass = values["mass"]
        shown = f"{mass.value:.2f} g" if isinstance(mass, Reading) else ""
        if values["state"] in ("dry", "drained"):
            empty, filled = shown, ""
        elif values["state"] == "filled":
            filled = shown
    return weigh_here(system if system in SYSTEMS else "piston", readings=(empty, filled))
