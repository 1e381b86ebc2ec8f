"""The way down through the owned grades: every start's best ladder, found backwards in one pass."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.finish.grades import Grade
from pentools.calc.finish.limits import Medium

__all__ = ["GradePaths", "find_paths"]

_Cost = tuple[float, float, float, float]
_NOTHING: _Cost = (0.0, 0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class GradePaths:
    """The best ladder from every owned grade.

    Parameters
    ----------
    grades : tuple of Grade
        The owned grades, coarsest finish first.
    following : tuple of int or None
        Place of the grade that follows each in its best ladder; None where the ladder ends.
    """

    grades: tuple[Grade, ...]
    following: tuple[int | None, ...]

    def ladder_from(self, start: Grade) -> tuple[Grade, ...]:
        """The best ladder that begins with one of the grades."""
        place: int | None = self.grades.index(start)
        ladder = []
        while place is not None:
            ladder.append(self.grades[place])
            place = self.following[place]
        return tuple(ladder)


def find_paths(
    owned: Sequence[Grade], finish_um: float, media: Mapping[str, Medium], *, judged_by: str = "both"
) -> GradePaths:
    """Find the best ladder from each owned grade down to a finish.

    Parameters
    ----------
    owned : sequence of Grade
        What the bench has.
    finish_um : float
        Finish-equivalent size to reach [µm], above 0.
    media : mapping of str to Medium
        Bands of the ratio.
    judged_by : {"both", "particle", "finish"}
        Which size must get smaller at every step.

    Returns
    -------
    GradePaths
        For each grade the one that follows it.

    Notes
    -----
    Among all ladders whose every step goes finer, the best one, in this order: comes nearest the finish wanted;
    exceeds the bands least; wastes least on steps below them; has the most even and smallest steps (least sum of
    ln² of the ratios). Steps inside the band cost no stock that larger ones would save the time for: small ones buy
    safety, and the bands' lower ends keep out those that do nothing.
    """
    grades = tuple(sorted(owned, key=lambda g: (-g.finish_um, -g.particle_um)))
    sizes = [(g.particle_um, g.finish_um, math.log(g.finish_um)) for g in grades]
    bands = [(math.log(media[g.medium].ratio_low), math.log(media[g.medium].ratio_high)) for g in grades]
    target = math.log(finish_um)
    by_particle, by_finish = judged_by != "finish", judged_by != "particle"
    best: list[_Cost] = [_NOTHING] * len(grades)
    following: list[int | None] = [None] * len(grades)
    for here in range(len(grades) - 1, -1, -1):
        particle, finish, log_here = sizes[here]
        best[here] = (max(0.0, log_here - target), 0.0, 0.0, 0.0)
        if log_here <= target + 1e-9:
            continue
        for there in range(here + 1, len(grades)):
            other_particle, other_finish, log_there = sizes[there]
            if (by_particle and other_particle >= particle) or (by_finish and other_finish >= finish):
                continue
            ratio, (low, high), rest = log_here - log_there, bands[there], best[there]
            over, under = max(0.0, ratio - high - 1e-9), max(0.0, low - ratio - 1e-9)
            cost = (rest[0], rest[1] + over, rest[2] + under, rest[3] + ratio * ratio)
            if cost < best[here]:
                best[here], following[here] = cost, there
    return GradePaths(grades, tuple(following))
