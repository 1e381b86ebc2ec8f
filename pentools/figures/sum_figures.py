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
        from pentools.figures.weighing.filling import budget_figure, capacity_figure

        return [d for d in (capacity_figure(answer), budget_figure(answer)) if d is not None]
    if key == "abrasives":
        return _abrasives_figures(answer)
    if key == "grade":
        return _grade_figures(answer)
    if key == "seal":
        return _seal_figures(answer)
    return []


def _abrasives_figures(answer: SumAnswer) -> list[Drawing]:
    from pentools.calc.finish.types import Progression
    from pentools.figures.finish.finishing import ladder_figure

    plan = answer.result
    ladder = ladder_figure(plan) if isinstance(plan, Progression) else None
    return [ladder] if ladder is not None else []


def _grade_figures(answer: SumAnswer) -> list[Drawing]:
    from pentools.calc.finish.grades import Grade
    from pentools.figures.finish.finishing import scales_chart

    return [scales_chart(answer.result if isinstance(answer.result, Grade) else None)]


def _seal_figures(answer: SumAnswer) -> list[Drawing]:
    from pentools.calc.seal.fit import SealFit
    from pentools.figures.seal.rings import ring_drawing

    return [ring_drawing(answer.result.best)] if isinstance(answer.result, SealFit) else []
