"""The condition panel: the pen in section with what is wrong marked on its parts."""

from __future__ import annotations

from pentools.calc.base.findings import Finding
from pentools.figures.pen_from_record import pen_drawing
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.saying import say
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.condition import worst_by_part
from pentools.record.stages.repairs.work import faults_waiting

__all__ = ["ConditionPanel"]


class ConditionPanel(StagePanel):
    """Shows where the faults are."""

    def result(self) -> PanelResult:
        """The gravest faults in a sentence, and the marked drawing."""
        drawings = (pen_drawing(self.job, marks=None),) if worst_by_part(self.job) else ()
        names = dict(PARTS)
        parts = list(dict.fromkeys(names[fault.part] for fault in faults_waiting(self.job)))
        offered = (Finding("note", "repairs.offered", parts=parts),) if parts else ()
        return PanelResult(say(self.job, self.stage.key), offered, drawings)
