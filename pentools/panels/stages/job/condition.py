"""The condition panel: the pen in section with what is wrong marked on its parts."""

from __future__ import annotations

from pentools.figures.pen_from_record import pen_drawing
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.condition import worst_by_part

__all__ = ["ConditionPanel"]


class ConditionPanel(StagePanel):
    """Shows where the faults are."""

    def result(self) -> PanelResult:
        """The gravest faults in a sentence, and the marked drawing."""
        worst = worst_by_part(self.job)
        if not worst:
            return PanelResult("No part has been looked at yet.")
        names = dict(PARTS)
        grave = [names[part] for part, severity in worst.items() if severity >= 3]
        sound = sum(severity == 0 for severity in worst.values())
        sentence = (
            f"What keeps it from working: {', '.join(grave)}."
            if grave
            else f"{len(worst)} parts looked at, {sound} of them sound; nothing that stops the pen."
        )
        return PanelResult(sentence, drawings=(pen_drawing(self.job, marks=None),))
