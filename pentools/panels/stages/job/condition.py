"""The condition panel: the pen in section with what is wrong marked on its parts."""

from __future__ import annotations

from pentools.figures.pen_from_record import pen_drawing
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.saying import say
from pentools.record.stages.job.condition import worst_by_part

__all__ = ["ConditionPanel"]


class ConditionPanel(StagePanel):
    """Shows where the faults are."""

    def result(self) -> PanelResult:
        """The gravest faults in a sentence, and the marked drawing."""
        drawings = (pen_drawing(self.job, marks=None),) if worst_by_part(self.job) else ()
        return PanelResult(say(self.job, self.stage.key), drawings=drawings)
