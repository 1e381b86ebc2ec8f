"""The figures that go with a sum's answer, by the sum's name."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.sums.base import SumAnswer

__all__ = ["figures_for"]


def figures_for(key: str, answer: SumAnswer) -> list[Drawing]:
    """The figures of a sum's answer.

    Parameters
    ----------
    key : str
        The sum's name.
    answer : SumAnswer
        Its answer.

    Returns
    -------
    list of Drawing
        Empty where the sum has no figure.
    """
    if key == "capacity":
        from pentools.figures.fill_test import budget_figure, capacity_figure

        return [d for d in (capacity_figure(answer), budget_figure(answer)) if d is not None]
    return []
