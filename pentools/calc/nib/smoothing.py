"""Micro-smoothing of a nib's tip: its own short plan of few strokes, with a look and a written line every few."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

import msgspec

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.ladder import find_paths
from pentools.calc.finish.limits import Medium
from pentools.errors import InputError

__all__ = ["Habit", "SmoothingPlan", "SmoothingStep", "nib_smoothing_plan"]


class Habit(msgspec.Struct, frozen=True):
    """What one feel of a nib may take: a row of the table ``nib_smoothing``, sizes in [µm]."""

    feel: str
    coarsest_um: float
    finish_um: float
    most_strokes: int
    check_every: int
    source: str
    certainty: str


@dataclass(frozen=True, slots=True)
class SmoothingStep:
    """One step on the tip.

    Parameters
    ----------
    number : int
        From 1.
    grade : Grade
        With what.
    most_strokes, check_every : int
        Stop at so many strokes; look and write a line after so many.
    how : str
        What to do.
    """

    number: int
    grade: Grade
    most_strokes: int
    check_every: int
    how: str


@dataclass(frozen=True, slots=True)
class SmoothingPlan:
    """A nib's short plan.

    Parameters
    ----------
    feel : str
        How the nib feels, as the habit names it.
    steps : tuple of SmoothingStep
        Three at most; empty where nothing fine enough is owned.
    findings : tuple of Finding
        What comes before any stroke, and when to stop.
    """

    feel: str
    steps: tuple[SmoothingStep, ...]
    findings: tuple[Finding, ...]


def nib_smoothing_plan(
    feel: str,
    habits: Iterable[Habit],
    owned: Sequence[Grade],
    media: Mapping[str, Medium],
    *,
    aligned: bool | None = None,
    tipped: bool | None = None,
) -> SmoothingPlan:
    """Plan the smoothing of a nib's tip.

    Parameters
    ----------
    feel : str
        How the nib feels: one of the habits.
    habits : iterable of Habit
        What each feel may take.
    owned : sequence of Grade
        Grades at hand.
    media : mapping of str to Medium
        Bands of the ratio.
    aligned : bool or None
        Whether the tines were seen level under the loupe; None where nobody looked.
    tipped : bool or None
        Whether there is hard tipping left; without it the nib's own gold or steel is cut, so None, where nobody
        looked, allows no more strokes than a nib without it.

    Returns
    -------
    SmoothingPlan
        Few steps, each with its most strokes and a look every few of them.

    Raises
    ------
    InputError
        If the feel is not known.

    Notes
    -----
    Common practice, no source: figure-eights under the pen's own weight on film or the finest cushioned cloth, wet;
    align first, because most scratchy nibs are out of line and not rough.
    """
    known = {habit.feel: habit for habit in habits}
    if feel not in known:
        raise InputError("feel of the nib", "one of " + ", ".join(known), feel)
    habit = known[feel]
    findings = list(_before(aligned, tipped))
    fine = [
        g
        for g in owned
        if g.particle_um <= habit.coarsest_um * 1.001 and g.medium in ("film", "cushioned", "paper", "paste")
    ]
    if aligned is False or not fine:
        if not fine:
            findings.append(Finding("stop", "nib.too-coarse", limit=habit.coarsest_um))
        return SmoothingPlan(feel, (), tuple(findings))
    paths = find_paths(fine, habit.finish_um, media)
    ladder = paths.ladder_from(paths.grades[0])[-3:]
    look, strokes = habit.check_every, habit.most_strokes
    if tipped is not True:
        strokes = max(look, strokes // 2)
    steps = tuple(
        SmoothingStep(
            place + 1, grade, strokes, look,
            f"Wet, the pen's own weight, figure-eights turning the pen; after {look} wipe, look, write a line."
            f" Stop at the first line that is smooth, at {strokes} strokes in any case.",
        )
        for place, grade in enumerate(ladder)
    )  # fmt: skip
    last = ladder[-1]
    if last.finish_um > habit.finish_um * 1.001:
        findings.append(
            Finding("note", "nib.finish-not-reached", last=last.label, leaves=last.finish_um, wanted=habit.finish_um)
        )
    return SmoothingPlan(feel, steps, tuple(findings))


def _before(aligned: bool | None, tipped: bool | None) -> Sequence[Finding]:
    found = []
    if aligned is False:
        found.append(Finding("stop", "nib.align-first:now"))
    elif aligned is None:
        found.append(Finding("warning", "nib.align-first:look"))
    if tipped is not True:
        found.append(Finding("warning", "nib.no-tipping:seen" if tipped is False else "nib.no-tipping:look"))
    found.append(Finding("warning", "nib.stop-early"))
    return found
