"""The release panel: held until the leak check is done and the limits are written."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pentools.fields import Value
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.kinds import Kind
from pentools.record.stages.job.care import suggested_care
from pentools.record.stages.job.release import ENDINGS, ending

__all__ = ["ReleasePanel"]


class ReleasePanel(StagePanel):
    """Ends the job."""

    hold = "release"

    def check(self, kind: Kind[Any], values: Mapping[str, Value]) -> None:  # noqa: ARG002 - the form has one kind
        """A pen is not released as mended while the hold stands; stopped and returned are always open."""
        if values["ending"] not in ("stopped", "returned"):
            self.refuse_if_held()

    def refresh_forms(self) -> None:
        """Put a draft of the care text where none has been written."""
        box = self.forms["result"].boxes["care"]
        if not box.text and self.job.record.latest("release", "result") is None:
            box.text = suggested_care(self.job)

    def result(self) -> PanelResult:
        """How the job ended."""
        end = ending(self.job)
        if end is None:
            return PanelResult("The job is open. A page made now says so at its head.")
        return PanelResult(f"The job has ended: {dict(ENDINGS)[end]}.")
