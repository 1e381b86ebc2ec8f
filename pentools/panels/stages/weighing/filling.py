"""The fill test's panel: weigh, read the result in a sentence, see it in a figure."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pentools.calc.weighing.gain import MOST_G
from pentools.errors import InputError
from pentools.figures.weighing.dips import dips_figure
from pentools.figures.weighing.filling import budget_figure, capacity_figure
from pentools.figures.weighing.leak import leak_figure
from pentools.figures.weighing.measure import dimension_drawings, fill_test_drawing
from pentools.figures.weighing.series import fillings_figure
from pentools.figures.weighing.strokes import strokes_figure
from pentools.panels.stage import PanelResult, StagePanel
from pentools.panels.style import table_html
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.saying import say
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.weighing.dimensions import dimensions_elsewhere
from pentools.record.stages.weighing.filling import capacity_of, next_state
from pentools.record.stages.weighing.kinds import Weighing
from pentools.record.stages.weighing.rest import leak_of
from pentools.sums.weighing.capacity import dimension_fields

if TYPE_CHECKING:
    from pentools.panels.sheet_part import Sheet
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["FillTestPanel"]


class FillTestPanel(StagePanel):
    """Weighings in, millilitres out."""

    def __init__(self, job: Job, stage: Stage, sheet: Sheet) -> None:
        super().__init__(job, stage, sheet)
        self.forms["weighing"].boxes["state"].text = next_state(job)  # as it went on before the kernel was new

    def refresh_forms(self) -> None:
        """Ask only for the dimensions that this filling system has, and offer what another stage knows of them."""
        system = self.job.newest(ARRIVAL).system
        names = tuple(f.name for f in dimension_fields(system)) if system is not None else None
        self.forms["dimensions"].show_only(names)
        for name, reading in dimensions_elsewhere(self.job).items():
            self.forms["dimensions"].boxes[name].suggest(reading.text())

    def check(self, kind: Kind[Any], form: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """A weighing after a stroke needs the stroke's number, and a gain is no mass of a whole pen."""
        if isinstance(form, Weighing) and form.state == "stroke" and form.strokes is None:
            raise InputError(
                "After how many strokes",
                "filled in for a weighing after a single stroke",
                "",
                "Type 1 for the first stroke.",
            )
        if isinstance(form, Weighing) and form.state == "gain" and form.mass is not None and form.mass.value > MOST_G:
            raise InputError(
                "Mass",
                f"0 to {MOST_G:g} g for a gain",
                f"{form.mass.value:g} g",
                "Was the balance tared with the pen on it?",
            )

    def result(self) -> PanelResult:
        """What it draws and why that is less than it should be, with the figure of what is being entered."""
        answer = capacity_of(self.job)
        if self.chooser.value == "dimensions":
            sentence = (
                answer.sentence
                if answer
                else "Measure the filler: then its draught can be held against what it should hold."
            )
            return PanelResult(sentence, answer.findings if answer else (), dimension_drawings(self.job))
        if answer is None:
            return PanelResult(say(self.job, self.stage.key), drawings=(fill_test_drawing(self.job),))
        leak = leak_of(self.job) if self.chooser.value in ("leak reading", "leak check") else None
        if leak is not None:
            return PanelResult(leak.sentence, leak.findings, (leak_figure(leak),))
        return PanelResult(answer.sentence, answer.findings, (capacity_figure(answer),))

    def more(self) -> PanelResult:
        """Series, strokes, leak, budget, and how the number came about."""
        answer, leak = capacity_of(self.job), leak_of(self.job)
        at_rest = None if leak is None else leak_figure(leak)
        strokes = strokes_figure(self.job)
        if answer is None:
            return PanelResult(drawings=(strokes, at_rest))
        drawings = (dips_figure(answer), strokes, fillings_figure(self.job), at_rest, budget_figure(answer))
        table = table_html("How it was worked out", answer.table[0], answer.table[1:]) if answer.table else ""
        return PanelResult(drawings=drawings, table=table)
