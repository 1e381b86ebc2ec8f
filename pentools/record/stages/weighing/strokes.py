"""A pump filler weighed after each stroke: the runs in the record, and what each says."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from pentools.calc.weighing.series import StrokeSeries, stroke_series
from pentools.errors import InputError
from pentools.record.stages.weighing.filling import capacity_of, setup_values
from pentools.record.stages.weighing.kinds import WEIGHING
from pentools.record.view import once_a_state
from pentools.sums.base import Inputs
from pentools.sums.weighing.inputs import balance_of, handling_of

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["Z_TYPICAL_ML_PER_G", "stroke_runs", "stroke_uncertainty_g", "strokes_of"]

_EMPTY = ("dry", "drained")
Z_TYPICAL_ML_PER_G = 1.003


def stroke_uncertainty_g(job: Job) -> float:
    """Standard uncertainty of one weighing after a stroke [g]: last digit, scatter, and the drop at the nib."""
    masses = tuple(logged.values.mass for logged in job.log(WEIGHING) if logged.values.mass is not None)
    given = Inputs({**setup_values(job), "masses": masses})
    balance, _ = balance_of(given, ("masses",))
    return math.hypot(balance.rounding_g, balance.spread_g, handling_of(given).drop()[1])


@once_a_state
def stroke_runs(job: Job) -> tuple[StrokeSeries, ...]:
    """Every run of weighings after single strokes, each begun from the empty pen before it.

    Returns
    -------
    tuple of StrokeSeries
        In the order they were taken, such as before and after a repair; a run with fewer than two strokes, or with
        stroke numbers that do not rise, is left out.
    """
    try:
        answer = capacity_of(job)
    except InputError:  # a filling that contradicts itself says nothing of the strokes
        answer = None
    z = answer.data["z_ml_per_g"] if answer else Z_TYPICAL_ML_PER_G
    expected = answer.data["expected_ml"] if answer else None
    doubt = stroke_uncertainty_g(job)
    found = []
    for points in _stroke_points(job):
        try:
            found.append(stroke_series([n for n, _ in points], [g for _, g in points], z, doubt, expected))
        except InputError:
            continue
    return tuple(found)


def strokes_of(job: Job) -> StrokeSeries | None:
    """What each stroke of a pump filler adds as the pen is now: the last run of `stroke_runs`.

    Returns
    -------
    StrokeSeries or None
        None where the pen was not weighed after single strokes, or too few times.
    """
    runs = stroke_runs(job)
    return runs[-1] if runs else None


def _stroke_points(job: Job) -> list[list[tuple[int, float]]]:
    """Runs of (stroke, mass [g]); an empty weighing begins a new one, and a number that does not rise is left out."""
    runs: list[list[tuple[int, float]]] = []
    empty: list[float] = []
    for logged in job.log(WEIGHING):
        state, mass, given = logged.values.state, logged.values.mass, logged.values.strokes
        if mass is None:
            continue
        if state in _EMPTY:
            empty.append(mass.value)
            continue
        if state != "stroke":
            empty = []
            continue
        number = given if given is not None else (runs[-1][-1][0] + 1 if runs and not empty else 1)
        if empty:
            runs.append([(0, math.fsum(empty) / len(empty))])
            empty = []
        elif not runs or number <= runs[-1][-1][0]:
            continue
        runs[-1].append((number, mass.value))
    return runs
