"""The intake panel: the pen drawn from its own dimensions as they are entered."""

from __future__ import annotations

from pentools.figures.pen_from_record import pen_drawing
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.stages.job.intake_kinds import ARRIVAL

__all__ = ["IntakePanel"]


class IntakePanel(StagePanel):
    """Shows the pen in section as far as it is measured."""

    def result(self) -> PanelResult:
        """What arrived, and its drawing."""
        arrival = self.job.newest(ARRIVAL)
        if arrival.pen is None:
            return PanelResult("Nothing is known of this pen yet. Begin with whose it is and what arrived.")
        pieces = arrival.pieces or ()
        count = f", in {len(pieces)} pieces" if len(pieces) > 1 else ""
        return PanelResult(f"{arrival.pen[:1].upper()}{arrival.pen[1:]}{count}.", drawings=(pen_drawing(self.job),))
