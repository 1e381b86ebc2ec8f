"""The intake panel: the pen drawn from its own dimensions as they are entered."""

from __future__ import annotations

from pentools.figures.pen_from_record import pen_drawing
from pentools.panels.stage import PanelResult, StagePanel

__all__ = ["IntakePanel"]


class IntakePanel(StagePanel):
    """Shows the pen in section as far as it is measured."""

    def result(self) -> PanelResult:
        """What arrived, and its drawing."""
        arrival = self.job.values("intake", "arrival")
        if arrival["pen"] is None:
            return PanelResult("Nothing is known of this pen yet. Begin with whose it is and what arrived.")
        pieces = arrival["pieces"]
        count = f", in {len(pieces)} pieces" if isinstance(pieces, tuple) and len(pieces) > 1 else ""
        return PanelResult(
            f"{str(arrival['pen'])[:1].upper()}{str(arrival['pen'])[1:]}{count}.", drawings=(pen_drawing(self.job),)
        )
