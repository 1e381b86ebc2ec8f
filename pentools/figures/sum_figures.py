"""The figures that go with a sum's answer: one table, the sum's name to what draws it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from pentools.calc.finish.grades import Grade
from pentools.calc.finish.types import Progression
from pentools.calc.seal.fit import SealFit
from pentools.figures.closing.wall import care_page, order_page
from pentools.figures.drawing import Drawing
from pentools.figures.finish.finishing import ladder_figure, scales_chart
from pentools.figures.nib.lines import lines_figures
from pentools.figures.seal.rings import ring_drawing
from pentools.figures.weighing.dips import dips_figure
from pentools.figures.weighing.filling import budget_figure, capacity_figure
from pentools.figures.weighing.leak import leak_figure
from pentools.sums.base import SumAnswer
from pentools.sums.closing.care import CareTold
from pentools.sums.closing.work import ToldOrder

__all__ = ["FIGURES", "figures_for"]


def _capacity(answer: SumAnswer) -> tuple[Drawing | None, ...]:
    return (capacity_figure(answer), dips_figure(answer), budget_figure(answer))


def _abrasives(answer: SumAnswer) -> tuple[Drawing | None, ...]:
    return (ladder_figure(answer.result),) if isinstance(answer.result, Progression) else ()


def _grade(answer: SumAnswer) -> tuple[Drawing | None, ...]:
    return (scales_chart(answer.result if isinstance(answer.result, Grade) else None),)


def _seal(answer: SumAnswer) -> tuple[Drawing | None, ...]:
    return (ring_drawing(answer.result.best),) if isinstance(answer.result, SealFit) else ()


def _order(answer: SumAnswer) -> tuple[Drawing | None, ...]:
    return (order_page(answer.result),) if isinstance(answer.result, ToldOrder) else ()


def _care(answer: SumAnswer) -> tuple[Drawing | None, ...]:
    return (care_page(answer, answer.result),) if isinstance(answer.result, CareTold) else ()


FIGURES: Mapping[str, Callable[[SumAnswer], Sequence[Drawing | None]]] = {
    "capacity": _capacity,
    "leak": lambda answer: (leak_figure(answer),),
    "abrasives": _abrasives,
    "grade": _grade,
    "order": _order,
    "care": _care,
    "seal": _seal,
    "lines": lines_figures,
}
"""The sum's name -> its figures; a None among them is a figure that this answer does not have."""


def figures_for(key: str, answer: SumAnswer) -> list[Drawing]:
    """The figures of the answer of the sum of that name; empty where it has none."""
    draw = FIGURES.get(key)
    return [] if draw is None else [drawing for drawing in draw(answer) if drawing is not None]
