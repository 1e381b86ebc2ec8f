"""Micro-smoothing of a nib's tip: its own short plan of few strokes, with a look and a written line every few."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.ladder import find_paths
from pentools.calc.finish.limits import Medium
from pentools.errors import InputError

__all__ = ["FEELS", "SmoothingPlan", "SmoothingStep", "nib_smoothing_plan"]

# what it feels like -> coarsest particle [µm], finish wanted [µm], most strokes in one step
FEELS: Mapping[str, tuple[float, float, int]] = {
    "a little toothy": (1.0, 1.0, 8),
    "scratchy": (3.0, 1.0, 12),
    "reshaped": (13.0, 1.0, 20),
}
"""How a nib feels, with the coarsest particle, the finish and the most strokes a step: common practice, no source."""

_CHECK_EVERY = 4


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
        A key of `FEELS`.
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
    owned: Sequence[Grade],
    media: Mapping[str, Medium],
    *,
    aligned: bool | None = None,
    tipped: bool | None = True,
) -> SmoothingPlan:
    """Plan the smoothing of a nib's tip.

    Parameters
    ----------
    feel : str
        A key of `FEELS`.
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
        Few steps, each with its most strokes and a check every four.

    Raises
    ------
    InputError
        If the feel is not known.

    Notes
    -----
    Common practice, no source: figure-eights under the pen's own weight on film or the finest cushioned cloth, wet;
    align first, because most scratchy nibs are out of line and not rough.
    """
    if feel not in FEELS:
        raise InputError("feel of the nib", "one of " + ", ".join(FEELS), feel)
    coarsest, finish, strokes = FEELS[feel]
    findings = list(_before(aligned, tipped))
    fine = [
        g for g in owned if g.particle_um <= coarsest * 1.001 and g.medium in ("film", "cushioned", "paper", "paste")
    ]
    if aligned is False or not fine:
        if not fine:
            findings.append(Finding("stop", "finish.too-coarse:nib", limit=coarsest))
        return SmoothingPlan(feel, (), tuple(findings))
    paths = find_paths(fine, finish, media)
    ladder = paths.ladder_from(paths.grades[0])[-3:]
    if tipped is not True:
        strokes = max(_CHECK_EVERY, strokes // 2)
    steps = tuple(
        SmoothingStep(
            place + 1, grade, strokes, _CHECK_EVERY,
            f"Wet, the pen's own weight, figure-eights turning the pen; after {_CHECK_EVERY} wipe, look, write a line."
            f" Stop at the first line that is smooth, at {strokes} strokes in any case.",
        )
        for place, grade in enumerate(ladder)
    )  # fmt: skip
    last = ladder[-1]
    if last.finish_um > finish * 1.001:
        findings.append(
            Finding("note", "finish.finish-not-reached:nib", last=last.label, leaves=last.finish_um, wanted=finish)
        )
    return SmoothingPlan(feel, steps, tuple(findings))


def _before(aligned: bool | None, tipped: bool | None) -> Sequence[Finding]:
    found = []
    if aligned is False:
        found.append(Finding("stop", "finish.align-first:now"))
    elif aligned is None:
        found.append(Finding("warning", "finish.align-first:look"))
    if tipped is not True:
        found.append(Finding("warning", "finish.no-tipping:seen" if tipped is False else "finish.no-tipping:look"))
    found.append(Finding("warning", "finish.stop-early"))
    return found
