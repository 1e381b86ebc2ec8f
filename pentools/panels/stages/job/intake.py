"""The intake panel: the pen drawn from its own dimensions as they are entered."""

from __future__ import annotations

from pentools.figures.pen_from_record import pen_drawing
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.saying import say
from pentools.record.stages.job.intake_kinds import ARRIVAL

__all__ = ["IntakePanel"]


class IntakePanel(StagePanel):
    """Shows the pen in section as far as it is measured."""

    def result(self) -> PanelResult:
        """What arrived, and its drawing."""
        known = self.job.newest(ARRIVAL).pen is not None
        return PanelResult(say(self.job, self.stage.key), drawings=(pen_drawing(self.job),) if known else ())
