"""The posting panel: after the end of the job; the value declared at intake stands in its box."""

from __future__ import annotations

from typing import Any

from pentools.errors import HoldError
from pentools.panels.parcel_row import ParcelRow
from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.forms import Form
from pentools.record.kinds import Kind
from pentools.record.saying import say
from pentools.record.stages.job.posting import declared_value, insured_value, posting_findings
from pentools.record.stages.job.posting_kinds import PARCEL, Parcel
from pentools.record.stages.job.release import ending

__all__ = ["PostingPanel"]


class PostingPanel(StagePanel):
    """Sends the pen home."""

    def check(self, kind: Kind[Any], values: Form) -> None:  # noqa: ARG002 - the form says its own kind
        """No pen is sent before the job has an end: done, done with limits, stopped or returned."""
        if isinstance(values, Parcel) and ending(self.job) is None:
            raise HoldError(
                "It waits: the job has not ended. Say under Release how it ended; “returned” is an end too."
            )

    def refresh_forms(self) -> None:
        """Put the value declared at intake where none has been entered; of a parcel, say how the others have it too."""
        if not self.above.children:
            self.parcel = ParcelRow(self.job, self.sheet_changed)
            self.above.children = (self.parcel.widget,)
        self.parcel.refresh()
        box = self.forms["parcel"].boxes["insured"]
        value = declared_value(self.job)
        if value and not box.text and not self.job.log(PARCEL):
            box.suggest(value)

    def result(self) -> PanelResult:
        """Where it is, and what is asked of the parcel."""
        value, basis = insured_value(self.job)
        words = f" Insured for {value}, {basis.rstrip('.') or 'on no basis said'}." if value else ""
        return PanelResult(say(self.job, self.stage.key) + words, posting_findings(self.job))
